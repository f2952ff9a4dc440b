"""How short a bolt is made, beside another strip packer on the same shapes in the same time.

python -m tests.bench.bench_strip FOLDER [SECONDS]

FOLDER holds strip instances of the EURO special interest group on cutting and packing (ESICUP) as
JSON: `strip_height`, and items with `demand` and `shape`. The other packer is spyrrow. Cloth has a
grain, so both are allowed the half turn and no other, without gaps or margins. The program's lays
are verified; the other's densities are its own word. Prints both densities and their ratios.
"""

import json
import math
import sys
from pathlib import Path
from typing import Any

import spyrrow

from planning.coverage.problem import Piece
from planning.coverage.strip import strip_lay

SECONDS = 10.0
MM = 10.0  # the instances' own unit is taken as a centimetre
TURNS = [0.0, 180.0]

type Instance = dict[str, Any]


def ours(instance: Instance, seconds: float) -> float:
    """The density of the program's lay; width and length change places, for all pieces alike."""
    pieces = [
        Piece(
            id=f"item {item['id']}",
            outline=tuple((y * MM, x * MM) for x, y in item["shape"]["data"]),
            count=item["demand"],
        )
        for item in instance["items"]
    ]
    return strip_lay(
        pieces, instance["strip_height"] * MM, clearance_mm=0, edge_margin_mm=0, seconds=seconds
    ).density


def theirs(instance: Instance, seconds: float) -> float:
    items = [
        spyrrow.Item(
            str(item["id"]),
            [(x, y) for x, y in item["shape"]["data"]],
            demand=item["demand"],
            allowed_orientations=TURNS,
        )
        for item in instance["items"]
    ]
    asked = spyrrow.StripPackingInstance(instance["name"], instance["strip_height"], items)
    config = spyrrow.StripPackingConfig(
        early_termination=False, total_computation_time=round(seconds), seed=0
    )
    return float(asked.solve(config).density)


def main() -> None:
    if len(sys.argv) < 2:
        raise SystemExit(__doc__)
    seconds = float(sys.argv[2]) if len(sys.argv) > 2 else SECONDS
    ratios = []
    print(f"density after {seconds:g} s     ours   other   ratio")
    for file in sorted(Path(sys.argv[1]).glob("*.json")):
        instance = json.loads(file.read_text(encoding="utf-8"))
        own, other = ours(instance, seconds), theirs(instance, seconds)
        ratios.append(own / other)
        print(f"{instance['name']:24} {own:.3f}   {other:.3f}   {ratios[-1]:.3f}")
    mean = math.exp(sum(map(math.log, ratios)) / len(ratios))
    print(f"geometric mean of the ratios {mean:.3f}")


if __name__ == "__main__":
    main()
