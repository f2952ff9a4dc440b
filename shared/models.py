"""Workshops and their people, and the one question every other record is asked through.

Two workshops on one server never meet: every record carries its workshop, and pages reach records
only by ``Model.objects.of(workshop)``.
"""

from typing import Self

from django.conf import settings
from django.db import models
from django.db.models.functions import Now


class Workshop(models.Model):
    name = models.CharField(max_length=80)
    created_at = models.DateTimeField(db_default=Now(), editable=False)

    def __str__(self) -> str:
        return self.name


class Member(models.Model):
    """A person at the bench: one log-in belongs to one workshop."""

    class Units(models.TextChoices):
        CENTIMETRES = "cm", "Centimetres"
        INCHES = "in", "Inches and fractions"

    user = models.OneToOneField(settings.AUTH_USER_MODEL, models.CASCADE, related_name="member")
    workshop = models.ForeignKey(Workshop, models.CASCADE, related_name="members")
    units = models.CharField(max_length=2, choices=Units, default=Units.CENTIMETRES)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(units__in=["cm", "in"]), name="member_units_known"
            ),
        ]

    def __str__(self) -> str:
        return self.user.get_username()


class WorkshopQuerySet[M: models.Model](models.QuerySet[M]):
    def of(self, workshop: Workshop) -> Self:
        """Return only what belongs to this workshop. Every page starts here."""
        return self.filter(workshop=workshop)


class WorkshopRecord(models.Model):
    """Whatever belongs to exactly one workshop."""

    workshop = models.ForeignKey(Workshop, models.CASCADE, related_name="+", editable=False)
    created_at = models.DateTimeField(db_default=Now(), editable=False)

    objects = WorkshopQuerySet.as_manager()

    class Meta:
        abstract = True
