"""What to take care of, by what arrives with a garment: condition, age, fibre, make.

Each row is a whole notice with its own source. Which rows apply is settled in
``cautions.py``.
"""

from inventory.advice.facts import Fact, common, memory, published, trade
from inventory.advice.parts import Notice, notice
from inventory.advice.sources import (
    AIHA_VAPOUR,
    CAMEO,
    CCI_COLOUR_TEST,
    CDC_MOULD,
    EPA_MOTHBALLS,
    EPA_MOULD,
    HSE_BLOOD,
    MOTHBALL_REVIEW,
    NHS_WASHING,
    NPS_DISASTER,
    NPS_MOULD_1993,
    NPS_MOULD_2007,
    TEXTILE_MUSEUM_PESTS,
)

AT_RISK: Fact[bool] = published(True, f"{NPS_MOULD_2007}; {NPS_DISASTER}")
YES: Fact[bool] = common(True)
RECALLED: Fact[bool] = memory(True)
TRADE: Fact[bool] = trade(True)

ARRIVAL: tuple[Notice, ...] = (
    notice(
        "Before reaching in, shake pockets, cuffs and linings out onto a tray, with gloves on; "
        "pick up anything sharp with tongs.",
        "Donated clothes can hold needles, blades and loose tablets.",
        RECALLED,
    ),
    notice(
        "Look for medicine patches stuck inside; fold one sticky side to sticky side, keep it "
        "from children and animals, and hand it to a pharmacy.",
        "A used patch still holds enough drug to kill a child.",
        trade(True, "US FDA alert on medicine patches, as restated by trade press"),
    ),
)

MUST_NOT_BY_CONDITION: dict[str, tuple[Notice, ...]] = {
    "mould": (
        notice(
            "Do not brush, shake, press or cut it while mould or a musty smell is left.",
            "Handling throws mould spores into the air.",
            published(True, NPS_MOULD_2007),
        ),
        notice(
            "Do not use it for a baby, an older person, or anyone with asthma, an allergy or "
            "weak immunity, if mould shows or it is still musty after two washes.",
            "These are the people mould harms most.",
            AT_RISK,
        ),
    ),
    "mothball": (
        notice(
            "Never use it for a baby, or for a child with G6PD deficiency.",
            "Naphthalene in clothes has poisoned babies; it breaks down red blood cells.",
            published(True, f"{EPA_MOTHBALLS}; {MOTHBALL_REVIEW}"),
        ),
    ),
    "cream": (
        notice(
            "Do not use it for a child's toy.",
            "Cloth soaked with skin cream burns fiercely, and the grease may not wash out.",
            RECALLED,
        ),
        notice(
            "Do not tumble dry or iron it, or bring it near a flame, while any grease is left.",
            "Heat can set greasy cloth alight.",
            RECALLED,
        ),
    ),
    "blood": (
        notice(
            "Do not shake it, and do not handle it without gloves.",
            "Dried blood can still carry infection.",
            published(True, HSE_BLOOD),
        ),
    ),
    "shattered": (
        notice(
            "Do not make it into a toy to be handled; keep it backed, behind glass or in a box.",
            "Shattered cloth goes on falling apart, and old weighted silk sheds metal dust.",
            YES,
        ),
    ),
    "antique": (
        notice(
            "Do not cut it before a textile conservator has seen it and the giver has said so "
            "in writing.",
            "A rare or old piece may be worth more whole, and cutting cannot be undone.",
            YES,
        ),
    ),
}

CAUTIONS_BY_CONDITION: dict[str, tuple[Notice, ...]] = {
    "mould": (
        notice(
            "Seal it in a polythene bag away from other cloth, then dry it and lift the mould "
            "off with a HEPA vacuum cleaner, outdoors if you can; throw the waste away outside.",
            "Mould spreads by spores and stops growing when it is dry.",
            published(True, f"{NPS_MOULD_1993}; {NPS_DISASTER}"),
        ),
        notice(
            "Wear disposable gloves, goggles, long sleeves and a respirator of class N95, FFP2 "
            "or better.",
            "Mould spores harm lungs, eyes and skin.",
            published(True, CDC_MOULD),
        ),
        notice(
            "Do not count on a freezer: cold only puts mould to sleep.",
            "Frozen spores may revive.",
            published(True, NPS_MOULD_2007),
        ),
        notice(
            "Dry anything wet within one to two days.",
            "Mould starts to grow on cloth left damp longer.",
            published(True, EPA_MOULD),
        ),
    ),
    "moth": (
        notice(
            "Seal it in a bag with the air pressed out and freeze it at -20 to -25 °C for at "
            "least one week; let it thaw fully before the bag is opened, and repeat if unsure.",
            "Deep cold kills moths and beetles at every stage; opening early makes it damp.",
            published(True, TEXTILE_MUSEUM_PESTS),
        ),
        notice(
            "Check the freezer with a thermometer.",
            "Many household fridge freezers never reach -20 °C.",
            published(True, TEXTILE_MUSEUM_PESTS),
        ),
        notice(
            "Take glass, bone, ivory or shell fittings off before freezing, or do not freeze it.",
            "Such fittings crack in deep cold.",
            TRADE,
        ),
        notice(
            "Hold it to the light and mark every hole as a flaw.",
            "Grazed places tear when the toy is stuffed.",
            YES,
        ),
    ),
    "mothball": (
        notice(
            "Air it outdoors and wash it, if it may be washed, until no smell is left.",
            "The smell is the poison itself.",
            YES,
        ),
        notice(
            "Do not rely on a dust mask: it does not stop vapour.",
            "Filters for dust let mothball vapour through.",
            published(True, AIHA_VAPOUR),
        ),
    ),
    "blood": (
        notice(
            "If it is heavily soiled, or the person had an infection, discard it or ask for "
            "medical advice.",
            "Nobody can say from here that it is safe.",
            YES,
        ),
    ),
    "smoke": (
        notice(
            "Ask whether the person who gets the keepsake has asthma or an allergy.",
            "Smoke clings to cloth and can set off an attack.",
            YES,
        ),
        notice(
            "After a house fire, have soot taken off by a professional before anything else.",
            "Soot smears into the cloth for good, and may be poisonous.",
            RECALLED,
        ),
    ),
    "cream": (
        notice(
            "Keep it apart from other cloth, and tell the giver why it is not made into a toy.",
            "The grease passes to whatever it touches.",
            YES,
        ),
    ),
    "antique": (
        notice(
            "Try any backing cloth and thread on a hidden place before they touch it.",
            "Backing cloth and thread can bleed too.",
            published(True, CCI_COLOUR_TEST),
        ),
    ),
    "rubber-print": (
        notice(
            "For a child under three, back the print and keep it where it cannot be mouthed, or "
            "leave it out.",
            "Old rubbery prints may hold softeners, and flakes come off when they crack.",
            RECALLED,
        ),
    ),
    "dry-cleaned": (
        notice(
            "Air it for several days before it is ironed or cut.",
            "Cleaning solvent leaves the cloth slowly.",
            RECALLED,
        ),
    ),
}

KEPT_SCENT: tuple[Notice, ...] = (
    notice(
        "Before it joins other cloth, freeze it sealed at -20 to -25 °C for at least a week, or "
        "keep it sealed by itself.",
        "Unwashed cloth may carry moth eggs and the skin oils they feed on.",
        YES,
    ),
    notice(
        "Press no more than you must, and no hotter.",
        "Heat and steam drive the scent out.",
        YES,
    ),
    notice(
        "Ask who will hold it: unwashed cloth is not for a baby or anyone with weak health.",
        "Nothing has taken out what the cloth has met.",
        YES,
    ),
)

NO_BURN_TEST = notice(
    "Do not test the fibre with a flame.",
    "A burn test costs cloth that cannot be replaced, and blends mislead it.",
    published(True, CAMEO),
)
UNKNOWN_FIBRE = notice(
    "Treat the fibre as the most delicate until it is known, and try water, heat and glue on a "
    "hidden place first.",
    "A wrong guess cannot be taken back.",
    YES,
)
NO_FELTING = notice(
    "Do not rub or wring it, and do not change the heat of the water.",
    "Wool and hair felt for good when they are worked wet.",
    YES,
)
SPOILT_BY_CHLORINE: Fact[bool] = common(True)
TAILORED = notice(
    "If it is a lined or tailored garment, open it up before any washing, or have it dry "
    "cleaned whole.",
    "Shell, lining and canvas shrink by different amounts.",
    YES,
)
ONE_WAY = notice(
    "Cut every piece with its top the same way.",
    "The pile, print or sheen of this cloth looks different upside down.",
    YES,
)
QUICK_TO_BURN = notice(
    "Keep it well away from flame, and use a firm outer cloth instead for a young child.",
    "Sheer cloth, and brushed or pile cloth of cotton, viscose or silk, catches fire quickly.",
    RECALLED,
)
SEQUINS_COME_OFF = notice(
    "Do not use it for a child under three.",
    "Sequins and beads are small parts that come off and can choke.",
    YES,
)
DENIM_INK = notice(
    "Keep dark denim away from light cloth until it is washed and no colour rubs off.",
    "Indigo rubs off dry as well as wet.",
    YES,
)
CANT_HOLD_SHAPE = notice(
    "Line it with firm cloth so that no stuffing shows or comes through.",
    "Stuffing works its way out through open cloth.",
    YES,
)
WASH_BLOOD_APART = notice(
    "Wash it by itself, the machine half full, at 60 °C or as hot as it may be.",
    "Heat above 40 °C, detergent and much water work together.",
    published(True, f"{NHS_WASHING}; {HSE_BLOOD}"),
)
BLOOD_UNWASHED = notice(
    "It is not washed, so treat the blood as a risk: keep it sealed and use gloves.",
    "Only heat, detergent and water together make cloth with blood on it safer.",
    published(True, HSE_BLOOD),
)
HOT_WASH_NOT_REACHED = notice(
    "Its hottest wash is below 60 °C: treat it as cleaned, not as free of infection.",
    "Sixty degrees is the heat ideally asked for where blood was.",
    published(True, NHS_WASHING),
)
