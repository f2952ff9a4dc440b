"""Drafting a built-in pattern at the maker's own heights."""

from typing import Any

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_GET

from planning.draft_form import DraftForm
from planning.drafting.errors import DraftError
from planning.drafting.figure import Figure
from planning.drafting.library import KINDS, drafted, figure_for, parts_for, seams_for
from planning.drafts import add_size, parts_json, seams_json
from planning.models import Pattern
from planning.views.patterns import PICTURE_MM
from shared.errors import OutlineError
from shared.middleware import WorkshopRequest
from shared.models import Workshop


def draft(request: WorkshopRequest) -> HttpResponse:
    """A built-in pattern at the maker's own heights, seen before it is made."""
    form = DraftForm(
        request.POST or None,
        units=request.units,
        initial={"kind": request.GET.get("kind", "bear"), "heights": None},
    )
    if request.method == "POST" and form.is_valid():
        row = _drafted(form, request.workshop)
        if row is not None:
            messages.success(
                request, f"{row} is drawn. Look at its pieces before you plan with it."
            )
            return redirect(row)
    return render(
        request,
        "planning/draft.html",
        {
            "form": form,
            "looks": _looks(),
            "finished": _finished(*(str(form[name].value()) for name in ("kind", "pose", "face"))),
            "nav": "patterns",
        },
    )


@require_GET
def look(request: WorkshopRequest) -> HttpResponse:
    """The finished thing alone, from the front and from the side, as it is chosen so far."""
    chosen = (request.GET.get(name, "") for name in ("kind", "pose", "face"))
    return render(request, "planning/draft.html#finished", {"finished": _finished(*chosen)})


def _finished(key: str, pose: str, face: str) -> list[Figure]:
    kind = KINDS.get(key, KINDS["bear"])
    looks = {
        "pose": pose if pose in kind.poses else kind.poses[0],
        "face": face if face in kind.faces else kind.faces[0],
    }
    return [
        figure_for(kind.key, PICTURE_MM, "front", **looks),
        figure_for(kind.key, PICTURE_MM, "side", **looks),
    ]


def _looks() -> list[tuple[str, str, str, Any]]:
    return [
        (key, kind.name, kind.description, figure_for(key, PICTURE_MM))
        for key, kind in KINDS.items()
    ]


def _drafted(form: DraftForm, workshop: Workshop) -> Pattern | None:
    data = form.cleaned_data
    kind, looks = KINDS[data["kind"]], {"pose": data["pose"], "face": data["face"]}
    try:
        sizes = [
            drafted(data["kind"], height, seam_allowance_mm=data["seam_allowance"], **looks)
            for height in data["heights"]
        ]
    except (DraftError, OutlineError) as error:
        form.add_error(None, str(error))
        return None
    with transaction.atomic():
        row = Pattern.objects.create(
            workshop=workshop,
            name=f"{kind.name}, own sizes",
            kind=data["kind"],
            description=kind.description,
            source="Drafted here",
            licence="Yours to sew, give and sell",
            seam_allowance_mm=data["seam_allowance"],
            seams=seams_json(seams_for(data["kind"], **looks)),
            parts=parts_json(parts_for(data["kind"], **looks)),
            **looks,
        )
        for size in sizes:
            add_size(row, size)
    return row
