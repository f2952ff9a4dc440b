"""What is made of the cloth: patterns, keepsakes, size checks and the lays that prove them.

A size check's own row is the truth about its state, so that a killed worker loses nothing. A
verdict is one of three words; 'covers' is stored only beside a whole lay that was verified.
"""

from datetime import timedelta
from typing import Any, Literal, Self

from django.db import models
from django.db.models import Q
from django.urls import reverse

from inventory.models import Collection, Detail, Garment, Panel, within
from planning.pattern_models import Pattern, PatternFile, PatternPiece, PatternSize, TakenOut
from shared.models import WorkshopQuerySet, WorkshopRecord

__all__ = [
    "DetailPin",
    "Keepsake",
    "Lay",
    "LockedPiece",
    "Pattern",
    "PatternFile",
    "PatternPiece",
    "PatternSize",
    "PieceRule",
    "Placement",
    "SizeCheck",
    "StripeMatch",
    "TakenOut",
    "Together",
]

SILENT_AFTER = timedelta(seconds=30)  # a running check that says nothing for so long has died


class KeepsakeQuerySet(WorkshopQuerySet["Keepsake"]):
    def here(self) -> Self:
        return self.filter(removed_at=None)


class Keepsake(WorkshopRecord):
    """One thing to be made from a collection, for somebody."""

    class Purpose(models.TextChoices):
        TOY = "toy", "A toy, to be played or slept with"
        DISPLAY = "display", "For display"

    name = models.CharField(max_length=80)
    collection = models.ForeignKey(Collection, models.PROTECT, related_name="keepsakes")
    pattern = models.ForeignKey(Pattern, models.PROTECT, related_name="keepsakes")
    chosen_size = models.ForeignKey(
        PatternSize, models.PROTECT, null=True, blank=True, related_name="+"
    )
    recipient = models.CharField("Who is it for?", max_length=80, blank=True)
    recipient_age_months = models.PositiveSmallIntegerField(
        "Age of the youngest child it can reach, in months", null=True, blank=True
    )
    purpose = models.CharField(max_length=8, choices=Purpose, default=Purpose.TOY)
    notes = models.TextField(blank=True, max_length=4000)
    left_out = models.ManyToManyField(Garment, blank=True, related_name="+")
    clearance_mm = models.FloatField("Gap between pieces", default=2)
    edge_margin_mm = models.FloatField("Margin to the edges of a panel", default=5)
    flaw_margin_mm = models.FloatField("Margin round a flaw", default=3)
    grain_tolerance_deg = models.FloatField("Off the grain by at most", default=0)
    wants_few_garments = models.BooleanField("Cut as few garments as can be", default=True)
    wants_leftover = models.BooleanField("Leave the largest piece of cloth over", default=False)
    wants_same_cloth = models.BooleanField("Pieces of one kind from one garment", default=False)
    kept_whole = models.ManyToManyField(Garment, blank=True, related_name="+")
    removed_at = models.DateTimeField(null=True, editable=False)

    objects = KeepsakeQuerySet.as_manager()  # type: ignore[misc]  # a narrower manager than the base's

    class Meta:
        ordering = ["-created_at", "-pk"]
        constraints = [
            models.CheckConstraint(
                condition=Q(purpose__in=["toy", "display"]), name="keepsake_purpose_known"
            ),
            models.CheckConstraint(
                condition=within("recipient_age_months", 0, 1440), name="keepsake_age"
            ),
            models.CheckConstraint(
                condition=within("clearance_mm", 0, 50), name="keepsake_clearance"
            ),
            models.CheckConstraint(
                condition=within("edge_margin_mm", 0, 100), name="keepsake_edge_margin"
            ),
            models.CheckConstraint(
                condition=within("flaw_margin_mm", 0, 100), name="keepsake_flaw_margin"
            ),
            models.CheckConstraint(
                condition=within("grain_tolerance_deg", 0, 45), name="keepsake_grain_tolerance"
            ),
        ]

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("planning:keepsake", args=[self.pk])

    @property
    def kept_for(self) -> Literal["toy", "display"]:
        return "toy" if self.purpose == self.Purpose.TOY else "display"


class PieceRule(WorkshopRecord):
    """This piece may come from this garment. A piece without a rule may come from any."""

    keepsake = models.ForeignKey(Keepsake, models.CASCADE, related_name="piece_rules")
    piece_name = models.CharField(max_length=60)
    garment = models.ForeignKey(Garment, models.CASCADE, related_name="+")

    class Meta:
        ordering = ["piece_name", "pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["keepsake", "piece_name", "garment"], name="piece_rule_once"
            )
        ]

    def __str__(self) -> str:
        return f"{self.piece_name} from {self.garment}"


class Together(WorkshopRecord):
    """These pieces are all cut from one garment, whichever it is."""

    keepsake = models.ForeignKey(Keepsake, models.CASCADE, related_name="together")
    piece_names: models.JSONField[list[str]] = models.JSONField()

    class Meta:
        ordering = ["pk"]

    def __str__(self) -> str:
        return ", ".join(self.piece_names)


class DetailPin(WorkshopRecord):
    """A detail of the cloth that shall show on one copy of a piece, at a named place of it.

    ``spot`` names a mark, notch or edge of the piece; empty means its middle.
    """

    keepsake = models.ForeignKey(Keepsake, models.CASCADE, related_name="pins")
    detail = models.ForeignKey(Detail, models.PROTECT, related_name="pins")
    piece_name = models.CharField(max_length=60)
    copy = models.PositiveSmallIntegerField(default=0)
    spot = models.CharField(max_length=80, blank=True)
    within_mm = models.FloatField(default=5)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["keepsake", "piece_name", "copy"], name="pinned_once_a_copy"
            ),
            models.CheckConstraint(condition=within("within_mm", 0, 200), name="pin_within"),
        ]

    def __str__(self) -> str:
        return f"{self.detail} on {self.piece_name}"


class StripeMatch(WorkshopRecord):
    """Two places on copies of pieces where the stripe or check runs on across the seam."""

    class Direction(models.TextChoices):
        ALONG = "along", "Along the grain"
        ACROSS = "across", "Across the grain"
        BOTH = "both", "Both ways"

    keepsake = models.ForeignKey(Keepsake, models.CASCADE, related_name="matches")
    a_piece = models.CharField(max_length=60)
    a_copy = models.PositiveSmallIntegerField(default=0)
    a_spot = models.CharField(max_length=80, blank=True)
    b_piece = models.CharField(max_length=60)
    b_copy = models.PositiveSmallIntegerField(default=0)
    b_spot = models.CharField(max_length=80, blank=True)
    direction = models.CharField(max_length=6, choices=Direction, default=Direction.ALONG)
    within_mm = models.FloatField(default=3)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.CheckConstraint(
                condition=Q(direction__in=["along", "across", "both"]),
                name="match_direction_known",
            ),
            models.CheckConstraint(condition=within("within_mm", 0, 200), name="match_within"),
        ]

    def __str__(self) -> str:
        return f"{self.a_piece} meets {self.b_piece}"


class LockedPiece(WorkshopRecord):
    """One copy of one size that stays where the maker has put it."""

    keepsake = models.ForeignKey(Keepsake, models.CASCADE, related_name="locks")
    size = models.ForeignKey(PatternSize, models.CASCADE, related_name="+")
    panel = models.ForeignKey(Panel, models.CASCADE, related_name="locks")
    piece_name = models.CharField(max_length=60)
    copy = models.PositiveSmallIntegerField()
    rotation_deg = models.FloatField()
    x_mm = models.FloatField()
    y_mm = models.FloatField()

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["keepsake", "size", "piece_name", "copy"], name="locked_once_a_copy"
            )
        ]

    def __str__(self) -> str:
        return f"{self.piece_name} {self.copy + 1} on {self.panel}"


class SizeCheck(WorkshopRecord):
    """The state and outcome of checking one size for one keepsake."""

    class State(models.TextChoices):
        WAITING = "waiting", "Waiting its turn"
        RUNNING = "running", "Being checked"
        DONE = "done", "Checked"
        STOPPED = "stopped", "Stopped"

    class Outcome(models.TextChoices):
        COVERS = "covers", "Covers"
        CANNOT = "cannot", "Cannot"
        UNDECIDED = "undecided", "Undecided"

    class Task(models.TextChoices):
        VERDICT = "verdict", "The verdict"
        HELPS = "helps", "What would help"
        BETTER = "better", "A lay more to her wishes"
        EDGES = "edges", "A lay further from the edge, and how far"

    keepsake = models.ForeignKey(Keepsake, models.CASCADE, related_name="checks")
    size = models.ForeignKey(PatternSize, models.CASCADE, related_name="checks")
    state = models.CharField(max_length=8, choices=State, default=State.WAITING)
    task = models.CharField(max_length=8, choices=Task, default=Task.VERDICT)
    run = models.PositiveIntegerField(default=0)
    asked_at = models.DateTimeField()
    started_at = models.DateTimeField(null=True)
    heard_at = models.DateTimeField(null=True)
    finished_at = models.DateTimeField(null=True)
    budget_s = models.FloatField(default=20)
    placed = models.PositiveIntegerField(default=0)
    pieces = models.PositiveIntegerField(default=0)
    outcome = models.CharField(max_length=10, choices=Outcome, blank=True)
    fingerprint = models.CharField(max_length=64, blank=True)
    proof: models.JSONField[dict[str, Any] | None] = models.JSONField(null=True)
    unplaced: models.JSONField[list[dict[str, Any]]] = models.JSONField(default=list)
    spare: models.JSONField[dict[str, Any] | None] = models.JSONField(null=True)
    helps: models.JSONField[list[dict[str, Any]]] = models.JSONField(default=list)
    seconds = models.FloatField(null=True)
    engine = models.CharField(max_length=80, blank=True)
    message = models.CharField(max_length=300, blank=True)

    class Meta:
        ordering = ["-size__height_mm"]
        constraints = [
            models.UniqueConstraint(fields=["keepsake", "size"], name="check_once_a_size"),
            models.CheckConstraint(
                condition=Q(state__in=["waiting", "running", "done", "stopped"]),
                name="check_state_known",
            ),
            models.CheckConstraint(
                condition=Q(task__in=["verdict", "helps", "better", "edges"]),
                name="check_task_known",
            ),
            models.CheckConstraint(
                condition=Q(outcome__in=["", "covers", "cannot", "undecided"]),
                name="check_outcome_known",
            ),
            models.CheckConstraint(
                condition=~Q(outcome="cannot") | Q(proof__isnull=False),
                name="check_cannot_has_proof",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.keepsake}: {self.size}"

    def get_absolute_url(self) -> str:
        return reverse("planning:lay", args=[self.pk])

    @property
    def is_busy(self) -> bool:
        return self.state in (self.State.WAITING, self.State.RUNNING)


class Lay(WorkshopRecord):
    """Where every piece lies on every panel. A lay that is not whole proves nothing."""

    check_row = models.OneToOneField(SizeCheck, models.CASCADE, related_name="lay")
    fingerprint = models.CharField(max_length=64)
    is_whole = models.BooleanField()

    def __str__(self) -> str:
        return f"Lay of {self.check_row}"


class Placement(WorkshopRecord):
    """One copy of a piece on a panel: mirrored, then turned, then moved."""

    lay = models.ForeignKey(Lay, models.CASCADE, related_name="placements")
    panel = models.ForeignKey(Panel, models.PROTECT, related_name="placements")
    piece_name = models.CharField(max_length=60)
    copy = models.PositiveSmallIntegerField()
    is_mirrored = models.BooleanField()
    rotation_deg = models.FloatField()
    x_mm = models.FloatField()
    y_mm = models.FloatField()
    outline_mm: models.JSONField[list[list[float]]] = models.JSONField()

    class Meta:
        ordering = ["panel_id", "piece_name", "copy"]
        constraints = [
            models.UniqueConstraint(fields=["lay", "piece_name", "copy"], name="placed_once"),
        ]

    def __str__(self) -> str:
        return f"{self.piece_name} {self.copy + 1} on {self.panel}"
