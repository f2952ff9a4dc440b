from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST

from inventory.choices import Recommendation
from inventory.cloth import measure_again
from inventory.forms.overrides import OverrideForm
from inventory.models import AdviceOverride
from inventory.reading import words_of
from inventory.views.rows import garment_for, override_for
from shared.middleware import WorkshopRequest


def add_override(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    part = request.GET.get("part", "")
    standing = next(
        (own for own in row.overrides.all() if own.part == part and not own.withdrawn_at), None
    )
    first = {"part": part if part in Recommendation.values else ""}
    if standing:
        first |= {"text": standing.text, "reason": standing.reason}
    form = OverrideForm(request.POST or None, garment=row, member=request.member, initial=first)
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, "Your words stand. The table’s are still shown beside them.")
        return redirect("inventory:advice", row.pk)
    words = words_of(row)
    table = next((each for each in words["rows"] if each.key == part), None)
    return render(
        request,
        "inventory/override_form.html",
        {"form": form, "garment": row, "table": table, **words, "nav": "garments"},
    )


@require_POST
def withdraw_override(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = override_for(request.workshop, pk)
    AdviceOverride.objects.of(request.workshop).filter(pk=row.pk).withdraw(request.member)
    if row.part == Recommendation.WASH:
        measure_again(row.garment)
    messages.success(request, "Withdrawn. The table’s words count again; yours stay in the record.")
    return redirect("inventory:advice", row.garment_id)
