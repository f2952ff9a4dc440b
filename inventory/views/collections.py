from collections import defaultdict
from dataclasses import dataclass, field

from django.contrib import messages
from django.db import transaction
from django.db.models import Count, Prefetch, Q
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.fibres import FIBRES
from inventory.cloth import make_up_of, measure_again
from inventory.forms.collections import CollectionForm
from inventory.models import Collection, Garment, Photo
from inventory.views.rows import collection_for
from shared.middleware import WorkshopRequest


def collections(request: WorkshopRequest) -> HttpResponse:
    rows = Collection.objects.of(request.workshop).annotate(
        garment_count=Count("garments", filter=Q(garments__removed_at=None))
    )
    rows = rows.prefetch_related(
        Prefetch(
            "garments", queryset=Garment.objects.filter(removed_at=None).prefetch_related("photos")
        )
    )
    shown = [(row, _pictures(row)) for row in rows]
    return render(
        request, "inventory/collections.html", {"collections": shown, "nav": "collections"}
    )


def _pictures(row: Collection) -> list[Photo]:
    """The first picture of each of the first three garments that have one."""
    photos = (list(garment.photos.all()) for garment in row.garments.all())
    return [found[0] for found in photos if found][:3]


def edit_collection(request: WorkshopRequest, pk: int | None = None) -> HttpResponse:
    row = collection_for(request.workshop, pk) if pk else Collection(workshop=request.workshop)
    form = CollectionForm(request.POST or None, instance=row)
    if request.method == "POST" and form.is_valid():
        with transaction.atomic():
            form.save()
            if {"wash_consent", "keeps_scent"} & {*form.changed_data}:
                for garment in row.garments.all():
                    measure_again(garment)
        messages.success(request, "Saved.")
        return redirect(row)
    return render(
        request,
        "shared/form_page.html",
        {
            "form": form,
            "heading": "What the giver allows" if pk else "A new collection",
            "back": row.get_absolute_url() if pk else reverse("inventory:collections"),
            "nav": "collections",
        },
    )


@dataclass
class Heap:
    """Garments of one fibre and one make, and the cloth they yield together."""

    fibre: str
    cloth: str
    garments: int = 0
    usable_mm2: float = 0.0


@dataclass
class Glance:
    """A collection at a glance."""

    heaps: list[Heap] = field(default_factory=list)
    usable_mm2: float = 0.0
    unmeasured: list[Garment] = field(default_factory=list)
    not_washed: list[tuple[Garment, str]] = field(default_factory=list)


def glance_at(garments: list[Garment]) -> Glance:
    heaps: dict[tuple[str, str], Heap] = defaultdict(lambda: Heap("", ""))
    glance = Glance()
    for garment in garments:
        shares = garment.shell_shares
        fibre = " and ".join(FIBRES[s.fibre].label for s in shares[:2]) or "Fibre not known"
        make = CONSTRUCTIONS.get(garment.construction)
        cloth = make.label.partition(" (")[0] if make else "Make not known"
        heap = heaps[fibre, cloth]
        heap.fibre, heap.cloth = fibre, cloth
        heap.garments += 1
        heap.usable_mm2 += garment.usable_mm2
        glance.usable_mm2 += garment.usable_mm2
        if not garment.panel_count:
            glance.unmeasured.append(garment)
        wash = make_up_of(garment).wash
        if wash.method == "none":
            glance.not_washed.append((garment, wash.because[0] if wash.because else wash.text))
    glance.heaps = sorted(heaps.values(), key=lambda heap: -heap.usable_mm2)
    return glance


def collection(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = collection_for(request.workshop, pk)
    garments = list(_garments_of(row))
    return render(
        request,
        "inventory/collection.html",
        {
            "collection": row,
            "garments": garments,
            "glance": glance_at(garments),
            "nav": "collections",
        },
    )


def tags(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Paper tags to print, cut apart and pin on the real things."""
    row = collection_for(request.workshop, pk)
    garments = _garments_of(row)
    return render(request, "inventory/tags.html", {"collection": row, "garments": garments})


def _garments_of(row: Collection) -> list[Garment]:
    rows = Garment.objects.of(row.workshop).here().filter(collection=row).with_usable_area()
    small = Photo.objects.order_by("pk")
    found = rows.select_related("collection").prefetch_related(
        "fibre_shares", Prefetch("photos", queryset=small)
    )
    return list(found)
