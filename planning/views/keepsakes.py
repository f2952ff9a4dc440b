from django.contrib import messages
from django.db.models import Prefetch
from django.http import HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from inventory.choices import Consent
from inventory.models import Garment
from planning import checking
from planning.forms import KeepsakeForm, age_words
from planning.lay_rules import ROWS
from planning.models import Keepsake, Pattern, PatternSize, SizeCheck
from planning.pattern_checks import flawed_sizes, hand_faults_of, stiff_garments
from planning.problems import cloth_of, nothing_to_cut
from planning.safety.cautions import cautions_for
from planning.safety.tools import TOOL_CAUTIONS
from planning.sizes import remarks_on, sizes_of
from planning.views.patterns import figure_of
from planning.views.rows import keepsake_for
from shared.middleware import WorkshopRequest

STOP_POLLING = 286  # htmx takes this answer as the last one


@require_GET
def keepsakes(request: WorkshopRequest) -> HttpResponse:
    checks = SizeCheck.objects.select_related("size")
    rows = (
        Keepsake.objects.of(request.workshop)
        .here()
        .select_related("collection", "pattern", "chosen_size", "workshop")
        .prefetch_related(*ROWS, Prefetch("checks", queryset=checks))
    )
    shown = [(row, sizes_of(row, cloth_of(row)), figure_of(row.pattern)) for row in rows]
    return render(
        request,
        "planning/keepsakes.html",
        {"keepsakes": shown, "nav": "keepsakes"},
    )


def edit_keepsake(request: WorkshopRequest, pk: int | None = None) -> HttpResponse:
    row = keepsake_for(request.workshop, pk) if pk else Keepsake(workshop=request.workshop)
    form = KeepsakeForm(
        request.POST or None,
        instance=row,
        workshop=request.workshop,
        initial={} if pk else {name: request.GET.get(name) for name in ("collection", "pattern")},
    )
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, "Saved.")
        return redirect(row)
    back = row.get_absolute_url() if pk else reverse("planning:keepsakes")
    heading = f"Change {row}" if pk else "Plan a keepsake"
    return render(
        request,
        "shared/form_page.html",
        {"form": form, "heading": heading, "back": back, "nav": "keepsakes"},
    )


@require_GET
def keepsake(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = keepsake_for(request.workshop, pk)
    cloth = cloth_of(row)
    found = sizes_of(row, cloth)
    garments = Garment.objects.of(request.workshop).here().filter(collection=row.collection)
    return render(
        request,
        "planning/keepsake.html",
        {
            "keepsake": row,
            "sizes": found,
            "cloth": cloth,
            "flawed_sizes": flawed_sizes(row.pattern),
            "stiff": stiff_garments(row.pattern, garments),
            "later": Pattern.objects.of(request.workshop).filter(earlier=row.pattern).first(),
            "nothing_to_cut": "" if cloth.panels else nothing_to_cut(row),
            "remarks": remarks_on(row, found, cloth),
            "cautions": cautions_for(row.recipient_age_months, row.kept_for),
            "tools": TOOL_CAUTIONS,
            "age_words": age_words(row.recipient_age_months),
            "unmeasured": garments.unmeasured(),
            "nav": "keepsakes",
        },
    )


@require_GET
def sizes(request: WorkshopRequest, pk: int) -> HttpResponse:
    """The table of sizes alone, asked for every second while checks run."""
    row = keepsake_for(request.workshop, pk)
    found = sizes_of(row, cloth_of(row))
    return render(
        request,
        "planning/keepsake.html#sizes",
        {"keepsake": row, "sizes": found},
        status=200 if found.is_busy else STOP_POLLING,
    )


@require_POST
def check_sizes(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = keepsake_for(request.workshop, pk)
    if not cloth_of(row).panels:
        messages.error(request, nothing_to_cut(row))
        return redirect(row)
    if faults := hand_faults_of(row.pattern):
        messages.error(request, f"{faults[0].text} Mend the pattern first.")
        return redirect(row.pattern)
    wanted = list(PatternSize.objects.of(request.workshop).filter(pattern=row.pattern))
    if one := request.POST.get("size"):
        wanted = [size for size in wanted if str(size.pk) == one]
    is_long = request.POST.get("budget") == "long"
    checking.ask(row, wanted, checking.LONG_BUDGET_S if is_long else checking.BUDGET_S)
    messages.success(request, "Being checked. You can leave this page and come back.")
    return redirect(row)


@require_POST
def stop_checks(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = keepsake_for(request.workshop, pk)
    checking.stop(row)
    messages.success(request, "Stopped. What was found before is kept.")
    return redirect(row)


@require_POST
def choose_size(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Settle on a size, which only a size that is covered today can be."""
    row = keepsake_for(request.workshop, pk)
    if row.collection.cut_consent == Consent.NO:
        messages.error(request, "The giver does not allow cutting, so no size can be chosen.")
        return redirect(row)
    size = get_object_or_404(
        PatternSize.objects.of(request.workshop).filter(pattern=row.pattern),
        pk=chosen if (chosen := request.POST.get("size", "")).isdecimal() else 0,
    )
    found = next(r for r in sizes_of(row, cloth_of(row)).rows if r.size.pk == size.pk)
    if not found.covers:
        messages.error(request, "Only a size that the cloth covers today can be chosen.")
        return redirect(row)
    row.chosen_size = size
    row.save(update_fields=["chosen_size"])
    messages.success(request, "This is the size to be made.")
    return redirect(row)


@require_POST
def remove_keepsake(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = keepsake_for(request.workshop, pk)
    row.removed_at = timezone.now()
    row.save(update_fields=["removed_at"])
    messages.success(request, f"{row} is off the list. Its page can put it back.")
    return redirect(row)


@require_POST
def put_back_keepsake(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = keepsake_for(request.workshop, pk)
    row.removed_at = None
    row.save(update_fields=["removed_at"])
    messages.success(request, f"{row} is back on the list.")
    return redirect(row)
