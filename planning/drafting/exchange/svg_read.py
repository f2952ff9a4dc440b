"""Reading the pieces of an SVG drawing, our own or anyone's. Pure: bytes in, a reading out."""

from collections import Counter
from collections.abc import Iterable
from xml.etree.ElementTree import Element

from planning.drafting.exchange.chains import closed_ring
from planning.drafting.exchange.checked import MOST_POINTS, found_of
from planning.drafting.exchange.css_units import Scale, scale_of, view_box
from planning.drafting.exchange.found import Found, FoundPiece, PatternFileError
from planning.drafting.exchange.outlines import Outline, pieces_among
from planning.drafting.exchange.svg_own import own_piece
from planning.drafting.exchange.svg_safety import safe_root
from planning.drafting.exchange.svg_shapes import Stroke, strokes_of
from planning.drafting.exchange.svg_walk import Shown, Walk
from planning.drafting.rings import bounds_mm

FRAME_MM = 1.0  # how near to the page's edge a frame runs
NAMED_AT_MOST = 8


def read_svg(data: bytes, mm_per_unit: float | None = None) -> Found:
    """Return the pieces of a drawing; ``mm_per_unit`` overrides the unit that the file gives.

    Raises PatternFileError for a file that is unsafe, unsound or without a closed outline.
    """
    root = safe_root(data)
    scale = scale_of(root)
    if mm_per_unit is not None:
        scale = Scale(mm_per_unit, f"{mm_per_unit:g} mm to the unit, as you said", True)
    walk = Walk(root)
    own: list[FoundPiece] = []
    drawn: list[tuple[Shown, Stroke]] = []
    points = 0
    for shown in walk.shown(root, (scale.mm_per_unit, 0.0, 0.0, -scale.mm_per_unit, 0.0, 0.0)):
        if shown.element.get("data-piece") is not None:
            own.append(own_piece(shown))
            points += len(own[-1].outline)
        else:
            strokes = strokes_of(shown.element, shown.to_mm, shown.place)
            drawn += [(shown, stroke) for stroke in strokes]
            points += sum(len(stroke.points) for stroke in strokes)
        if points > MOST_POINTS:
            raise PatternFileError("The drawing has too many points. Save only the pieces.")
    outlines, open_places = _outlines(drawn)
    if open_places and not (own or outlines):
        raise PatternFileError(
            f"No outline is closed; open are {_listed(open_places)}. Join each outline's ends "
            "and save the file again."
        )
    pieces, notes = pieces_among(list(_without_frame(outlines, root, scale)))
    notes += _left_out_notes(open_places, walk.left_out)
    return found_of("svg", (scale.words, scale.is_sure), [*own, *pieces], notes)


def _outlines(drawn: Iterable[tuple[Shown, Stroke]]) -> tuple[list[Outline], list[str]]:
    outlines, open_places = [], []
    for shown, stroke in drawn:
        closed = closed_ring(stroke.points, stroke.is_closed)
        if closed is None:
            open_places.append(shown.place)
            continue
        gap = f"The outline missed closing by {closed.gap_mm:.1f} mm and was closed."
        notes = (gap,) if closed.gap_mm else ()
        outlines.append(Outline(closed.ring, shown.name, shown.place, notes))
    return outlines, open_places


def _without_frame(outlines: list[Outline], root: Element, scale: Scale) -> Iterable[Outline]:
    """Leave out a rectangle that only frames the page round the pieces."""
    box = view_box(root)
    for outline in outlines:
        is_frame = False
        if box and len(outline.ring) == 4 and len(outlines) > 1:
            left, top, wide, tall = (side * scale.mm_per_unit for side in box)
            page = (left, -top - tall, left + wide, -top)
            edges = zip(bounds_mm(outline.ring), page, strict=True)
            is_frame = all(abs(edge - side) <= FRAME_MM for edge, side in edges)
        if not is_frame:
            yield outline


def _left_out_notes(open_places: list[str], left_out: Counter[str]) -> list[str]:
    notes = []
    if open_places:
        notes.append(f"Open lines were left out: {_listed(open_places)}.")
    counted = [f"{count} {tag}" for tag, count in sorted(left_out.items()) if count]
    if counted:
        notes.append(f"Not read: {', '.join(counted)}.")
    return notes


def _listed(places: list[str]) -> str:
    more = len(places) - NAMED_AT_MOST
    named = ", ".join(places[:NAMED_AT_MOST])
    return f"{named} and {more} more" if more > 0 else named
