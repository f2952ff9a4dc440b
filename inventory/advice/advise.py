"""From what is known of a cloth to what it needs, with reasons and sources.

``advise`` runs the rules in the order of the work and gathers their notices. It decides
nothing itself: each question has its own module.
"""

from dataclasses import dataclass, fields
from typing import Any

from inventory.advice.cautions import cautions_of, must_nots_of
from inventory.advice.cloth import Cloth
from inventory.advice.contradictions import contradictions_of
from inventory.advice.dry import dry_of
from inventory.advice.edge import edge_of
from inventory.advice.interfacing import interfacing_of
from inventory.advice.known import known_cloth
from inventory.advice.needle import needle_of
from inventory.advice.order import order_of
from inventory.advice.parts import Finding, Notice, Part
from inventory.advice.press import press_of
from inventory.advice.recommendations import (
    DryAdvice,
    EdgeAdvice,
    InterfacingAdvice,
    NeedleAdvice,
    OrderAdvice,
    PressAdvice,
    ShrinkAdvice,
    StitchAdvice,
    ThreadAdvice,
    ToolAdvice,
    WashAdvice,
)
from inventory.advice.shrink import shrink_of
from inventory.advice.stitch import stitch_of, thread_of
from inventory.advice.tools import cutting_of, holding_of, marking_of
from inventory.advice.wash import wash_of

FORMAT = "bearing-cloth/advice-1"


@dataclass(frozen=True, slots=True)
class Advice:
    """What one cloth needs, part by part, and what to beware of."""

    wash: WashAdvice
    dry: DryAdvice
    press: PressAdvice
    shrink: ShrinkAdvice
    interfacing: InterfacingAdvice
    needle: NeedleAdvice
    thread: ThreadAdvice
    stitch: StitchAdvice
    edge: EdgeAdvice
    marking: ToolAdvice
    holding: ToolAdvice
    cutting: ToolAdvice
    order: OrderAdvice
    must_not: tuple[Notice, ...]
    cautions: tuple[Notice, ...]
    conflicts: tuple[Notice, ...]

    @property
    def parts(self) -> tuple[tuple[str, Part], ...]:
        """The parts by name, as they stand in the class."""
        named = [(each.name, getattr(self, each.name)) for each in fields(self)]
        return tuple((name, part) for name, part in named if isinstance(part, Part))

    def to_json(self) -> dict[str, Any]:
        """The advice as plain values in the advice-1 format."""
        answer: dict[str, Any] = {"format": FORMAT}
        answer |= {name: part.to_json() for name, part in self.parts}
        for name in ("must_not", "cautions", "conflicts"):
            answer[name] = [each.to_json() for each in getattr(self, name)]
        return answer


def advise(cloth: Cloth) -> Advice:
    """What ``cloth`` needs before it is cut and when it is sewn.

    Raises an :class:`~inventory.advice.problems.AdviceError` for what cannot be true.

    >>> advise(Cloth(fibres=(("silk", 100.0),))).press.steam
    False
    """
    known = known_cloth(cloth)
    wash = wash_of(known)
    dry = dry_of(known, wash.part.method)
    press = press_of(known)
    shrink = shrink_of(known, wash.part.method, is_pressed=press.part.max_c is not None)
    interfacing = interfacing_of(known, press.part)
    needle, thread = needle_of(known), thread_of(known)
    stitch = stitch_of(known, interfacing.part)
    edge = edge_of(known, interfacing.part)
    marking, holding, cutting = marking_of(known), holding_of(known), cutting_of(known)
    order = order_of(known, wash.part, press.part, interfacing.part, edge.part)
    findings: tuple[Finding[Any], ...] = (wash, dry, press, interfacing)
    return Advice(
        wash=wash.part,
        dry=dry.part,
        press=press.part,
        shrink=shrink.part,
        interfacing=interfacing.part,
        needle=needle.part,
        thread=thread.part,
        stitch=stitch.part,
        edge=edge.part,
        marking=marking.part,
        holding=holding.part,
        cutting=cutting.part,
        order=order.part,
        must_not=(
            *must_nots_of(known, wash.part),
            *(each for finding in findings for each in finding.must_not),
        ),
        cautions=cautions_of(known, wash.part),
        conflicts=(
            *contradictions_of(known),
            *(each for finding in findings for each in finding.conflicts),
        ),
    )
