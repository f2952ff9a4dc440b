"""A maker's own patterns: their facts, sizes, seams and files."""

from typing import Any, ClassVar, cast

from django import forms
from django.core.files.uploadedfile import UploadedFile

from inventory.forms.panels import PlaceField
from inventory.photos import MOST_BYTES as MOST_PICTURE_BYTES
from inventory.photos import prepared
from planning.drafting.sewing import Seam, Stretch
from planning.models import Pattern, PatternPiece, PatternSize
from shared.errors import LengthError, PhotoError
from shared.forms import LengthField
from shared.units import LengthUnit, format_length, parse_length

LEAST_MM, MOST_MM = 30.0, 2000.0
MOST_ALLOWANCE_MM = 50.0
USUAL_MM: dict[LengthUnit, float] = {"cm": 6.0, "in": 6.35}  # seam allowance of a new pattern


class HeightsField(forms.CharField):
    """Several heights with commas or spaces between; cleans to millimetres, smallest first."""

    def __init__(self, *, unit: LengthUnit = "cm", **options: Any) -> None:
        super().__init__(max_length=200, **options)
        self.unit = unit

    def clean(self, value: Any) -> list[float]:
        text = super().clean(value)
        words = [word for word in text.replace(";", ",").split(",") if word.strip()]
        if len(words) == 1 and "/" not in text:
            words = text.split()
        try:
            heights = {round(parse_length(word, self.unit), 3) for word in words}
        except LengthError as error:
            raise forms.ValidationError(f"{error} Put commas between the heights.") from None
        if wrong := [each for each in heights if not LEAST_MM <= each <= MOST_MM]:
            raise forms.ValidationError(
                f"{len(wrong)} of the heights are outside 3 cm to 2 m. Check the unit."
            )
        return sorted(heights)


class AllowanceField(PlaceField):
    """A seam allowance, which may be nothing."""

    def __init__(self, *, unit: LengthUnit, **options: Any) -> None:
        super().__init__(
            unit=unit, **{"label": "Seam allowance", "initial": USUAL_MM[unit]} | options
        )

    def to_python(self, value: Any) -> Any:
        allowance = super().to_python(value)
        if allowance is not None and allowance > MOST_ALLOWANCE_MM:
            raise forms.ValidationError("More than 5 cm is no seam allowance. Check the unit.")
        return allowance


class PatternForm(forms.ModelForm[Pattern]):
    """What a pattern is and where it comes from; a new one also says how tall its first size is."""

    class Meta:
        model = Pattern
        fields = ("name", "description", "source", "licence")
        help_texts: ClassVar = {
            "name": "For example “Grandmother’s bear”.",
            "source": "Who drew it, which book or magazine, or “drawn by me”.",
            "licence": "For example “own use and gifts only”. Keep to what its maker allows.",
        }

    def __init__(self, *args: Any, units: LengthUnit, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["seam_allowance"] = AllowanceField(
            unit=units,
            initial=self.instance.seam_allowance_mm if self.instance.pk else USUAL_MM[units],
            help_text="0 if the pattern is cut on the seam line, as felt is.",
        )
        if self.instance.pk is None:
            self.fields["height"] = LengthField(
                label="Finished height of the size you have",
                unit=units,
                help_text="More sizes can be graded from it later.",
            )
        self.fields["new_picture"] = forms.FileField(
            label="Picture of it", required=False, help_text="JPEG, PNG or WebP."
        )

    def clean_height(self) -> float:
        height = cast(float, self.cleaned_data["height"])
        if not LEAST_MM <= height <= MOST_MM:
            raise forms.ValidationError("A height lies between 3 cm and 2 m. Check the unit.")
        return height

    def clean_new_picture(self) -> Any:
        upload = cast(UploadedFile | None, self.cleaned_data["new_picture"])
        if upload is None:
            return None
        if (upload.size or 0) > MOST_PICTURE_BYTES:
            raise forms.ValidationError("This picture is larger than 40 megabytes.")
        try:
            _, small = prepared(upload, upload.content_type or "")
        except PhotoError as error:
            raise forms.ValidationError(str(error)) from None
        return small


class GradeForm(forms.Form):
    """New sizes by finished height, from one of the sizes there are."""

    def __init__(self, *args: Any, pattern: Pattern, units: LengthUnit, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        sizes = PatternSize.objects.of(pattern.workshop).filter(pattern=pattern, graded_from=None)
        self.fields["graded_from"] = SizeChoice(
            sizes,
            unit=units,
            label="Graded from",
            initial=sizes.order_by("pk").first(),
            empty_label=None,
            help_text="The stitching line grows or shrinks; the seam allowance stays as it is.",
        )
        self.fields["heights"] = HeightsField(
            label="New finished heights", unit=units, help_text="One or several, commas between."
        )
        self.taken = set(pattern.sizes.values_list("height_mm", flat=True))

    def clean_heights(self) -> list[float]:
        heights = cast(list[float], self.cleaned_data["heights"])
        if any(height in self.taken for height in heights):
            raise forms.ValidationError("One of these heights is a size of the pattern already.")
        return heights


class SizeChoice(forms.ModelChoiceField):
    """A size by its height in the maker's units."""

    def __init__(self, *args: Any, unit: LengthUnit, **options: Any) -> None:
        super().__init__(*args, **options)
        self.unit = unit

    def label_from_instance(self, obj: Any) -> str:
        return format_length(obj.height_mm, self.unit)


STRETCHES = 4  # of each side: a neck is sewn from as many


class SeamForm(forms.Form):
    """One seam: the stretches on its one side, those on its other, and how they are eased."""

    name = forms.CharField(
        label="Seam", max_length=60, help_text="For example “side, shoulder to hip”."
    )
    ease_least_pct = forms.FloatField(
        label="Side A longer by at least, %", initial=0, min_value=-50, max_value=50
    )
    ease_most_pct = forms.FloatField(
        label="and at most, %",
        initial=0,
        min_value=-50,
        max_value=50,
        help_text="0 where both sides are equally long. A sole eased into a leg may have 5.",
    )
    copies = forms.IntegerField(
        label="How many such seams on one keepsake", initial=1, min_value=1, max_value=50
    )
    by_hand = forms.BooleanField(label="Closed by hand at the end", required=False)

    def __init__(
        self, *args: Any, sizes: list[PatternSize], seam: Seam | None, **kwargs: Any
    ) -> None:
        super().__init__(*args, **kwargs)
        choices = [("", "nothing"), *_stretches_of(sizes)]
        for side in "ab":
            for number in range(1, STRETCHES + 1):
                self.fields[f"{side}{number}"] = forms.ChoiceField(
                    label=f"Side {side.upper()}, {'edge' if number == 1 else 'and then'}",
                    choices=choices,
                    required=number == 1,
                )
        if seam is not None:
            self._show(seam)

    def _show(self, seam: Seam) -> None:
        self.initial.update(
            name=seam.name,
            ease_least_pct=seam.ease_pct[0],
            ease_most_pct=seam.ease_pct[1],
            copies=seam.copies,
            by_hand=seam.by_hand,
        )
        for side, stretches in (("a", seam.a), ("b", seam.b)):
            keys = [f"{s.piece}\x1f{s.name}" for s in stretches for _ in range(s.times)]
            self.initial.update({f"{side}{n}": key for n, key in enumerate(keys, start=1)})

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        least, most = data.get("ease_least_pct"), data.get("ease_most_pct")
        if least is not None and most is not None and least > most:
            self.add_error("ease_most_pct", "At most is less than at least.")
        return data

    def seam(self) -> Seam:
        """The seam as typed; the form must be valid."""
        data = self.cleaned_data
        return Seam(
            name=data["name"],
            a=self._side("a"),
            b=self._side("b"),
            ease_pct=(data["ease_least_pct"], data["ease_most_pct"]),
            copies=data["copies"],
            by_hand=data["by_hand"],
        )

    def _side(self, side: str) -> tuple[Stretch, ...]:
        keys = [self.cleaned_data.get(f"{side}{n}") for n in range(1, STRETCHES + 1)]
        chosen = [key for key in keys if key]
        stretches = []
        for key in dict.fromkeys(chosen):
            piece, _, name = key.partition("\x1f")
            stretches.append(Stretch(piece, name, chosen.count(key)))
        return tuple(stretches)

    @property
    def sides(self) -> list[tuple[str, list[forms.BoundField]]]:
        numbers = range(1, STRETCHES + 1)
        return [(side.upper(), [self[f"{side}{n}"] for n in numbers]) for side in "ab"]


def _stretches_of(sizes: list[PatternSize]) -> list[tuple[str, str]]:
    """Every edge and line of the pieces of any size, as choices in the order of the pieces."""
    named = (
        (piece.name, stretch["name"])
        for size in sizes
        for piece in size.pieces.all()
        for stretch in (*piece.edges, *piece.lines)
    )
    return [(f"{piece}\x1f{edge}", f"{piece}: {edge}") for piece, edge in dict.fromkeys(named)]


class PartsForm(forms.Form):
    """For every stuffed part that the pieces name: how many there are, and whether it is flat."""

    FLAT: ClassVar = [("", "round, shaped by its pieces"), ("flat", "two sheets, blown up")]

    def __init__(self, *args: Any, pattern: Pattern, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        kept = {part["name"]: part for part in pattern.parts}
        pieces = PatternPiece.objects.filter(size__pattern=pattern).exclude(part="")
        self.names = list(dict.fromkeys(pieces.order_by("position").values_list("part", flat=True)))
        for number, name in enumerate(self.names):
            part = kept.get(name, {"how_many": 1, "is_flat": False})
            self.fields[f"how_many_{number}"] = forms.IntegerField(
                label=f"How many of: {name}", min_value=1, max_value=50, initial=part["how_many"]
            )
            self.fields[f"flat_{number}"] = forms.ChoiceField(
                label=f"Shape of: {name}",
                choices=self.FLAT,
                required=False,
                initial="flat" if part["is_flat"] else "",
            )

    def parts(self) -> list[dict[str, Any]]:
        """The parts as a pattern keeps them; the form must be valid."""
        data = self.cleaned_data
        return [
            {
                "name": name,
                "how_many": data[f"how_many_{number}"],
                "is_flat": data[f"flat_{number}"] == "flat",
            }
            for number, name in enumerate(self.names)
        ]
