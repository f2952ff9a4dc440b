"""A box left at the door: all sorts."""

from __future__ import annotations

from demo_fixtures.drawing.bench import LINEN
from demo_fixtures.drawing.fine_cloth import Denim
from demo_fixtures.drawing.folds import Drape, Pull
from demo_fixtures.drawing.knit import Jersey, Rib, SweaterKnit
from demo_fixtures.drawing.marks import RubberyPrint
from demo_fixtures.drawing.pile_and_lace import Fleece
from demo_fixtures.drawing.prints import printed
from demo_fixtures.drawing.weave import Bands, Weave
from demo_fixtures.garments.day_dress import day_dress
from demo_fixtures.garments.fleece_top import fleece_top
from demo_fixtures.garments.jeans import jeans
from demo_fixtures.garments.jumper import jumper
from demo_fixtures.garments.scarf import scarf
from demo_fixtures.garments.shirt import ShirtCut, shirt
from demo_fixtures.garments.t_shirt import t_shirt
from demo_fixtures.photographs import Photo
from demo_fixtures.pictures.lying import BENCH_FOLDS, CLOSE, OAK, SHIRT_PULLS

LINEN_SHIRT = Weave(Bands("#b5b79a"), Bands("#c6c8ad"), pitch_mm=0.5, slub=0.085, seed=61)
RUST = SweaterKnit("#9a5a3c", 5.0, 3.8, cable_every_mm=92, seed=301)
DENIM, PALE = (Denim(seed=311), Weave(Bands("#c9c3b4"), Bands("#c9c3b4"), seed=312))
SHIRT_PRINT = RubberyPrint(Jersey("#5d7280", seed=321, heather=0.06), 0, 250, 88)
TEAL = Fleece("#3f6a68", seed=331)
FLOWERS = printed(
    Weave(Bands("#32384f"), Bands("#363c54"), pitch_mm=0.3, slub=0.02, sheen=0.3, seed=341),
    "#d8b8a0",
    46,
    9.5,
    342,
)
SCARF_WOOL = Weave(
    Bands("#6f7a5e", 90.0, [(0, 30, "#4a5540"), (60, 6, "#c2a05a")]),
    Bands("#6f7a5e", 90.0, [(0, 30, "#4a5540"), (60, 6, "#c2a05a")]),
    pitch_mm=1.6,
    twill=4,
    fuzz=0.5,
    slub=0.08,
    seed=351,
)
LEGS = tuple(
    (
        Pull(a, b, w, h, bow)
        for a, b, w, h, bow in (
            ((10, 300), (160, 250), 16, 8, 10),
            ((-10, 300), (-170, 240), 16, 8, -10),
            ((20, 330), (190, 330), 14, 6, 8),
            ((-20, 340), (-190, 350), 14, 6, -8),
            ((60, 700), (230, 660), 20, 6, 12),
            ((-60, 680), (-240, 720), 20, 6, -12),
            ((250, 760), (90, 790), 16, 5, 10),
        )
    )
)
DONATION_BOX = (
    Photo(
        "jeans",
        jeans(DENIM, PALE, "#c08a45", "#b07a4a"),
        860,
        LINEN,
        Drape(swell_mm=5, fold_mm=4, fold_width_mm=40, crumple_mm=1.1, pulls=LEGS, seed=361),
        (350, 48),
        1.0,
        upright=True,
        ground_drape=BENCH_FOLDS,
        lift_mm=9,
        sheet=((728, 870), 2.0),
    ),
    Photo("denim-close", jeans(DENIM, PALE, "#c08a45", "#b07a4a"), 270, LINEN, CLOSE, (0, 20), 1.0),
    Photo(
        "jumper",
        jumper(RUST, Rib("#9a5a3c", 7.0, 1.4, seed=302)),
        1180,
        LINEN,
        Drape(
            swell_mm=6,
            fold_mm=3.4,
            fold_width_mm=56,
            crumple_mm=0.2,
            seed=371,
            pulls=SHIRT_PULLS[:5],
        ),
        (590, 84),
        -1.5,
        ground_drape=BENCH_FOLDS,
        lift_mm=11,
    ),
    Photo(
        "cable-close",
        jumper(RUST, Rib("#9a5a3c", 7.0, 1.4, seed=302)),
        260,
        LINEN,
        CLOSE,
        (130, -200),
        1.0,
    ),
    Photo(
        "fleece-top",
        fleece_top(TEAL, Jersey("#2c4a49", seed=332), Jersey("#27302f", seed=333)),
        1180,
        OAK,
        Drape(
            swell_mm=7,
            fold_mm=4.2,
            fold_width_mm=60,
            crumple_mm=0.2,
            seed=381,
            pulls=SHIRT_PULLS[:5],
        ),
        (590, 120),
        1.5,
        lift_mm=11,
    ),
    Photo(
        "viscose-dress",
        day_dress(FLOWERS, "#4a4f63"),
        900,
        OAK,
        Drape(
            swell_mm=6,
            fold_mm=5.2,
            fold_width_mm=36,
            fold_length_mm=300,
            crumple_mm=0.5,
            seed=391,
            pulls=(
                Pull((-100, 408), (-220, 1050), 20, 10, 14),
                Pull((-30, 408), (-70, 1050), 20, 9, -10),
                Pull((50, 408), (120, 1050), 20, 10, 12),
                Pull((120, 408), (280, 1040), 20, 9, -14),
            ),
        ),
        (450, 66),
        -0.8,
        upright=True,
        ground_turn_deg=90,
    ),
    Photo(
        "linen-shirt",
        shirt(ShirtCut(LINEN_SHIRT, "#d5d6c0", "#8a7452", pocket=False)),
        1300,
        OAK,
        Drape(
            swell_mm=4,
            fold_mm=4.4,
            fold_width_mm=28,
            crumple_mm=2.2,
            crumple_size_mm=22,
            seed=401,
            pulls=SHIRT_PULLS[:8],
        ),
        (650, 92),
        1.8,
    ),
    Photo(
        "scarf",
        scarf(SCARF_WOOL, Jersey("#5a6549", heather=0.1, seed=352)),
        1120,
        OAK,
        Drape(swell_mm=7, fold_mm=3.6, fold_width_mm=70, crumple_mm=0.2, seed=411),
        (520, 366),
        -40.0,
        lift_mm=10,
    ),
    Photo(
        "t-shirt",
        t_shirt(SHIRT_PRINT, Rib("#5d7280", 2.4, 0.3, seed=322), "#71858f"),
        1100,
        OAK,
        Drape(
            swell_mm=5,
            fold_mm=4.2,
            fold_width_mm=36,
            crumple_mm=0.6,
            seed=421,
            pulls=(
                Pull((262, 250), (100, 400), 18, 8, 14),
                Pull((-262, 250), (-110, 420), 18, 8, -14),
                Pull((-250, 620), (-60, 560), 18, 5, 10),
                Pull((255, 560), (90, 640), 16, 5, -10),
            ),
        ),
        (550, 62),
        -1.2,
        lift_mm=6,
    ),
)
