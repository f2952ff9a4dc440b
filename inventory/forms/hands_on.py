"""The tests a maker does by hand, each of which may be skipped, and what they write on the garment.

The grades and their meaning are those of ``inventory.advice.grades``.
"""

from typing import Any

from django import forms
from django.db import transaction

from inventory.advice.grades import FRAGILITY, FRAY, Grade, mass_g_m2_from, stretch_pct
from inventory.advice.problems import BadFigure
from inventory.choices import Trouble
from inventory.cloth import measure_again
from inventory.models import Garment, Panel
from shared.forms import LengthField
from shared.units import LengthUnit

SKIP = ("", "Skip: leave it as it is")
MARKED_MM = 100.0
MOST_STRETCH_PCT = 300
LIGHTEST_G_M2, HEAVIEST_G_M2 = 5, 3000
FOUND = ("fragility", "fray", "stretch_across_pct", "stretch_along_pct", "mass_g_m2")


class GradeSelect(forms.RadioSelect):
    """Grades as radio buttons, each with what it means and how it shows in the test."""

    template_name = "inventory/grade_select.html"

    def create_option(self, *args: Any, **kwargs: Any) -> dict[str, Any]:
        option = super().create_option(*args, **kwargs)
        words, _, shows = str(option["label"]).partition(". ")
        return option | {"words": words, "shows": shows}


class PanelChoice(forms.ModelChoiceField):
    def label_from_instance(self, panel: Any) -> str:
        return f"The panel “{panel}” as measured"


def _grade_field(label: str, grades: tuple[Grade, ...]) -> forms.TypedChoiceField:
    choices = [(str(g.value), f"{g.value}: {g.words}. {g.shows}") for g in grades]
    return forms.TypedChoiceField(
        label=label,
        choices=[SKIP, *choices],
        coerce=int,
        empty_value=None,
        required=False,
        widget=GradeSelect,
    )


class HandsOnForm(forms.Form):
    """Every test stands for itself: what is left empty changes nothing."""

    fragility = _grade_field("What did you see?", FRAGILITY)
    fray = _grade_field("How far did the threads come away?", FRAY)
    colour = forms.ChoiceField(
        label="Did colour come off on the white cloth?",
        choices=[SKIP, ("fast", "None at all"), ("bled", "Some did")],
        required=False,
        widget=forms.RadioSelect,
    )
    mass_g = forms.FloatField(
        label="Grams on the scales",
        required=False,
        min_value=0.1,
        max_value=20_000,
        widget=forms.NumberInput(attrs={"step": "any", "inputmode": "decimal"}),
    )
    weighed = PanelChoice(
        Panel.objects.none(),
        label="What lay on the scales",
        required=False,
        empty_label="A piece of the size below",
    )

    def __init__(self, *args: Any, garment: Garment, units: LengthUnit, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.garment = garment
        for way in ("across", "along"):
            self.fields[f"{way}_relaxed_mm"] = LengthField(
                label=f"{way.capitalize()}: marked at rest",
                unit=units,
                required=False,
                initial=MARKED_MM,
            )
            self.fields[f"{way}_stretched_mm"] = LengthField(
                label=f"{way.capitalize()}: stretched to", unit=units, required=False
            )
        for name, label in (("width_mm", "Width of the piece"), ("length_mm", "Its length")):
            self.fields[name] = LengthField(label=label, unit=units, required=False)
        weighed = self.fields["weighed"]
        assert isinstance(weighed, forms.ModelChoiceField)  # noqa: S101 - for the type checker
        weighed.queryset = Panel.objects.of(garment.workshop).here().filter(garment=garment)

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        for way in ("across", "along"):
            data[f"stretch_{way}_pct"] = self._stretch(data, way)
        data["mass_g_m2"] = self._mass(data)
        return data

    def _stretch(self, data: dict[str, Any], way: str) -> float | None:
        relaxed, stretched = data.get(f"{way}_relaxed_mm"), data.get(f"{way}_stretched_mm")
        if stretched is None:
            return None
        if relaxed is None:
            if f"{way}_relaxed_mm" not in self.errors:
                self.add_error(f"{way}_relaxed_mm", "How far apart were the marks at rest?")
            return None
        try:
            found = stretch_pct(relaxed, stretched)
        except BadFigure as problem:
            self.add_error(f"{way}_stretched_mm", str(problem))
            return None
        if found > MOST_STRETCH_PCT:
            self.add_error(
                f"{way}_stretched_mm", "No cloth stretches to four times its length. Measure again."
            )
        return round(found, 1)

    def _mass(self, data: dict[str, Any]) -> float | None:
        mass_g, panel = data.get("mass_g"), data.get("weighed")
        width, length = data.get("width_mm"), data.get("length_mm")
        if mass_g is None:
            if (panel or width or length) and "mass_g" not in self.errors:
                self.add_error("mass_g", "What did the scales say?")
            return None
        if panel and (width or length):
            self.add_error("weighed", "Either a panel or a piece of a size: not both.")
            return None
        area_mm2 = panel.area_mm2 if panel else (width or 0) * (length or 0)
        if not area_mm2:
            self._ask_size(width, length)
            return None
        found = mass_g_m2_from(mass_g, area_mm2)
        if not LIGHTEST_G_M2 <= found <= HEAVIEST_G_M2:
            self.add_error(
                "mass_g", f"That makes {found:,.0f} g/m², which no cloth weighs. Check the size."
            )
        return round(found, 1)

    def _ask_size(self, width: float | None, length: float | None) -> None:
        for name, value in (("width_mm", width), ("length_mm", length)):
            if not value and name not in self.errors:
                self.add_error(name, "Its size is needed, or choose a measured panel above.")

    @transaction.atomic
    def save(self) -> dict[str, float | None]:
        """Write what was found on the garment; return what it was before, where that changed."""
        garment, data = self.garment, self.cleaned_data
        before: dict[str, float | None] = {name: getattr(garment, name) for name in FOUND}
        for name in FOUND:
            if data[name] is not None:
                setattr(garment, name, data[name])
        changed = {name: was for name, was in before.items() if getattr(garment, name) != was}
        if data["colour"] == "bled" and Trouble.BLED not in garment.troubles:
            garment.troubles = [*garment.troubles, Trouble.BLED.value]
            changed["bled"] = None
        garment.save(update_fields=[*FOUND, "troubles"])
        measure_again(garment)
        return changed

    def stretch_rows(self) -> list[tuple[forms.BoundField, forms.BoundField]]:
        return [
            (self[f"{way}_relaxed_mm"], self[f"{way}_stretched_mm"]) for way in ("across", "along")
        ]


class BeforeForm(forms.Form):
    """What a garment's cloth was before the tests, as it stands in the page's address."""

    fragility = forms.IntegerField(required=False, min_value=0, max_value=4)
    fray = forms.IntegerField(required=False, min_value=0, max_value=4)
    stretch_across_pct = forms.FloatField(required=False, min_value=0, max_value=300)
    stretch_along_pct = forms.FloatField(required=False, min_value=0, max_value=300)
    mass_g_m2 = forms.FloatField(required=False, min_value=LIGHTEST_G_M2, max_value=HEAVIEST_G_M2)
    bled = forms.CharField(required=False, max_length=1)  # there, where it is new that colour runs
