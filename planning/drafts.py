"""Carries patterns between rows and the drafting room's plain values, both ways."""

import json
from hashlib import sha256
from typing import Any

from planning.drafting.pieces import DraftPiece, DraftSize, Edge, Mark, Notch, PlacementLine
from planning.drafting.rings import Point, Ring
from planning.drafting.sewing import Seam, Stretch
from planning.drafting.stuffing import Part
from planning.models import Pattern, PatternPiece, PatternSize


def draft_piece(row: PatternPiece) -> DraftPiece:
    """One piece as the drafting room knows it."""
    edges = tuple(Edge(each["name"], each["start"], each["end"]) for each in row.edges)
    return DraftPiece(
        name=row.name,
        seam_line=_ring(row.seam_line_mm),
        cut_line=_ring(row.cut_line_mm),
        count=row.count,
        mirrored=row.mirrored,
        grain_deg=row.grain_deg,
        notches=tuple(
            Notch(each["name"], _point(each["at"]), each["is_double"]) for each in row.notches
        ),
        marks=tuple(Mark(each["name"], _point(each["at"])) for each in row.marks),
        lines=tuple(PlacementLine(each["name"], _ring(each["points"])) for each in row.lines),
        edges=edges,
        opening=next((edge for edge in edges if edge.name == row.opening), None),
    )


def draft_size(row: PatternSize) -> DraftSize:
    """One size with all its pieces."""
    return DraftSize(
        name=f"{row.height_mm / 10:g} cm",
        height_mm=row.height_mm,
        pieces=tuple(draft_piece(piece) for piece in row.pieces.all()),
        seam_allowance_mm=row.pattern.seam_allowance_mm,
        width_mm=row.width_mm,
        notes=tuple(row.notes),
    )


def piece_fields(piece: DraftPiece) -> dict[str, Any]:
    """What a row keeps of a drafted piece."""
    return {
        "name": piece.name,
        "count": piece.count,
        "mirrored": piece.mirrored,
        "grain_deg": piece.grain_deg,
        "cut_line_mm": [list(point) for point in piece.cut_line],
        "seam_line_mm": [list(point) for point in piece.seam_line],
        "notches": [
            {"name": each.name, "at": list(each.at), "is_double": each.is_double}
            for each in piece.notches
        ],
        "marks": [{"name": each.name, "at": list(each.at)} for each in piece.marks],
        "lines": [
            {"name": each.name, "points": [list(point) for point in each.points]}
            for each in piece.lines
        ],
        "edges": [
            {"name": each.name, "start": each.start, "end": each.end} for each in piece.edges
        ],
        "opening": piece.opening.name if piece.opening else "",
    }


def add_size(
    pattern: Pattern, draft: DraftSize, graded_from: PatternSize | None = None
) -> PatternSize:
    """Save a drafted size with its pieces under a pattern."""
    size = PatternSize.objects.create(
        workshop=pattern.workshop,
        pattern=pattern,
        height_mm=draft.height_mm,
        graded_from=graded_from,
        width_mm=draft.width_mm,
        notes=list(draft.notes),
    )
    fill_size(size, draft, graded_from)
    return size


def fill_size(size: PatternSize, draft: DraftSize, graded_from: PatternSize | None) -> None:
    """Save the drafted pieces in a size that has none."""
    kept = {piece.name: piece for piece in graded_from.pieces.all()} if graded_from else {}
    PatternPiece.objects.bulk_create(
        PatternPiece(
            workshop=size.workshop,
            size=size,
            position=position,
            **piece_fields(piece),
            **_kept_fields(kept.get(piece.name)),
        )
        for position, piece in enumerate(draft.pieces)
    )


KEPT_FIELDS = ("is_bias", "same_hand", "asks_stretch_pct", "part", "note")


def _kept_fields(piece: PatternPiece | None) -> dict[str, Any]:
    """What holds for a piece in every size."""
    return {name: getattr(piece, name) for name in KEPT_FIELDS} if piece else {}


def seams_of(pattern: Pattern) -> tuple[Seam, ...]:
    """Which edges are sewn together, as the drafting room knows it."""
    return tuple(
        Seam(
            name=each["name"],
            a=tuple(Stretch(*side) for side in each["a"]),
            b=tuple(Stretch(*side) for side in each["b"]),
            ease_pct=(each["ease_pct"][0], each["ease_pct"][1]),
            copies=each["copies"],
            by_hand=each["by_hand"],
        )
        for each in pattern.seams
    )


def seams_json(seams: tuple[Seam, ...]) -> list[dict[str, Any]]:
    """The seams as a row keeps them: a side is a list of [piece, edge or line, times]."""
    return [
        {
            "name": seam.name,
            "a": [[side.piece, side.name, side.times] for side in seam.a],
            "b": [[side.piece, side.name, side.times] for side in seam.b],
            "ease_pct": list(seam.ease_pct),
            "copies": seam.copies,
            "by_hand": seam.by_hand,
        }
        for seam in seams
    ]


def mark_of(seam: dict[str, Any]) -> str:
    """A short mark of all that a seam says: two windows never mean different seams by it."""
    return sha256(json.dumps(seam, sort_keys=True).encode()).hexdigest()[:16]


def parts_of(size: PatternSize) -> tuple[Part, ...]:
    """The stuffed parts of a size, as the drafting room knows them.

    A drafted pattern says which pieces each part takes. In a maker's own, pieces name their part.
    Pieces that are not there any more are left out, and so is a part that has none left.
    """
    parts = (
        Part(each["name"], _pieces_of(each, size), each["how_many"], each["is_flat"])
        for each in size.pattern.parts
    )
    return tuple(part for part in parts if part.pieces)


def _pieces_of(part: dict[str, Any], size: PatternSize) -> tuple[tuple[str, int], ...]:
    if "pieces" in part:
        here = {piece.name for piece in size.pieces.all()}
        return tuple((name, times) for name, times in part["pieces"] if name in here)
    pieces = [piece for piece in size.pieces.all() if piece.part == part["name"]]
    return tuple((piece.name, max(1, piece.count // part["how_many"])) for piece in pieces)


def parts_json(parts: tuple[Part, ...]) -> list[dict[str, Any]]:
    """The stuffed parts as a row keeps them."""
    return [
        {
            "name": part.name,
            "pieces": [list(each) for each in part.pieces],
            "how_many": part.how_many,
            "is_flat": part.is_flat,
        }
        for part in parts
    ]


def _point(point: list[float]) -> Point:
    return (point[0], point[1])


def _ring(points: list[list[float]]) -> Ring:
    return tuple(_point(point) for point in points)
