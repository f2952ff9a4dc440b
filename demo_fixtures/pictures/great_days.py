"""A wedding dress and a uniform, a velvet skirt, a silk blouse and a tie."""

from __future__ import annotations

from demo_fixtures.drawing.bench import LINEN
from demo_fixtures.drawing.fine_cloth import Satin
from demo_fixtures.drawing.folds import Drape, Pull
from demo_fixtures.drawing.pile_and_lace import Lace, Velvet
from demo_fixtures.drawing.weave import Bands, Turned, Weave
from demo_fixtures.garments.shirt import ShirtCut, shirt
from demo_fixtures.garments.skirt_and_tie import tie, velvet_skirt
from demo_fixtures.garments.uniform_jacket import uniform_jacket
from demo_fixtures.garments.wedding_dress import wedding_dress
from demo_fixtures.photographs import Photo
from demo_fixtures.pictures.lying import BENCH_FOLDS, BENT_ARM, CLOSE, OAK, SHIRT_PULLS

IVORY = Satin("#e9e1d0", gloss=0.42, seed=201)
LACE = Lace("#f6f1e6", flower_mm=44, seed=202)
LINING = Satin("#d8cab2", gloss=0.1, seed=203)
SKIRT_FOLDS = tuple(
    (
        Pull((x0, 392), (x1, 1330), 22, h, b)
        for x0, x1, h, b in (
            (-120, -330, 14, 20),
            (-70, -190, 12, -14),
            (-20, -60, 13, 16),
            (30, 90, 11, -12),
            (80, 230, 14, 14),
            (130, 360, 12, -20),
            (-146, -420, 9, 6),
        )
    )
)
WOOL = Weave(
    Bands("#2c3444"), Bands("#343c4c"), pitch_mm=0.5, twill=3, slub=0.05, fuzz=0.2, seed=211
)
SILK = Satin("#b98f86", gloss=0.55, seed=221)
VELVET = Velvet("#5a2634", seed=231)
GREAT_DAYS = (
    Photo(
        "wedding-dress",
        wedding_dress(IVORY, LACE, LINING),
        1180,
        OAK,
        Drape(
            swell_mm=6,
            fold_mm=5,
            fold_width_mm=46,
            fold_length_mm=420,
            crumple_mm=0.5,
            seed=241,
            pulls=SKIRT_FOLDS,
        ),
        (590, 78),
        0.8,
        upright=True,
        lift_mm=9,
        ground_turn_deg=90,
        exposure=0.9,
    ),
    Photo(
        "lace-close",
        wedding_dress(IVORY, LACE, LINING),
        300,
        OAK,
        CLOSE,
        (118, 8),
        0.8,
        exposure=0.86,
    ),
    Photo(
        "silk-blouse",
        shirt(ShirtCut(SILK, "#cdb0a6", "#efe8dc", pocket=False, arm_left=BENT_ARM)),
        1300,
        LINEN,
        Drape(
            swell_mm=7,
            fold_mm=5.0,
            fold_width_mm=52,
            fold_length_mm=320,
            crumple_mm=0.25,
            seed=257,
            pulls=SHIRT_PULLS[:5],
        ),
        (655, 96),
        2.5,
        ground_drape=BENCH_FOLDS,
    ),
    Photo(
        "uniform-jacket",
        uniform_jacket(WOOL, Satin("#5d2f33", gloss=0.3), "#1f2633", "#b08d4c"),
        1200,
        LINEN,
        Drape(
            swell_mm=5,
            fold_mm=3.4,
            fold_width_mm=50,
            crumple_mm=0.5,
            seed=261,
            pulls=SHIRT_PULLS[:5],
        ),
        (600, 98),
        1.2,
        ground_drape=BENCH_FOLDS,
        lift_mm=9,
        exposure=1.1,
    ),
    Photo(
        "velvet-skirt",
        velvet_skirt(VELVET, VELVET),
        1100,
        LINEN,
        Drape(
            swell_mm=8,
            fold_mm=6,
            fold_width_mm=52,
            fold_length_mm=360,
            crumple_mm=0.3,
            seed=271,
            pulls=(
                Pull((-60, 20), (-190, 690), 26, 12, 16),
                Pull((70, 20), (210, 690), 26, 12, -12),
                Pull((10, 60), (30, 690), 24, 9, 10),
            ),
        ),
        (550, 92),
        -1.0,
        ground_drape=BENCH_FOLDS,
        lift_mm=9,
        exposure=1.1,
    ),
    Photo(
        "tie",
        tie(
            Turned(
                Weave(
                    Bands("#3f4a3a", 26.0, [(0.0, 5.0, "#a8925a"), (7.0, 1.6, "#7c3a3d")]),
                    Bands("#3f4a3a"),
                    pitch_mm=0.4,
                    twill=4,
                    warp_share=0.92,
                    gloss=0.2,
                    slub=0.02,
                    seed=281,
                ),
                48,
            )
        ),
        860,
        OAK,
        Drape(swell_mm=3, fold_mm=1.4, fold_width_mm=40, crumple_mm=0.2, seed=282),
        (430, 315),
        -6.0,
        lift_mm=7,
    ),
)
