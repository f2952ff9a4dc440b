"""One web server process. `serve` and `demo` start it; so may a process manager."""

from argparse import ArgumentParser
from typing import Any

import waitress
from django.core.management.base import BaseCommand

from shared.serving import end_with_parent

LARGEST_UPLOAD = 64 * 1024 * 1024  # more than the largest photograph a form will take


class Command(BaseCommand):
    help = "Run one web server process."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--host", default="127.0.0.1")
        parser.add_argument("--port", type=int, default=8000)
        parser.add_argument("--with-parent", action="store_true", help="end when stdin closes")

    def handle(self, *args: Any, **options: Any) -> None:
        from shared.wsgi import application

        if options["with_parent"]:
            end_with_parent()
        waitress.serve(
            application,
            host=options["host"],
            port=options["port"],
            threads=4,
            ident="",
            max_request_body_size=LARGEST_UPLOAD,
        )
