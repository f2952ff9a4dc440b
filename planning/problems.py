"""Turns a keepsake and a size into the question that the coverage room answers.

Reads rows, decides nothing. Cloth that will still shrink goes in as the part that is left in every
case; details kept aside are no cloth, unless a piece shall show them. Garments go by their tag and
panels by tag and part, so that a proof reads in the maker's own words.
"""

from dataclasses import dataclass

from django.db.models import Prefetch
from django.urls import reverse
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from inventory.cloth import places_of, shrinkage_for
from inventory.measuring.rings import Ring, clean_ring
from inventory.measuring.shrinkage import sound_core
from inventory.models import Garment, Panel, Status
from inventory.stripes import origin_of, repeat_of
from inventory.washing import MeasuredShrinkage
from planning.coverage.problem import Panel as CoverPanel
from planning.coverage.problem import Piece, Problem, Repeat
from planning.coverage.sound import MOST_COPIES, MOST_PANELS
from planning.lay_rules import SizeRules, rules_for
from planning.models import Keepsake, PatternSize
from planning.showing import still_aside
from planning.waiting import Remark
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
    pinned = {pin.detail_id for pin in keepsake.pins.all()}
    for row in panels_open_to(keepsake):
        name = _free_name(row, rows)
        panel, is_predicted = _cover_panel(row, name, pinned)
        if panel is not None:
            rows[name] = row
            panels.append(panel)
            predicted = predicted or is_predicted
    return Cloth(rows, tuple(panels), predicted)


def nothing_to_cut(keepsake: Keepsake) -> str:
    """Why there is no cloth to check: none is measured, or none of it may be cut."""
    rows = Panel.objects.of(keepsake.workshop).here()
    if rows.filter(garment__collection=keepsake.collection).exists():
        return "Every garment that is measured is left out, cut or returned already."
    return "No panel is measured yet, so there is nothing to check."


def _free_name(row: Panel, taken: dict[str, Panel]) -> str:
    name = f"{row.garment.tag} {row.name}"
    number = 2
    while name in taken:
        name = f"{row.garment.tag} {row.name} ({number})"
        number += 1
    return name


def problem_of(
    keepsake: Keepsake, size: PatternSize, cloth: Cloth, rules: SizeRules | None = None
) -> Problem:
    """The question: does this cloth cover this size, by this keepsake's rules?"""
    rules = rules or rules_for(keepsake, size, cloth.rows)
    garments = _garments_allowed(keepsake, cloth)
    pieces = tuple(
        Piece(
            id=piece.name,
            outline=_ring(piece.cut_line_mm),
            grain_deg=piece.grain_deg,
            count=piece.count,
            mirrored=piece.mirrored,
            grain_tolerance_deg=keepsake.grain_tolerance_deg,
            bias=piece.is_bias,
            panels=rules.panels.get(piece.name),
            garments=garments.get(piece.name),
        )
        for piece in size.pieces.all()
    )
    return Problem(
        panels=cloth.panels,
        pieces=pieces,
        clearance_mm=keepsake.clearance_mm,
        edge_margin_mm=keepsake.edge_margin_mm,
        flaw_margin_mm=keepsake.flaw_margin_mm,
        same_garment=tuple(rules.same_garment),
        match=tuple(rules.matches),
        pin=tuple(rules.pins),
        locked=tuple(rules.locked),
    )


def too_much(keepsake: Keepsake, size: PatternSize, cloth: Cloth) -> Remark | None:
    """Why a question is too large to be asked at all, and what to do about it."""
    if len(cloth.panels) > MOST_PANELS:
        words = (
            f"{len(cloth.panels)} panels are open to this keepsake, and at most {MOST_PANELS} can "
            "be looked at together. Leave out the garments that are not to be cut for it."
        )
        address = reverse("planning:rules", args=[keepsake.pk]) + "#id_left_out"
        return Remark(words, address, "Leave garments out", stops=True)
    copies = sum(piece.count for piece in size.pieces.all())
    if copies > MOST_COPIES:
        words = f"This size asks for {copies} pieces, and at most {MOST_COPIES} can be laid."
        return Remark(words, size.get_absolute_url(), "See the pieces", stops=True)
    return None


def _garments_allowed(keepsake: Keepsake, cloth: Cloth) -> dict[str, tuple[str, ...]]:
    """The garments each piece with a rule may come from, those without cloth left out."""
    here = {panel.garment for panel in cloth.panels}
    allowed: dict[str, tuple[str, ...]] = {}
    for rule in keepsake.piece_rules.all():
        tags = allowed.get(rule.piece_name, ())
        allowed[rule.piece_name] = (*tags, *({rule.garment.tag} & here))
    return allowed


def _cover_panel(row: Panel, name: str, pinned: set[int]) -> tuple[CoverPanel | None, bool]:
    places = [*places_of(list(row.flaws.all())), *places_of(still_aside(row, pinned))]
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
        repeat=_repeat(row),
    )
    is_foretold = shrinkage is not None and not isinstance(shrinkage, MeasuredShrinkage)
    return panel, is_foretold


def _repeat(row: Panel) -> Repeat | None:
    repeat, origin = repeat_of(row), origin_of(row)
    return Repeat(*repeat, origin) if repeat and origin else None


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
