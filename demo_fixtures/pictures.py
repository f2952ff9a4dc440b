"""The list of pictures: which garment, in which cloth, lying how, on what."""

from __future__ import annotations

from demo_fixtures.babywear import blanket, bodysuit, cardigan, muslin, sleepsuit
from demo_fixtures.bench import LINEN, oak
from demo_fixtures.cloth import Bands, Denim, Gauze, Satin, Turned, Weave, printed
from demo_fixtures.draw_photos import Photo
from demo_fixtures.everyday import day_dress, fleece_top, jeans, jumper, scarf, t_shirt
from demo_fixtures.folds import Drape, Pull
from demo_fixtures.formal import tie, uniform_jacket, velvet_skirt, wedding_dress
from demo_fixtures.marks import Embroidered, RubberyPrint, Stained, Worn
from demo_fixtures.shirts import ShirtCut, shirt
from demo_fixtures.soft_cloth import Fleece, Jersey, Lace, Rib, SweaterKnit, Velvet

SHIRT_PULLS = (
    Pull((275, 255), (90, 430), 18, 9, 14),
    Pull((-275, 255), (-120, 400), 16, 8, -14),
    Pull((282, 560), (120, 660), 18, 6, 12),
    Pull((240, 60), (330, 330), 15, 7, -20),
    Pull((-240, 60), (-340, 320), 16, 7, 20),
    Pull((-270, 640), (-60, 560), 20, 5, 12),
    Pull((290, 300), (370, 420), 13, 7, 8),
    Pull((320, 560), (420, 470), 12, 6, 8),
    Pull((-310, 560), (-390, 500), 12, 6, 8),
)
PILE_CREASES = (((-140, 10), (-140, 800)), ((140, 10), (140, 800)), ((-350, 400), (350, 400)))

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
LINEN_SHIRT = Weave(Bands("#b5b79a"), Bands("#c6c8ad"), pitch_mm=0.5, slub=0.085, seed=61)
BENCH_FOLDS = Drape(swell_mm=2.0, fold_mm=0.9, crumple_mm=0.4, fold_deg=20, seed=700)
BENT_ARM = ((-258, 168), (-320, 320), (-396, 470), (-398, 650))
OAK = oak()
CLOSE = Drape(
    swell_mm=2.5, fold_mm=1.6, fold_width_mm=36, crumple_mm=0.5, crumple_size_mm=18, seed=801
)


def all_photos() -> list[Photo]:
    """Every picture of the workshop."""
    return [*fathers_shirts(), *babys_clothes(), *great_days(), *donation_box()]


def fathers_shirts() -> list[Photo]:
    """His shirts, a tie, and what is worth a closer look."""
    loose = Drape(
        swell_mm=4,
        fold_mm=4.0,
        fold_width_mm=34,
        crumple_mm=1.0,
        pulls=SHIRT_PULLS,
        creases=PILE_CREASES,
        seed=12,
    )
    monogram = Embroidered(PLAIN_BLUE, 140, 292, 17)
    stained = Stained(CHAMBRAY, -120, 470, 34)
    worn = Worn(FLANNEL, 6, 250, 40, 60)
    return [
        Photo(
            "shirt-plain", shirt(ShirtCut(monogram, "#dfe6ee")), 1300, OAK, loose, (650, 92), -1.5
        ),
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
        ),
        Photo(
            "shirt-chambray",
            shirt(ShirtCut(stained, "#d8dce0", pocket=False)),
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
            shirt(ShirtCut(FLANNEL, "#3a3033", "#3a2f2a", sleeves=worn)),
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
            "monogram-close",
            shirt(ShirtCut(monogram, "#dfe6ee")),
            250,
            OAK,
            CLOSE,
            (-14, -196),
            -1.5,
        ),
        Photo(
            "stain-close",
            shirt(ShirtCut(stained, "#d8dce0", pocket=False)),
            150,
            LINEN,
            CLOSE,
            (199, -412),
            -1.0,
        ),
        Photo(
            "elbow-close",
            shirt(ShirtCut(FLANNEL, "#3a3033", "#3a2f2a", sleeves=worn)),
            280,
            OAK,
            CLOSE,
            (-195, -310),
            -2.2,
            exposure=1.1,
        ),
    ]


def babys_clothes() -> list[Photo]:
    """The first clothes of a baby, pale and small."""
    white = Jersey("#f0ebe0", seed=101)
    suit = printed(white, "#8fa7a0", 34, 5.0, 102)
    rib = Rib("#f0ebe0", 2.2, 0.25, seed=103)
    knit = SweaterKnit("#e3d3a6", 4.2, 3.1, fleck=0.05, seed=104)
    knit_rib = Rib("#e3d3a6", 5.2, 0.9, seed=105)
    cellular = SweaterKnit("#cfd8d4", 8.5, 7.0, fleck=0.04, seed=106)
    soft = Drape(
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
    return [
        Photo(
            "sleepsuit",
            sleepsuit(suit, rib, "#cfc8ba"),
            640,
            OAK,
            soft,
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
            cardigan(knit, knit_rib, "#7b5b3e"),
            560,
            OAK,
            Drape(
                swell_mm=3,
                fold_mm=1.8,
                fold_width_mm=26,
                fold_length_mm=90,
                crumple_mm=0.2,
                seed=131,
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
        ),
        Photo(
            "blanket",
            blanket(cellular, Satin("#d9e0dd", gloss=0.4)),
            900,
            LINEN,
            Drape(swell_mm=7, fold_mm=4.0, fold_width_mm=70, crumple_mm=0.3, seed=153),
            (450, 335),
            -3.0,
            ground_drape=BENCH_FOLDS,
            lift_mm=10,
        ),
    ]


def great_days() -> list[Photo]:
    """A wedding dress and a uniform, and what was worn beside them."""
    ivory = Satin("#e9e1d0", gloss=0.42, seed=201)
    lace = Lace("#f6f1e6", flower_mm=44, seed=202)
    lining = Satin("#d8cab2", gloss=0.1, seed=203)
    skirt_folds = tuple(
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
    wool = Weave(
        Bands("#2c3444"), Bands("#343c4c"), pitch_mm=0.5, twill=3, slub=0.05, fuzz=0.2, seed=211
    )
    silk = Satin("#b98f86", gloss=0.55, seed=221)
    velvet = Velvet("#5a2634", seed=231)
    return [
        Photo(
            "wedding-dress",
            wedding_dress(ivory, lace, lining),
            1180,
            OAK,
            Drape(
                swell_mm=6,
                fold_mm=5,
                fold_width_mm=46,
                fold_length_mm=420,
                crumple_mm=0.5,
                seed=241,
                pulls=skirt_folds,
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
            wedding_dress(ivory, lace, lining),
            330,
            OAK,
            CLOSE,
            (110, 70),
            0.8,
            exposure=0.9,
        ),
        Photo(
            "silk-blouse",
            shirt(ShirtCut(silk, "#cdb0a6", "#efe8dc", pocket=False, arm_left=BENT_ARM)),
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
            uniform_jacket(wool, Satin("#5d2f33", gloss=0.3), "#1f2633", "#b08d4c"),
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
            velvet_skirt(velvet, velvet),
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
    ]


def donation_box() -> list[Photo]:
    """A box left at the door: all sorts."""
    rust = SweaterKnit("#9a5a3c", 5.0, 3.8, cable_every_mm=92, seed=301)
    denim, pale = Denim(seed=311), Weave(Bands("#c9c3b4"), Bands("#c9c3b4"), seed=312)
    shirt_print = RubberyPrint(Jersey("#5d7280", seed=321, heather=0.06), 0, 250, 88)
    teal = Fleece("#3f6a68", seed=331)
    flowers = printed(
        Weave(Bands("#32384f"), Bands("#363c54"), pitch_mm=0.3, slub=0.02, sheen=0.3, seed=341),
        "#d8b8a0",
        46,
        9.5,
        342,
    )
    scarf_wool = Weave(
        Bands("#6f7a5e", 90.0, [(0, 30, "#4a5540"), (60, 6, "#c2a05a")]),
        Bands("#6f7a5e", 90.0, [(0, 30, "#4a5540"), (60, 6, "#c2a05a")]),
        pitch_mm=1.6,
        twill=4,
        fuzz=0.5,
        slub=0.08,
        seed=351,
    )
    legs = tuple(
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
    return [
        Photo(
            "jeans",
            jeans(denim, pale, "#c08a45", "#b07a4a"),
            860,
            LINEN,
            Drape(swell_mm=5, fold_mm=4, fold_width_mm=40, crumple_mm=1.1, pulls=legs, seed=361),
            (350, 48),
            1.0,
            upright=True,
            ground_drape=BENCH_FOLDS,
            lift_mm=9,
            sheet=((728, 870), 2.0),
        ),
        Photo(
            "denim-close", jeans(denim, pale, "#c08a45", "#b07a4a"), 270, LINEN, CLOSE, (0, 20), 1.0
        ),
        Photo(
            "jumper",
            jumper(rust, Rib("#9a5a3c", 7.0, 1.4, seed=302)),
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
            jumper(rust, Rib("#9a5a3c", 7.0, 1.4, seed=302)),
            260,
            LINEN,
            CLOSE,
            (130, -200),
            1.0,
        ),
        Photo(
            "fleece-top",
            fleece_top(teal, Jersey("#2c4a49", seed=332), Jersey("#27302f", seed=333)),
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
            day_dress(flowers, "#4a4f63"),
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
            scarf(scarf_wool, Jersey("#5a6549", heather=0.1, seed=352)),
            1120,
            OAK,
            Drape(swell_mm=7, fold_mm=3.6, fold_width_mm=70, crumple_mm=0.2, seed=411),
            (520, 385),
            -40.0,
            lift_mm=10,
        ),
        Photo(
            "t-shirt",
            t_shirt(shirt_print, Rib("#5d7280", 2.4, 0.3, seed=322), "#71858f"),
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
    ]
