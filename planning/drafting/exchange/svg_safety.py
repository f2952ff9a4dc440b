"""Parsing an SVG file that a stranger may have made: nothing in it is run, fetched or expanded.

Script, event attributes, foreign objects and links to anything outside the file are refused with
their place, and so is styling that would move or resize a shape, since only attributes are read.
"""

import re
from collections.abc import Iterator
from xml.etree.ElementTree import Element, ParseError

from defusedxml import DefusedXmlException
from defusedxml.ElementTree import fromstring

from planning.drafting.exchange.found import PatternFileError

MOST_ELEMENTS = 50_000
DEEPEST = 100  # elements inside one another
REFUSED = {"script", "foreignobject", "iframe", "object", "embed", "audio", "video", "handler"}
RESHAPING = {
    *("transform", "scale", "rotate", "translate", "zoom", "d"),
    *("x", "y", "cx", "cy", "r", "rx", "ry", "width", "height"),
}

# A doctype that only names the language, as older drawing programs write it, declares nothing.
_PLAIN_DOCTYPE = re.compile(rb"<!DOCTYPE\s+svg\b[^<>\[]*>")
_STYLE_SHEET = re.compile(rb"<\?xml-stylesheet\b", re.IGNORECASE)
_OUTSIDE_URL = re.compile(r"url\(\s*+[\"']?+\s*+(?!#|data:)", re.IGNORECASE)
_PROPERTY = re.compile(r"(?:^|[{;])\s*([a-zA-Z-]+)\s*:")


def safe_root(data: bytes) -> Element:
    """Return the root of a drawing; raises PatternFileError for what is unsound or unsafe."""
    if _STYLE_SHEET.search(data):
        raise PatternFileError("The file asks for a style sheet of its own. Take that line out.")
    try:
        root: Element = fromstring(_PLAIN_DOCTYPE.sub(b"", data, count=1), forbid_dtd=True)
    except ParseError as error:
        line, column = error.position
        raise PatternFileError(
            f"The file is not sound XML at line {line}, column {column + 1}: it may be cut short. "
            "Save it again as SVG."
        ) from error
    except DefusedXmlException as error:
        raise PatternFileError(
            "The file declares entities or a document type of its own, which are never read. "
            "Save it as a plain SVG."
        ) from error
    except (LookupError, ValueError) as error:
        raise PatternFileError("The file's encoding is not known. Save it as UTF-8.") from error
    if local(root.tag) != "svg":
        raise PatternFileError(f"The file is XML, but its root is “{local(root.tag)}”, not svg.")
    for element in _every(root):
        _refuse_unsafe(element, element is root)
    return root


def local(name: object) -> str:
    """Return a tag's or attribute's name without its namespace.

    >>> local("{http://www.w3.org/2000/svg}path")
    'path'
    """
    return str(name).rpartition("}")[2]


def _every(root: Element) -> Iterator[Element]:
    waiting = [(root, 1)]
    count = 0
    while waiting:
        element, depth = waiting.pop()
        count += 1
        if count > MOST_ELEMENTS or depth > DEEPEST:
            raise PatternFileError(
                f"The drawing has over {MOST_ELEMENTS} elements or {DEEPEST} groups inside one "
                "another. Save only the pieces."
            )
        yield element
        waiting += [(child, depth + 1) for child in element]


def _refuse_unsafe(element: Element, is_root: bool) -> None:
    tag = local(element.tag)
    place = f"the {tag} “{element.get('id')}”" if element.get("id") else f"a {tag}"
    if tag.lower() in REFUSED:
        raise PatternFileError(f"The file holds {place}, which is never read. Take it out.")
    for name, value in element.attrib.items():
        _refuse_attribute(tag, place, name, value)
    _refuse_style(element, place, tag, is_root)


def _refuse_attribute(tag: str, place: str, name: str, value: str) -> None:
    if name.lower().startswith("on"):
        raise PatternFileError(f"The attribute “{name}” of {place} is script. Take it out.")
    if local(name) in ("href", "src"):
        is_inside = value.strip().startswith("#")
        is_picture = tag == "image" and value.strip().startswith("data:image/")
        if not (is_inside or is_picture):
            raise PatternFileError(
                f"{place[0].upper()}{place[1:]} links to “{value.strip()[:60]}”, outside the file. "
                "Nothing outside is fetched: take the link out."
            )
    if _OUTSIDE_URL.search(value):
        raise PatternFileError(
            f"The attribute “{local(name)}” of {place} points outside the file. Take it out."
        )


def _refuse_style(element: Element, place: str, tag: str, is_root: bool) -> None:
    text = "".join(element.itertext()) if tag == "style" else element.get("style", "")
    if "@import" in text.lower() or _OUTSIDE_URL.search(text):
        raise PatternFileError(f"The style of {place} points outside the file. Take it out.")
    reshaping = {name.lower() for name in _PROPERTY.findall(text)} & RESHAPING
    if is_root:
        reshaping -= {"width", "height"}
    if reshaping:
        raise PatternFileError(
            f"The style of {place} sets {', '.join(sorted(reshaping))}, which would change a "
            "shape. Save the drawing with attributes in place of styles."
        )
