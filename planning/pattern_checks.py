"""What a pattern fails, in words: seams that do not meet, hands that all face one way, loose edges.

A pattern whose seams do not meet may be used, and every page that leads to cutting says so. One in
which all copies of a handed piece face one way is stopped until that is mended or meant.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Max

from inventory.models import Garment
from planning.drafting.errors import SeamNameError
from planning.drafting.hands import HandFault, hand_faults
from planning.drafting.pieces import DraftSize
from planning.drafting.practice import too_few_kinds
from planning.drafting.seams import (
    HAND_DRAWN_TOLERANCE_MM,
    TOLERANCE_MM,
    SeamWalk,
    unsewn_edges,
    walk_seam,
)
from planning.drafting.sewing import Seam
from planning.drafts import draft_size, mark_of, seams_of
from planning.models import Pattern, PatternPiece, PatternSize


@dataclass(frozen=True, slots=True)
class WalkedSeam:
    """A seam in one size; ``walk`` is None where an edge of it is missing, as ``words`` say."""

    seam: Seam
    mark: str
    walk: SeamWalk | None
    words: str = ""

    @property
    def is_met(self) -> bool:
        return self.walk is not None and self.walk.ok


@dataclass(frozen=True, slots=True)
class Findings:
    """What walking one size found."""

    size: PatternSize
    draft: DraftSize
    seams: tuple[WalkedSeam, ...]
    hands: tuple[HandFault, ...]
    loose: tuple[tuple[str, str], ...]
    is_too_few: bool

    @property
    def sound_seams(self) -> list[Seam]:
        """The seams all of whose edges the size has."""
        return [each.seam for each in self.seams if each.walk is not None]

    @property
    def failing(self) -> list[WalkedSeam]:
        return [each for each in self.seams if not each.is_met]

    @property
    def is_flawed(self) -> bool:
        """Whether a seam does not meet."""
        return bool(self.failing)


def findings_of(size: PatternSize, pattern: Pattern) -> Findings:
    """Walk the seams of one size and look at its hands."""
    draft = draft_size(size)
    seams = seams_of(pattern)
    tolerance_mm = TOLERANCE_MM if pattern.kind else HAND_DRAWN_TOLERANCE_MM
    walked = tuple(
        _walked(draft, seam, mark_of(row), tolerance_mm)
        for seam, row in zip(seams, pattern.seams, strict=True)
    )
    meant = {piece.name for piece in size.pieces.all() if piece.same_hand}
    return Findings(
        size=size,
        draft=draft,
        seams=walked,
        hands=hand_faults(draft.pieces, meant),
        loose=unsewn_edges(draft, seams),
        is_too_few=not pattern.kind and too_few_kinds(piece.name for piece in draft.pieces),
    )


def _walked(draft: DraftSize, seam: Seam, mark: str, tolerance_mm: float) -> WalkedSeam:
    try:
        return WalkedSeam(seam, mark, walk_seam(draft, seam, tolerance_mm))
    except SeamNameError as error:
        return WalkedSeam(seam, mark, None, str(error))


def hand_faults_of(pattern: Pattern) -> list[HandFault]:
    """The pieces that stop a pattern, each named once whatever the number of sizes."""
    found: dict[str, HandFault] = {}
    for size in pattern.sizes.prefetch_related("pieces"):
        for fault in findings_of(size, pattern).hands:
            found.setdefault(fault.piece, fault)
    return list(found.values())


def stiff_garments(pattern: Pattern, garments: Iterable[Garment]) -> list[tuple[float, Garment]]:
    """Garments that stretch less than the pattern asks, or are not tested yet, and what it asks."""
    pieces = PatternPiece.objects.of(pattern.workshop).filter(size__pattern=pattern)
    asked = pieces.aggregate(most=Max("asks_stretch_pct"))["most"] or 0.0
    if not asked:
        return []
    return [(asked, each) for each in garments if (each.stretch_across_pct or 0) < asked]


def flawed_sizes(pattern: Pattern) -> list[PatternSize]:
    """The sizes in which a seam does not meet, for every page that leads to cutting."""
    sizes = pattern.sizes.prefetch_related("pieces")
    return [size for size in sizes if findings_of(size, pattern).is_flawed]
