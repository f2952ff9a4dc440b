"""A question about a cloth that need not exist: what is known of it, and one thing changed.

The question lives in the page's address. Fibres are typed by any of their names, so that a wrong
one is answered with the nearest.
"""

from dataclasses import replace
from typing import Any

from django import forms
from django.http import QueryDict

from inventory.advice.cloth import MOST_MASS_G_M2, MOST_STRETCH_PCT, Cloth, cloth_problems
from inventory.advice.conditions import CONDITIONS
from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.fibres import FIBRES, fibre_named
from inventory.advice.grades import FRAGILITY, FRAY, Grade
from inventory.advice.label import MARKS, CareLabel, read_edition
from inventory.advice.problems import AdviceError, BadShares
from inventory.choices import LabelEdition
from inventory.forms.fibres import ROWS
from inventory.forms.label import PART_WORDS

FIBRE_NAMES = sorted({n for fibre in FIBRES.values() for n in (fibre.name, *fibre.also_called)})
FIGURES = {
    "mass_g_m2": ("Weight in g/m²", MOST_MASS_G_M2),
    "stretch_across_pct": ("Stretch across, percent", MOST_STRETCH_PCT),
    "stretch_along_pct": ("Stretch along, percent", MOST_STRETCH_PCT),
}


def _grades(grades: tuple[Grade, ...]) -> list[tuple[str, str]]:
    return [(str(grade.value), f"{grade.value}: {grade.words}") for grade in grades]


def _figure(label: str, least: float | None = None, most: float | None = None) -> forms.FloatField:
    widget = forms.NumberInput(attrs={"step": "any", "inputmode": "decimal"})
    return forms.FloatField(
        label=label, required=False, widget=widget, min_value=least, max_value=most
    )


class ClothQuestion(forms.Form):
    """What is known of a cloth; ``blank`` is what an empty choice is called."""

    blank = "Not known"

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self._add_fibres()
        makes = [(make.name, make.label) for make in CONSTRUCTIONS.values()]
        self._add_choice("construction", "How the cloth is made", makes)
        for name, (label, most) in FIGURES.items():
            self.fields[name] = _figure(label, 0, most)
        self._add_choice("fragility", "Fragility", _grades(FRAGILITY))
        self._add_choice("fray", "Fraying", _grades(FRAY))
        for part, marks in MARKS.items():
            self._add_choice(f"label_{part}", f"Label: {PART_WORDS[part].lower()}", [*marks])
        editions = [(str(value), words) for value, words in LabelEdition.choices]
        self._add_choice("label_edition", "Label: edition", editions)
        self._add_wishes()

    def _add_fibres(self) -> None:
        for row in ROWS:
            number = "" if row == 1 else f" {row}"
            self.fields[f"fibre_{row}"] = forms.CharField(
                label=f"Fibre{number}",
                max_length=40,
                required=False,
                widget=forms.TextInput(attrs={"list": "fibre-names", "autocomplete": "off"}),
            )
            self.fields[f"percent_{row}"] = _figure(f"Percent{number}")

    def _add_choice(self, name: str, label: str, choices: list[tuple[str, str]]) -> None:
        self.fields[name] = forms.ChoiceField(
            label=label, choices=[("", self.blank), *choices], required=False
        )

    def _add_wishes(self) -> None:
        self.fields["keep_scent"] = forms.BooleanField(
            label="The scent is to be kept", required=False
        )
        self.fields["no_wash"] = forms.BooleanField(
            label="The giver does not want it washed", required=False
        )
        self.fields["conditions"] = forms.MultipleChoiceField(
            label="Does any of this apply?",
            choices=list(CONDITIONS.items()),
            required=False,
            widget=forms.CheckboxSelectMultiple,
        )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        data["fibres"] = self._fibres(data)
        if not self.errors:
            data["cloth"] = self._cloth(data)
            for problem in cloth_problems(data["cloth"]):
                field = "percent_1" if isinstance(problem, BadShares) else None
                self.add_error(field, str(problem))
        return data

    def _fibres(self, data: dict[str, Any]) -> tuple[tuple[str, float], ...]:
        shares: list[tuple[str, float]] = []
        typed = [row for row in ROWS if data.get(f"fibre_{row}")]
        for row in ROWS:
            name, percent = data.get(f"fibre_{row}"), data.get(f"percent_{row}")
            if percent is not None and not name and f"fibre_{row}" not in self.errors:
                self.add_error(f"fibre_{row}", "Which fibre is this percentage of?")
            if not name:
                continue
            try:
                fibre = fibre_named(name).name
            except AdviceError as problem:
                self.add_error(f"fibre_{row}", str(problem))
                continue
            if percent is None and len(typed) > 1:
                self.add_error(f"percent_{row}", "How many percent of this fibre?")
            shares.append((fibre, 100.0 if percent is None else percent))
        return tuple(shares)

    def _cloth(self, data: dict[str, Any]) -> Cloth:
        return Cloth(
            fibres=data["fibres"],
            construction=data["construction"] or None,
            fragility=_grade(data["fragility"]),
            fray=_grade(data["fray"]),
            label=self._label(data, CareLabel()),
            keep_scent=bool(data["keep_scent"]),
            may_wash=False if data["no_wash"] else None,
            conditions=frozenset(data["conditions"]),
            **{name: data[name] for name in FIGURES},
        )

    @staticmethod
    def _label(data: dict[str, Any], label: CareLabel) -> CareLabel:
        marks = {part: data[f"label_{part}"] for part in MARKS if data[f"label_{part}"]}
        if data["label_edition"]:
            label = replace(label, edition=read_edition(int(data["label_edition"])))
        return replace(label, **marks)

    @property
    def fibre_rows(self) -> list[tuple[forms.BoundField, forms.BoundField]]:
        return [(self[f"fibre_{row}"], self[f"percent_{row}"]) for row in ROWS]

    @property
    def cloth_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in ("construction", *FIGURES, "fragility", "fray")]

    @property
    def label_fields(self) -> list[forms.BoundField]:
        return [*(self[f"label_{part}"] for part in MARKS), self["label_edition"]]

    @property
    def wish_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in ("keep_scent", "no_wash", "conditions")]

    @property
    def has_label(self) -> bool:
        return any(field.value() for field in self.label_fields)

    @property
    def has_wishes(self) -> bool:
        return any(field.value() for field in self.wish_fields)


class ChangeQuestion(ClothQuestion):
    """What is to be otherwise. Whatever is left empty stays as in the first question."""

    blank = "The same"

    def __init__(self, *args: Any, cloth: Cloth | None, **kwargs: Any) -> None:
        self.first = cloth or Cloth()
        super().__init__(*args, **kwargs)

    def _add_wishes(self) -> None:
        self._add_choice("keep_scent", "The scent is to be kept", [("yes", "Yes"), ("no", "No")])
        self._add_choice(
            "no_wash", "The giver does not want it washed", [("yes", "Yes"), ("no", "No")]
        )
        self._add_choice(
            "conditions", "In trouble with", [("none", "Nothing"), *CONDITIONS.items()]
        )

    def _cloth(self, data: dict[str, Any]) -> Cloth:
        first = self.first
        changed: dict[str, Any] = {name: data[name] for name in FIGURES if data[name] is not None}
        if data["fibres"]:
            changed["fibres"] = data["fibres"]
        if data["construction"]:
            changed["construction"] = data["construction"]
        for name in ("fragility", "fray"):
            if data[name]:
                changed[name] = _grade(data[name])
        if data["keep_scent"]:
            changed["keep_scent"] = data["keep_scent"] == "yes"
        if data["no_wash"]:
            changed["may_wash"] = False if data["no_wash"] == "yes" else None
        if data["conditions"]:
            named = data["conditions"]
            changed["conditions"] = frozenset() if named == "none" else first.conditions | {named}
        return replace(first, label=self._label(data, first.label or CareLabel()), **changed)

    @property
    def is_asked(self) -> bool:
        """Whether anything at all is to be otherwise."""
        return any(self[name].value() for name in self.fields)


def _grade(value: str) -> int | None:
    return int(value) if value else None


def question_about(cloth: Cloth) -> str:
    """The address of the question about a cloth that is at hand."""
    asked = QueryDict(mutable=True)
    for row, (fibre, percent) in zip(ROWS, cloth.fibres, strict=False):
        asked[f"fibre_{row}"], asked[f"percent_{row}"] = fibre, f"{percent:g}"
    figures = {name: getattr(cloth, name) for name in (*FIGURES, "fragility", "fray")}
    label = cloth.label or CareLabel()
    marks = {f"label_{part}": getattr(label, part) for part in (*MARKS, "edition")}
    for name, value in {"construction": cloth.construction, **figures, **marks}.items():
        if value is not None:
            asked[name] = f"{value:g}" if isinstance(value, int | float) else value
    if cloth.keep_scent:
        asked["keep_scent"] = "on"
    if cloth.may_wash is False:
        asked["no_wash"] = "on"
    asked.setlist("conditions", sorted(cloth.conditions))
    return asked.urlencode()
