"""Tells a check's row how far a search has come, and the search whether it is still wanted."""

import time

from django.utils import timezone

from planning.coverage.verdict import Progress
from planning.models import SizeCheck

TELL_EVERY_S = 0.5


class Listener:
    """For one run of one check. Where a run is not about the verdict, the row's count stays."""

    def __init__(self, row: SizeCheck, *, tells_placed: bool = True) -> None:
        self.rows = SizeCheck.objects.filter(pk=row.pk, run=row.run, state=SizeCheck.State.RUNNING)
        self.tells_placed = tells_placed
        self.told = 0.0
        self.over = False

    def progress(self, progress: Progress) -> None:
        self.tell(**({"placed": progress.placed} if self.tells_placed else {}))

    def tell(self, **news: int) -> None:
        """Say that the run is alive, not oftener than need be."""
        now = time.monotonic()
        if now - self.told >= TELL_EVERY_S:
            self.told = now
            self.over = not self.rows.update(heard_at=timezone.now(), **news)

    def is_over(self) -> bool:
        return self.over
