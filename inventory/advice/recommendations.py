"""The parts of an answer, each with its own figures beside its words.

One class per question, in the order of the work; the rules that fill them are in the
modules of the same names.
"""

from dataclasses import dataclass

from inventory.advice.methods import DryMethod, WashMethod
from inventory.advice.parts import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class WashAdvice(Part):
    """Whether and how to wash before cutting. ``max_c`` is the water's ceiling."""

    method: WashMethod
    max_c: int | None
    colour_test: bool
    inside_out: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class DryAdvice(Part):
    """How to dry; ``max_c`` is the tumble dryer's ceiling, if it may be used."""

    method: DryMethod
    max_c: int | None
    shade: bool
    drip: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PressAdvice(Part):
    """How hot to press, with steam or not; ``max_c`` is ``None`` for no iron at all."""

    max_c: int | None
    dots: int
    steam: bool
    touch: str
    press_cloth: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ShrinkAdvice(Part):
    """Expected loss along and across the grain, in per cent, from least to most."""

    along_pct: tuple[float, float]
    across_pct: tuple[float, float]
    most_area_loss_pct: float


@dataclass(frozen=True, slots=True, kw_only=True)
class InterfacingAdvice(Part):
    """What to back the cloth with so that it holds its shape as a toy."""

    attach: str
    structure: str | None
    mass_g_m2: tuple[float, float] | None
    fuse_max_c: int | None
    how: str
    test_patch: bool
    pre_shrink: bool
    stretch_after_pct: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NeedleAdvice(Part):
    """The needle's point and its sizes, thinnest and thickest."""

    point: str
    size_nm: tuple[int, int]
    size_us: tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class ThreadAdvice(Part):
    """What thread to sew with."""

    thread: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StitchAdvice(Part):
    """Stitch lengths in millimetres, with the same in stitches per inch."""

    length_mm: float
    curve_length_mm: float
    stitches_per_inch: float
    kind: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeAdvice(Part):
    """Seam allowance and how to finish the cut edge."""

    finish: str
    allowance_mm: float
    fray: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolAdvice(Part):
    """One tool: what to mark with, hold with or cut with."""

    tool: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderAdvice(Part):
    """The steps of the work for this cloth, in order."""

    steps: tuple[str, ...]
