"""What happened to a garment, day by day: notes, washes, moves on the bench, a maker's own words.

Rows are added and never rewritten. A wash or an override can be withdrawn; it then counts no
longer and stays in the record, with who withdrew it and when.
"""

from datetime import date
from typing import Any, Self

from django.db import models
from django.db.models import F, Q
from django.utils import timezone

from inventory.advice.dimensions import change_pct
from inventory.choices import Recommendation, Status, WashWay
from inventory.constraints import one_of, together, within
from shared.errors import ClothError
from shared.models import Member, WorkshopQuerySet, WorkshopRecord

LONGEST_MM = 10_000
MOST_GROWTH = 1.5  # cloth that seems to grow or shrink by more was measured in two units
LEAST_LEFT = 0.2


class WrittenOnce(WorkshopRecord):
    """A row of the record, which no later save can change."""

    class Meta:
        abstract = True

    def save(self, *args: Any, **kwargs: Any) -> None:
        if not self._state.adding:
            raise ClothError("What is in the record stays as it was written. Add to it instead.")
        super().save(*args, **kwargs)


class WithdrawableQuerySet[M: "Withdrawable"](WorkshopQuerySet[M]):
    def standing(self) -> Self:
        """Leave out what was withdrawn."""
        return self.filter(withdrawn_at=None)

    def withdraw(self, by: Member) -> int:
        """Withdraw whatever of these still stands; says how many that were."""
        return self.standing().update(withdrawn_at=timezone.now(), withdrawn_by=by)


class Withdrawable(WrittenOnce):
    made_by = models.ForeignKey(Member, models.RESTRICT, related_name="+", editable=False)
    withdrawn_at = models.DateTimeField(null=True, editable=False)
    withdrawn_by = models.ForeignKey(
        Member, models.RESTRICT, related_name="+", null=True, editable=False
    )

    objects = WithdrawableQuerySet.as_manager()  # type: ignore[misc]  # a narrower manager than the base's

    class Meta:
        abstract = True
        constraints = [
            models.CheckConstraint(
                condition=together("withdrawn_at", "withdrawn_by"), name="%(class)s_withdrawn_whole"
            )
        ]


class ConditionNote(WrittenOnce):
    """What was seen on a day, and where."""

    class Grade(models.IntegerChoices):
        SOUND = 0, "Sound"
        WORN = 1, "Lightly worn"
        WEAK = 2, "Weak in places"
        POOR = 3, "Poor"
        FAILING = 4, "Falling apart"

    garment = models.ForeignKey("inventory.Garment", models.CASCADE, related_name="condition_notes")
    noted_on = models.DateField("Seen on", default=date.today)
    grade = models.PositiveSmallIntegerField(choices=Grade)
    text = models.CharField("What you see", max_length=500)
    panel = models.ForeignKey(
        "inventory.Panel", models.RESTRICT, related_name="condition_notes", null=True, blank=True
    )
    across_mm = models.FloatField(null=True, blank=True)
    up_mm = models.FloatField(null=True, blank=True)

    class Meta:
        ordering = ["-noted_on", "-pk"]
        constraints = [
            models.CheckConstraint(condition=within("grade", 0, 4), name="note_grade"),
            models.CheckConstraint(
                condition=together("across_mm", "up_mm"), name="note_place_whole"
            ),
            models.CheckConstraint(
                condition=Q(across_mm__isnull=True) | Q(panel__isnull=False),
                name="note_place_on_panel",
            ),
        ]

    def __str__(self) -> str:
        return self.text


def _one_length_twice(way: str) -> list[models.CheckConstraint]:
    before, after = f"{way}_before_mm", f"{way}_after_mm"
    likely = Q(
        **{f"{after}__gte": F(before) * LEAST_LEFT, f"{after}__lte": F(before) * MOST_GROWTH}
    )
    return [
        models.CheckConstraint(condition=together(before, after), name=f"wash_{way}_both"),
        models.CheckConstraint(condition=within(before, 1, LONGEST_MM), name=f"wash_{way}_length"),
        models.CheckConstraint(
            condition=Q(**{f"{before}__isnull": True}) | likely, name=f"wash_{way}_likely"
        ),
    ]


class WashEvent(Withdrawable):
    """One wash of the whole garment, with a length marked before it and measured after it."""

    garment = models.ForeignKey("inventory.Garment", models.CASCADE, related_name="wash_events")
    washed_on = models.DateField("Washed on", default=date.today)
    way = models.CharField("How", max_length=20, choices=WashWay)
    water_c = models.PositiveSmallIntegerField("Water in °C", null=True, blank=True)
    along_before_mm = models.FloatField(null=True, blank=True)
    along_after_mm = models.FloatField(null=True, blank=True)
    across_before_mm = models.FloatField(null=True, blank=True)
    across_after_mm = models.FloatField(null=True, blank=True)
    text = models.CharField("What you saw", max_length=500, blank=True)

    class Meta:
        ordering = ["-washed_on", "-pk"]
        constraints = [
            *Withdrawable.Meta.constraints,
            models.CheckConstraint(condition=one_of("way", WashWay), name="wash_way_known"),
            models.CheckConstraint(condition=within("water_c", 0, 95), name="wash_water"),
            *_one_length_twice("along"),
            *_one_length_twice("across"),
        ]

    def __str__(self) -> str:
        return f"{self.get_way_display()}, {self.washed_on.day} {self.washed_on:%B %Y}"

    @property
    def along_change_pct(self) -> float | None:
        """The change along the grain in percent, below 0 for shrinkage; None if not measured."""
        return _change_pct(self.along_before_mm, self.along_after_mm)

    @property
    def across_change_pct(self) -> float | None:
        """The change across the grain in percent, below 0 for shrinkage; None if not measured."""
        return _change_pct(self.across_before_mm, self.across_after_mm)


def _change_pct(before_mm: float | None, after_mm: float | None) -> float | None:
    if before_mm is None or after_mm is None:
        return None
    return change_pct(before_mm, after_mm)


class AdviceOverride(Withdrawable):
    """A maker's own words in place of one recommendation, with her reason."""

    garment = models.ForeignKey("inventory.Garment", models.CASCADE, related_name="overrides")
    part = models.CharField("Which recommendation", max_length=12, choices=Recommendation)
    text = models.CharField("What you will do", max_length=300)
    reason = models.CharField("Why", max_length=500)
    made_on = models.DateField(default=date.today, editable=False)

    class Meta:
        ordering = ["-made_on", "-pk"]
        constraints = [
            *Withdrawable.Meta.constraints,
            models.CheckConstraint(
                condition=one_of("part", Recommendation), name="override_part_known"
            ),
            models.CheckConstraint(
                condition=~Q(text="") & ~Q(reason=""), name="override_has_words_and_reason"
            ),
            models.UniqueConstraint(
                fields=["garment", "part"],
                condition=Q(withdrawn_at=None),
                name="override_one_stands",
            ),
        ]

    def __str__(self) -> str:
        return self.text


class StatusChange(WrittenOnce):
    """A garment's move on the bench, on the day it was made."""

    garment = models.ForeignKey("inventory.Garment", models.CASCADE, related_name="status_changes")
    status = models.CharField(max_length=10, choices=Status)
    changed_on = models.DateField(default=date.today)

    class Meta:
        ordering = ["-changed_on", "-pk"]
        constraints = [
            models.CheckConstraint(condition=one_of("status", Status), name="change_status_known")
        ]

    def __str__(self) -> str:
        return self.get_status_display()
