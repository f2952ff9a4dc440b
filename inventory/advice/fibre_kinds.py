"""What is written down about one fibre, and the families fibres fall into.

Only the shape of a row; the rows are in ``fibre_facts.py``.
"""

from dataclasses import dataclass
from enum import StrEnum

from inventory.advice.facts import Fact
from inventory.advice.fibre_names import US_NAMES
from inventory.advice.methods import DryMethod, Shrink, WashLimit


class Family(StrEnum):
    """Fibre families in a sewer's words."""

    PROTEIN = "protein"
    CELLULOSE = "cellulose"
    REGENERATED = "regenerated cellulose"
    ACETATE = "cellulose acetate"
    SYNTHETIC = "synthetic"
    ELASTOMER = "elastomer"
    METAL = "metal"
    HIDE = "leather and fur"


class Bleeding(StrEnum):
    """How likely dye is to leave the cloth in water."""

    SELDOM = "seldom"
    SOMETIMES = "sometimes"
    OFTEN = "often"


@dataclass(frozen=True, slots=True)
class Allowance:
    """An agreed moisture allowance, in per cent of dry mass, for one form of the fibre.

    ``form`` is empty when the fibre has one figure only. The form used when nothing is
    known comes first.
    """

    form: str
    pct: Fact[float]


@dataclass(frozen=True, slots=True)
class Fibre:
    """One fibre: names, family and every figure the rules use, each with its source.

    ``iron_dots`` and ``wash`` hold when there is no label; ``label_dots`` and
    ``label_wash`` are the most a label can be believed for. ``iron_found_c`` is the
    soleplate figure found in tables.
    """

    name: str
    label: str
    family: Family
    allowances: tuple[Allowance, ...]
    iron_dots: Fact[int]
    iron_found_c: Fact[int] | None
    label_dots: Fact[int]
    softens_c: Fact[int] | None
    takes_steam: Fact[bool]
    wash: Fact[WashLimit]
    label_wash: Fact[WashLimit]
    dry: Fact[DryMethod]
    shrink_woven: Fact[Shrink]
    shrink_knit: Fact[Shrink]
    felts: Fact[bool]
    water_spots: Fact[bool]
    bleeds: Fact[Bleeding]
    takes_fusible: Fact[bool]
    feeds_moths: Fact[bool]
    ageing: tuple[Fact[str], ...] = ()
    also_called: tuple[str, ...] = ()

    @property
    def us_name(self) -> str:
        """The US generic name, which is often the same word."""
        other = US_NAMES.get(self.name)
        return other.value if other else self.name

    @property
    def is_textile(self) -> bool:
        """Whether this is a textile fibre, and not leather or fur."""
        return self.family is not Family.HIDE
