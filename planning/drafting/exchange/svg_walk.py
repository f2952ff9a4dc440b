"""Every shape that an SVG drawing shows, with the matrix that brings it to millimetres.

Groups, links to shapes of the same file (``use``) and nested transforms are followed. What only
stands ready (definitions, clips, masks) and what is hidden is not shown. A drawing inside the
drawing with a frame of its own is refused, because its scale would be another.
"""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.etree.ElementTree import Element

from planning.drafting.exchange.checked import clean_name
from planning.drafting.exchange.css_units import user_units
from planning.drafting.exchange.found import PatternFileError
from planning.drafting.exchange.svg_safety import DEEPEST, local
from planning.drafting.exchange.svg_shapes import SHAPES, Affine, affine_of, joined

MOST_SHOWN = 20_000  # shapes and groups, each use of one counted again
GROUPS = ("g", "a", "switch", "svg")
UNSEEN = {
    *("defs", "clipPath", "mask", "pattern", "marker", "symbol", "filter", "style"),
    *("linearGradient", "radialGradient", "title", "desc", "metadata", "namedview"),
}
_HIDDEN = re.compile(r"(?:^|;)\s*(?:display\s*:\s*none|visibility\s*:\s*hidden)", re.IGNORECASE)


@dataclass(frozen=True)
class Shown:
    """A shape or a piece's group as shown; ``place`` says where for a message."""

    element: Element
    to_mm: Affine
    name: str
    place: str


@dataclass
class Walk:
    """One walk through a drawing; ``left_out`` counts what was passed by, by its tag."""

    root: Element
    left_out: Counter[str] = field(default_factory=Counter)
    _by_id: dict[str, Element] = field(default_factory=dict)
    _order: Counter[str] = field(default_factory=Counter)
    _shown: int = 0

    def __post_init__(self) -> None:
        for element in self.root.iter():
            self._by_id.setdefault(element.get("id", ""), element)

    def shown(
        self, element: Element, to_mm: Affine, name: str = "", deep: int = 0
    ) -> Iterator[Shown]:
        """Yield the shapes and the groups marked ``data-piece`` that the element shows.

        Raises PatternFileError for a link that leads nowhere or in a circle, and for too many.
        """
        self._shown += 1
        if self._shown > MOST_SHOWN or deep > DEEPEST:
            raise PatternFileError(
                f"The drawing repeats shapes more than {MOST_SHOWN} times or links in a circle. "
                "Draw each piece once."
            )
        tag = local(element.tag)
        if element.get("data-check") is not None:
            return  # our own check line and heading
        if _is_hidden(element):
            self.left_out["hidden shape or group"] += 1
        elif tag == "use":
            yield from self._used(element, to_mm, name, deep)
        elif tag in SHAPES or element.get("data-piece") is not None:
            yield self._one(element, to_mm, name)
        elif tag in GROUPS:
            yield from self._children(element, to_mm, name, deep)
        else:
            self.left_out[tag] += tag not in UNSEEN

    def _children(self, group: Element, to_mm: Affine, name: str, deep: int) -> Iterator[Shown]:
        is_framed = any(group.get(side) for side in ("viewBox", "x", "y"))
        if deep and local(group.tag) in ("svg", "symbol") and is_framed:
            raise PatternFileError(
                f"In the file, {_placed(group)} is a drawing with a frame of its own. Take it out "
                "of the frame, so that one scale holds for all."
            )
        inside = joined(to_mm, self._affine(group))
        for child in group:
            yield from self.shown(child, inside, (named(group) or name) if deep else "", deep + 1)

    def _used(self, use: Element, to_mm: Affine, name: str, deep: int) -> Iterator[Shown]:
        link = next((text for key, text in use.items() if local(key) == "href"), "").strip()
        target = self._by_id.get(link[1:]) if len(link) > 1 else None
        if target is None:
            raise PatternFileError(
                f"In the file, {_placed(use)} shows “{link[:40]}”, which is not there."
            )
        x, y = (user_units(use.get(side, "0"), _placed(use)) for side in "xy")
        inside = joined(joined(to_mm, self._affine(use)), (1.0, 0.0, 0.0, 1.0, x, y))
        own = named(use) or named(target) or name
        if local(target.tag) == "symbol":
            yield from self._children(target, inside, own, deep + 1)
        else:
            yield from self.shown(target, inside, own, deep + 1)

    def _one(self, element: Element, to_mm: Affine, name: str) -> Shown:
        tag = local(element.tag)
        self._order[tag] += 1
        place = _placed(element) if element.get("id") else f"{tag} number {self._order[tag]}"
        return Shown(element, joined(to_mm, self._affine(element)), named(element) or name, place)

    def _affine(self, element: Element) -> Affine:
        return affine_of(element.get("transform", ""), _placed(element))


def named(element: Element) -> str:
    """Return what an element is called: its label, its title or its id, or nothing."""
    title = next((child.text for child in element if local(child.tag) == "title"), None)
    return clean_name(element.get("aria-label") or title or element.get("id") or "")


def _placed(element: Element) -> str:
    return f"the {local(element.tag)} “{clean_name(element.get('id', ''))}”"


def _is_hidden(element: Element) -> bool:
    is_off = element.get("display") == "none" or element.get("visibility") == "hidden"
    return is_off or bool(_HIDDEN.search(element.get("style", "")))
