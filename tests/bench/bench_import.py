"""How long reading a pattern file of 40 pieces takes; the aim for DXF is twice ezdxf's own reading
plus half a second, measured in the same run.

Run: python -m tests.bench.bench_import
"""

import io
import statistics
import time
from collections.abc import Callable
from dataclasses import replace

import ezdxf

from planning.drafting.exchange.read import read_pattern_file
from planning.drafting.exchange.write import dxf_of, svg_of
from planning.drafting.library import built_in_pattern
from planning.drafting.pieces import DraftSize

PIECES = 40
ROUNDS = 7
AIM_TIMES = 2.0
AIM_MORE_S = 0.5


def forty_pieces() -> DraftSize:
    sizes = built_in_pattern().sizes
    pieces = tuple(
        replace(piece, name=f"{piece.name} {size.name}") for size in sizes for piece in size
    )
    return replace(sizes[0], pieces=pieces[-PIECES:])


def seconds(work: Callable[[], object]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def main() -> None:
    size = forty_pieces()
    dxf, svg = dxf_of(size, "Forty pieces"), svg_of(size, "Forty pieces").encode()
    text = dxf.decode("ascii")
    found = read_pattern_file(dxf, "forty.dxf")
    if len(found.pieces) != PIECES:
        raise SystemExit(f"{len(found.pieces)} pieces were read, not {PIECES}")
    bare, ours, drawn = [], [], []
    for _ in range(ROUNDS):
        bare.append(seconds(lambda: ezdxf.read(io.StringIO(text))))
        ours.append(seconds(lambda: read_pattern_file(dxf, "forty.dxf")))
        drawn.append(seconds(lambda: read_pattern_file(svg, "forty.svg")))
    theirs_s, ours_s = statistics.median(bare), statistics.median(ours)
    limit_s = AIM_TIMES * theirs_s + AIM_MORE_S
    verdict = "met" if ours_s <= limit_s else "missed"
    print(
        f"{PIECES} pieces, DXF of {len(dxf) / 1000:.0f} kB: ezdxf alone {theirs_s:.2f} s, "
        f"import {ours_s:.2f} s, {ours_s / theirs_s:.2f} times (aim at most {AIM_TIMES:g} times "
        f"and {AIM_MORE_S:g} s, here {limit_s:.2f} s: {verdict}); median of {ROUNDS}"
    )
    print(f"the same as SVG of {len(svg) / 1000:.0f} kB: {statistics.median(drawn):.2f} s")


if __name__ == "__main__":
    main()
