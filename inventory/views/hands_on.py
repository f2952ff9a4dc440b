from dataclasses import replace

from django.http import HttpResponse, QueryDict
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET

from inventory.advice.advise import advise
from inventory.advice.changes import changes_between
from inventory.advice.cloth import Cloth
from inventory.advice.grades import FRAGILITY_TEST, FRAY_TEST, stretch_class, weight_class
from inventory.cloth import cloth_of, mass_of
from inventory.forms.hands_on import FOUND, BeforeForm, HandsOnForm
from inventory.models import Garment
from inventory.reading import PARTS, words_of
from inventory.views.rows import garment_for
from shared.middleware import WorkshopRequest


def hands_on(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    mass_before = mass_of(row)
    form = HandsOnForm(request.POST or None, garment=row, units=request.units)
    if request.method == "POST" and form.is_valid():
        before = form.save()
        if "mass_g_m2" in before:
            before["mass_g_m2"] = mass_before
        return redirect(_changed_address(row, before))
    return render(
        request,
        "inventory/hands_on.html",
        {
            "form": form,
            "garment": row,
            "fragility_test": FRAGILITY_TEST,
            "fray_test": FRAY_TEST,
            **words_of(row),
            "nav": "garments",
        },
    )


def _changed_address(garment: Garment, before: dict[str, float | None]) -> str:
    asked = QueryDict(mutable=True)
    for name, value in before.items():
        asked[name] = "" if value is None else f"{value:g}"
    return reverse("inventory:tested", args=[garment.pk]) + f"?{asked.urlencode()}"


@require_GET
def tested(request: WorkshopRequest, pk: int) -> HttpResponse:
    """What the tests changed: the advice as it was, and as it is now."""
    row = garment_for(request.workshop, pk)
    form = BeforeForm(request.GET)
    if not form.is_valid():
        return redirect("inventory:hands-on", row.pk)
    now = cloth_of(row)
    was = _as_it_was(now, form)
    return render(
        request,
        "inventory/tested.html",
        {
            "garment": row,
            "facts": _facts(was, now),
            "changes": changes_between(advise(was), advise(now)),
            "names": {key: name for name, key in PARTS} | {"order": "Order of work"},
            "conflicts": words_of(row)["conflicts"],
            "nav": "garments",
        },
    )


def _as_it_was(now: Cloth, form: BeforeForm) -> Cloth:
    given = {name: form.cleaned_data[name] for name in FOUND if name in form.data}
    unseen = {"bled"} if "bled" in form.data else frozenset()
    return replace(now, conditions=now.conditions - unseen, **given)


def _facts(was: Cloth, now: Cloth) -> list[tuple[str, str, str]]:
    """What was found, each as it was and as it is, in words."""
    facts = [
        ("Fragility", _grade(was.fragility), _grade(now.fragility)),
        ("Fraying", _grade(was.fray), _grade(now.fray)),
        ("Stretch across", _stretch(was.stretch_across_pct), _stretch(now.stretch_across_pct)),
        ("Stretch along", _stretch(was.stretch_along_pct), _stretch(now.stretch_along_pct)),
        ("Weight", _mass(was.mass_g_m2), _mass(now.mass_g_m2)),
        ("Colour", _colour(was), _colour(now)),
    ]
    return [fact for fact in facts if fact[1] != fact[2]]


def _grade(grade: int | None) -> str:
    return "not tried" if grade is None else f"{grade} of 4"


def _stretch(pct: float | None) -> str:
    return "not tried" if pct is None else f"{pct:g} %, {stretch_class(pct).label.lower()}"


def _mass(mass_g_m2: float | None) -> str:
    if mass_g_m2 is None:
        return "not known"
    return f"{mass_g_m2:.0f} g/m², {weight_class(mass_g_m2).label.lower()}"


def _colour(cloth: Cloth) -> str:
    return "it runs" if "bled" in cloth.conditions else "not known to run"
