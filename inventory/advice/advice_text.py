"""Advice as plain text, one garment to a page, to lie beside the machine.

First what must not be done, then what to do in the order of the work, then what to take
care of, and last why, how sure and from where.
"""

from collections.abc import Iterator
from textwrap import fill

from inventory.advice.advise import Advice
from inventory.advice.parts import Notice

WIDTH = 88

TITLES = {
    "wash": "Wash",
    "dry": "Dry",
    "press": "Press",
    "shrink": "Shrinkage",
    "interfacing": "Interfacing",
    "needle": "Needle",
    "thread": "Thread",
    "stitch": "Stitch",
    "edge": "Edge",
    "marking": "Mark",
    "holding": "Hold",
    "cutting": "Cut",
    "order": "Order of work",
}


def as_text(advice: Advice) -> str:
    """The advice as text of at most 88 letters a line, ending in a line break."""
    return "\n".join(_lines(advice)) + "\n"


def _lines(advice: Advice) -> Iterator[str]:
    yield from _notices("MUST NOT", advice.must_not)
    yield from _notices("DOES NOT HOLD TOGETHER", advice.conflicts)
    yield "WHAT TO DO"
    for name, part in advice.parts:
        yield _item(f"{TITLES[name]}: {part.text}")
    if advice.interfacing.attach != "none":
        yield _item(f"How to back it: {advice.interfacing.how}")
    yield ""
    yield from _notices("TAKE CARE", advice.cautions)
    yield "WHY, HOW SURE, AND FROM WHERE"
    for name, part in advice.parts:
        yield f"  {TITLES[name]} ({part.certainty.value})"
        for why in part.reasons:
            yield fill(
                f"- {why.text} [{why.source}]",
                WIDTH,
                initial_indent="    ",
                subsequent_indent="      ",
            )


def _notices(title: str, notices: tuple[Notice, ...]) -> Iterator[str]:
    if not notices:
        return
    yield title
    for each in notices:
        yield _item(f"{each.text} {each.because} [{each.source}]")
    yield ""


def _item(text: str) -> str:
    return fill(text, WIDTH, initial_indent="  * ", subsequent_indent="    ")
