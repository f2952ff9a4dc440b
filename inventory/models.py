"""What the cloth is: collections, garments, their panels and pictures.

Rows only. What happens to a garment day by day is in ``inventory.ledger``, what it needs is worked
out in ``inventory.advice``, what a panel yields in ``inventory.measuring``; ``inventory.cloth``
carries rows across. Outlines are lists of [x, y] in millimetres, in the panel's own frame.
"""

import secrets
from datetime import date
from pathlib import PurePosixPath
from typing import Any, Self

from django.db import models
from django.db.models import Q
from django.db.models.functions import Coalesce
from django.urls import reverse

from inventory.choices import (
    TAG_ALPHABET,
    TAG_LENGTH,
    ClothPart,
    Colour,
    Consent,
    DetailKind,
    FlawKind,
    Kind,
    LabelEdition,
    PanelShape,
    Status,
    Surface,
    Trouble,
)
from inventory.constraints import one_of as one_of
from inventory.constraints import within as within
from inventory.ledger import AdviceOverride as AdviceOverride
from inventory.ledger import ConditionNote as ConditionNote
from inventory.ledger import StatusChange as StatusChange
from inventory.ledger import WashEvent as WashEvent
from shared.models import WorkshopQuerySet, WorkshopRecord


class Collection(WorkshopRecord):
    """The garments one giver handed over together, and what the giver allows."""

    name = models.CharField(max_length=80)
    giver = models.CharField(max_length=80, blank=True)
    received_on = models.DateField(default=date.today)
    cut_consent = models.CharField(
        "May it be cut?", max_length=3, choices=Consent, default=Consent.ASK
    )
    wash_consent = models.CharField(
        "May it be washed?", max_length=3, choices=Consent, default=Consent.ASK
    )
    keeps_scent = models.BooleanField("The scent is to be kept", default=False)
    returns_scraps = models.BooleanField("Scraps go back to the giver", default=False)
    notes = models.TextField(blank=True, max_length=4000)

    class Meta:
        ordering = ["-received_on", "-pk"]
        constraints = [
            models.CheckConstraint(
                condition=one_of("cut_consent", Consent), name="collection_cut_known"
            ),
            models.CheckConstraint(
                condition=one_of("wash_consent", Consent), name="collection_wash_known"
            ),
        ]

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("inventory:collection", args=[self.pk])

    @property
    def may_wash(self) -> bool | None:
        """True, False, or None while the giver has not been asked."""
        return {Consent.YES: True, Consent.NO: False}.get(Consent(self.wash_consent))


class GarmentQuerySet(WorkshopQuerySet["Garment"]):
    def here(self) -> Self:
        """Leave out garments that were taken off the list."""
        return self.filter(removed_at=None)

    def with_cloth(self) -> Self:
        """Bring along whatever ``inventory.cloth`` reads of a garment, in a fixed few queries."""
        rows = self.select_related("collection")
        return rows.prefetch_related("fibre_shares", "wash_events", "overrides")

    def with_usable_area(self) -> Self:
        """Add ``usable_mm2``: what the panels on the list yield together, 0 where none is."""
        panels = Panel.objects.filter(garment=models.OuterRef("pk"), removed_at=None)
        by_garment = panels.order_by().values("garment")
        total = by_garment.annotate(total=models.Sum("usable_area_mm2")).values("total")
        count = by_garment.annotate(count=models.Count("pk")).values("count")
        return self.annotate(
            usable_mm2=Coalesce(models.Subquery(total), 0.0),
            panel_count=Coalesce(models.Subquery(count), 0),
        )

    def unmeasured(self) -> Self:
        """Keep garments of which no panel is measured."""
        panels = Panel.objects.filter(garment=models.OuterRef("pk"), removed_at=None)
        return self.filter(~models.Exists(panels))


def new_tag() -> str:
    return "".join(secrets.choice(TAG_ALPHABET) for _ in range(TAG_LENGTH))


class Garment(WorkshopRecord):
    """One donated item. Whatever is not known yet stays empty and is said to be missing."""

    collection = models.ForeignKey(Collection, models.PROTECT, related_name="garments")
    tag = models.CharField("Tag code", max_length=TAG_LENGTH, default=new_tag, editable=False)
    kind = models.CharField("What is it?", max_length=20, choices=Kind)
    name = models.CharField("Name or description", max_length=80, blank=True)
    colour = models.CharField(max_length=10, choices=Colour, blank=True)
    status = models.CharField(
        "Where it is on the bench", max_length=10, choices=Status, default=Status.ARRIVED
    )
    notes = models.TextField(blank=True, max_length=4000)

    has_no_label = models.BooleanField("No fibre label", default=False)
    construction = models.CharField("How the cloth is made", max_length=20, blank=True)
    mass_g_m2 = models.FloatField("Weight in g/m²", null=True, blank=True)
    hand_feel = models.CharField("Weight by hand", max_length=10, blank=True)
    stretch_along_pct = models.FloatField("Stretch along", null=True, blank=True)
    stretch_across_pct = models.FloatField("Stretch across", null=True, blank=True)
    fragility = models.PositiveSmallIntegerField(null=True, blank=True)
    fray = models.PositiveSmallIntegerField("Fraying", null=True, blank=True)
    is_one_way = models.BooleanField("One-way: pile, print or stripe has an up", default=False)
    surface = models.CharField("Surface", max_length=14, choices=Surface, default=Surface.PLAIN)
    repeat_along_mm = models.FloatField("Repeat along", null=True, blank=True)
    repeat_across_mm = models.FloatField("Repeat across", null=True, blank=True)
    lining_construction = models.CharField("How the lining is made", max_length=20, blank=True)
    trim_construction = models.CharField("How the trim is made", max_length=20, blank=True)
    label_marks = models.JSONField("Care label", default=dict, blank=True)
    label_edition = models.PositiveSmallIntegerField(
        "Edition of the label", choices=LabelEdition, null=True, blank=True
    )
    troubles = models.JSONField("Troubles", default=list, blank=True)
    removed_at = models.DateTimeField(null=True, editable=False)

    usable_mm2: float  # these two are there only after with_usable_area()
    panel_count: int

    objects = GarmentQuerySet.as_manager()  # type: ignore[misc]  # a narrower manager than the base's

    class Meta:
        ordering = ["-pk"]
        indexes = [
            models.Index(fields=["workshop", "removed_at", "-id"], name="garment_newest"),
        ]
        constraints = [
            models.UniqueConstraint(fields=["workshop", "tag"], name="garment_tag_once"),
            models.CheckConstraint(condition=one_of("kind", Kind), name="garment_kind_known"),
            models.CheckConstraint(condition=one_of("status", Status), name="garment_status_known"),
            models.CheckConstraint(
                condition=one_of("colour", Colour, blank=True), name="garment_colour_known"
            ),
            models.CheckConstraint(
                condition=one_of("surface", Surface), name="garment_surface_known"
            ),
            models.CheckConstraint(condition=within("mass_g_m2", 5, 3000), name="garment_mass"),
            models.CheckConstraint(
                condition=within("stretch_along_pct", 0, 300), name="garment_stretch_along"
            ),
            models.CheckConstraint(
                condition=within("stretch_across_pct", 0, 300), name="garment_stretch_across"
            ),
            models.CheckConstraint(condition=within("fragility", 0, 4), name="garment_fragility"),
            models.CheckConstraint(condition=within("fray", 0, 4), name="garment_fray"),
            models.CheckConstraint(
                condition=Q(label_edition=None) | one_of("label_edition", LabelEdition),
                name="garment_edition_known",
            ),
            models.CheckConstraint(
                condition=within("repeat_along_mm", 1, 2000), name="garment_repeat_along"
            ),
            models.CheckConstraint(
                condition=within("repeat_across_mm", 1, 2000), name="garment_repeat_across"
            ),
        ]

    def __str__(self) -> str:
        return self.name or self.get_kind_display()

    def get_absolute_url(self) -> str:
        return reverse("inventory:garment", args=[self.pk])

    @property
    def shell_shares(self) -> list["FibreShare"]:
        return [share for share in self.fibre_shares.all() if share.part == ClothPart.SHELL]

    @property
    def fibre_words(self) -> str:
        """The fibres of every cloth, the shell's first; empty where none is known."""
        by_part = {
            part: ", ".join(
                f"{share.percent:g} % {share.fibre}"
                for share in self.fibre_shares.all()
                if share.part == part
            )
            for part in ClothPart
        }
        return "; ".join(
            words if part == ClothPart.SHELL else f"{part} {words}"
            for part, words in by_part.items()
            if words
        )

    @property
    def trouble_words(self) -> list[str]:
        return [Trouble(trouble).label for trouble in self.troubles]


class FibreShare(WorkshopRecord):
    """So many percent of one fibre in one of a garment's cloths.

    The shares of a cloth are saved together or not at all.
    """

    garment = models.ForeignKey(Garment, models.CASCADE, related_name="fibre_shares")
    part = models.CharField(max_length=6, choices=ClothPart, default=ClothPart.SHELL)
    fibre = models.CharField(max_length=30)
    percent = models.FloatField()

    class Meta:
        ordering = ["-percent", "fibre"]
        constraints = [
            models.UniqueConstraint(
                fields=["garment", "part", "fibre"], name="fibre_once_a_garment_part"
            ),
            models.CheckConstraint(condition=one_of("part", ClothPart), name="fibre_part_known"),
            models.CheckConstraint(
                condition=Q(percent__gt=0, percent__lte=100), name="fibre_percent"
            ),
        ]

    def __str__(self) -> str:
        words = f"{self.percent:g} % {self.fibre}"
        return words if self.part == ClothPart.SHELL else f"{words} ({self.part})"


class PanelQuerySet(WorkshopQuerySet["Panel"]):
    def here(self) -> Self:
        """Leave out panels that were taken off, and those of garments that were."""
        return self.filter(removed_at=None, garment__removed_at=None)


class Panel(WorkshopRecord):
    """One flat part of a garment once its seams are opened."""

    garment = models.ForeignKey(Garment, models.CASCADE, related_name="panels")
    name = models.CharField("Which part", max_length=60)
    shape = models.CharField(max_length=12, choices=PanelShape)
    measures_mm: models.JSONField[dict[str, Any]] = models.JSONField(default=dict)
    outline_mm: models.JSONField[list[list[float]]] = models.JSONField()
    part = models.CharField(
        "Cut from the", max_length=6, choices=ClothPart, default=ClothPart.SHELL
    )
    grain_deg = models.FloatField("Grain direction", default=90)
    repeat_x_mm = models.FloatField("A stripe starts at, across", null=True, blank=True)
    repeat_y_mm = models.FloatField("A stripe starts at, up", null=True, blank=True)
    measured_on = models.DateField(default=date.today, editable=False)
    is_measured_after_wash = models.BooleanField("Measured after washing", default=False)
    area_mm2 = models.FloatField(editable=False)
    usable_area_mm2 = models.FloatField(editable=False)
    removed_at = models.DateTimeField(null=True, editable=False)

    objects = PanelQuerySet.as_manager()  # type: ignore[misc]  # a narrower manager than the base's

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.CheckConstraint(condition=one_of("shape", PanelShape), name="panel_shape_known"),
            models.CheckConstraint(condition=one_of("part", ClothPart), name="panel_part_known"),
            models.CheckConstraint(condition=Q(area_mm2__gt=0), name="panel_has_area"),
            models.CheckConstraint(
                condition=Q(usable_area_mm2__gte=0), name="panel_usable_not_negative"
            ),
            models.CheckConstraint(
                condition=Q(grain_deg__gte=0, grain_deg__lt=360), name="panel_grain"
            ),
        ]

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("inventory:panel", args=[self.pk])


class PanelArea(WorkshopRecord):
    """A place on a panel: a circle (one point and a radius) or a polygon (three points or more)."""

    points_mm: models.JSONField[list[list[float]]] = models.JSONField()
    radius_mm = models.FloatField(null=True, blank=True)
    note = models.CharField(max_length=80, blank=True)

    class Meta:
        abstract = True
        ordering = ["pk"]
        constraints = [
            models.CheckConstraint(
                condition=within("radius_mm", 0.1, 5000), name="%(class)s_radius"
            )
        ]


class Flaw(PanelArea):
    """A place on a panel that cannot be used."""

    panel = models.ForeignKey(Panel, models.CASCADE, related_name="flaws")
    kind = models.CharField(max_length=10, choices=FlawKind)

    class Meta(PanelArea.Meta):
        constraints = [
            *PanelArea.Meta.constraints,
            models.CheckConstraint(condition=one_of("kind", FlawKind), name="flaw_kind_known"),
        ]

    def __str__(self) -> str:
        return self.note or self.get_kind_display()


class Detail(PanelArea):
    """Something worth showing, with its place on the panel."""

    panel = models.ForeignKey(Panel, models.CASCADE, related_name="details")
    kind = models.CharField(max_length=10, choices=DetailKind)
    is_kept_aside = models.BooleanField("Keep this place out of the pieces", default=True)

    class Meta(PanelArea.Meta):
        constraints = [
            *PanelArea.Meta.constraints,
            models.CheckConstraint(condition=one_of("kind", DetailKind), name="detail_kind_known"),
        ]

    def __str__(self) -> str:
        return self.note or self.get_kind_display()


def photo_path(photo: "Photo", filename: str) -> str:
    """A name that says nothing about the picture and cannot be guessed."""
    suffix = "-small.jpg" if filename.startswith("small") else ".jpg"
    folder = PurePosixPath(str(photo.workshop_id), photo.garment.tag)
    return str(folder / f"{secrets.token_hex(12)}{suffix}")


class Photo(WorkshopRecord):
    garment = models.ForeignKey(Garment, models.CASCADE, related_name="photos")
    note = models.ForeignKey(
        ConditionNote, models.CASCADE, related_name="photos", null=True, editable=False
    )
    image = models.ImageField(
        upload_to=photo_path, width_field="width_px", height_field="height_px"
    )
    small = models.ImageField(upload_to=photo_path)
    width_px = models.PositiveIntegerField(editable=False)
    height_px = models.PositiveIntegerField(editable=False)
    description = models.CharField(
        "What the picture shows", max_length=160, blank=True
    )  # the alternative text

    class Meta:
        ordering = ["pk"]

    def __str__(self) -> str:
        return self.description or f"Photograph of {self.garment}"
