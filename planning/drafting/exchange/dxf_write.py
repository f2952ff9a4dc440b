"""A size as a release 12 DXF by the layers of ASTM D6673, in 7-bit ASCII.

One block for each piece, each inserted once. The header is empty and there are no tables, which
is what picky readers want (ezdxf documentation, page on exporting by ASTM D6673-10). Signs outside
ASCII are written as the escapes that DXF has for them. Named edges have no place in the format.
"""

import math
import re
from collections.abc import Iterable, Sequence

from planning.drafting.drawing import PieceDrawing, drawing_of
from planning.drafting.exchange.checked import clean_name
from planning.drafting.exchange.dxf_layers import (
    ANNOTATION,
    BOUNDARY,
    CHECK_LAYER,
    DRILL,
    GRAIN,
    INTERNAL,
    NOTCHES,
    SEW,
)
from planning.drafting.exchange.sheet import CHECK_MM, GAP_MM, sheet_of
from planning.drafting.pieces import DraftPiece, DraftSize
from planning.drafting.rings import Point

DECIMALS = 4
TEXT_MM = 4.0
LONGEST_BLOCK_NAME = 31  # release 12

_PAIR = re.compile(r"(-?[\d.]+) (-?[\d.]+)")


def dxf_of(size: DraftSize, title: str) -> bytes:
    """Return the file of every piece of a size, in millimetres, with a line to check the scale."""
    sheet = sheet_of(size.pieces)
    names = _block_names(size.pieces)
    blocks = [
        _block(piece, name, size.name) for piece, name in zip(size.pieces, names, strict=True)
    ]
    inserts = [
        _tags((0, "INSERT"), (8, BOUNDARY), (2, name), *_at(10, origin))
        for name, origin in zip(names, sheet.origins, strict=True)
    ]
    style = (f"Style Name: {title}", f"Sample Size: {size.name}", "Units: METRIC")
    sections = (
        ("HEADER", ""),
        ("BLOCKS", "".join(blocks)),
        ("ENTITIES", _texts(style, (GAP_MM, -TEXT_MM)) + _check_line() + "".join(inserts)),
    )
    written = [
        _tags((0, "SECTION"), (2, name)) + inside + _tags((0, "ENDSEC"))
        for name, inside in sections
    ]
    return ("".join(written) + _tags((0, "EOF"))).encode("ascii")


def _block(piece: DraftPiece, name: str, size_name: str) -> str:
    drawn = drawing_of(piece)
    said = (
        f"Piece Name: {piece.name}",
        f"Size: {size_name}",
        f"Quantity: {_quantity(piece)}",
    )
    head = _tags((0, "BLOCK"), (8, BOUNDARY), (2, name), (70, 0), *_at(10, (0.0, 0.0)))
    parts = (
        head,
        _polyline(BOUNDARY, piece.cut_line, True),
        _polyline(SEW, piece.seam_line, True),
        _texts(said, (drawn.middle.x, -drawn.middle.y)),
        _grain(piece, drawn),
        *_notches(piece, drawn),
        *(_point(DRILL, mark.at) + _label("Mark", mark.name, mark.at) for mark in piece.marks),
        *(
            _polyline(INTERNAL, line.points, False) + _label("Line", line.name, line.points[0])
            for line in piece.lines
        ),
        _tags((0, "ENDBLK"), (8, BOUNDARY)),
    )
    return "".join(parts)


def _quantity(piece: DraftPiece) -> str:
    """Left and right when some are turned over, else one number."""
    return (
        f"{piece.count - piece.mirrored},{piece.mirrored}" if piece.mirrored else f"{piece.count}"
    )


def _grain(piece: DraftPiece, drawn: PieceDrawing) -> str:
    start, end = _places(drawn.grain_path)[:2]
    long_mm, heading = math.dist(start, end), math.radians(piece.grain_deg)
    # drawn anew from its start: two decimals of an arrow would not keep its heading
    end = (start[0] + long_mm * math.cos(heading), start[1] + long_mm * math.sin(heading))
    return _line(GRAIN, start, end)


def _notches(piece: DraftPiece, drawn: PieceDrawing) -> Iterable[str]:
    ticks = iter(re.findall(r"M[^M]+", drawn.notch_path))
    for notch in piece.notches:
        lines = [_places(next(ticks)) for _ in range(1 + notch.is_double)]
        if not notch.is_double:
            lines = [[notch.at, lines[0][1]]]
        yield "".join(_line(NOTCHES[0], start, end) for start, end in lines)
        yield _label("Double notch" if notch.is_double else "Notch", notch.name, notch.at)


def _check_line() -> str:
    start = (GAP_MM, -6 * TEXT_MM)
    words = f"This line is {CHECK_MM:g} mm long at full size."
    return _line(CHECK_LAYER, start, (start[0] + CHECK_MM, start[1])) + _text(
        CHECK_LAYER, words, (start[0], start[1] + TEXT_MM / 2)
    )


def _polyline(layer: str, points: Sequence[Point], is_closed: bool) -> str:
    head = _tags(
        (0, "POLYLINE"), (8, layer), (66, 1), (70, int(is_closed)), *_at(10, (0.0, 0.0)), (30, 0)
    )
    vertices = [_tags((0, "VERTEX"), (8, layer), *_at(10, point)) for point in points]
    return head + "".join(vertices) + _tags((0, "SEQEND"), (8, layer))


def _line(layer: str, start: Point, end: Point) -> str:
    return _tags((0, "LINE"), (8, layer), *_at(10, start), *_at(11, end))


def _point(layer: str, at: Point) -> str:
    return _tags((0, "POINT"), (8, layer), *_at(10, at))


def _label(kind: str, name: str, at: Point) -> str:
    return _text(ANNOTATION, f"{kind}: {name}", at)


def _texts(lines: Sequence[str], at: Point) -> str:
    return "".join(
        _text(BOUNDARY, line, (at[0], at[1] - 1.5 * TEXT_MM * row))
        for row, line in enumerate(lines)
    )


def _text(layer: str, words: str, at: Point) -> str:
    return _tags((0, "TEXT"), (8, layer), *_at(10, at), (40, TEXT_MM), (1, _ascii(words)))


def _ascii(words: str) -> str:
    """Words on one line, so that no name can add a tag of its own."""
    key, colon, value = words.partition(": ")
    clean = f"{key}{colon}{clean_name(value)}" if colon else clean_name(words)
    return "".join(
        sign if sign.isascii() else f"\\U+{ord(sign):04X}" if ord(sign) < 0x10000 else "?"
        for sign in clean
    )


def _block_names(pieces: Sequence[DraftPiece]) -> list[str]:
    names: list[str] = []
    for number, piece in enumerate(pieces, 1):
        plain = re.sub(r"[^A-Z0-9]+", "_", piece.name.upper()).strip("_")
        name = plain[: LONGEST_BLOCK_NAME - 4] or "PIECE"
        names.append(f"{name}_{number}" if name in names else name)
    return names


def _places(path: str) -> list[Point]:
    return [(float(x), -float(y)) for x, y in _PAIR.findall(path)]


def _at(code: int, point: Point) -> tuple[tuple[int, str], tuple[int, str]]:
    x, y = (f"{value + 0.0:.{DECIMALS}f}" for value in point)
    return (code, x), (code + 10, y)


def _tags(*tags: tuple[int, object]) -> str:
    return "".join(f"{code}\n{value}\n" for code, value in tags)
