"""The invented workshop's own patterns, entered as a maker would enter them."""

from typing import Any

from planning import versions
from planning.drafting.basic_shapes import entry_of_shape
from planning.drafting.entry import EnteredNotch, EnteredPoint, Entry
from planning.drafting.pieces import Mark
from planning.models import Pattern, PatternPiece, PatternSize
from shared.models import Workshop

type Facts = dict[str, Any]


def add_pattern(workshop: Workshop, facts: Facts) -> Pattern:
    """Enter a pattern piece by piece, then grade it and say what is sewn to what."""
    row = Pattern.objects.create(
        workshop=workshop,
        name=facts["name"],
        description=facts["description"],
        source=facts["source"],
        licence=facts["licence"],
        seam_allowance_mm=facts["allowance"],
        seams=[{"ease_pct": [0, 0], "copies": 1, "by_hand": False} | s for s in facts["seams"]],
    )
    size = PatternSize.objects.create(workshop=workshop, pattern=row, height_mm=facts["height"])
    for position, each in enumerate(facts["pieces"]):
        piece = PatternPiece(
            workshop=workshop,
            size=size,
            position=position,
            name=each["name"],
            count=each["count"],
            mirrored=each["mirrored"],
        )
        versions.save_entered(piece, _entry(each, row.seam_allowance_mm))
    for height_mm in facts["graded"]:
        versions.grade(size, height_mm)
    return row


def _entry(facts: Facts, allowance_mm: float) -> Entry:
    if shape := facts.get("shape"):
        return entry_of_shape(shape, facts["measures"], allowance_mm)
    return Entry(
        points=tuple(
            EnteredPoint(x, y, is_curve=not edge, edge="".join(edge))
            for x, y, *edge in facts["points"]
        ),
        is_cut_line=False,
        allowance_mm=allowance_mm,
        fold_edge=facts.get("fold", ""),
        notches=tuple(EnteredNotch(*notch) for notch in facts.get("notches", ())),
        marks=tuple(Mark(name, (x, y)) for name, x, y in facts.get("marks", ())),
        opening=facts.get("opening", ""),
    )
