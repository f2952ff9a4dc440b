"""Pillow and heart as they look when stuffed, from the front and from the side."""

from planning.drafting.curves import Line, smooth
from planning.drafting.figure import Figure, View, figure_of
from planning.drafting.heart import BAND_SHARE, half_lines, heart_fits
from planning.drafting.pillow import OVERLAP, WIDTH_SHARE, pillow_fits
from planning.drafting.rings import Point
from planning.drafting.shapes import Shape, flipped, rounded

DRAWN_IN = 0.035  # of the height: how far stuffing draws in the middle of an edge
PILLOW_DEPTH = 0.34  # of its longer side
BULGE = 0.10  # of the height: how far the face of a heart stands out from its band


def pillow_figure(height_mm: float, view: View = "front") -> Figure:
    """Draw a pillow by its longer side; raises DraftError as ``pillow`` does."""
    pillow_fits(height_mm)
    shapes = _pillow_front(height_mm) if view == "front" else _pillow_side(height_mm)
    return figure_of(shapes, height_mm)


def heart_figure(height_mm: float, view: View = "front") -> Figure:
    """Draw a heart by its height; raises DraftError as ``heart`` does."""
    heart_fits(height_mm)
    shapes = _heart_front(height_mm) if view == "front" else _heart_side(height_mm)
    return figure_of(shapes, height_mm)


def _pillow_front(tall: float) -> list[Shape]:
    half, draw = WIDTH_SHARE * tall / 2, DRAWN_IN * tall
    corners = [(-half, 0.0), (half, 0.0), (half, tall), (-half, tall)]
    middles = [(0.0, draw), (half - draw, tall / 2), (0.0, tall - draw), (draw - half, tall / 2)]
    outline: Line = []
    for n, corner in enumerate(corners):
        outline += smooth([corner, middles[n], corners[(n + 1) % 4]])[:-1]
    return [
        Shape("figure-body", rounded(outline, 0.035 * tall)),
        *_creases(half, tall),
    ]


def _creases(half: float, tall: float) -> list[Shape]:
    """The soft folds that run from each corner of a full pillow towards its middle."""
    lines = []
    for x, way_x in ((-half, 1), (half, -1)):
        for y, way_y in ((0.0, 1), (tall, -1)):
            start = (x + way_x * 0.055 * tall, y + way_y * 0.055 * tall)
            end = (x + way_x * 0.15 * tall, y + way_y * 0.13 * tall)
            bent = ((start[0] + end[0]) / 2 + way_x * 0.008 * tall, (start[1] + end[1]) / 2)
            lines.append(Shape("figure-seam", smooth([start, bent, end]), is_closed=False))
    return lines


def _pillow_side(tall: float) -> list[Shape]:
    deep = PILLOW_DEPTH * tall / 2
    right: list[Point] = [(0.42 * deep, 0.13 * tall), (0.92 * deep, 0.32 * tall)]
    right += [(deep, 0.5 * tall), (0.92 * deep, 0.68 * tall), (0.42 * deep, 0.87 * tall)]
    edge = smooth([(0.0, 0.0), *right, (0.0, tall)])
    outline = [*edge[:-1], *reversed(flipped(edge)[1:])]
    seam: Line = [(0.0, 0.0), (0.0, tall)]
    overlap = smooth([(0.97 * deep, OVERLAP[1] * tall), (0.35 * deep, (OVERLAP[1] - 0.02) * tall)])
    return [
        Shape("figure-body", outline),
        Shape("figure-seam", seam, is_closed=False),
        Shape("figure-seam", overlap, is_closed=False),
    ]


def _heart_front(tall: float) -> list[Shape]:
    outer, centre = half_lines(tall)
    outline = [*outer[:-1], *reversed(flipped(outer)[1:])]
    return [
        Shape("figure-body", rounded(outline, 0.03 * tall)),
        Shape("figure-seam", centre, is_closed=False),
    ]


def _heart_side(tall: float) -> list[Shape]:
    band, full = BAND_SHARE * tall / 2, (BAND_SHARE / 2 + BULGE) * tall
    right: list[Point] = [(0.72 * band, 0.0), (0.80 * full, 0.18 * tall), (full, 0.60 * tall)]
    right += [(0.84 * full, 0.92 * tall), (0.80 * band, tall)]
    edge = smooth(right, start_deg=20, end_deg=165)
    outline = [*edge, *reversed(flipped(edge))]
    seam = smooth([(0.72 * band, 0.0), (band, 0.5 * tall), (0.80 * band, tall)])
    return [
        Shape("figure-body", rounded(outline, 0.05 * tall)),
        Shape("figure-seam", seam, is_closed=False),
        Shape("figure-seam", flipped(seam), is_closed=False),
    ]
