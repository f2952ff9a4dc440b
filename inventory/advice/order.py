"""The steps of the work for one cloth, in the order they are done.

It repeats nothing the other parts say; it only says what comes before what.
"""

from inventory.advice.contradictions import WISH_AGAINST
from inventory.advice.facts import Fact, common, published
from inventory.advice.known import KnownCloth
from inventory.advice.methods import WASH_ORDER, WashMethod
from inventory.advice.parts import Finding, reason
from inventory.advice.recommendations import (
    EdgeAdvice,
    InterfacingAdvice,
    OrderAdvice,
    PressAdvice,
    WashAdvice,
)
from inventory.advice.sources import CCI_COLOUR_TEST

ORDER: Fact[bool] = common(True)
TEST_BEFORE_WASH: Fact[bool] = published(True, CCI_COLOUR_TEST)

_QUARANTINE = {
    "mould": "keep it sealed by itself, dry it and clean off the mould outdoors",
    "moth": "freeze it in a sealed bag",
    "mothball": "air it outdoors",
    "blood": "keep it apart and handle it with gloves",
    "cream": "keep it apart, away from any flame",
    "smoke": "air it outdoors",
    "dry-cleaned": "air it for several days",
}
_STOP = ("stop here, before any iron or scissors, and talk it over with the giver",)
_CONFLICTING_WITH_SCENT = frozenset({"mothball", "smoke"})


def order_of(
    cloth: KnownCloth,
    wash: WashAdvice,
    press: PressAdvice,
    interfacing: InterfacingAdvice,
    edge: EdgeAdvice,
) -> Finding[OrderAdvice]:
    """The order of work that the other parts ask for."""
    steps = (
        "open the bag with gloves on and shake the pockets out onto a tray",
        *_quarantine_steps(cloth),
        "photograph and measure it as it came",
        *_cleaning_steps(wash),
        *(_STOP if _stops(cloth) else _making_steps(press, interfacing, edge)),
    )
    part = OrderAdvice(
        text="Work in this order: " + "; ".join(steps) + ".",
        reasons=(
            reason("Each step would undo or hide the one before if they were swapped.", ORDER),
            reason("A colour test always comes before wetting.", TEST_BEFORE_WASH),
        ),
        steps=steps,
    )
    return Finding(part)


def _quarantine_steps(cloth: KnownCloth) -> tuple[str, ...]:
    return tuple(
        step
        for condition, step in _QUARANTINE.items()
        if condition in cloth.conditions
        and not (cloth.keep_scent and condition in _CONFLICTING_WITH_SCENT)
    )


def _cleaning_steps(wash: WashAdvice) -> tuple[str, ...]:
    if wash.method is WashMethod.NONE:
        return ("leave it unwashed",)
    if wash.method is WashMethod.PROFESSIONAL:
        return ("have it cleaned, air it, and measure it again",)
    if WASH_ORDER[wash.method] <= WASH_ORDER[WashMethod.SPOT]:
        return ("test the colour, then dab it clean and let it dry",)
    return ("mark two lengths, test the colour, wash, dry, and measure the lengths again",)


def _stops(cloth: KnownCloth) -> bool:
    """Whether the giver must be asked before anything is pressed or cut."""
    if cloth.frailty == 4 or "antique" in cloth.conditions:
        return True
    return cloth.stays_unwashed and bool(cloth.conditions & WISH_AGAINST.keys())


def _making_steps(
    press: PressAdvice, interfacing: InterfacingAdvice, edge: EdgeAdvice
) -> tuple[str, ...]:
    return (
        *_pressing_steps(press),
        *_backing_and_cutting_steps(interfacing, edge),
        "sew, check every seam, turn and stuff",
    )


def _pressing_steps(press: PressAdvice) -> tuple[str, ...]:
    return () if press.touch == "none" else ("open the seams and press the panels",)


def _backing_and_cutting_steps(interfacing: InterfacingAdvice, edge: EdgeAdvice) -> tuple[str, ...]:
    cut = "prove that the pieces fit, mark them, and cut"
    if edge.finish == "stitch-then-cut":
        cut = "prove that the pieces fit, mark them, stitch inside the lines, and cut"
    finish = () if edge.finish in ("none", "pink", "stitch-then-cut") else ("finish the edges",)
    if interfacing.attach == "fusible":
        return ("fuse a test patch, then the whole panels", cut, *finish)
    if interfacing.attach == "sew-in":
        return (cut, "baste the sewn-in layer to each piece", *finish)
    return (cut, *finish)
