"""What a pattern file was found to hold, in millimetres, before a maker has said it is right.

Nothing here is a pattern yet: a file may not say how many of a piece to cut, or in which unit it
is drawn. What was not understood stands in ``notes``, as sentences, so that a page can ask.
"""

from dataclasses import asdict, dataclass
from typing import Any, Literal

from planning.drafting.errors import DraftError
from planning.drafting.pieces import Edge, Mark, Notch, PlacementLine
from planning.drafting.rings import Point, Ring

Kind = Literal["svg", "dxf"]
LineKind = Literal["cut", "seam"]


class PatternFileError(DraftError):
    """A pattern file that cannot be read whole; the sentence names the place and what to mend."""


@dataclass(frozen=True)
class FoundPiece:
    """One piece of one size, its ``outline`` the outer closed line, anticlockwise, y upwards.

    ``line`` says what the outline is. ``grain_deg`` is 90 where ``has_grain`` is false.
    ``is_unfolded`` is true when half a piece was reflected over its mirror line. ``edges`` and
    ``opening`` are stretches of the seam line; only files of this program carry them.
    """

    name: str
    size: str
    outline: Ring
    line: LineKind
    seam_line: Ring | None
    count: int
    mirrored: int
    grain_deg: float
    has_grain: bool
    notches: tuple[Notch, ...] = ()
    marks: tuple[Mark, ...] = ()
    lines: tuple[PlacementLine, ...] = ()
    is_unfolded: bool = False
    notes: tuple[str, ...] = ()
    edges: tuple[Edge, ...] = ()
    opening: Edge | None = None


@dataclass(frozen=True)
class Found:
    """All that was read from one file; width and height are those of the largest piece."""

    kind: Kind
    unit_words: str
    is_unit_sure: bool
    pieces: tuple[FoundPiece, ...]
    notes: tuple[str, ...]
    width_mm: float
    height_mm: float


def found_to_json(found: Found) -> dict[str, Any]:
    """Return the reading as plain dicts, lists, numbers and strings."""
    plain: dict[str, Any] = _plain(asdict(found))
    return plain


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _plain(inner) for key, inner in value.items()}
    if isinstance(value, tuple | list):
        return [_plain(inner) for inner in value]
    return value


def found_from_json(data: dict[str, Any]) -> Found:
    """Return the reading that ``found_to_json`` wrote; raises PatternFileError for all else."""
    try:
        pieces = tuple(_piece(piece) for piece in data["pieces"])
        return Found(
            kind=_one_of(data["kind"], ("svg", "dxf")),
            unit_words=str(data["unit_words"]),
            is_unit_sure=bool(data["is_unit_sure"]),
            pieces=pieces,
            notes=tuple(str(note) for note in data["notes"]),
            width_mm=float(data["width_mm"]),
            height_mm=float(data["height_mm"]),
        )
    except (KeyError, TypeError, ValueError, AttributeError, IndexError) as error:
        raise PatternFileError(
            f"What was kept of the pattern file cannot be read ({error}). Read the file again."
        ) from error


def _piece(data: dict[str, Any]) -> FoundPiece:
    seam, opening = data["seam_line"], data["opening"]
    return FoundPiece(
        name=str(data["name"]),
        size=str(data["size"]),
        outline=_points(data["outline"]),
        line=_one_of(data["line"], ("cut", "seam")),
        seam_line=None if seam is None else _points(seam),
        count=int(data["count"]),
        mirrored=int(data["mirrored"]),
        grain_deg=float(data["grain_deg"]),
        has_grain=bool(data["has_grain"]),
        notches=tuple(
            Notch(str(one["name"]), _point(one["at"]), bool(one["is_double"]))
            for one in data["notches"]
        ),
        marks=tuple(Mark(str(one["name"]), _point(one["at"])) for one in data["marks"]),
        lines=tuple(
            PlacementLine(str(one["name"]), _points(one["points"])) for one in data["lines"]
        ),
        is_unfolded=bool(data["is_unfolded"]),
        notes=tuple(str(note) for note in data["notes"]),
        edges=tuple(_edge(one) for one in data["edges"]),
        opening=None if opening is None else _edge(opening),
    )


def _edge(data: dict[str, Any]) -> Edge:
    return Edge(str(data["name"]), int(data["start"]), int(data["end"]))


def _point(pair: Any) -> Point:
    x, y = pair
    return (float(x), float(y))


def _points(pairs: Any) -> Ring:
    return tuple(_point(pair) for pair in pairs)


def _one_of(word: Any, known: tuple[Any, ...]) -> Any:
    if word not in known:
        raise ValueError(f"“{word}” is not one of {', '.join(known)}")
    return word
