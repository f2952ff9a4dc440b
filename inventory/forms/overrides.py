"""A maker's own words in place of one recommendation, for one garment."""

from typing import Any, ClassVar

from django import forms
from django.db import transaction

from inventory.choices import Recommendation
from inventory.cloth import measure_again
from inventory.models import AdviceOverride, Garment
from shared.models import Member


class OverrideForm(forms.ModelForm[AdviceOverride]):
    """New words for the same recommendation withdraw the ones before; both stay in the record."""

    class Meta:
        model = AdviceOverride
        fields = ("part", "text", "reason")
        widgets: ClassVar = {
            "text": forms.Textarea(attrs={"rows": 2}),
            "reason": forms.Textarea(attrs={"rows": 2}),
        }

    def __init__(
        self, data: Any, *, garment: Garment, member: Member, initial: dict[str, Any]
    ) -> None:
        own = AdviceOverride(garment=garment, workshop=garment.workshop, made_by=member)
        super().__init__(data, instance=own, initial=initial)
        self.garment, self.member = garment, member

    def clean_part(self) -> str:
        part = str(self.cleaned_data["part"])
        collection = self.garment.collection
        if part == Recommendation.WASH and (collection.keeps_scent or collection.may_wash is False):
            raise forms.ValidationError(
                "The giver does not want it washed, and that comes before everything else. "
                "If the giver has changed their mind, write that down with the collection."
            )
        return part

    def validate_constraints(self) -> None:
        """All of them hold once the words before are withdrawn, which only saving does."""

    @transaction.atomic
    def save(self, commit: bool = True) -> AdviceOverride:
        earlier = AdviceOverride.objects.of(self.garment.workshop)
        earlier.filter(garment=self.garment, part=self.instance.part).withdraw(self.member)
        own = super().save()
        if own.part == Recommendation.WASH:
            measure_again(self.garment)
        return own
