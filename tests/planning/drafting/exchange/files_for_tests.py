"""Small pattern files as text, so that a test shows what it reads."""

from collections.abc import Iterable

from planning.drafting.exchange.found import Found
from planning.drafting.exchange.read import read_pattern_file

SQUARE = '<path id="square" d="M0 0 H100 V100 H0 Z"/>'


def svg(inside: str, head: str = 'width="400mm" height="400mm" viewBox="0 0 400 400"') -> bytes:
    return f'<svg xmlns="http://www.w3.org/2000/svg" {head}>{inside}</svg>'.encode()


def from_svg(
    inside: str, head: str = 'width="400mm" height="400mm" viewBox="0 0 400 400"'
) -> Found:
    return read_pattern_file(svg(inside, head), "drawing.svg")


def tags(*pairs: tuple[int, object]) -> str:
    return "".join(f"{code}\n{value}\n" for code, value in pairs)


def polyline(
    layer: str, points: Iterable[tuple[object, object]], closed: bool = True, bulge: float = 0
) -> str:
    vertices = "".join(
        tags((0, "VERTEX"), (8, layer), (10, x), (20, y), (42, bulge)) for x, y in points
    )
    return tags((0, "POLYLINE"), (8, layer), (66, 1), (70, int(closed))) + vertices + end(layer)


def end(layer: str) -> str:
    return tags((0, "SEQEND"), (8, layer))


def lwpolyline(layer: str, points: Iterable[tuple[float, float]]) -> str:
    corners = list(points)
    head = tags((0, "LWPOLYLINE"), (8, layer), (90, len(corners)), (70, 1))
    return head + "".join(tags((10, x), (20, y)) for x, y in corners)


def line(layer: str, start: tuple[float, float], to: tuple[float, float]) -> str:
    return tags((0, "LINE"), (8, layer), (10, start[0]), (20, start[1]), (11, to[0]), (21, to[1]))


def point(layer: str, x: float, y: float) -> str:
    return tags((0, "POINT"), (8, layer), (10, x), (20, y))


def text(words: str, layer: str = "1") -> str:
    return tags((0, "TEXT"), (8, layer), (10, 1), (20, 1), (40, 3), (1, words))


def block(name: str, inside: str) -> str:
    return tags((0, "BLOCK"), (8, "1"), (2, name), (70, 0)) + inside + tags((0, "ENDBLK"), (8, "1"))


def section(name: str, inside: str) -> str:
    return tags((0, "SECTION"), (2, name)) + inside + tags((0, "ENDSEC"))


def dxf(blocks: str = "", model: str = "", header: str = "") -> bytes:
    parts = (("HEADER", header), ("BLOCKS", blocks), ("ENTITIES", model))
    return ("".join(section(name, inside) for name, inside in parts) + tags((0, "EOF"))).encode()


def from_dxf(blocks: str = "", model: str = "", header: str = "") -> Found:
    return read_pattern_file(dxf(blocks, model, header), "drawing.dxf")


BOX = ((0.0, 0.0), (100.0, 0.0), (100.0, 60.0), (0.0, 60.0))
INNER = ((10.0, 10.0), (90.0, 10.0), (90.0, 50.0), (10.0, 50.0))
