"""What one size of a pattern knows of another: a lay of the larger is a start for the smaller.

The same pieces at the same places most often keep every rule. A proof says nothing of other sizes,
since a smaller piece may have another shape.
"""

import time
from collections.abc import Sequence

from planning.coverage.problem import Placement, Problem
from planning.coverage.repair import slid_clear
from planning.coverage.verify import faults_of

SLIDE_SECONDS = 1.0


def shrunk_lay(
    problem_small: Problem, placements_large: Sequence[Placement]
) -> tuple[Placement, ...] | None:
    """A lay of a smaller size after that of a larger one, or None if it does not hold.

    Each piece lies about the same middle and with the same turn; what then comes too close is slid
    a little. Verified.
    """
    lay = slid_clear(problem_small, placements_large, time.monotonic() + SLIDE_SECONDS)
    return None if faults_of(problem_small, lay) else lay
