"""What the rules of a keepsake can speak of: copies, places on them, details, seams that mirror.

Names are gathered over every size of the pattern, since a rule holds for all of them. A copy or a
place travels through a form as a small JSON list, so that no name can be mistaken for another.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from inventory.cloth import places_of
from inventory.drawing import path_of, ring_path
from inventory.models import Detail, Panel
from planning.drafting.sewing import Seam
from planning.drafts import seams_of
from planning.models import Pattern, PatternPiece, StripeMatch
from planning.spots import MIDDLE, copy_words, spots_of

type Choices = list[tuple[str, str]]


@dataclass(frozen=True, slots=True)
class PieceChoices:
    """The pieces of a pattern as a form offers them."""

    names: tuple[str, ...]
    copies: Choices
    spots: list[tuple[str, Choices]]


def copy_value(piece: str, copy: int) -> str:
    return json.dumps([piece, copy])


def spot_value(piece: str, spot: str) -> str:
    """The value of a place; the middle needs no name, whatever the piece."""
    return json.dumps([piece, spot]) if spot != MIDDLE else ""


def choices_of(pattern: Pattern) -> PieceChoices:
    """The copies and places of every piece, in the order of the pieces."""
    largest: dict[str, PatternPiece] = {}
    spots: dict[str, dict[str, None]] = {}
    for size in pattern.sizes.prefetch_related("pieces"):
        for piece in size.pieces.all():
            known = largest.setdefault(piece.name, piece)
            if piece.count > known.count:
                largest[piece.name] = piece
            spots.setdefault(piece.name, {}).update(dict.fromkeys(spots_of(piece)))
    return PieceChoices(
        names=tuple(largest),
        copies=[
            (copy_value(piece.name, copy), _capital(copy_words(piece, copy)))
            for piece in largest.values()
            for copy in range(piece.count)
        ],
        spots=[
            (_capital(name), [(spot_value(name, spot), spot) for spot in places if spot])
            for name, places in spots.items()
            if len(places) > 1
        ],
    )


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


@dataclass(frozen=True, slots=True)
class Preset:
    """A seam between a piece and its own mirror image, ready to be made a rule."""

    words: str
    rows: tuple[dict[str, Any], ...]


def presets_of(pattern: Pattern, taken: set[frozenset[tuple[str, int, str]]]) -> list[Preset]:
    """The mirrored seams of a pattern, less those that rules already bind."""
    size = pattern.sizes.first()
    pieces = {piece.name: piece for piece in size.pieces.all()} if size else {}
    presets = []
    for seam, name in _mirrored_seams(seams_of(pattern)):
        piece = pieces.get(seam.a[0].piece)
        if piece is None or name not in spots_of(piece):
            continue
        pairs = zip(
            range(piece.count_as_drawn), range(piece.count_as_drawn, piece.count), strict=False
        )
        rows = tuple(
            _row(piece.name, pair, name)
            for pair in pairs
            if frozenset((piece.name, copy, name) for copy in pair) not in taken
        )
        if rows:
            presets.append(Preset(f"{_capital(seam.name)}: stripes meet", rows))
    return presets


def _mirrored_seams(seams: tuple[Seam, ...]) -> Iterator[tuple[Seam, str]]:
    for seam in seams:
        if seam.a == seam.b and len(seam.a) == 1 and not seam.by_hand:
            yield seam, seam.a[0].name


def _row(piece: str, pair: tuple[int, int], spot: str) -> dict[str, Any]:
    row: dict[str, Any] = {"direction": StripeMatch.Direction.ALONG, "within_mm": 3.0}
    for side, copy in zip("ab", pair, strict=True):
        row[f"{side}_copy"] = copy_value(piece, copy)
        row[f"{side}_spot"] = spot_value(piece, spot)
    return row


@dataclass(frozen=True, slots=True)
class DetailPicture:
    """A detail where it lies on its panel, for a small picture."""

    detail: Detail
    panel: Panel
    box: str
    frame: str
    outline: str
    place: str


def picture_of(detail: Detail, panel: Panel) -> DetailPicture:
    """The panel's outline and the detail on it, y downwards as on a page."""
    xs, ys = [x for x, _ in panel.outline_mm], [y for _, y in panel.outline_mm]
    wide, high = max(xs) - min(xs), max(ys) - min(ys)
    room = max(wide, high) * 0.03
    return DetailPicture(
        detail=detail,
        panel=panel,
        box=f"{-room:.0f} {-room:.0f} {wide + 2 * room:.0f} {high + 2 * room:.0f}",
        frame=f"matrix(1 0 0 -1 {-min(xs):.1f} {max(ys):.1f})",
        outline=ring_path(panel.outline_mm),
        place=path_of(places_of([detail])[0].shape),
    )
