"""How clothes lie in the pictures: shared folds, creases from the pile, and the two benches."""

from __future__ import annotations

from demo_fixtures.drawing.bench import oak
from demo_fixtures.drawing.folds import Drape, Pull

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
BENCH_FOLDS = Drape(swell_mm=2.0, fold_mm=0.9, crumple_mm=0.4, fold_deg=20, seed=700)
BENT_ARM = ((-258, 168), (-320, 320), (-396, 470), (-398, 650))
OAK = oak()
CLOSE = Drape(
    swell_mm=2.5, fold_mm=1.6, fold_width_mm=36, crumple_mm=0.5, crumple_size_mm=18, seed=801
)
