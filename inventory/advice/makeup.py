"""A garment of several cloths: shell, lining, trim, each with its own advice.

While the garment is whole the most delicate part governs how it is washed and dried;
once it is opened up each part follows its own advice.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from inventory.advice.advise import Advice, advise
from inventory.advice.cloth import Cloth
from inventory.advice.methods import DRY_ORDER, WASH_ORDER
from inventory.advice.parts import Notice, notice
from inventory.advice.problems import BadFigure
from inventory.advice.recommendations import DryAdvice, PressAdvice, WashAdvice
from inventory.advice.wash_facts import MOST_DELICATE_GOVERNS


@dataclass(frozen=True, slots=True)
class MakeUp:
    """The advice for each part by name, and what governs the garment while it is whole.

    ``max_c`` is the coolest water ceiling of all parts; it may be below that of ``wash``.
    """

    parts: dict[str, Advice]
    wash_by: str
    wash: WashAdvice
    max_c: int | None
    dry_by: str
    dry: DryAdvice
    press_by: str
    press: PressAdvice
    notes: tuple[Notice, ...]


def advise_parts(cloths: Mapping[str, Cloth]) -> MakeUp:
    """Advice for each of ``cloths`` by the name of its part, and for the whole garment.

    Raises :class:`BadFigure` when there is no part, and what :func:`advise` raises.
    """
    if not cloths:
        raise BadFigure("A garment has at least one part.")
    parts = {name: advise(cloth) for name, cloth in cloths.items()}
    wash_by = min(parts, key=lambda name: _wash_rank(parts[name].wash))
    dry_by = min(parts, key=lambda name: DRY_ORDER[parts[name].dry.method])
    press_by = min(parts, key=lambda name: parts[name].press.max_c or 0)
    ceilings = [each.wash.max_c for each in parts.values()]
    known = [max_c for max_c in ceilings if max_c is not None]
    return MakeUp(
        parts=parts,
        wash_by=wash_by,
        wash=parts[wash_by].wash,
        max_c=None if len(known) < len(ceilings) else min(known),
        dry_by=dry_by,
        dry=parts[dry_by].dry,
        press_by=press_by,
        press=parts[press_by].press,
        notes=_notes(wash_by) if len(parts) > 1 else (),
    )


def _wash_rank(wash: WashAdvice) -> tuple[int, int]:
    return WASH_ORDER[wash.method], wash.max_c or 0


def _notes(wash_by: str) -> tuple[Notice, ...]:
    return (
        notice(
            f"While the garment is whole, its {wash_by} decides how it is cleaned; once it is "
            "opened up, follow the advice for each part.",
            "The most delicate part is harmed first.",
            MOST_DELICATE_GOVERNS,
        ),
    )
