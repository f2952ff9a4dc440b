"""Patterns as rows: sizes, pieces, and a file that waits to become one.

Lines are lists of [x, y] in millimetres in the piece's own frame, y upwards. What a row means as
geometry is said by ``planning.drafts``; nothing here measures.
"""

import secrets
from pathlib import PurePosixPath
from typing import Any, Self

from django.db import models
from django.db.models import Q
from django.urls import reverse

from inventory.models import within
from shared.models import WorkshopQuerySet, WorkshopRecord

type Line = list[list[float]]


def picture_path(pattern: "Pattern", filename: str) -> str:
    """A name that says nothing about the picture and cannot be guessed."""
    folder = PurePosixPath(str(pattern.workshop_id), "patterns")
    return str(folder / f"{secrets.token_hex(12)}.jpg")


class PatternQuerySet(WorkshopQuerySet["Pattern"]):
    def current(self) -> Self:
        """Leave out what was put away and what a later version has replaced."""
        return self.filter(archived_at=None, later=None)


class Pattern(WorkshopRecord):
    """A maker's pattern or a built-in one.

    Once a keepsake is planned with it, it stays as it is; a change makes a new version of it.
    """

    name = models.CharField(max_length=80)
    built_in = models.CharField(max_length=40, blank=True, editable=False)
    kind = models.CharField(max_length=20, blank=True, editable=False)
    pose = models.CharField(max_length=12, blank=True, editable=False)
    face = models.CharField(max_length=12, blank=True, editable=False)
    description = models.TextField("Notes", blank=True, max_length=2000)
    source = models.CharField("Where it comes from", max_length=200, blank=True)
    licence = models.CharField("What its licence allows you", max_length=200, blank=True)
    picture = models.ImageField(upload_to=picture_path, blank=True)
    seam_allowance_mm = models.FloatField(default=6)
    seams: models.JSONField[list[dict[str, Any]]] = models.JSONField(default=list)
    parts: models.JSONField[list[dict[str, Any]]] = models.JSONField(default=list)
    version = models.PositiveSmallIntegerField(default=1, editable=False)
    earlier = models.OneToOneField(
        "self", models.SET_NULL, null=True, related_name="later", editable=False
    )
    archived_at = models.DateTimeField(null=True, editable=False)

    objects = PatternQuerySet.as_manager()  # type: ignore[misc]  # a narrower manager than the base's

    class Meta:
        ordering = ["name", "-version", "pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["workshop", "built_in"],
                condition=~Q(built_in=""),
                name="built_in_pattern_once",
            ),
            models.CheckConstraint(
                condition=within("seam_allowance_mm", 0, 50), name="pattern_allowance"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.name}, version {self.version}" if self.version > 1 else self.name

    def get_absolute_url(self) -> str:
        return reverse("planning:pattern", args=[self.pk])

    @property
    def is_settled(self) -> bool:
        """Whether it stays as it is: it came with the program, or a keepsake is planned with it."""
        return bool(self.built_in) or self.keepsakes.exists()


class PatternSize(WorkshopRecord):
    pattern = models.ForeignKey(Pattern, models.CASCADE, related_name="sizes")
    height_mm = models.FloatField("Finished height")
    graded_from = models.ForeignKey(
        "self", models.SET_NULL, null=True, related_name="+", editable=False
    )
    width_mm = models.FloatField(null=True, editable=False)
    notes: models.JSONField[list[str]] = models.JSONField(default=list, editable=False)

    class Meta:
        ordering = ["height_mm"]
        constraints = [
            models.UniqueConstraint(fields=["pattern", "height_mm"], name="size_once_a_pattern"),
            models.CheckConstraint(condition=within("height_mm", 30, 2000), name="size_height"),
        ]

    def __str__(self) -> str:
        return f"{self.pattern} {self.height_mm:g} mm"

    def get_absolute_url(self) -> str:
        return reverse("planning:size", args=[self.pk])


class PatternPiece(WorkshopRecord):
    """One piece of one size.

    ``entry`` is what the maker typed or tapped, for her to change it; the lines follow from it.
    ``edges`` name stretches of the seam line by the numbers of its corners.
    """

    size = models.ForeignKey(PatternSize, models.CASCADE, related_name="pieces")
    name = models.CharField(max_length=60)
    position = models.PositiveSmallIntegerField()
    count = models.PositiveSmallIntegerField()
    mirrored = models.PositiveSmallIntegerField(default=0)
    cut_line_mm: models.JSONField[Line] = models.JSONField()
    seam_line_mm: models.JSONField[Line] = models.JSONField()
    notches: models.JSONField[list[dict[str, Any]]] = models.JSONField(default=list)
    marks: models.JSONField[list[dict[str, Any]]] = models.JSONField(default=list)
    lines: models.JSONField[list[dict[str, Any]]] = models.JSONField(default=list)
    edges: models.JSONField[list[dict[str, Any]]] = models.JSONField(default=list)
    opening = models.CharField(max_length=80, blank=True)
    entry: models.JSONField[dict[str, Any] | None] = models.JSONField(null=True)
    grain_deg = models.FloatField(default=90)
    is_bias = models.BooleanField("Cut on the bias", default=False)
    same_hand = models.BooleanField("All copies are meant to face the same way", default=False)
    asks_stretch_pct = models.FloatField(default=0)
    part = models.CharField("Stuffed part it becomes", max_length=40, blank=True)
    note = models.CharField(max_length=200, blank=True)

    class Meta:
        ordering = ["position"]
        constraints = [
            models.UniqueConstraint(fields=["size", "name"], name="piece_once_a_size"),
            models.CheckConstraint(condition=Q(count__gte=1), name="piece_is_cut"),
            models.CheckConstraint(
                condition=Q(mirrored__lte=models.F("count")), name="piece_mirrored_within_count"
            ),
            models.CheckConstraint(
                condition=within("asks_stretch_pct", 0, 200), name="piece_asks_stretch"
            ),
        ]

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("planning:piece", args=[self.pk])

    @property
    def count_as_drawn(self) -> int:
        return self.count - self.mirrored


class TakenOut(WorkshopRecord):
    """A piece, a seam or a size that was taken out of a pattern, whole, so that it can be put back.

    ``kept`` is what ``planning.taking_out`` needs for that. A piece belongs to a ``size``.
    """

    class Kind(models.TextChoices):
        PIECE = "piece", "piece"
        SEAM = "seam", "seam"
        SIZE = "size", "size"

    pattern = models.ForeignKey(Pattern, models.CASCADE, related_name="taken_out")
    size = models.ForeignKey(PatternSize, models.CASCADE, null=True, related_name="taken_out")
    kind = models.CharField(max_length=8, choices=Kind)
    name = models.CharField(max_length=80)
    kept: models.JSONField[dict[str, Any]] = models.JSONField()

    class Meta:
        ordering = ["-pk"]
        constraints = [
            models.CheckConstraint(
                condition=Q(kind__in=["piece", "seam", "size"]), name="taken_out_kind"
            ),
        ]

    def __str__(self) -> str:
        return self.name


class PatternFile(WorkshopRecord):
    """A file that was read but not yet taken in: nothing of it is a pattern until she says so."""

    name = models.CharField(max_length=120)
    found: models.JSONField[dict[str, Any]] = models.JSONField()

    class Meta:
        ordering = ["-pk"]

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("planning:pattern-file", args=[self.pk])
