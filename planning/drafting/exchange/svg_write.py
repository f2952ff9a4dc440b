"""A size as one SVG drawing, true to scale: millimetres in width, height and viewBox.

The ``data-`` attributes say what lines alone cannot, so that reading the file gives the same
pieces. Looks are plain attributes, never styles, so that any program shows the same drawing.
"""

import json
import re
from collections.abc import Sequence
from xml.etree.ElementTree import Element, SubElement, indent, tostring

from planning.drafting.drawing import drawing_of
from planning.drafting.exchange.checked import clean_name
from planning.drafting.exchange.sheet import CHECK_MM, GAP_MM, HEAD_MM, sheet_of
from planning.drafting.pieces import DraftPiece, DraftSize
from planning.drafting.rings import Point, bounds_mm

DECIMALS = 4
TEXT_MM = 4.5
CUT = {"fill": "none", "stroke": "black", "stroke-width": "0.4"}
THIN = {"fill": "none", "stroke": "black", "stroke-width": "0.25"}
DASHED = {**THIN, "stroke-dasharray": "3 1.5"}
TEXT = {"font-family": "sans-serif", "font-size": str(TEXT_MM), "fill": "black"}


def svg_of(size: DraftSize, title: str) -> str:
    """Return the drawing of every piece of a size, side by side, with a line to check the scale.

    It is meant for cutting and drawing programs and as an exchange file; a printer needs pages.
    """
    sheet = sheet_of(size.pieces)
    wide, tall = f"{sheet.width_mm:g}", f"{sheet.height_mm:g}"
    root = Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "width": f"{wide}mm",
            "height": f"{tall}mm",
            "viewBox": f"0 0 {wide} {tall}",
        },
    )
    heading = clean_name(f"{title}, {size.name}")
    SubElement(root, "title").text = heading
    _head(SubElement(root, "g", {"data-check": "yes"}), heading)
    for piece, origin in zip(size.pieces, sheet.origins, strict=True):
        _piece(root, piece, clean_name(size.name), origin)
    indent(root)
    return '<?xml version="1.0" encoding="UTF-8"?>\n' + tostring(root, encoding="unicode") + "\n"


def _head(group: Element, heading: str) -> None:
    _words(group, GAP_MM, GAP_MM + TEXT_MM, heading)
    y = HEAD_MM - 2 * TEXT_MM
    check = f"M{GAP_MM:g} {y:g} h{CHECK_MM:g}"
    SubElement(group, "path", {"d": check, **THIN})
    words = f"This line is {CHECK_MM:g} mm long at full size. Measure it before you cut."
    _words(group, GAP_MM, y - 2, words)


def _piece(root: Element, piece: DraftPiece, size_name: str, origin: Point) -> None:
    drawn = drawing_of(piece)
    edges = [[clean_name(edge.name), edge.start, edge.end] for edge in piece.edges]
    group = SubElement(
        root,
        "g",
        {
            "transform": f"translate({origin[0]:g} {-origin[1]:g})",
            "data-piece": clean_name(piece.name),
            "data-size": size_name,
            "data-count": str(piece.count),
            "data-mirrored": str(piece.mirrored),
            "data-grain-deg": repr(float(piece.grain_deg)),
            "data-edges": json.dumps(edges),
            **({"data-opening": clean_name(piece.opening.name)} if piece.opening else {}),
        },
    )
    SubElement(group, "path", {"data-line": "cut", "d": _data(piece.cut_line, True), **CUT})
    SubElement(group, "path", {"data-line": "seam", "d": _data(piece.seam_line, True), **DASHED})
    SubElement(group, "path", {"data-line": "grain", "d": drawn.grain_path, **THIN})
    ticks = iter(re.findall(r"M[^M]+", drawn.notch_path))
    for notch in piece.notches:
        data = " ".join(next(ticks).strip() for _ in range(1 + notch.is_double))
        SubElement(group, "path", {"data-notch": clean_name(notch.name), "d": data, **THIN})
    for line in piece.lines:
        named = {"data-placement": clean_name(line.name), "d": _data(line.points, False)}
        SubElement(group, "path", {**named, **DASHED})
    for mark in piece.marks:
        place = {"cx": _number(mark.at[0]), "cy": _number(-mark.at[1]), "r": "1.5"}
        SubElement(group, "circle", {"data-mark": clean_name(mark.name), **place, **THIN})
        _words(group, mark.at[0] + 2.5, 1.5 - mark.at[1], mark.name)
    left, low, _, _ = bounds_mm(piece.cut_line)
    for row, words in enumerate((piece.name, *piece.labels), start=1):
        _words(group, left, row * 1.2 * TEXT_MM - low, words)


def _words(parent: Element, x: float, y: float, words: str) -> None:
    text = SubElement(parent, "text", {"x": _number(x), "y": _number(y), **TEXT})
    text.text = clean_name(words)


def _data(points: Sequence[Point], is_closed: bool) -> str:
    """Path data to a ten thousandth of a millimetre: a page's two decimals would be too coarse."""
    steps = " L".join(f"{_number(x)} {_number(-y)}" for x, y in points)
    return f"M{steps}{' Z' if is_closed else ''}"


def _number(value: float) -> str:
    return f"{value:.{DECIMALS}f}".rstrip("0").rstrip(".")
