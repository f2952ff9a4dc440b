"""How long the garment list takes beside its own bare SQL, with 10,000 garments in one run.

    python -m tests.bench.bench_list [garments]

The page's time is the whole request: log-in, filter, count, rows, pictures, template. The bare time
is that of the very statements the page sends, sent again by hand and read to the end, with nothing
made of them. Prints the ratio for the newest page, a search and a sort.
"""

import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from typing import Any

ASKED = ("", "?q=shirt+99", "?order=-usable", "?fibre=cotton&least_area=1000")
RUNS = 9


def fill(garments: int) -> Any:
    from inventory.models import FibreShare, Garment, Panel
    from tests import builders

    workshop = builders.workshop()
    member = builders.member(workshop)
    boxes = [builders.collection(workshop, f"Box {number}") for number in range(50)]
    rows = Garment.objects.bulk_create(
        Garment(
            workshop=workshop,
            collection=boxes[number % 50],
            tag=f"{number:04x}"[-4:],
            kind="shirt",
            name=f"Shirt {number}",
            construction="plain-weave",
        )
        for number in range(garments)
    )
    ring = [[0.0, 0.0], [400.0, 0.0], [400.0, 600.0], [0.0, 600.0]]
    Panel.objects.bulk_create(
        Panel(
            workshop=workshop,
            garment=row,
            name=name,
            shape="rectangle",
            outline_mm=ring,
            area_mm2=240_000,
            usable_area_mm2=230_000 - row.pk,
        )
        for row in rows
        for name in ("Back", "Front")
    )
    FibreShare.objects.bulk_create(
        FibreShare(workshop=workshop, garment=row, fibre="cotton", percent=100) for row in rows
    )
    return member


def median_s(call: Callable[[], object]) -> float:
    call()
    times = []
    for _ in range(RUNS):
        started = time.perf_counter()
        call()
        times.append(time.perf_counter() - started)
    return statistics.median(times)


def main() -> None:
    garments = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    with tempfile.TemporaryDirectory() as folder:
        os.environ["BEARING_CLOTH_DATA"] = folder
        os.environ["DJANGO_SETTINGS_MODULE"] = "shared.settings"
        import django

        django.setup()
        from django.core.management import call_command
        from django.db import connection
        from django.test import Client
        from django.test.utils import CaptureQueriesContext

        call_command("migrate", verbosity=0)
        member = fill(garments)
        client = Client(headers={"host": "localhost"})
        client.force_login(member.user)
        for asked in ASKED:
            address = f"/garments/{asked}"
            client.get(address)
            with CaptureQueriesContext(connection) as sent:
                client.get(address)
            statements = [query["sql"] for query in sent.captured_queries]

            def bare(statements: list[str] = statements) -> None:
                with connection.cursor() as cursor:
                    for statement in statements:
                        cursor.execute(statement)
                        cursor.fetchall()

            def ask(address: str = address) -> None:
                client.get(address)

            page = median_s(ask)
            sql = median_s(bare)
            print(
                f"{garments} garments, {asked or 'newest first'}: page {page * 1000:.1f} ms, "
                f"bare SQL {sql * 1000:.1f} ms, ratio {page / sql:.2f}"
            )


if __name__ == "__main__":
    main()
