"""The list of pictures: which garment, in which cloth, lying how, on what."""

from __future__ import annotations

from demo_fixtures.photographs import Photo
from demo_fixtures.pictures.donation_box import DONATION_BOX
from demo_fixtures.pictures.fathers_shirts import FATHERS_SHIRTS
from demo_fixtures.pictures.first_clothes import FIRST_CLOTHES
from demo_fixtures.pictures.great_days import GREAT_DAYS


def all_photos() -> tuple[Photo, ...]:
    """Every picture of the workshop."""
    return (*FATHERS_SHIRTS, *FIRST_CLOTHES, *GREAT_DAYS, *DONATION_BOX)
