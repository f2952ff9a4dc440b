"""The limits that every reading of a pattern file must pass, whichever kind of file it was.

A file is taken whole or refused: no piece is dropped for being too large or crossing itself.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace

from shapely import LinearRing, Polygon, is_valid_reason

from planning.drafting.exchange.found import Found, FoundPiece, Kind, PatternFileError
from planning.drafting.rings import Point, Ring, bounds_mm, is_simple, signed_area_mm2

LONGEST_MM = 5000.0  # no pattern piece is longer
FARTHEST_MM = 1e6  # from the origin: beyond it a tenth of a millimetre is no longer safe
MOST_PIECES = 500
MOST_POINTS = 100_000
LONGEST_NAME = 60
SPECK = "A speck was left out"  # how the note about an outline too small to be a piece begins


def found_of(
    kind: Kind,
    unit: tuple[str, bool],
    pieces: Sequence[FoundPiece],
    notes: Sequence[str],
) -> Found:
    """Return the reading, its pieces named apart; ``unit`` is its words and whether it is sure.

    Raises PatternFileError when there is no piece or too many.
    """
    if not pieces and any(note.startswith(SPECK) for note in notes):
        raise PatternFileError(
            "Every closed outline of the file comes out smaller than 5 mm across. "
            "Say which unit the file is drawn in."
        )
    if not pieces:
        raise PatternFileError(
            "The file holds no closed outline, so there is no piece to read. "
            "Join the lines of each piece into one closed line and save the file again."
        )
    if len(pieces) > MOST_PIECES:
        raise PatternFileError(
            f"The file holds {len(pieces)} outlines; at most {MOST_PIECES} are read. "
            "Save fewer pieces to one file."
        )
    largest = max(pieces, key=lambda piece: signed_area_mm2(piece.outline))
    left, low, right, high = bounds_mm(largest.outline)
    words, is_sure = unit
    return Found(
        kind, words, is_sure, tuple(_named_apart(pieces)), tuple(notes), right - left, high - low
    )


def refuse_unsound(ring: Ring, place: str) -> None:
    """Raise PatternFileError when a ring is over five metres or crosses itself."""
    left, low, right, high = bounds_mm(ring)
    if max(right - left, high - low) > LONGEST_MM:
        raise PatternFileError(
            f"The outline of {place} is {max(right - left, high - low) / 1000:.1f} m long; no "
            "piece is over 5 m. Say which unit the file is drawn in, or mend the outline."
        )
    if not is_simple(ring):
        raise PatternFileError(
            f"The outline of {place} crosses or touches itself{_where(ring)}. "
            "Mend it there and save the file again."
        )


def _where(ring: Ring) -> str:
    reason = is_valid_reason(Polygon(LinearRing(ring)))
    x, _, y = reason.partition("[")[2].rstrip("]").partition(" ")
    return f" near ({float(x):.0f}, {float(y):.0f}) mm" if y else ""


def refuse_far(points: Sequence[Point], place: str) -> None:
    """Raise PatternFileError for a coordinate that is no number or absurdly far away."""
    for x, y in points:
        if not (math.isfinite(x) and math.isfinite(y)):
            raise PatternFileError(
                f"A point of {place} is no number. Mend it or draw the line anew."
            )
        if max(abs(x), abs(y)) > FARTHEST_MM:
            raise PatternFileError(
                f"A point of {place} lies over a kilometre away. "
                "Check the unit, or move the drawing to the origin."
            )


def clean_name(text: str) -> str:
    """Return a name on one line, printable and not too long.

    >>> clean_name(" left\\n sleeve ")
    'left sleeve'
    """
    printable = "".join(sign if sign.isprintable() else " " for sign in text)
    return " ".join(printable.split())[:LONGEST_NAME].rstrip()


def _named_apart(pieces: Iterable[FoundPiece]) -> Iterable[FoundPiece]:
    taken: set[tuple[str, str]] = set()
    for piece in pieces:
        name, turn = piece.name, 1
        while (name, piece.size) in taken:
            turn += 1
            name = f"{piece.name} {turn}"
        taken.add((name, piece.size))
        yield replace(piece, name=name)
