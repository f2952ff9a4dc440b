"""The sentences of a proof: short, in centimetres, and open to a check with a tape measure."""

from collections.abc import Sequence

from planning.coverage.kinds import Kind
from planning.coverage.problem import Panel, Problem
from planning.coverage.room import Room
from planning.coverage.shortage import Shortage

MOST_NAMES = 6


def cm(length_mm: float) -> str:
    """A length in centimetres, to the millimetre.

    >>> cm(305.04)
    '30.5 cm'
    """
    return f"{length_mm / 10:.1f} cm"


def cm2(area_mm2: float) -> str:
    """An area in square centimetres.

    >>> cm2(241_000)
    '2,410 cm²'
    """
    return f"{area_mm2 / 100:,.0f} cm²"


def listed(names: Sequence[str]) -> str:
    """Names in a row, the last joined with 'and'; a long row is cut short.

    >>> listed(["back", "front", "sleeve"])
    'back, front and sleeve'
    """
    names = list(dict.fromkeys(names))
    if len(names) > MOST_NAMES:
        names = [*names[: MOST_NAMES - 1], f"{len(names) - MOST_NAMES + 1} more"]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def nowhere_sentence(kind: Kind, allowed: Sequence[Panel], rooms: Sequence[Room]) -> str:
    """Why one piece fits on none of the panels it may come from."""
    name = kind.piece.id
    if not allowed:
        return (
            f"{name} may be cut from no panel at all: its lists of panels and garments leave none."
        )
    among = listed([panel.id for panel in allowed])
    if not rooms:
        return (
            f"{name} may only be cut from {among}, where margins and flaws leave no usable cloth."
        )
    size = f"{name} is {cm(_along(kind))} along the grain and {cm(_across(kind))} across it"
    if kind.piece.bias or kind.piece.grain_tolerance_deg > 0:
        size += ", and may be turned a little" if not kind.piece.bias else ", to be cut on the bias"
    widest = max(rooms, key=lambda room: room.cloth.area)
    place = (
        f"the largest usable place there, on {widest.panel.id}, measures "
        f"{cm(_along(widest))} along the grain and {cm(_across(widest))} across it at its widest"
    )
    if _along(kind) <= _along(widest) and _across(kind) <= _across(widest):
        place += (
            ", but it is no full rectangle: its edges or flaws cut in, and the piece's own shape "
            "does not lie inside it at any allowed turn"
        )
    return f"{size}. It may only be cut from {among} and fits nowhere there: {place}."


def area_sentence(
    problem: Problem, kinds: Sequence[Kind], panels: Sequence[str], short: Shortage
) -> str:
    """Why some pieces together need more cloth than they can get."""
    names = listed([kind.piece.id for kind in kinds])
    copies = sum(kind.copies for kind in kinds)
    pieces = "1 piece" if copies == 1 else f"{copies} pieces"
    gap = f", with half of the {problem.clearance_mm:g} mm gap around each"
    where = f"only {listed(panels)} can hold them" if panels else "no panel can hold them"
    return (
        f"{names} ({pieces}) need at least {cm2(short.need_mm2)} of cloth{gap}; {where}, "
        f"with at most {cm2(short.have_mm2)} inside the margins and clear of flaws."
    )


def rivals_sentence(kinds: Sequence[Kind], copies: int, rooms: Sequence[Room]) -> str:
    """Why pieces that are in each other's way have too few places."""
    names = listed([kind.piece.id for kind in kinds])
    sizes = "; ".join(
        f"{kind.piece.id} is {cm(_along(kind))} along the grain and {cm(_across(kind))} across it"
        for kind in kinds[:3]
    )
    panels = listed(list(dict.fromkeys(room.panel.id for room in rooms)))
    places = "1 place" if len(rooms) == 1 else f"{len(rooms)} places"
    widest = max(rooms, key=lambda room: room.cloth.area)
    return (
        f"{names}: at least {copies} pieces, of which no two can lie on one place together "
        f"({sizes}). Only {places} can hold any of them, on {panels}; the largest measures "
        f"{cm(_along(widest))} along the grain and {cm(_across(widest))} across it at its widest."
    )


def same_garment_sentence(names: Sequence[str], fits: Sequence[tuple[str, Sequence[str]]]) -> str:
    """Why pieces that must come from one garment cannot."""
    where = "; ".join(
        f"{name} fits only {listed(garments)}" if garments else f"{name} fits none of them"
        for name, garments in fits
    )
    return f"{listed(names)} must all come from one garment, and none holds them all: {where}."


def _along(what: Kind | Room) -> float:
    left, _, right, _ = (what.shape if isinstance(what, Kind) else what.cloth).bounds
    return float(right - left)


def _across(what: Kind | Room) -> float:
    _, low, _, high = (what.shape if isinstance(what, Kind) else what.cloth).bounds
    return float(high - low)
