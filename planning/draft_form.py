"""A built-in pattern at heights of the maker's own."""

from typing import Any, ClassVar

from django import forms

from planning.drafting.library import KINDS
from planning.pattern_forms import AllowanceField, HeightsField
from shared.units import LengthUnit


class DraftForm(forms.Form):
    """A built-in pattern at the maker's own heights."""

    kind = forms.ChoiceField(label="What")
    face = forms.ChoiceField(label="Looks", required=False)
    pose = forms.ChoiceField(label="Stands or sits", required=False)

    FACES: ClassVar = {"ahead": "straight ahead", "aside": "to one side"}

    def __init__(self, *args: Any, units: LengthUnit, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        _offer(self, "kind", [(key, kind.name) for key, kind in KINDS.items()])
        poses = dict.fromkeys(pose for kind in KINDS.values() for pose in kind.poses)
        faces = dict.fromkeys(face for kind in KINDS.values() for face in kind.faces)
        _offer(self, "pose", [(pose, pose.capitalize()) for pose in poses])
        _offer(self, "face", [(face, self.FACES.get(face, face).capitalize()) for face in faces])
        self.fields["heights"] = HeightsField(
            label="Finished heights", unit=units, help_text="One or several, with commas between."
        )
        self.fields["seam_allowance"] = AllowanceField(unit=units)
        self.order_fields(["kind", "heights", "seam_allowance", "pose", "face"])

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        kind = KINDS.get(data.get("kind", ""))
        if kind is None:
            return data
        for name, known in (("pose", kind.poses), ("face", kind.faces)):
            if data.get(name) not in known:
                data[name] = known[0] if known else ""
        for height_mm in data.get("heights", []):
            if not kind.least_mm <= height_mm <= kind.most_mm:
                self.add_error(
                    "heights",
                    f"{kind.name}: from {kind.least_mm / 10:g} to {kind.most_mm / 10:g} cm.",
                )
                break
        return data


def _offer(form: forms.Form, name: str, choices: list[tuple[str, str]]) -> None:
    field = form.fields[name]
    assert isinstance(field, forms.ChoiceField)  # noqa: S101 - for the type checker
    field.choices = choices
