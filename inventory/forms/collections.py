from typing import Any, ClassVar

from django import forms

from inventory.models import Collection


class DayInput(forms.DateInput):
    input_type = "date"

    def __init__(self, **options: Any) -> None:
        super().__init__(format="%Y-%m-%d", **options)


class CollectionForm(forms.ModelForm[Collection]):
    class Meta:
        model = Collection
        fields = (
            "name",
            "giver",
            "received_on",
            "cut_consent",
            "wash_consent",
            "keeps_scent",
            "returns_scraps",
            "notes",
        )
        labels: ClassVar = {
            "name": "A name for this collection",
            "giver": "Who gave it",
            "received_on": "Received on",
        }
        help_texts: ClassVar = {
            "name": "For example “Grandad’s shirts”.",
            "cut_consent": "Nothing is cut before the answer is yes.",
            "keeps_scent": "Then nothing is washed, and the advice says how to manage without.",
        }
        widgets: ClassVar = {
            "received_on": DayInput(),
            "cut_consent": forms.RadioSelect(),
            "wash_consent": forms.RadioSelect(),
        }
