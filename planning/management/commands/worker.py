"""One worker process for size checks. `serve` and `demo` start it; so may a process manager."""

import threading
import time
from argparse import ArgumentParser
from typing import Any

from django.core.management import call_command
from django.core.management.base import BaseCommand
from django.db import close_old_connections
from django.utils import timezone

from planning import checking
from shared.serving import end_with_parent

LOOK_EVERY_S = 10.0


class Command(BaseCommand):
    help = "Run one worker process for size checks."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--with-parent", action="store_true", help="end when stdin closes")

    def handle(self, *args: Any, **options: Any) -> None:
        if options["with_parent"]:
            end_with_parent()
        call_command("prune_db_task_results", verbosity=0)
        threading.Thread(target=look_for_the_lost, daemon=True).start()
        call_command("db_worker", interval=0.5, verbosity=0)


def look_for_the_lost() -> None:
    """Take up checks whose worker died, for as long as this process lives."""
    while True:
        checking.take_up_again(timezone.now())
        close_old_connections()
        time.sleep(LOOK_EVERY_S)
