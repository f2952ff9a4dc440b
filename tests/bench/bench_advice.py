"""How long advice for a thousand garments takes; the aim is under one second.

Run: python -m tests.bench.bench_advice
"""

import itertools
import time

from inventory.advice.advise import advise
from inventory.advice.cloth import Cloth
from inventory.advice.conditions import CONDITIONS
from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.fibres import FIBRES
from inventory.advice.label import parse_label

AIM_S = 1.0
GARMENTS = 1000


def cloths(count: int) -> list[Cloth]:
    """Garments of every fibre pair, construction and condition in turn."""
    fibres = itertools.cycle(itertools.pairwise(FIBRES))
    constructions = itertools.cycle(CONSTRUCTIONS)
    conditions = itertools.cycle([frozenset[str](), *(frozenset({name}) for name in CONDITIONS)])
    label = parse_label("wash=40-mild,iron=2,bleach=no,tumble=no,professional=P")
    return [
        Cloth(
            fibres=((one, 60.0), (other, 40.0)),
            construction=next(constructions),
            mass_g_m2=60.0 + number % 400,
            stretch_across_pct=float(number % 80),
            fragility=number % 5,
            fray=number % 5,
            label=label if number % 2 else None,
            keep_scent=number % 7 == 0,
            conditions=next(conditions),
        )
        for number, (one, other) in zip(range(count), fibres, strict=False)
    ]


def main() -> None:
    garments = cloths(GARMENTS)
    start = time.perf_counter()
    for cloth in garments:
        advise(cloth)
    advised_s = time.perf_counter() - start
    start = time.perf_counter()
    for cloth in garments:
        advise(cloth).to_json()
    with_json_s = time.perf_counter() - start
    print(
        f"advice for {GARMENTS} garments: {advised_s:.3f} s, with JSON {with_json_s:.3f} s "
        f"(aim under {AIM_S:g} s)"
    )


if __name__ == "__main__":
    main()
