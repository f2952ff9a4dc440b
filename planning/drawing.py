"""A lay as drawings for a page: one a panel, to scale, with the pieces where they lie."""

import json
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from shapely import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry

from inventory.cloth import shrinkage_for, usable_of
from inventory.drawing import ROOM_MM, PanelDrawing, panel_drawing, path_of, ring_path
from inventory.models import Panel
from planning.coverage.placing import placed
from planning.coverage.problem import Placement, Point, Problem
from planning.coverage.spare import usable_cloth
from planning.hand_lays import turn_choices
from planning.kept import RuleMark
from planning.labels import Label, arrow_along, label_inside, number_beside, number_inside
from planning.laid_shapes import LaidPanel, LaidPiece, PlacedMark, ShownDetail, line_path
from planning.models import PatternPiece
from planning.spots import hand_of
from shared.units import LengthUnit

LETTERS = 40  # lines of words that a panel's longer side would hold

type Copy = tuple[str, int]


@dataclass(frozen=True, slots=True)
class LayFacts:
    """What a drawing of a lay needs beside the placements themselves."""

    problem: Problem
    pieces: Mapping[str, PatternPiece]
    marks: Mapping[Copy, Sequence[RuleMark]]
    locked: frozenset[Copy] = frozenset()
    faulty: frozenset[Copy] = frozenset()
    targets: Mapping[str, Sequence[ShownDetail]] = field(default_factory=dict)


def laid_panels(
    rows: Mapping[str, Panel], lay: Sequence[Placement], facts: LayFacts, units: LengthUnit
) -> list[LaidPanel]:
    """The panels that something lies on, in the order of `rows`; pieces are numbered through."""
    panels = []
    key = 1
    for name, row in rows.items():
        on_it = [placement for placement in lay if placement.panel == name]
        if on_it:
            panels.append(laid_panel(row, name, on_it, facts, units, key))
            key += len(on_it)
    return panels


def laid_panel(
    row: Panel,
    name: str,
    on_it: Sequence[Placement],
    facts: LayFacts,
    units: LengthUnit,
    key: int = 1,
) -> LaidPanel:
    """One panel with what lies on it, numbered from `key`."""
    drawing = _drawing(row, name, facts.problem, units)
    size_mm = max(drawing.width_mm, drawing.height_mm) / LETTERS
    shapes = [Polygon(placement.outline) for placement in on_it]
    frame = _frame(drawing)
    pieces: list[LaidPiece] = []
    taken: list[BaseGeometry] = list(shapes)
    for number, (placement, shape) in enumerate(zip(on_it, shapes, strict=True), key):
        piece = _laid(number, placement, shape, facts, size_mm, row, taken, frame)
        taken.append(piece.label.room)
        pieces.append(piece)
    return LaidPanel(row, drawing, tuple(pieces), tuple(facts.targets.get(name, ())), size_mm)


def _drawing(row: Panel, name: str, problem: Problem, units: LengthUnit) -> PanelDrawing:
    """The panel with the cloth that this problem's margins leave."""
    drawing = panel_drawing(row, usable_of(row, shrinkage_for(row)), units)
    known = [panel for panel in problem.panels if panel.id == name]
    return replace(drawing, usable=path_of(usable_cloth(problem, known[0]))) if known else drawing


def _frame(drawing: PanelDrawing) -> BaseGeometry:
    left, low, room = drawing.left_mm, drawing.bottom_mm, ROOM_MM
    return box(
        left - room, low - room, left + drawing.width_mm + room, low + drawing.height_mm + room
    )


def _laid(
    key: int,
    placement: Placement,
    shape: Polygon,
    facts: LayFacts,
    size_mm: float,
    row: Panel,
    taken: Sequence[BaseGeometry],
    frame: BaseGeometry,
) -> LaidPiece:
    piece = facts.pieces.get(placement.piece)
    copy = (placement.piece, placement.copy)
    hand = hand_of(piece, placement.mirrored)
    is_single = piece is not None and piece.count == 1
    words = placement.piece if is_single else f"{placement.piece} {placement.copy + 1}"
    label = _label(key, words, hand, shape, size_mm, taken, frame)
    angle = _grain_deg(piece, placement, row)
    arrow = arrow_along(shape, angle, label.room)
    left, low, _, _ = shape.bounds
    return LaidPiece(
        key=key,
        name=placement.piece,
        number=placement.copy + 1,
        hand=hand,
        is_mirrored=placement.mirrored,
        is_single=is_single,
        placement=placement,
        path=ring_path(placement.outline),
        halo=path_of(shape.buffer(facts.problem.clearance_mm / 2)),
        grain=line_path(arrow.coords) if arrow is not None else "",
        label=label,
        marks=tuple(_mark(mark, placement, shape, size_mm) for mark in facts.marks.get(copy, ())),
        across_mm=left - min(x for x, _ in row.outline_mm),
        up_mm=low - min(y for _, y in row.outline_mm),
        is_locked=copy in facts.locked,
        is_faulty=copy in facts.faulty,
        turns=_turns(placement, facts.problem),
    )


def _turns(placement: Placement, problem: Problem) -> str:
    """The turns a copy may have on its panel, each as value and words, for the moving script."""
    known = [panel for panel in problem.panels if panel.id == placement.panel]
    if not known or placement.piece not in {piece.id for piece in problem.pieces}:
        return "[]"
    piece = problem.piece(placement.piece)
    return json.dumps(turn_choices(piece, placement.copy, known[0], placement.rotation_deg))


def _label(
    key: int,
    words: str,
    hand: str,
    shape: Polygon,
    size_mm: float,
    taken: Sequence[BaseGeometry],
    frame: BaseGeometry,
) -> Label:
    one = f"{key}  {words}"
    layouts: list[tuple[str, ...]] = [(one,)]
    if hand:
        layouts = [(one, hand), (f"{one}, {hand}",), (str(key), words, hand)]
    layouts.append((str(key), words))
    return (
        label_inside(shape, layouts, size_mm)
        or number_inside(shape, key, size_mm)
        or number_beside(shape, key, size_mm, taken, frame)
    )


def _grain_deg(piece: PatternPiece | None, placement: Placement, row: Panel) -> float:
    """Which way the piece's own grain line points where it lies."""
    if piece is None:
        return row.grain_deg
    own = 180.0 - piece.grain_deg if placement.mirrored else piece.grain_deg
    return own + placement.rotation_deg


def _mark(mark: RuleMark, placement: Placement, shape: Polygon, size_mm: float) -> PlacedMark:
    ((x, y),) = placed(
        [mark.at],
        mirrored=placement.mirrored,
        rotation_deg=placement.rotation_deg,
        translation=placement.translation,
    )
    stripes = [_stripe(shape, (x, y), angle, size_mm) for angle in mark.stripes_deg]
    return PlacedMark(mark.letter, x, y, "".join(stripes))


def _stripe(shape: Polygon, at: Point, angle_deg: float, size_mm: float) -> str:
    """A stretch of the stripe through a place, clipped to the piece."""
    dx = 3 * size_mm * math.cos(math.radians(angle_deg))
    dy = 3 * size_mm * math.sin(math.radians(angle_deg))
    cut = LineString([(at[0] - dx, at[1] - dy), (at[0] + dx, at[1] + dy)]).intersection(shape)
    parts = [part for part in getattr(cut, "geoms", [cut]) if part.geom_type == "LineString"]
    return "".join(line_path(part.coords) for part in parts if not part.is_empty)
