"""A cloth with its names looked up and its gaps filled from the tables, for the rules.

It answers what the rules ask (is it a knit, how heavy, which fibre is the most
delicate) and always tells a measured figure from a default.
"""

from collections.abc import Callable
from dataclasses import dataclass

from inventory.advice.cloth import Cloth, check_cloth
from inventory.advice.conditions import condition_named
from inventory.advice.constructions import Construction, construction_named
from inventory.advice.facts import Fact
from inventory.advice.fibre_kinds import Family, Fibre
from inventory.advice.fibres import fibre_named
from inventory.advice.label import MARKS, CareLabel, read_mark

BLANK_LABEL = CareLabel()


@dataclass(frozen=True, slots=True)
class KnownCloth:
    """A checked cloth; ``shares`` is empty and ``construction`` ``None`` if unknown."""

    shares: tuple[tuple[Fibre, float], ...]
    construction: Construction | None
    mass_g_m2: float | None
    stretch_along_pct: float | None
    stretch_across_pct: float | None
    fragility: int | None
    fray: int | None
    label: CareLabel
    keep_scent: bool
    may_wash: bool | None
    conditions: frozenset[str]

    @property
    def fibres(self) -> tuple[Fibre, ...]:
        """The fibres, largest share first."""
        return tuple(fibre for fibre, _ in self.shares)

    @property
    def form(self) -> str:
        """The construction's name, or an empty string when it is not known."""
        return self.construction.name if self.construction else ""

    @property
    def is_knit(self) -> bool:
        """Whether the cloth is known to be a knit."""
        return self.construction is not None and self.construction.is_knit

    @property
    def is_hide(self) -> bool:
        """Whether this is real leather, suede or fur rather than an imitation."""
        if self.shares:
            return any(fibre.family is Family.HIDE for fibre in self.fibres)
        return self.construction is not None and self.construction.is_hide

    @property
    def stays_unwashed(self) -> bool:
        """Whether the giver wants no washing, by asking so or by keeping the scent."""
        return self.keep_scent or self.may_wash is False

    @property
    def frailty(self) -> int:
        """The fragility grade, 0 when it was not tested; shattered cloth is grade 4."""
        return 4 if "shattered" in self.conditions else (self.fragility or 0)

    @property
    def mass_range_g_m2(self) -> tuple[float, float] | None:
        """The weighed mass twice, or the construction's usual range, or ``None``."""
        if self.mass_g_m2 is not None:
            return (self.mass_g_m2, self.mass_g_m2)
        return self.construction.mass_g_m2.value if self.construction else None

    @property
    def middle_mass_g_m2(self) -> float | None:
        """The weighed mass, or the middle of the construction's usual range."""
        masses = self.mass_range_g_m2
        return None if masses is None else (masses[0] + masses[1]) / 2

    @property
    def ground_mass_g_m2(self) -> float | None:
        """The mass of the cloth that is sewn: under sequins and beads it is not known."""
        return None if self.form == "sequinned" else self.middle_mass_g_m2

    @property
    def most_stretch_pct(self) -> float:
        """The larger stretch, measured or else usual for the construction."""
        return max(self.stretch_pct("along"), self.stretch_pct("across"))

    def stretch_pct(self, way: str) -> float:
        """The stretch ``along`` or ``across`` the grain, measured or else usual."""
        given: float | None = getattr(self, f"stretch_{way}_pct")
        if given is not None or self.construction is None:
            return given or 0.0
        usual: Fact[float] = getattr(self.construction, f"stretch_{way}_pct")
        return usual.value

    def has(self, *names: str) -> bool:
        """Whether any of the named fibres is in the cloth."""
        return any(fibre.name in names for fibre in self.fibres)

    def in_family(self, *families: Family) -> bool:
        """Whether any fibre of the named families is in the cloth."""
        return any(fibre.family in families for fibre in self.fibres)

    def most_delicate(self, of: Callable[[Fibre], int]) -> Fibre:
        """The fibre with the lowest ``of``, the larger share first when they tie."""
        return min(self.fibres, key=of)


def known_cloth(cloth: Cloth) -> KnownCloth:
    """``cloth`` with its names looked up; raises what :func:`check_cloth` raises."""
    check_cloth(cloth)
    shares = [(fibre_named(name), share) for name, share in cloth.fibres]
    return KnownCloth(
        shares=tuple(sorted(shares, key=lambda pair: (-pair[1], pair[0].name))),
        construction=construction_named(cloth.construction) if cloth.construction else None,
        mass_g_m2=cloth.mass_g_m2,
        stretch_along_pct=cloth.stretch_along_pct,
        stretch_across_pct=cloth.stretch_across_pct,
        fragility=cloth.fragility,
        fray=cloth.fray,
        label=_read_label(cloth.label),
        keep_scent=cloth.keep_scent,
        may_wash=cloth.may_wash,
        conditions=frozenset(condition_named(name) for name in cloth.conditions),
    )


def _read_label(label: CareLabel | None) -> CareLabel:
    if label is None:
        return BLANK_LABEL
    marks = {part: getattr(label, part) for part in MARKS}
    read = {part: read_mark(part, mark) for part, mark in marks.items() if mark is not None}
    return CareLabel(**read, edition=label.edition)
