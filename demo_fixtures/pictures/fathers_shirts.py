"""His shirts, his tie's companions, and what is worth a closer look."""

from __future__ import annotations

from demo_fixtures.drawing.bench import LINEN
from demo_fixtures.drawing.folds import Drape
from demo_fixtures.drawing.marks import Embroidered, Stained, Worn
from demo_fixtures.drawing.weave import Bands, Weave
from demo_fixtures.garments.shirt import ShirtCut, shirt
from demo_fixtures.photographs import Photo
from demo_fixtures.pictures.lying import (
    BENCH_FOLDS,
    BENT_ARM,
    CLOSE,
    OAK,
    PILE_CREASES,
    SHIRT_PULLS,
)

PLAIN_BLUE = Weave(Bands("#a9bcd6"), Bands("#c0cfe2"), pitch_mm=0.3, slub=0.035, seed=5)
STRIPE = Weave(
    Bands("#f1efe9", 14.0, [(3.0, 5.5, "#46618f"), (10.8, 0.9, "#46618f")]),
    Bands("#f1efe9"),
    pitch_mm=0.3,
    warp_share=0.68,
    slub=0.02,
    seed=21,
)
CHECK = Weave(
    Bands("#efe9dc", 36.0, [(2.0, 2.6, "#7a2f34"), (20.0, 2.6, "#2f4a6b")]),
    Bands("#efe9dc", 36.0, [(2.0, 2.6, "#7a2f34"), (20.0, 2.6, "#2f4a6b")]),
    pitch_mm=0.35,
    slub=0.025,
    seed=31,
)
CHAMBRAY = Weave(
    Bands("#4c6a92"), Bands("#c9d0d6"), pitch_mm=0.4, warp_share=0.6, slub=0.07, seed=41
)
FLANNEL = Weave(
    Bands("#7c3232", 76.0, [(0.0, 38.0, "#26282d"), (54.0, 3.0, "#cdbfa4")]),
    Bands("#7c3232", 76.0, [(0.0, 38.0, "#26282d"), (54.0, 3.0, "#cdbfa4")]),
    pitch_mm=0.5,
    twill=4,
    fuzz=0.2,
    slub=0.05,
    seed=51,
)
LOOSE = Drape(
    swell_mm=4,
    fold_mm=4.0,
    fold_width_mm=34,
    crumple_mm=1.0,
    pulls=SHIRT_PULLS,
    creases=PILE_CREASES,
    seed=12,
)
MONOGRAM = Embroidered(PLAIN_BLUE, 140, 292, 17)
STAINED = Stained(CHAMBRAY, -120, 470, 34)
WORN = Worn(FLANNEL, 6, 250, 40, 60)
FATHERS_SHIRTS = (
    Photo("shirt-plain", shirt(ShirtCut(MONOGRAM, "#dfe6ee")), 1300, OAK, LOOSE, (650, 92), -1.5),
    Photo(
        "shirt-stripe",
        shirt(ShirtCut(STRIPE, "#f4f2ec", arm_left=BENT_ARM)),
        1300,
        LINEN,
        Drape(
            swell_mm=4,
            fold_mm=3.6,
            fold_width_mm=32,
            crumple_mm=0.9,
            pulls=SHIRT_PULLS[:6],
            seed=23,
            creases=PILE_CREASES[:2],
        ),
        (655, 96),
        2.0,
        ground_drape=BENCH_FOLDS,
    ),
    Photo(
        "shirt-check",
        shirt(ShirtCut(CHECK, "#efe9dc", "#6b5a48")),
        1300,
        OAK,
        Drape(
            swell_mm=4,
            fold_mm=4.2,
            fold_width_mm=36,
            crumple_mm=1.1,
            pulls=SHIRT_PULLS[2:],
            seed=34,
        ),
        (650, 92),
        1.2,
        ground_turn_deg=1.0,
        exposure=0.93,
    ),
    Photo(
        "shirt-chambray",
        shirt(ShirtCut(STAINED, "#d8dce0", pocket=False)),
        1330,
        LINEN,
        Drape(
            swell_mm=4,
            fold_mm=3.4,
            fold_width_mm=34,
            crumple_mm=1.2,
            pulls=SHIRT_PULLS[:7],
            seed=45,
        ),
        (540, 96),
        -1.0,
        ground_drape=BENCH_FOLDS,
        sheet=((1135, 300), 3.0),
    ),
    Photo(
        "shirt-flannel",
        shirt(ShirtCut(FLANNEL, "#3a3033", "#3a2f2a", sleeves=WORN)),
        1300,
        OAK,
        Drape(
            swell_mm=5,
            fold_mm=5.6,
            fold_width_mm=40,
            crumple_mm=1.2,
            pulls=SHIRT_PULLS[1:8],
            seed=56,
        ),
        (650, 92),
        -2.2,
    ),
    Photo(
        "monogram-close", shirt(ShirtCut(MONOGRAM, "#dfe6ee")), 250, OAK, CLOSE, (-14, -196), -1.5
    ),
    Photo(
        "stain-close",
        shirt(ShirtCut(STAINED, "#d8dce0", pocket=False)),
        150,
        LINEN,
        CLOSE,
        (199, -412),
        -1.0,
    ),
    Photo(
        "elbow-close",
        shirt(ShirtCut(FLANNEL, "#3a3033", "#3a2f2a", sleeves=WORN)),
        280,
        OAK,
        CLOSE,
        (-195, -310),
        -2.2,
        exposure=1.1,
    ),
)
