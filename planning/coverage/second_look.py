"""A second, simpler look at what a proof claims, by another library and another method.

Whole-number polygons (pyclipper, a thousandth of a millimetre) and inner-fit regions by Minkowski
sums: the moves at which the edge of a piece touches the edge of the cloth are swept out, and one
place in each cell that is left decides for the cell. A proof that this does not confirm is dropped.
"""

import itertools
import math
from collections.abc import Iterable, Sequence

import pyclipper
from shapely import Polygon, affinity

from planning.coverage.kinds import Kind
from planning.coverage.placing import placed
from planning.coverage.problem import Outline, Panel, Problem
from planning.coverage.rings import mended

type Path = list[tuple[int, int]]

UNITS_PER_MM = 1000
SPARING_MM = 0.03  # given back on every margin, above what the verifier forgives
HAIR_MM = 0.05  # taken off a piece, so that an exact fit never counts as none
MOST_STEPS = 24
LEAST_STEP_DEG = 0.2


def has_no_place(problem: Problem, kind: Kind, panel: Panel) -> bool:
    """Whether a piece of this kind fits nowhere on the panel."""
    return not any(_fits(kind, room, panel) for room in rooms_by_clipper(problem, panel))


def have_mm2(problem: Problem, kinds: Sequence[Kind]) -> float:
    """All the cloth in rooms where at least one of the kinds may lie and fits."""
    total = 0.0
    for panel in problem.panels:
        allowed = [kind for kind in kinds if problem.may_come_from(kind.piece, panel)]
        for room in rooms_by_clipper(problem, panel):
            if any(_fits(kind, room, panel) for kind in allowed):
                halo = problem.clearance_mm / 2 * 1.01
                total += sum(map(_area_mm2, _offset(_rings(room), halo, pyclipper.JT_ROUND)))
    return total


def need_mm2(problem: Problem, kinds: Sequence[Kind]) -> float:
    """The cloth that all copies take, each grown by its half of the gap, corners cut off."""
    halo = max(0.0, problem.clearance_mm - SPARING_MM) / 2
    total = 0.0
    for kind in kinds:
        grown = _offset([_path(mended(kind.piece.outline))], halo, pyclipper.JT_SQUARE)
        square = sum(map(_area_mm2, grown))
        plain = abs(_area_mm2(_path(mended(kind.piece.outline))))
        total += kind.copies * (plain + (square - plain) * 0.99)
    return total


def rooms_by_clipper(problem: Problem, panel: Panel) -> list[Polygon]:
    """The connected parts of a panel that pieces may lie on, its grain along +x."""
    edge = max(0.0, problem.edge_margin_mm - SPARING_MM)
    grow = max(0.0, problem.flaw_margin_mm - SPARING_MM)
    cloth = _offset([_upright(panel.outline, panel)], -edge, pyclipper.JT_ROUND)
    flaws = [
        path
        for flaw in panel.flaws
        for path in _offset([_upright(flaw, panel)], grow, pyclipper.JT_ROUND)
    ]
    if not cloth:
        return []
    return _polygons(_difference(cloth, flaws))
