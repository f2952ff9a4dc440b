"""The database's own word on what a field may hold, so that no other value can be stored."""

from django.db import models
from django.db.models import Q


def one_of(field: str, choices: type[models.Choices], *, blank: bool = False) -> Q:
    """The field holds one of the choices, or is empty where ``blank``."""
    return Q(**{f"{field}__in": [*([""] if blank else []), *choices.values]})


def within(field: str, low: float, high: float) -> Q:
    """The field is empty or between two bounds, both allowed."""
    return Q(**{f"{field}__isnull": True}) | Q(**{f"{field}__gte": low, f"{field}__lte": high})


def together(*fields: str) -> Q:
    """The fields are all empty, or none of them is."""
    return Q(**{f"{f}__isnull": True for f in fields}) | Q(
        **{f"{f}__isnull": False for f in fields}
    )
