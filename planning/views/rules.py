from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render

from planning.problems import cloth_of
from planning.rule_sheet import RuleSheet
from planning.sizes import sizes_of
from planning.views.rows import keepsake_for
from shared.middleware import WorkshopRequest


def edit_rules(request: WorkshopRequest, pk: int) -> HttpResponse:
    """The rules of the cutting table. A button that asks for one more row saves nothing."""
    row = keepsake_for(request.workshop, pk)
    sheet = RuleSheet(row, request.units, request.POST if request.method == "POST" else None)
    if request.method == "POST":
        wish = request.POST.get("do", "save")
        if wish != "save":
            sheet = sheet.asking_for(wish)
        elif sheet.is_valid():
            sheet.save()
            messages.success(request, _saved(request, pk))
            return redirect(row)
    return render(
        request, "planning/rules.html", {"sheet": sheet, "keepsake": row, "nav": "keepsakes"}
    )


def _saved(request: WorkshopRequest, pk: int) -> str:
    fresh = keepsake_for(request.workshop, pk)
    if sizes_of(fresh, cloth_of(fresh)).is_out_of_date:
        return "Saved. Check the sizes again: the rules have changed."
    return "Saved."
