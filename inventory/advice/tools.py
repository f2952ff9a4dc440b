"""What to mark, hold and cut a cloth with, so that no trace is left on what is kept."""

from inventory.advice.facts import Fact
from inventory.advice.known import KnownCloth
from inventory.advice.parts import Finding, Reason, reason
from inventory.advice.recommendations import ToolAdvice
from inventory.advice.tool_facts import (
    BACK_CHALK,
    BACK_PENCIL,
    BALL_PINS,
    BASTING,
    BLADE_BACK,
    CHALK,
    CLIP_FORMS,
    CLIPS,
    FINE_PINS,
    HIDE_BLADE,
    NO_VANISHING_INK,
    OLD_SHEARS,
    PINS,
    ROTARY,
    ROTARY_FORMS,
    SHEARS,
    THREAD_TACK_FORMS,
    THREAD_TACKS,
)


def marking_of(cloth: KnownCloth) -> Finding[ToolAdvice]:
    """What to mark the pieces with."""
    fact, why = _marking(cloth)
    text = f"Mark with {fact.value}, tried on a scrap first."
    return _tool(fact, text, why, reason(NO_VANISHING_INK.value, NO_VANISHING_INK))


def holding_of(cloth: KnownCloth) -> Finding[ToolAdvice]:
    """What to hold the pieces together with."""
    fact, why = _holding(cloth)
    return _tool(fact, f"Hold the pieces with {fact.value}.", why)


def cutting_of(cloth: KnownCloth) -> Finding[ToolAdvice]:
    """What to cut with."""
    fact, why = _cutting(cloth)
    return _tool(fact, f"Cut with {fact.value}.", why)


def _tool(fact: Fact[str], text: str, why: str, *more: Reason) -> Finding[ToolAdvice]:
    reasons = (reason(why, fact), *more)
    return Finding(ToolAdvice(text=text, reasons=reasons, tool=fact.value))


def _marking(cloth: KnownCloth) -> tuple[Fact[str], str]:
    if cloth.is_hide or cloth.form in ("leather", "suede", "coated"):
        return BACK_PENCIL, "Marks on the face of a hide or coating stay."
    if cloth.construction is not None and cloth.construction.has_pile:
        return BACK_CHALK, "Chalk on a pile cannot be brushed out."
    if cloth.form in THREAD_TACK_FORMS or cloth.frailty >= 3:
        return THREAD_TACKS, "Chalk shows through, drags or does not show on this cloth."
    if not cloth.fibres:
        return THREAD_TACKS, "Thread leaves no mark on cloth that nobody knows."
    if any(fibre.water_spots.value for fibre in cloth.fibres):
        return THREAD_TACKS, "Wet marks spot this cloth, and chalk must be rubbed out."
    return CHALK, "Chalk brushes off."


def _holding(cloth: KnownCloth) -> tuple[Fact[str], str]:
    if cloth.is_hide or cloth.form in CLIP_FORMS:
        return CLIPS, "Pin holes stay, pull or get lost in this cloth."
    if cloth.frailty >= 3 or cloth.form in ("sequinned", "velvet"):
        return BASTING, "Pins strain or shift this cloth; basting holds it."
    if cloth.has("silk") or cloth.form in ("satin", "chiffon"):
        return FINE_PINS, "Thick pins leave holes and pulls in fine cloth."
    if cloth.is_knit:
        return BALL_PINS, "A sharp pin can cut a stitch and start a run."
    if not cloth.fibres:
        return CLIPS, "Clips leave no hole in cloth that nobody knows."
    return PINS, "Holes inside the allowance are never seen."


def _cutting(cloth: KnownCloth) -> tuple[Fact[str], str]:
    if cloth.form == "fur-fabric" or cloth.has("fur"):
        return BLADE_BACK, "Shears cut the pile off blunt along every seam."
    if cloth.is_hide or cloth.form in ("leather", "suede"):
        return HIDE_BLADE, "A blade leaves a clean edge and does not shift the hide."
    if cloth.form == "sequinned":
        return OLD_SHEARS, "Sequins and beads nick fine blades."
    if cloth.form in ROTARY_FORMS or cloth.has("silk"):
        return ROTARY, "This cloth slides or stretches away from shears."
    return SHEARS, "Worn panels differ, so each is cut by itself with its flaws in sight."
