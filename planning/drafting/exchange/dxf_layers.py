"""The layers of a DXF pattern by ASTM D6673, and the one that is our own.

Source: restatements of ASTM D6673-10 that agree where they overlap; the standard itself was not
seen. Layers 84 to 87 are from memory, unconfirmed.
"""

BOUNDARY = "1"
NOTCHES = ("4", "80", "81", "82", "83")  # V and slit, T, castle, check, U
MIRROR = "6"
GRAIN = "7"
INTERNAL = "8"
CUT_OUT = "11"
DRILL = "13"
SEW = "14"
ANNOTATION = "15"
CHECK_LAYER = "CHECK_100_MM"  # our own line for checking the scale

READ = (BOUNDARY, *NOTCHES, MIRROR, GRAIN, INTERNAL, CUT_OUT, DRILL, SEW)
# Turn and curve points, grade references, and the dense copies that prove a curve.
NOT_NEEDED = ("2", "3", "5", "84", "85", "86", "87", CHECK_LAYER)
WORDS = {"9": "stripe lines", "10": "plaid lines", ANNOTATION: "notes"}
