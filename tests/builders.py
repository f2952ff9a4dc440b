"""One short function a row, with defaults a test need not care about."""

from typing import Any

from django.contrib.auth.models import User

from inventory.cloth import measure
from inventory.models import Collection, Detail, FibreShare, Flaw, Garment, Panel
from planning.models import Keepsake, Pattern, PatternPiece, PatternSize
from shared.models import Member, Workshop


def workshop(name: str = "The bench") -> Workshop:
    return Workshop.objects.create(name=name)


def member(of: Workshop, username: str = "maker", units: str = "cm") -> Member:
    user = User.objects.create_user(username, password="linen-and-thread")
    return Member.objects.create(user=user, workshop=of, units=units)


def collection(of: Workshop, name: str = "Dad’s shirts", **facts: Any) -> Collection:
    facts = {"cut_consent": "yes", "wash_consent": "yes", **facts}
    return Collection.objects.create(workshop=of, name=name, **facts)


def garment(in_: Collection, fibres: dict[str, float] | None = None, **facts: Any) -> Garment:
    facts = {"kind": "shirt", "name": "Blue shirt", "construction": "plain-weave", **facts}
    row = Garment.objects.create(workshop=in_.workshop, collection=in_, **facts)
    for fibre, percent in ({"cotton": 100.0} if fibres is None else fibres).items():
        FibreShare.objects.create(workshop=in_.workshop, garment=row, fibre=fibre, percent=percent)
    return row


def panel(of: Garment, width_mm: float = 500, length_mm: float = 700, **facts: Any) -> Panel:
    facts = {"name": "Back", "is_measured_after_wash": True, **facts}
    row = Panel(
        workshop=of.workshop,
        garment=of,
        shape="rectangle",
        measures_mm={"width": width_mm, "length": length_mm},
        **facts,
    )
    measure(row)
    row.save()
    return row


def flaw(on: Panel, x_mm: float, y_mm: float, radius_mm: float, kind: str = "stain") -> Flaw:
    return Flaw.objects.create(
        workshop=on.workshop, panel=on, kind=kind, points_mm=[[x_mm, y_mm]], radius_mm=radius_mm
    )


def detail(on: Panel, ring: list[list[float]], **facts: Any) -> Detail:
    return Detail.objects.create(
        workshop=on.workshop, panel=on, kind="pocket", points_mm=ring, **facts
    )


def pattern(
    of: Workshop, *pieces: dict[str, Any], heights_mm: tuple[float, ...] = (200,)
) -> Pattern:
    """A pattern of square pieces; each piece a dict with ``side_mm`` and the row's own fields."""
    row = Pattern.objects.create(workshop=of, name="Cushion")
    for height_mm in heights_mm:
        size = PatternSize.objects.create(workshop=of, pattern=row, height_mm=height_mm)
        for position, facts in enumerate(pieces or ({"name": "side", "side_mm": 200.0},)):
            facts = {"count": 2, "mirrored": 1, **facts}
            side = facts.pop("side_mm") * height_mm / heights_mm[0]
            ring = [[0, 0], [side, 0], [side, side], [0, side]]
            PatternPiece.objects.create(
                workshop=of,
                size=size,
                position=position,
                cut_line_mm=ring,
                seam_line_mm=ring,
                **facts,
            )
    return row


def keepsake(from_: Collection, pattern_: Pattern, **facts: Any) -> Keepsake:
    facts = {"name": "A cushion", **facts}
    return Keepsake.objects.create(
        workshop=from_.workshop, collection=from_, pattern=pattern_, **facts
    )
