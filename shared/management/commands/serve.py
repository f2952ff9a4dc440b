"""The program for real use on one machine: database, web server and worker, from one command."""

import sys
from argparse import ArgumentParser
from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandError

from shared.serving import Supervisor, free_port, own_address


class Command(BaseCommand):
    help = "Start the program on this machine and keep it running until Ctrl-C."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--port", type=int, default=8000)
        parser.add_argument(
            "--phone",
            action="store_true",
            help="let phones and other machines on the same network open it too",
        )

    def handle(self, *args: Any, **options: Any) -> None:
        call_command("migrate", verbosity=0)
        self.prepare()
        host = "0.0.0.0" if options["phone"] else "127.0.0.1"  # noqa: S104 - asked for by name
        try:
            port = free_port(host, options["port"])
        except OSError as error:
            raise CommandError(str(error)) from None
        near = own_address() if options["phone"] else None
        self.announce(port, near)
        sys.exit(Supervisor(host, port, [near] if near else []).run())

    def prepare(self) -> None:
        """What must be there before the first page; nothing for real use."""

    def announce(self, port: int, near: str | None) -> None:
        lines = [f"Bearing Cloth is open at http://127.0.0.1:{port}/"]
        if near:
            lines.append(f"On a phone in the same network: http://{near}:{port}/")
        lines += [*self.log_in(), f"Data: {settings.DATA_DIR}", "Ctrl-C stops it."]
        self.stdout.write("\n".join(lines))
        self.stdout.flush()

    def log_in(self) -> list[str]:
        return []
