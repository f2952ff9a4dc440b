"""How long the garment list takes beside its own bare SQL, with 10,000 garments in one run.

    python -m tests.bench.bench_list [garments]

The list's time is the whole request: filter, count, page, pictures, template. The bare time is the
same page's rows and count asked for in SQL by hand on the same database. Prints the ratio.
"""

import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from typing import Any

BARE = """
SELECT g.*, c.name,
  (SELECT coalesce(sum(p.usable_area_mm2), 0) FROM inventory_panel p
     WHERE p.garment_id = g.id AND p.removed_at IS NULL) AS usable,
  (SELECT count(*) FROM inventory_panel p
     WHERE p.garment_id = g.id AND p.removed_at IS NULL) AS panels
FROM inventory_garment g JOIN inventory_collection c ON c.id = g.collection_id
WHERE g.workshop_id = %s AND g.removed_at IS NULL
ORDER BY {order} LIMIT 24
"""
COUNT = "SELECT count(*) FROM inventory_garment WHERE workshop_id = %s AND removed_at IS NULL"
ORDERS = {
    "": "g.created_at DESC, g.id DESC",
    "?order=-usable": "usable DESC",
}
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
    ring = [[0, 0], [400, 0], [400, 600], [0, 600]]
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

        call_command("migrate", verbosity=0)
        member = fill(garments)
        client = Client(headers={"host": "localhost"})
        client.force_login(member.user)
        for asked, order in ORDERS.items():

            def bare(order: str = order) -> None:
                with connection.cursor() as cursor:
                    cursor.execute(BARE.format(order=order), [member.workshop_id])
                    cursor.fetchall()
                    cursor.execute(COUNT, [member.workshop_id])
                    cursor.fetchall()

            page = median_s(lambda asked=asked: client.get(f"/garments/{asked}").content)
            sql = median_s(bare)
            name = asked or "newest first"
            print(
                f"{garments} garments, {name}: page {page * 1000:.1f} ms, bare SQL "
                f"{sql * 1000:.1f} ms, ratio {page / sql:.2f}"
            )


if __name__ == "__main__":
    main()
