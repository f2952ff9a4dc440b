"""Cloths that turn up again and again in these tests."""

from typing import Any

from inventory.advice.advise import Advice, advise
from inventory.advice.cloth import Cloth
from inventory.advice.label import parse_label


def cloth(
    fibres: str = "", construction: str | None = None, label: str = "", **known: Any
) -> Cloth:
    """A cloth from words: ``cloth("cotton 95 elastane 5", "jersey", "iron=2")``."""
    words = fibres.split()
    shares = tuple((name, float(pct)) for name, pct in zip(words[::2], words[1::2], strict=True))
    edition = known.pop("edition", None)
    known["conditions"] = frozenset(known.get("conditions", ()))
    return Cloth(
        fibres=shares,
        construction=construction,
        label=parse_label(label, edition) if label else None,
        **known,
    )


def advice(
    fibres: str | None = "", construction: str | None = None, label: str | None = "", **known: Any
) -> Advice:
    return advise(cloth(fibres or "", construction, label or "", **known))
