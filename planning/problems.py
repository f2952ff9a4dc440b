"""Turns a keepsake and a size into the question that the coverage room answers.

Reads rows, decides nothing. Cloth that will still shrink goes in as the part that is left in every
case; details kept aside are no cloth. Garments go by their tag and panels by tag and part, so that
a proof reads in the maker's own words.
"""

from dataclasses import dataclass

from django.db.models import Prefetch
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from inventory.cloth import places_of, shrinkage_for
from inventory.measuring.rings import Ring, clean_ring
from inventory.measuring.shrinkage import sound_core
from inventory.models import Garment, Panel, Status
from inventory.washing import MeasuredShrinkage
from planning.coverage.problem import Panel as CoverPanel
from planning.coverage.problem import Piece, Problem
from planning.models import Keepsake, PatternSize
from shared.errors import OutlineError

GONE = (Status.CUT, Status.RETURNED)


@dataclass(frozen=True, slots=True)
class Cloth:
    """The panels a keepsake may be cut from, as rows and as the coverage room sees them."""

    rows: dict[str, Panel]
    panels: tuple[CoverPanel, ...]
    is_shrinkage_predicted: bool

    def name_of(self, panel_pk: int) -> str:
        """The name a row has in the question; empty for a panel that is not in it."""
        return next((name for name, row in self.rows.items() if row.pk == panel_pk), "")


def panels_open_to(keepsake: Keepsake) -> list[Panel]:
    """The measured panels of the collection that are here, whole and not left out."""
    left_out = [garment.pk for garment in keepsake.left_out.all()]
    rows = (
        Panel.objects.of(keepsake.workshop).here().filter(garment__collection=keepsake.collection)
    )
    garments = Garment.objects.with_cloth()
    rows = rows.exclude(garment__status__in=GONE).exclude(garment__in=left_out)
    return list(
        rows.order_by("garment__tag", "pk").prefetch_related(
            "flaws", "details", Prefetch("garment", queryset=garments)
        )
    )


def cloth_of(keepsake: Keepsake) -> Cloth:
    """The cloth a keepsake may be cut from. Panels that shrink to nothing are left out."""
    rows: dict[str, Panel] = {}
    panels: list[CoverPanel] = []
    predicted = False
    for row in panels_open_to(keepsake):
        name = _free_name(row, rows)
        panel, is_predicted = _cover_panel(row, name)
        if panel is not None:
            rows[name] = row
            panels.append(panel)
            predicted = predicted or is_predicted
    return Cloth(rows, tuple(panels), predicted)


def _free_name(row: Panel, taken: dict[str, Panel]) -> str:
    name = f"{row.garment.tag} {row.name}"
    number = 2
    while name in taken:
        name = f"{row.garment.tag} {row.name} ({number})"
        number += 1
    return name


def problem_of(keepsake: Keepsake, size: PatternSize, cloth: Cloth) -> Problem:
    """The question: does this cloth cover this size, by this keepsake's rules?"""
    allowed: dict[str, tuple[str, ...]] = {}
    for rule in keepsake.piece_rules.all():
        allowed[rule.piece_name] = (*allowed.get(rule.piece_name, ()), rule.garment.tag)
    pieces = tuple(
        Piece(
            id=piece.name,
            outline=_ring(piece.cut_line_mm),
            grain_deg=piece.grain_deg,
            count=piece.count,
            mirrored=piece.mirrored,
            grain_tolerance_deg=keepsake.grain_tolerance_deg,
            garments=allowed.get(piece.name),
        )
        for piece in size.pieces.all()
    )
    return Problem(
        panels=cloth.panels,
        pieces=pieces,
        clearance_mm=keepsake.clearance_mm,
        edge_margin_mm=keepsake.edge_margin_mm,
        flaw_margin_mm=keepsake.flaw_margin_mm,
    )


def _cover_panel(row: Panel, name: str) -> tuple[CoverPanel | None, bool]:
    kept_aside = [detail for detail in row.details.all() if detail.is_kept_aside]
    places = [*places_of(list(row.flaws.all())), *places_of(kept_aside)]
    shapes = [place.shape for place in places]
    shrinkage = shrinkage_for(row)
    outline: BaseGeometry = Polygon(row.outline_mm)
    if shrinkage is not None:
        outline, shapes = sound_core(Polygon(row.outline_mm), shapes, shrinkage, row.grain_deg)
    ring = _largest_ring(outline)
    if ring is None:
        return None, False
    panel = CoverPanel(
        id=name,
        garment=row.garment.tag,
        outline=ring,
        flaws=tuple(flaw for shape in shapes for flaw in _rings(shape)),
        grain_deg=row.grain_deg,
        one_way=row.garment.is_one_way,
    )
    is_foretold = shrinkage is not None and not isinstance(shrinkage, MeasuredShrinkage)
    return panel, is_foretold


def _largest_ring(shape: BaseGeometry) -> Ring | None:
    rings = _rings(shape)
    return max(rings, key=lambda ring: Polygon(ring).area) if rings else None


def _rings(shape: BaseGeometry) -> list[Ring]:
    """The outer rings of a shape, those with next to no area left out."""
    rings = []
    for part in getattr(shape, "geoms", [shape]):
        if part.geom_type != "Polygon" or part.is_empty:
            continue
        try:
            rings.append(clean_ring(part.exterior.coords, least_mm2=0.01))
        except OutlineError:
            continue
    return rings


def _ring(points: list[list[float]]) -> Ring:
    return tuple((x, y) for x, y in points)
