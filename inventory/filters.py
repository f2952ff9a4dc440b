"""The questions the garment list answers. The answers live in the page's address."""

from typing import Any

import django_filters as filters
from django import forms
from django.db.models import Exists, OuterRef, Q

from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.grades import STRETCH_CLASSES
from inventory.choices import Colour, Kind, Status
from inventory.forms.fibres import fibre_choices
from inventory.models import Collection, FibreShare, Garment, GarmentQuerySet
from shared.middleware import WorkshopRequest
from shared.units import MM2_PER


def _collections(request: WorkshopRequest) -> Any:
    return Collection.objects.of(request.workshop)


class GarmentFilter(filters.FilterSet):
    q = filters.CharFilter(label="Words", method="by_words")
    collection = filters.ModelChoiceFilter(queryset=_collections, empty_label="Any")
    kind = filters.ChoiceFilter(choices=Kind, empty_label="Any")
    fibre = filters.ChoiceFilter(
        label="Fibre",
        choices=lambda: fibre_choices()[1:],
        method="by_fibre",
        empty_label="Any",
    )
    construction = filters.ChoiceFilter(
        label="Cloth",
        choices=[(c.name, c.label) for c in CONSTRUCTIONS.values()],
        empty_label="Any",
    )
    stretch = filters.ChoiceFilter(
        label="Stretch across",
        choices=[(s.name, s.label) for s in STRETCH_CLASSES],
        method="by_stretch",
        empty_label="Any",
    )
    fragility = filters.NumberFilter(
        label="Fragility at most",
        lookup_expr="lte",
        min_value=0,
        max_value=4,
        widget=forms.NumberInput(attrs={"min": 0, "max": 4}),
    )
    fray = filters.NumberFilter(
        label="Fraying at most",
        lookup_expr="lte",
        min_value=0,
        max_value=4,
        widget=forms.NumberInput(attrs={"min": 0, "max": 4}),
    )
    colour = filters.ChoiceFilter(choices=Colour, empty_label="Any")
    status = filters.ChoiceFilter(label="On the bench", choices=Status, empty_label="Any")
    least_area = filters.NumberFilter(label="Usable cloth at least", method="by_area", min_value=0)
    order = filters.OrderingFilter(
        label="Sorted by",
        fields=(
            ("pk", "arrived"),
            ("usable_mm2", "usable"),
            ("kind", "kind"),
            ("tag", "tag"),
            ("fragility", "fragility"),
            ("mass_g_m2", "weight"),
        ),
        field_labels={
            "pk": "Arrived, oldest first",
            "usable_mm2": "Least usable cloth first",
            "kind": "Kind",
            "tag": "Tag code",
            "fragility": "Soundest first",
            "mass_g_m2": "Lightest first",
        },
        choices=(
            ("-arrived", "Arrived, newest first"),
            ("arrived", "Arrived, oldest first"),
            ("-usable", "Most usable cloth first"),
            ("usable", "Least usable cloth first"),
            ("kind", "Kind"),
            ("tag", "Tag code"),
            ("fragility", "Soundest first"),
            ("-fragility", "Most fragile first"),
            ("weight", "Lightest first"),
            ("-weight", "Heaviest first"),
        ),
        empty_label=None,
    )

    class Meta:
        model = Garment
        fields = ()

    def by_words(self, rows: GarmentQuerySet, name: str, value: str) -> GarmentQuerySet:
        for word in value.split():
            rows = rows.filter(
                Q(name__icontains=word)
                | Q(notes__icontains=word)
                | Q(tag__iexact=word)
                | Q(kind__icontains=word)
                | Q(collection__name__icontains=word)
                | Q(collection__giver__icontains=word)
            )
        return rows

    def by_fibre(self, rows: GarmentQuerySet, name: str, value: str) -> GarmentQuerySet:
        shares = FibreShare.objects.filter(garment=OuterRef("pk"), fibre=value)
        return rows.filter(Exists(shares))  # once each, though two of its cloths hold the fibre

    def by_stretch(self, rows: GarmentQuerySet, name: str, value: str) -> GarmentQuerySet:
        bounds = {s.name: s for s in STRETCH_CLASSES}[value]
        rows = rows.filter(stretch_across_pct__gte=bounds.from_pct)
        return rows if bounds.to_pct is None else rows.filter(stretch_across_pct__lt=bounds.to_pct)

    def by_area(self, rows: GarmentQuerySet, name: str, value: Any) -> GarmentQuerySet:
        assert self.request is not None  # noqa: S101 - for the type checker
        return rows.filter(**{"usable_mm2__gte": float(value) * MM2_PER[self.request.units]})
