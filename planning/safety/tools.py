"""Cautions for the tools on the bench: what can go wrong and what to do, with a source each.

Facts only; a page shows those of the tools its step uses. Children sew with a grown person beside
them.
"""

from dataclasses import dataclass

from planning.safety import sources

_SCHOOL = "School and club sewing rules (2010, 2018) and sewing-room teaching slides"
_CUTTER = "Five hobby-teaching pages in agreement (2008 to 2017); no public body found"
_SPRAY = "An art university's glossary of spray adhesives"
_CRAFT_AIR = "A page on ventilation for crafts (read second-hand)"
_OSHA = "OSHA sewing eTool, station design"
_BURNS = "Abstract of a hospital series of iron burns, 1988 to 1991: mean age 19 months"


@dataclass(frozen=True)
class ToolCaution:
    """A tool, what it can do to a person, what to do about it, and who says so."""

    tool: str
    hazards: tuple[str, ...]
    rules: tuple[str, ...]
    source: str


TOOL_CAUTIONS: tuple[ToolCaution, ...] = (
    ToolCaution(
        "sewing machine",
        ("a needle through the finger", "the take-up lever", "a broken needle in the eye"),
        (
            "Sew slowly and evenly, fingers beside the foot and never in front of it.",
            "Guide the cloth; do not pull it, and do not sew over pins.",
            "Switch off before changing needle, bobbin, thread or foot; unplug by the plug.",
        ),
        _SCHOOL,
    ),
    ToolCaution(
        "pins and hand needles",
        ("pricks", "swallowing", "points left on the floor or in the toy"),
        (
            "Never hold pins in the mouth; each goes straight back into its cushion.",
            "Count them out and in, and go over the floor with a magnet.",
            "Wear closed shoes.",
        ),
        _SCHOOL,
    ),
    ToolCaution(
        "shears and snips",
        ("cuts", "a dropped blade"),
        (
            "Close them when they lie down and cut at a table.",
            "Hand them over closed, handles first.",
            "Keep one pair for cloth only, so that it stays sharp.",
        ),
        _SCHOOL,
    ),
    ToolCaution(
        "seam ripper",
        ("a slip into the hand or the cloth",),
        (
            "Work away from the hand that holds the cloth, in good light.",
            "Take a few stitches at a time with light pressure; cap it afterwards.",
        ),
        sources.FROM_MEMORY,
    ),
    ToolCaution(
        "rotary cutter",
        ("deep cuts at the ruler's edge", "a dropped cutter on the foot"),
        (
            "Close the guard after every stroke.",
            "Stand, push away from the body, and keep fingers back on a thick ruler.",
            "Change a dull blade, since force makes it slip; wrap the old one before it goes away.",
            "Wear shoes, cut on a mat, and keep it out of children's reach.",
        ),
        _CUTTER,
    ),
    ToolCaution(
        "iron, press and steamer",
        ("burns", "scalds", "a pulled cord", "fire"),
        (
            "Keep face and fingers clear of steam and hold the handle only.",
            "Stand it upright; never leave it on the board.",
            "Unplug it and let it cool with the cord up, out of reach: most burns are of small "
            "children, many after it was switched off.",
            "Cool a burn under running water for at least 20 minutes and have a child's burn seen; "
            "follow the local health service's advice.",
        ),
        _BURNS,
    ),
    ToolCaution(
        "fusible web and interfacing",
        ("fumes", "hot glue"),
        (
            "Air the room, use a press cloth, and let the work cool flat.",
            "Keep to the heat on the label and stop if the head or the eyes ache.",
        ),
        sources.FROM_MEMORY,
    ),
    ToolCaution(
        "spray adhesive",
        ("solvent vapour", "fire", "droplets in the lungs"),
        (
            "Spray outdoors or in a draught that blows away, into a box, from about 20 cm.",
            "No flame or hot iron near; let the vapour clear before pressing.",
            "Wear gloves, and a mask if it takes long; not near babies or pregnant people.",
        ),
        _SPRAY,
    ),
    ToolCaution(
        "lint, fibre dust and cut fur",
        ("breathing in fibres", "slipping", "lint in the machine"),
        (
            "Cut pile from the back with the points of the shears.",
            "Vacuum, do not sweep; wear a dust mask; clean the bobbin case unplugged.",
        ),
        _CRAFT_AIR,
    ),
    ToolCaution(
        "long sitting",
        ("an aching neck, wrists or back",),
        (
            "Knees and hips at 90 to 110 degrees, the work near, wrists straight.",
            "A padded chair that stands still; change position and take breaks.",
        ),
        _OSHA,
    ),
)
