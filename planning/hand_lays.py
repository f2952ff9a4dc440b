"""A lay while a person moves its pieces: carried through a form, judged, and put back on request.

Nothing is kept here until it is judged by ``coverage.verify`` and saved by ``planning.laying``. A
draft travels as text from page to page, so two windows do not disturb each other.
"""

import json
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.http import HttpRequest

from planning.coverage.grain import turns_of, upright_deg
from planning.coverage.placing import placement_of
from planning.coverage.problem import Panel, Piece, Placement, Problem
from planning.coverage.verify import Fault, faults_of
from planning.models import PatternPiece, SizeCheck
from planning.problems import Cloth
from planning.spots import copy_words

FARTHEST_MM = 100_000.0
SAME_TURN_DEG = 0.01

type Copy = tuple[str, int]


class DraftError(ValueError):
    """A draft that cannot be read: it names pieces or panels that are not there."""


def draft_text(placements: Sequence[Placement], cloth: Cloth) -> str:
    """The places of a lay as text for a form or the session."""
    return json.dumps(
        [
            {
                "piece": place.piece,
                "copy": place.copy,
                "panel": cloth.rows[place.panel].pk,
                "turn": place.rotation_deg,
                "x": place.translation[0],
                "y": place.translation[1],
            }
            for place in placements
            if place.panel in cloth.rows
        ]
    )


def read_draft(text: str, problem: Problem, cloth: Cloth) -> list[Placement]:
    """The lay that a draft describes, on today's pieces and panels. Raises DraftError."""
    try:
        rows = json.loads(text)
        if not isinstance(rows, list):
            raise ValueError
        places = [_read_place(row, problem, cloth) for row in rows]
    except (TypeError, KeyError, ValueError, RecursionError) as error:
        raise DraftError("The places of the pieces did not arrive whole.") from error
    if len(places) > len(problem.copies()):
        raise DraftError("There are more pieces here than the pattern has.")
    return places


def _read_place(row: Mapping[str, Any], problem: Problem, cloth: Cloth) -> Placement:
    piece, copy = problem.piece(str(row["piece"])), int(row["copy"])
    panel = cloth.name_of(int(row["panel"]))
    turn, x, y = (float(row[name]) for name in ("turn", "x", "y"))
    if not 0 <= copy < piece.count or not panel:
        raise ValueError
    if not all(math.isfinite(each) and abs(each) <= FARTHEST_MM for each in (turn, x, y)):
        raise ValueError
    return placement_of(piece, copy, panel, turn, (x, y))


def moved(
    problem: Problem, copy: Copy, panel: Panel, turn_deg: float, across_mm: float, up_mm: float
) -> Placement:
    """The copy laid so that its leftmost and lowest points are so far from the panel's own."""
    piece = problem.piece(copy[0])
    at_origin = placement_of(piece, copy[1], panel.id, turn_deg, (0.0, 0.0))
    x = across_mm - min(x for x, _ in at_origin.outline)
    y = up_mm - min(y for _, y in at_origin.outline)
    return placement_of(piece, copy[1], panel.id, turn_deg, (x, y))


def turns_on(piece: Piece, copy: int, panel: Panel, now_deg: float | None = None) -> list[float]:
    """The turns that lay a copy on the panel's grain, and the one it has now."""
    upright = panel.grain_deg + upright_deg(piece, piece.is_mirrored(copy))
    turns: list[float] = [] if now_deg is None else [now_deg % 360]
    for first, last in turns_of(piece, panel.one_way):
        for turn in dict.fromkeys(((first + last) / 2, first, last)):
            angle = (upright + turn) % 360
            if all(_apart_deg(angle, known) > SAME_TURN_DEG for known in turns):
                turns.append(angle)
    return sorted(turns)


def turn_choices(
    piece: Piece, copy: int, panel: Panel, now_deg: float | None = None
) -> list[tuple[str, str]]:
    """The turns as a form offers them: a value that loses nothing, and words."""
    turns = turns_on(piece, copy, panel, now_deg)
    return [(turn_value(turn), f"{round(turn, 1):g}°") for turn in turns]


def turn_value(turn_deg: float) -> str:
    """A turn as a form carries it: short where that loses nothing."""
    short = f"{turn_deg:.3f}".rstrip("0").rstrip(".")
    return short if float(short) == turn_deg else repr(turn_deg)


def _apart_deg(a: float, b: float) -> float:
    return abs((a - b + 180) % 360 - 180)


@dataclass(frozen=True, slots=True)
class Said:
    """What is wrong with a lay, in words, and the copies it concerns."""

    words: str
    copies: tuple[Copy, ...]


def faults_said(
    problem: Problem, placements: Sequence[Placement], pieces: Mapping[str, PatternPiece]
) -> list[Said]:
    """Every fault of what lies, whether or not all pieces do."""
    return [said(fault, pieces) for fault in faults_of(problem, placements, whole=False)]


_COPY = r"(?<![\w-]){piece} \(copy (\d+)\)"


def said(fault: Fault, pieces: Mapping[str, PatternPiece]) -> Said:
    """A fault with its copies named as on the page."""
    copies: dict[Copy, None] = {(fault.piece, fault.copy): None}
    words = fault.text
    for name in sorted(pieces, key=len, reverse=True):
        pattern = _COPY.format(piece=re.escape(name))
        copies |= {(name, int(number)): None for number in re.findall(pattern, words)}
        words = re.sub(pattern, lambda m, name=name: _named(pieces[name], int(m[1])), words)  # type: ignore[misc]
    return Said(words[:1].upper() + words[1:], tuple(copies))


def _named(piece: PatternPiece, copy: int) -> str:
    return copy_words(piece, copy)


def _key(check: SizeCheck) -> str:
    return f"lay before {check.pk}"


def earlier_of(request: HttpRequest, check: SizeCheck) -> str:
    """The places the pieces had before they were last moved by hand; empty if they were not."""
    text: str = request.session.get(_key(check), "")
    return text


def remember(request: HttpRequest, check: SizeCheck, text: str) -> None:
    """Keep the places that a lay by hand replaces."""
    request.session[_key(check)] = text
