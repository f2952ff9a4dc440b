"""What a lay leaves of the cloth that is still of use: whole panels, and the largest rectangle."""

from collections.abc import Iterable, Sequence

import numpy as np
import shapely
from shapely import Polygon, affinity
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from planning.coverage.contacts import Booleans
from planning.coverage.problem import Placement, Problem
from planning.coverage.rings import mended
from planning.coverage.spare import usable_cloth

CELL_MM = 10.0


def leftover_share(problem: Problem, placements: Sequence[Placement]) -> float:
    """The share of the usable cloth that is left in untouched panels and in one rectangle of the
    others, on the grain; from 0 to 1.
    """
    cut: dict[str, list[Polygon]] = {}
    for place in placements:
        cut.setdefault(place.panel, []).append(Polygon(mended(place.outline)))
    total = whole = rectangle = 0.0
    for panel in problem.panels:
        cloth = usable_cloth(problem, panel)
        total += cloth.area
        if panel.id not in cut:
            whole += cloth.area
            continue
        left = cloth.difference(unary_union(cut[panel.id]).buffer(problem.clearance_mm))
        rectangle = max(rectangle, largest_rectangle_mm2(left, panel.grain_deg))
    return (whole + rectangle) / total if total else 0.0


def largest_rectangle_mm2(cloth: BaseGeometry, grain_deg: float) -> float:
    """The area of a large rectangle on the grain inside the cloth, in whole centimetres.

    Never more than there is: it is made of square centimetres that lie wholly on the cloth.
    """
    upright = affinity.rotate(cloth, 90.0 - grain_deg, origin=(0, 0))
    if upright.is_empty:
        return 0.0
    left, low, right, high = upright.bounds
    x, y = np.arange(left, right, CELL_MM), np.arange(low, high, CELL_MM)
    shapely.prepare(upright)
    columns, rows = np.meshgrid(x, y)
    cells = shapely.box(columns, rows, columns + CELL_MM, rows + CELL_MM)
    return CELL_MM**2 * _most_cells(np.asarray(shapely.covers(upright, cells)))


def _most_cells(is_cloth: Booleans) -> int:
    """The number of cells in the largest rectangle of true ones.

    Row by row, with the height of cloth above each cell: the largest rectangle in a histogram, by a
    stack of rising heights.
    """
    heights = np.zeros(is_cloth.shape[1], dtype=int)
    most = 0
    for row in is_cloth:
        heights = np.where(row, heights + 1, 0)
        most = max(most, _most_under(heights.tolist()))
    return most


def _most_under(heights: Iterable[int]) -> int:
    rising: list[tuple[int, int]] = []  # where a height begins, and the height
    most = 0
    for place, height in enumerate([*heights, 0]):
        start = place
        while rising and rising[-1][1] >= height:
            start, lower = rising.pop()
            most = max(most, lower * (place - start))
        rising.append((start, height))
    return most
