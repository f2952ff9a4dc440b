"""Facts about marking, holding and cutting: which tool suits which cloth.

All of it is common practice; no published table was found.
"""

from inventory.advice.facts import Fact, common

CHALK: Fact[str] = common("tailor's chalk or a chalk pencil on the wrong side")
THREAD_TACKS: Fact[str] = common("loose tacks of thin thread in a near colour")
BACK_PENCIL: Fact[str] = common("a soft pencil on the back")
BACK_CHALK: Fact[str] = common("a chalk pencil on the back")
NO_VANISHING_INK: Fact[str] = common(
    "Ink that fades with heat can come back in the cold, and some ink is set by the iron."
)

PINS: Fact[str] = common("pins, set inside the seam allowance")
FINE_PINS: Fact[str] = common("extra-fine pins, set inside the seam allowance only")
CLIPS: Fact[str] = common("clips")
BALL_PINS: Fact[str] = common("ball-point pins or clips")
BASTING: Fact[str] = common("clips, and basting with thin thread")

SHEARS: Fact[str] = common("sharp shears, one layer at a time, right side up")
ROTARY: Fact[str] = common("a rotary cutter with a new blade and weights, one layer at a time")
BLADE_BACK: Fact[str] = common(
    "a small sharp blade from the back, through the backing only, so that the pile stays whole"
)
HIDE_BLADE: Fact[str] = common("a sharp blade or rotary cutter, from the back, one layer at a time")
OLD_SHEARS: Fact[str] = common("shears kept for rough work, because sequins blunt good ones")

THREAD_TACK_FORMS = frozenset({"satin", "chiffon", "lace", "sweater-knit", "sequinned", "pleated"})
CLIP_FORMS = frozenset({"coated", "leather", "suede", "fur-fabric", "quilted", "fleece", "lace"})
ROTARY_FORMS = frozenset({"satin", "chiffon", "lace", "jersey", "interlock", "rib"})
