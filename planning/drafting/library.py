"""The patterns that come with the program: three bears, a rabbit, a pillow and a heart.

Each is drafted anew at any height within its limits; the built-in patterns are some of those. A key
is that of a kind (``KINDS``) or of its built-in pattern.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import get_args

from planning.drafting.animal_seams import bear_parts, bear_seams
from planning.drafting.bear import SEAM_ALLOWANCE_MM, bear
from planning.drafting.errors import DraftError
from planning.drafting.figure import Figure, View, figure, rabbit_figure
from planning.drafting.figure_flat import heart_figure, pillow_figure
from planning.drafting.heart import HEART_PARTS, HEART_SEAMS, heart
from planning.drafting.kinds import FIRST_KEY, kind_of, stance_of
from planning.drafting.kinds import KINDS as KINDS
from planning.drafting.kinds import Kind as Kind
from planning.drafting.pieces import DraftPattern, DraftSize
from planning.drafting.pillow import PILLOW_PARTS, PILLOW_SEAMS, pillow
from planning.drafting.rabbit import rabbit
from planning.drafting.rabbit_seams import rabbit_parts, rabbit_seams
from planning.drafting.sewing import Part, Seam
from planning.drafting.stance import Stance


def built_in_pattern(key: str = FIRST_KEY) -> DraftPattern:
    """Return a pattern in its usual sizes, standing and looking ahead.

    Frozen, so one copy serves everyone. Raises DraftError for an unknown key.
    """
    return _pattern_of(kind_of(key))


@cache
def _pattern_of(kind: Kind) -> DraftPattern:
    return DraftPattern(
        key=kind.pattern_key,
        name=kind.name,
        description=kind.description,
        sizes=tuple(drafted(kind.key, height_mm) for height_mm in kind.heights_mm),
        seams=seams_for(kind.key),
        parts=parts_for(kind.key),
    )


def built_in_patterns() -> tuple[DraftPattern, ...]:
    """Return every built-in pattern, the classic bear first."""
    return tuple(_pattern_of(kind) for kind in KINDS.values())


def drafted(
    key: str,
    height_mm: float,
    *,
    seam_allowance_mm: float = SEAM_ALLOWANCE_MM,
    pose: str = "standing",
    face: str = "ahead",
) -> DraftSize:
    """Draft one size at any height within the limits of its kind.

    Raises DraftError for a key, a height, a pose or a face it does not know, OutlineError for a
    negative allowance and CutLineCrosses for one too wide.
    """
    kind = kind_of(key)
    stance = stance_of(kind, pose, face)
    return _DRAFTERS[kind.key].draft(height_mm, seam_allowance_mm, stance)


def seams_for(key: str, pose: str = "standing", face: str = "ahead") -> tuple[Seam, ...]:
    """Return the seams of a kind in the order they are sewn; raises DraftError as ``drafted``."""
    kind = kind_of(key)
    return _DRAFTERS[kind.key].seams(stance_of(kind, pose, face))


def parts_for(key: str, pose: str = "standing", face: str = "ahead") -> tuple[Part, ...]:
    """Return the stuffed parts of a kind; raises DraftError as ``drafted``."""
    kind = kind_of(key)
    return _DRAFTERS[kind.key].parts(stance_of(kind, pose, face))


def figure_for(
    key: str,
    height_mm: float,
    view: View = "front",
    pose: str = "standing",
    face: str = "ahead",
) -> Figure:
    """Draw the finished thing by the measures of its pattern; raises DraftError as ``drafted``."""
    kind = kind_of(key)
    if view not in get_args(View):
        raise DraftError(f"“{view}” is no view. Choose one of: {', '.join(get_args(View))}.")
    return _DRAFTERS[kind.key].figure(height_mm, view, stance_of(kind, pose, face))


@dataclass(frozen=True)
class _Drafter:
    draft: Callable[[float, float, Stance], DraftSize]
    seams: Callable[[Stance], tuple[Seam, ...]]
    parts: Callable[[Stance], tuple[Part, ...]]
    figure: Callable[[float, View, Stance], Figure]


def _bear(character: str) -> _Drafter:
    return _Drafter(
        lambda height_mm, allowance_mm, stance: bear(height_mm, character, allowance_mm, stance),
        bear_seams,
        bear_parts,
        lambda height_mm, view, stance: figure(height_mm, character, view, stance),
    )


_DRAFTERS = {
    "bear": _bear("classic"),
    "bear-baby": _bear("baby"),
    "bear-long": _bear("long-limbed"),
    "rabbit": _Drafter(rabbit, rabbit_seams, rabbit_parts, rabbit_figure),
    "pillow": _Drafter(
        lambda height_mm, allowance_mm, _: pillow(height_mm, allowance_mm),
        lambda _: PILLOW_SEAMS,
        lambda _: PILLOW_PARTS,
        lambda height_mm, view, _: pillow_figure(height_mm, view),
    ),
    "heart": _Drafter(
        lambda height_mm, allowance_mm, _: heart(height_mm, allowance_mm),
        lambda _: HEART_SEAMS,
        lambda _: HEART_PARTS,
        lambda height_mm, view, _: heart_figure(height_mm, view),
    ),
}
