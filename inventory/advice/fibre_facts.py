"""Facts about fibres, one row each: allowances, heat, washing, shrinkage, ageing.

Data only. A row that differs from its kin in a few figures is written as its kin with
those figures replaced. Agreed allowances are those of the French decree of 1998, which
carries the EU table. Heat, shrinkage and washing figures are mostly trade figures and
say so.
"""

from dataclasses import replace

from inventory.advice.facts import Fact, common, memory, published, trade
from inventory.advice.fibre_kinds import Allowance, Bleeding, Family, Fibre
from inventory.advice.methods import DryMethod, Shrink, WashLimit, WashMethod
from inventory.advice.sources import (
    AGREED_ALLOWANCES,
    NPS_PLASTICS,
    SHRINK_KINDS,
    WEIGHTED_SILK,
)


def _allowed(*forms: tuple[str, float]) -> tuple[Allowance, ...]:
    return tuple(Allowance(form, published(pct, AGREED_ALLOWANCES)) for form, pct in forms)


def _recalled(pct: float) -> tuple[Allowance, ...]:
    return (Allowance("", memory(pct)),)


def _wash(method: WashMethod, max_c: int | None, top_c: int | None) -> Fact[WashLimit]:
    return common(WashLimit(method, max_c, top_c))


def _shrink(along_pct: tuple[float, float], across_pct: tuple[float, float]) -> Fact[Shrink]:
    return trade(Shrink(along_pct, across_pct))


def _shrink_recalled(
    along_pct: tuple[float, float], across_pct: tuple[float, float]
) -> Fact[Shrink]:
    return memory(Shrink(along_pct, across_pct))


_COMBED_CARDED = _allowed(("carded", 17.0), ("combed", 18.25))

# --- protein -----------------------------------------------------------------

_WOOL = Fibre(
    name="wool",
    label="Wool",
    family=Family.PROTEIN,
    allowances=_COMBED_CARDED,
    iron_dots=trade(2),
    iron_found_c=trade(148),
    label_dots=trade(2),
    softens_c=None,
    takes_steam=common(True),
    wash=_wash(WashMethod.HAND, 30, 30),
    label_wash=_wash(WashMethod.MACHINE_MILD, 40, 40),
    dry=common(DryMethod.FLAT),
    shrink_woven=_shrink((0, 4), (0, 3.5)),
    shrink_knit=_shrink_recalled((0, 11), (0, 11)),
    felts=published(True, SHRINK_KINDS),
    water_spots=common(False),
    bleeds=common(Bleeding.SOMETIMES),
    takes_fusible=common(True),
    feeds_moths=common(True),
    ageing=(common("Old wool may be grazed by moth; hold it to the light."),),
    also_called=("merino", "lambswool", "virgin wool", "fleece wool", "new wool"),
)


def _hair(name: str, label: str, *also_called: str) -> Fibre:
    return replace(_WOOL, name=name, label=label, also_called=also_called)


_SILK = replace(
    _WOOL,
    name="silk",
    label="Silk",
    allowances=_allowed(("", 11.0)),
    takes_steam=common(False),
    dry=common(DryMethod.FLAT),
    shrink_woven=_shrink((0, 10), (0, 3)),
    shrink_knit=_shrink((0, 10), (0, 5)),
    felts=common(False),
    water_spots=common(True),
    bleeds=common(Bleeding.OFTEN),
    ageing=(
        common("Old silk splits along its folds and turns to powder; nothing mends that."),
        published(
            "Silk of about 1850 to 1930 may have been weighted with tin, iron or lead. "
            "Wear gloves, make no dust, and keep it out of a toy for a child.",
            WEIGHTED_SILK,
        ),
    ),
    also_called=("mulberry silk", "tussah", "tussore"),
)

_PROTEIN: tuple[Fibre, ...] = (
    _WOOL,
    _hair("alpaca", "Alpaca"),
    _hair("llama", "Llama"),
    _hair("camel", "Camel hair", "camel hair"),
    _hair("cashmere", "Cashmere", "kashmir", "cashgora"),
    _hair("mohair", "Mohair"),
    _hair("angora", "Angora", "rabbit hair"),
    _hair("vicuna", "Vicuña", "vicuña"),
    _hair("yak", "Yak"),
    _hair("guanaco", "Guanaco"),
    _hair("animal hair", "Other animal hair", "hair"),
    replace(
        _hair("horsehair", "Horsehair"),
        allowances=_allowed(("carded", 15.0), ("combed", 16.0)),
        felts=common(False),
    ),
    _SILK,
    replace(
        _WOOL,
        name="protein",
        label="Protein (azlon)",
        allowances=_allowed(("", 17.0)),
        takes_steam=memory(False),
        felts=memory(False),
        also_called=("azlon", "soya", "soy", "milk fibre"),
        ageing=(memory("Protein fibre is weak when wet."),),
    ),
)

# --- cellulose ---------------------------------------------------------------

_COTTON = Fibre(
    name="cotton",
    label="Cotton",
    family=Family.CELLULOSE,
    allowances=_allowed(("", 8.5), ("mercerised", 10.5)),
    iron_dots=trade(3),
    iron_found_c=trade(204),
    label_dots=trade(3),
    softens_c=None,
    takes_steam=common(True),
    wash=_wash(WashMethod.MACHINE, 40, 60),
    label_wash=_wash(WashMethod.MACHINE, 95, 95),
    dry=common(DryMethod.LINE),
    shrink_woven=_shrink((2, 7), (2, 5)),
    shrink_knit=_shrink((2, 5), (2, 5)),
    felts=common(False),
    water_spots=common(False),
    bleeds=common(Bleeding.SOMETIMES),
    takes_fusible=common(True),
    feeds_moths=common(False),
    ageing=(common("Old cotton weakens along folds and under stains, above all rust."),),
    also_called=("organic cotton", "mercerised cotton", "pima"),
)

_LINEN = replace(
    _COTTON,
    name="flax",
    label="Flax (linen)",
    allowances=_allowed(("", 12.0)),
    iron_found_c=trade(230),
    shrink_woven=_shrink((2, 7), (2, 7)),
    shrink_knit=_shrink((2, 8), (2, 7)),
    ageing=(common("Linen cracks along creases that were always folded the same way."),),
    also_called=("linen",),
)


def _bast(name: str, label: str, pct: float, *also_called: str) -> Fibre:
    return replace(
        _LINEN,
        name=name,
        label=label,
        allowances=_allowed(("", pct)),
        iron_dots=memory(3),
        iron_found_c=None,
        label_dots=memory(3),
        shrink_woven=_shrink_recalled((2, 7), (2, 7)),
        shrink_knit=_shrink_recalled((2, 8), (2, 7)),
        ageing=(),
        also_called=also_called,
    )


_PLANT: tuple[Fibre, ...] = (
    _COTTON,
    _LINEN,
    _bast("hemp", "True hemp", 12.0, "true hemp"),
    _bast("ramie", "Ramie", 8.5),
    replace(
        _bast("jute", "Jute", 17.0, "hessian", "burlap"),
        wash=_wash(WashMethod.SPOT, 30, 30),
        water_spots=common(True),
        ageing=(common("Jute rots when damp and sheds dust; it is weak when wet."),),
    ),
    replace(
        _bast("kapok", "Kapok", 10.9),
        wash=_wash(WashMethod.HAND, 30, 30),
        takes_fusible=memory(False),
    ),
    replace(_bast("abaca", "Abaca", 14.0), wash=_wash(WashMethod.SPOT, 30, 30)),
    replace(_bast("sisal", "Sisal", 14.0), wash=_wash(WashMethod.SPOT, 30, 30)),
    replace(
        _bast("paper", "Paper yarn", 13.75, "paper yarn"),
        iron_dots=memory(1),
        label_dots=memory(1),
        takes_steam=memory(False),
        wash=_wash(WashMethod.NONE, None, None),
        label_wash=_wash(WashMethod.HAND, 30, 30),
        dry=common(DryMethod.NONE),
        takes_fusible=memory(False),
    ),
)

# --- regenerated cellulose and acetate ---------------------------------------

_VISCOSE = replace(
    _COTTON,
    name="viscose",
    label="Viscose (rayon)",
    family=Family.REGENERATED,
    allowances=_allowed(("", 13.0)),
    iron_dots=trade(2),
    iron_found_c=trade(190),
    label_dots=trade(2),
    takes_steam=common(False),
    wash=_wash(WashMethod.HAND, 30, 40),
    label_wash=_wash(WashMethod.MACHINE, 40, 40),
    dry=common(DryMethod.FLAT),
    shrink_woven=_shrink((5, 10), (5, 10)),
    shrink_knit=_shrink((5, 10), (5, 10)),
    water_spots=common(True),
    takes_fusible=trade(False),
    ageing=(common("Viscose is much weaker wet than dry, and may shrink at each wash."),),
    also_called=("rayon", "bamboo", "bamboo viscose"),
)

_ACETATE = replace(
    _VISCOSE,
    name="acetate",
    label="Acetate",
    family=Family.ACETATE,
    allowances=_allowed(("", 9.0)),
    iron_dots=trade(1),
    iron_found_c=trade(143),
    label_dots=trade(2),
    softens_c=memory(190),
    wash=_wash(WashMethod.HAND, 30, 30),
    shrink_woven=_shrink((3, 8), (3, 8)),
    shrink_knit=_shrink((3, 8), (3, 8)),
    bleeds=common(Bleeding.SOMETIMES),
    ageing=(common("Acetate dissolves in nail-varnish remover: keep acetone away."),),
    also_called=(),
)

_MANMADE_CELLULOSE: tuple[Fibre, ...] = (
    _VISCOSE,
    replace(
        _VISCOSE,
        name="modal",
        label="Modal (a rayon)",
        iron_dots=memory(2),
        iron_found_c=None,
        label_dots=memory(2),
        wash=_wash(WashMethod.MACHINE_VERY_MILD, 30, 40),
        shrink_woven=_shrink_recalled((3, 8), (3, 8)),
        shrink_knit=_shrink_recalled((3, 8), (3, 8)),
        ageing=(),
        also_called=(),
    ),
    replace(
        _VISCOSE,
        name="cupro",
        label="Cupro (a rayon)",
        iron_dots=memory(2),
        iron_found_c=None,
        label_dots=memory(2),
        ageing=(common("Cupro is weaker wet than dry."),),
        also_called=("cupra", "cuprammonium"),
    ),
    replace(
        _VISCOSE,
        name="lyocell",
        label="Lyocell",
        iron_dots=memory(2),
        iron_found_c=None,
        label_dots=memory(2),
        wash=_wash(WashMethod.MACHINE_VERY_MILD, 30, 40),
        shrink_woven=_shrink_recalled((2, 6), (2, 6)),
        shrink_knit=_shrink_recalled((3, 8), (3, 8)),
        water_spots=common(False),
        ageing=(common("Lyocell rubs up white where it is creased wet."),),
        also_called=(),
    ),
    _ACETATE,
    replace(
        _ACETATE,
        name="triacetate",
        label="Triacetate",
        allowances=_allowed(("", 7.0)),
        iron_dots=trade(2),
        iron_found_c=trade(200),
        softens_c=None,
    ),
)

# --- synthetics --------------------------------------------------------------

_POLYESTER = Fibre(
    name="polyester",
    label="Polyester",
    family=Family.SYNTHETIC,
    allowances=_allowed(("", 1.5)),
    iron_dots=trade(2),
    iron_found_c=trade(148),
    label_dots=trade(2),
    softens_c=None,
    takes_steam=common(True),
    wash=_wash(WashMethod.MACHINE_MILD, 40, 60),
    label_wash=_wash(WashMethod.MACHINE, 60, 60),
    dry=common(DryMethod.LINE),
    shrink_woven=_shrink((0, 1), (0, 1)),
    shrink_knit=_shrink((0, 1), (0, 1)),
    felts=common(False),
    water_spots=common(False),
    bleeds=common(Bleeding.SELDOM),
    takes_fusible=common(True),
    feeds_moths=common(False),
    also_called=("pet", "microfibre", "microfiber"),
)

_NYLON = replace(
    _POLYESTER,
    name="polyamide",
    label="Polyamide (nylon)",
    allowances=_allowed(("staple", 6.25), ("filament", 5.75)),
    iron_dots=trade(1),
    iron_found_c=trade(135),
    label_dots=trade(1),
    softens_c=trade(180),
    takes_steam=common(False),
    wash=_wash(WashMethod.MACHINE_MILD, 30, 40),
    shrink_woven=_shrink((3, 8), (3, 8)),
    shrink_knit=_shrink((3, 8), (3, 8)),
    bleeds=common(Bleeding.SELDOM),
    ageing=(
        published(
            "Nylon yellows with age, and the change cannot be undone.",
            NPS_PLASTICS,
        ),
        common("White nylon takes up colour from anything washed with it."),
    ),
    also_called=("nylon", "polyamide 6", "polyamide 6.6"),
)

_ACRYLIC = replace(
    _NYLON,
    name="acrylic",
    label="Acrylic",
    allowances=_allowed(("", 2.0)),
    softens_c=None,
    wash=_wash(WashMethod.MACHINE_VERY_MILD, 30, 40),
    label_wash=_wash(WashMethod.MACHINE, 40, 40),
    dry=common(DryMethod.FLAT),
    ageing=(common("Heat and steam leave acrylic limp and stretched for good."),),
    also_called=(),
)

_POLYPROPYLENE = replace(
    _NYLON,
    name="polypropylene",
    label="Polypropylene (olefin)",
    allowances=_allowed(("", 2.0)),
    iron_found_c=None,
    softens_c=None,
    wash=_wash(WashMethod.MACHINE_MILD, 30, 30),
    takes_fusible=memory(False),
    ageing=(trade("Polypropylene melts at about 160 °C; one dot is the most it ever takes."),),
    also_called=("olefin", "polyolefin"),
)


def _rare(name: str, label: str, pct: float, *also_called: str) -> Fibre:
    return replace(
        _ACRYLIC,
        name=name,
        label=label,
        allowances=_allowed(("", pct)),
        iron_dots=memory(1),
        iron_found_c=None,
        label_dots=memory(1),
        wash=_wash(WashMethod.HAND, 30, 30),
        shrink_woven=_shrink_recalled((3, 8), (3, 8)),
        shrink_knit=_shrink_recalled((3, 8), (3, 8)),
        takes_fusible=memory(False),
        ageing=(),
        also_called=also_called,
    )


_SYNTHETIC: tuple[Fibre, ...] = (
    _POLYESTER,
    _NYLON,
    _ACRYLIC,
    replace(
        _rare("modacrylic", "Modacrylic", 2.0),
        ageing=(memory("Modacrylic shrinks and hardens under very little heat."),),
    ),
    replace(
        _rare("chlorofibre", "Chlorofibre (vinyon)", 2.0, "vinyon", "pvc"),
        ageing=(memory("Chlorofibre shrinks hard in hot water or a warm dryer."),),
    ),
    replace(
        _rare("aramid", "Aramid", 8.0),
        allowances=_recalled(8.0),
        wash=_wash(WashMethod.MACHINE_MILD, 40, 60),
        dry=common(DryMethod.LINE),
        ageing=(memory("Aramid fades and weakens in daylight and is hard to cut."),),
    ),
    _rare("polylactide", "Polylactide (PLA)", 1.5, "pla"),
    _POLYPROPYLENE,
    replace(
        _POLYPROPYLENE,
        name="polyethylene",
        label="Polyethylene (olefin)",
        allowances=_allowed(("", 1.5)),
        iron_dots=memory(0),
        label_dots=memory(1),
        ageing=(memory("Polyethylene melts at a lower heat than any other clothing fibre."),),
        also_called=(),
    ),
    replace(
        _rare("polyurethane", "Polyurethane", 3.5, "pu"),
        allowances=_allowed(("staple", 3.5), ("filament", 3.0)),
        ageing=(memory("Old polyurethane coatings turn sticky, crack and flake; none lasts."),),
    ),
    replace(
        _rare("fluorofibre", "Fluorofibre", 0.0, "fluoropolymer", "ptfe"),
        allowances=_recalled(0.0),
    ),
    replace(
        _rare("vinylal", "Vinylal", 5.0, "vinal"),
        allowances=_recalled(5.0),
    ),
    replace(
        _rare("elastomultiester", "Elastomultiester", 1.5, "elasterell-p"),
        family=Family.ELASTOMER,
    ),
)

# --- elastomers, metal, hides ------------------------------------------------

_ELASTANE = replace(
    _NYLON,
    name="elastane",
    label="Elastane (spandex)",
    family=Family.ELASTOMER,
    allowances=_allowed(("", 1.5)),
    # Elastane is only ever part of a blend, and such blends are often marked two dots.
    label_dots=common(2),
    softens_c=None,
    wash=_wash(WashMethod.MACHINE_MILD, 40, 40),
    ageing=(common("Elastane loses its spring with age, heat and chlorine bleach."),),
    also_called=("spandex",),
)

_ELASTIC_AND_METAL: tuple[Fibre, ...] = (
    _ELASTANE,
    replace(
        _ELASTANE,
        name="elastodiene",
        label="Elastodiene (rubber)",
        allowances=_allowed(("", 1.0)),
        iron_dots=memory(0),
        iron_found_c=None,
        label_dots=memory(1),
        wash=_wash(WashMethod.HAND, 30, 30),
        label_wash=_wash(WashMethod.MACHINE_MILD, 40, 40),
        dry=common(DryMethod.FLAT),
        takes_fusible=memory(False),
        ageing=(
            common(
                "Rubber hardens, cracks or turns sticky with age and stains what it "
                "touches. Replace old rubber elastic; do not build it in."
            ),
        ),
        also_called=("rubber", "latex"),
    ),
    replace(
        _ELASTANE,
        name="elastolefin",
        label="Elastolefin (lastol)",
        allowances=_recalled(1.5),
        iron_dots=memory(1),
        iron_found_c=None,
        label_dots=memory(1),
        also_called=("lastol",),
    ),
    replace(
        _POLYESTER,
        name="metallised",
        label="Metal or metallised",
        family=Family.METAL,
        allowances=_allowed(("", 2.0)),
        iron_dots=memory(1),
        iron_found_c=None,
        label_dots=memory(1),
        takes_steam=memory(False),
        wash=_wash(WashMethod.HAND, 30, 30),
        label_wash=_wash(WashMethod.MACHINE_MILD, 40, 40),
        dry=common(DryMethod.FLAT),
        shrink_woven=_shrink_recalled((0, 1), (0, 1)),
        shrink_knit=_shrink_recalled((0, 1), (0, 1)),
        water_spots=memory(True),
        takes_fusible=memory(False),
        ageing=(common("Metal threads tarnish, and their film peels with heat."),),
        also_called=("metallic", "metal", "metal fibre"),
    ),
)

_LEATHER = replace(
    _WOOL,
    name="leather",
    label="Leather",
    family=Family.HIDE,
    allowances=(),
    iron_dots=common(0),
    iron_found_c=None,
    label_dots=common(1),
    takes_steam=common(False),
    wash=_wash(WashMethod.NONE, None, None),
    label_wash=_wash(WashMethod.NONE, None, None),
    dry=common(DryMethod.NONE),
    shrink_woven=common(Shrink((0, 0), (0, 0))),
    shrink_knit=common(Shrink((0, 0), (0, 0))),
    felts=common(False),
    water_spots=common(True),
    bleeds=common(Bleeding.OFTEN),
    takes_fusible=memory(False),
    feeds_moths=common(False),
    ageing=(common("Old leather that powders or cracks when folded cannot be sewn."),),
    also_called=("hide",),
)

_HIDES: tuple[Fibre, ...] = (
    _LEATHER,
    replace(
        _LEATHER,
        name="fur",
        label="Fur (on the skin)",
        label_dots=common(0),
        feeds_moths=common(True),
        ageing=(
            common("The skin under old fur dries and tears like paper; tug a hidden edge."),
            memory(
                "Fur and hats made before about 1930 may hold arsenic or mercury. Do not "
                "cut them; ask a conservator."
            ),
        ),
        also_called=("sheepskin", "shearling", "real fur"),
    ),
)

ALL_FIBRES: tuple[Fibre, ...] = (
    *_PROTEIN,
    *_PLANT,
    *_MANMADE_CELLULOSE,
    *_SYNTHETIC,
    *_ELASTIC_AND_METAL,
    *_HIDES,
)
