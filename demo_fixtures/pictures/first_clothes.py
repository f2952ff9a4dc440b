"""The first clothes of a baby, pale and small."""

from __future__ import annotations

from demo_fixtures.drawing.bench import LINEN
from demo_fixtures.drawing.fine_cloth import Gauze, Satin
from demo_fixtures.drawing.folds import Drape, Pull
from demo_fixtures.drawing.knit import Jersey, Rib, SweaterKnit
from demo_fixtures.drawing.prints import printed
from demo_fixtures.garments.bodysuit import bodysuit
from demo_fixtures.garments.cardigan import cardigan
from demo_fixtures.garments.muslin_and_blanket import blanket, muslin
from demo_fixtures.garments.sleepsuit import sleepsuit
from demo_fixtures.photographs import Photo
from demo_fixtures.pictures.lying import BENCH_FOLDS, OAK

WHITE = Jersey("#f0ebe0", seed=101)
SUIT = printed(WHITE, "#8fa7a0", 34, 5.0, 102)
RIB = Rib("#f0ebe0", 2.2, 0.25, seed=103)
KNIT = SweaterKnit("#e3d3a6", 4.2, 3.1, fleck=0.05, seed=104)
KNIT_RIB = Rib("#e3d3a6", 5.2, 0.9, seed=105)
CELLULAR = SweaterKnit("#cfd8d4", 8.5, 7.0, fleck=0.04, seed=106)
SOFT = Drape(
    swell_mm=3,
    fold_mm=2.6,
    fold_width_mm=20,
    fold_length_mm=90,
    crumple_mm=0.6,
    crumple_size_mm=16,
    seed=111,
    pulls=(
        Pull((118, 112), (40, 170), 9, 4, 6),
        Pull((-118, 112), (-40, 190), 9, 4, -6),
        Pull((6, 338), (90, 300), 9, 4, 5),
        Pull((-6, 338), (-96, 300), 9, 4, -5),
        Pull((120, 420), (70, 440), 8, 3, 0),
        Pull((140, 60), (190, 160), 8, 3, -6),
    ),
)
FIRST_CLOTHES = (
    Photo(
        "sleepsuit",
        sleepsuit(SUIT, RIB, "#cfc8ba"),
        640,
        OAK,
        SOFT,
        (318, 120),
        2.0,
        upright=True,
        lift_mm=5,
        ground_turn_deg=90,
    ),
    Photo(
        "bodysuit",
        bodysuit(
            Jersey("#c9d3dc", seed=121, heather=0.025),
            Rib("#f0ece2", 2.2, 0.2, seed=122),
            "#b5c0ca",
        ),
        720,
        LINEN,
        Drape(
            swell_mm=3,
            fold_mm=2.4,
            fold_width_mm=20,
            fold_length_mm=90,
            crumple_mm=0.6,
            crumple_size_mm=16,
            seed=123,
            pulls=(
                Pull((112, 112), (30, 190), 9, 4, 6),
                Pull((-112, 112), (-50, 170), 9, 4, -6),
                Pull((90, 320), (20, 280), 9, 4, 5),
                Pull((-90, 320), (-30, 270), 9, 4, -5),
            ),
        ),
        (250, 70),
        -2.0,
        ground_drape=BENCH_FOLDS,
        lift_mm=5,
        sheet=((585, 290), -2.0),
    ),
    Photo(
        "cardigan",
        cardigan(KNIT, KNIT_RIB, "#7b5b3e"),
        560,
        OAK,
        Drape(
            swell_mm=3, fold_mm=1.8, fold_width_mm=26, fold_length_mm=90, crumple_mm=0.2, seed=131
        ),
        (280, 72),
        1.5,
        lift_mm=5,
    ),
    Photo(
        "muslin",
        muslin(Gauze("#efeadd", "#a9b59a", seed=141), "#ddd6c6"),
        1060,
        OAK,
        Drape(
            swell_mm=5,
            fold_mm=4.0,
            fold_width_mm=32,
            fold_length_mm=180,
            crumple_mm=1.0,
            seed=142,
            creases=(((-330, 0), (330, 0)), ((0, -330), (0, 330))),
        ),
        (525, 398),
        -4.0,
        lift_mm=4,
        ground_turn_deg=1.5,
        exposure=0.94,
    ),
    Photo(
        "blanket",
        blanket(CELLULAR, Satin("#d9e0dd", gloss=0.4)),
        900,
        LINEN,
        Drape(swell_mm=7, fold_mm=4.0, fold_width_mm=70, crumple_mm=0.05, seed=153),
        (450, 335),
        -3.0,
        ground_drape=BENCH_FOLDS,
        lift_mm=10,
    ),
)
