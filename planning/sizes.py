"""Every size of a keepsake's pattern with what is known of it today, in words a page can trust.

A verdict counts only while its fingerprint is that of the cloth, pattern and rules as they are now.
"""

from dataclasses import dataclass

from planning.checking import is_current
from planning.lay_rules import rules_for
from planning.models import Keepsake, PatternSize, SizeCheck
from planning.problems import Cloth, problem_of, too_much
from planning.waiting import Remark


@dataclass(frozen=True, slots=True)
class SizeRow:
    """One size, its check if there was one, and whether that check still speaks of today."""

    size: PatternSize
    check: SizeCheck | None
    is_current: bool

    @property
    def word(self) -> str:
        """covers, cannot, undecided, or unchecked where nothing can be said today."""
        if self.check is None or not self.is_current or not self.check.outcome:
            return "unchecked"
        return self.check.outcome

    @property
    def is_out_of_date(self) -> bool:
        return self.check is not None and bool(self.check.outcome) and not self.is_current

    @property
    def covers(self) -> bool:
        return self.word == SizeCheck.Outcome.COVERS

    @property
    def is_being_checked(self) -> bool:
        """Whether its verdict is being looked for again, whatever it was before."""
        check = self.check
        return check is not None and check.is_busy and check.task == SizeCheck.Task.VERDICT


@dataclass(frozen=True, slots=True)
class Sizes:
    """All sizes, largest first, and the largest that is covered today."""

    rows: tuple[SizeRow, ...]
    is_busy: bool

    @property
    def is_checked(self) -> bool:
        """Whether any size has a verdict about the cloth as it is now."""
        return any(row.word != "unchecked" for row in self.rows)

    @property
    def is_out_of_date(self) -> bool:
        return any(row.is_out_of_date for row in self.rows)

    @property
    def largest_covered(self) -> SizeRow | None:
        covered = [row for row in self.rows if row.covers and not row.is_being_checked]
        return max(covered, key=lambda row: row.size.height_mm) if covered else None


def remarks_on(keepsake: Keepsake, sizes: Sizes, cloth: Cloth) -> list[Remark]:
    """What the maker should know of her rules, once, whichever sizes it concerns."""
    found: dict[str, Remark] = {}
    for row in sizes.rows:
        too_large = too_much(keepsake, row.size, cloth)
        remarks = rules_for(keepsake, row.size, cloth.rows).remarks
        for remark in [too_large, *remarks] if too_large else remarks:
            found.setdefault(remark.words, remark)
    return sorted(found.values(), key=lambda remark: not remark.stops)


def sizes_of(keepsake: Keepsake, cloth: Cloth) -> Sizes:
    sizes = keepsake.pattern.sizes.prefetch_related("pieces").order_by("-height_mm")
    checks = {row.size_id: row for row in keepsake.checks.all()}
    rows = []
    for size in sizes:
        row = checks.get(size.pk)
        if row is None:
            rows.append(SizeRow(size, None, is_current=False))
            continue
        current = bool(row.outcome) and is_current(row, problem_of(keepsake, size, cloth))
        rows.append(SizeRow(size, row, current))
    return Sizes(tuple(rows), any(row.is_busy for row in checks.values()))
