"""How a cloth is made: the constructions, and what each one is like by default.

A default stands in only until the maker has weighed, stretched or rubbed the real
cloth. Facts here are about the construction alone; the fibre's own are in
``fibre_facts.py``.
"""

from dataclasses import dataclass

from inventory.advice.facts import Fact, common, memory, trade
from inventory.advice.problems import UnknownName, nearest_names, tidy_name


@dataclass(frozen=True, slots=True)
class Construction:
    """One way of making cloth. Stretch is in per cent, mass in grams per square metre."""

    name: str
    label: str
    is_knit: bool
    has_pile: bool
    is_directional: bool
    frays_by_default: int
    fray: Fact[int]
    stretch_along_pct: Fact[float]
    stretch_across_pct: Fact[float]
    mass_g_m2: Fact[tuple[float, float]]
    also_called: tuple[str, ...] = ()
    is_hide: bool = False
    is_sheer: bool = False


def _cloth(
    name: str,
    label: str,
    fray: int,
    mass_g_m2: tuple[float, float],
    *,
    stretch_along_pct: float = 0.0,
    stretch_across_pct: float = 2.0,
    knit: bool = False,
    pile: bool = False,
    one_way: bool = False,
    hide: bool = False,
    sheer: bool = False,
    also_called: tuple[str, ...] = (),
    fray_fact: Fact[int] | None = None,
) -> Construction:
    stretch = trade if knit else memory
    return Construction(
        name=name,
        label=label,
        is_knit=knit,
        has_pile=pile,
        is_directional=one_way,
        frays_by_default=fray,
        fray=fray_fact or memory(fray),
        stretch_along_pct=stretch(stretch_along_pct),
        stretch_across_pct=stretch(stretch_across_pct),
        mass_g_m2=memory(mass_g_m2),
        also_called=also_called,
        is_hide=hide,
        is_sheer=sheer,
    )


# Masses are the usual range for clothes of that cloth; no standard fixes them.
_ALL: tuple[Construction, ...] = (
    _cloth(
        "plain-weave",
        "Plain weave (shirt cotton, lawn, poplin, linen)",
        1,
        (60, 180),
        fray_fact=trade(1),
        also_called=("plain", "poplin", "lawn", "calico", "canvas", "broadcloth", "woven"),
    ),
    _cloth(
        "twill",
        "Twill (chino, drill, gabardine, suiting)",
        2,
        (150, 320),
        also_called=("gabardine", "drill", "chino", "serge", "tweed", "suiting"),
    ),
    _cloth("satin", "Satin or sateen", 3, (70, 200), also_called=("sateen", "charmeuse")),
    _cloth("denim", "Denim", 2, (200, 480), also_called=("jean", "jeans")),
    _cloth(
        "corduroy",
        "Corduroy or needlecord",
        2,
        (200, 400),
        pile=True,
        one_way=True,
        also_called=("cord", "needlecord"),
    ),
    _cloth(
        "velvet",
        "Velvet, velveteen or velour with a cut pile",
        3,
        (150, 400),
        pile=True,
        one_way=True,
        also_called=("velveteen", "panne", "plush"),
    ),
    _cloth(
        "towelling",
        "Towelling (terry)",
        2,
        (250, 500),
        stretch_across_pct=5,
        pile=True,
        also_called=("terry", "toweling", "terry towelling"),
    ),
    _cloth(
        "flannel",
        "Flannel or brushed cotton",
        1,
        (130, 280),
        one_way=True,
        also_called=("flannelette", "brushed cotton", "winceyette"),
    ),
    _cloth("seersucker", "Seersucker", 1, (90, 160), stretch_across_pct=5),
    _cloth(
        "lace",
        "Lace or net",
        1,
        (30, 150),
        stretch_across_pct=10,
        sheer=True,
        also_called=("net", "tulle", "netting", "guipure"),
    ),
    _cloth(
        "chiffon",
        "Chiffon, georgette or voile",
        4,
        (20, 80),
        sheer=True,
        also_called=("georgette", "voile", "organza"),
    ),
    _cloth(
        "brocade",
        "Brocade, damask or jacquard",
        4,
        (150, 350),
        one_way=True,
        also_called=("damask", "jacquard"),
    ),
    _cloth(
        "jersey",
        "Jersey (T-shirt knit)",
        0,
        (110, 220),
        knit=True,
        stretch_along_pct=10,
        stretch_across_pct=25,
        fray_fact=trade(0),
        also_called=("t-shirt", "t-shirt knit", "single jersey", "single knit", "tricot"),
    ),
    _cloth(
        "rib",
        "Rib knit",
        0,
        (180, 300),
        knit=True,
        stretch_along_pct=10,
        stretch_across_pct=60,
        fray_fact=trade(0),
        also_called=("ribbing", "rib knit"),
    ),
    _cloth(
        "interlock",
        "Interlock or double knit",
        0,
        (160, 260),
        knit=True,
        stretch_along_pct=10,
        stretch_across_pct=30,
        fray_fact=trade(0),
        also_called=("double knit", "ponte"),
    ),
    _cloth(
        "sweater-knit",
        "Sweater knit (jumper, cardigan, hand knit)",
        2,
        (200, 600),
        knit=True,
        stretch_along_pct=20,
        stretch_across_pct=50,
        also_called=("jumper", "hand knit", "hand-knit", "cardigan", "sweater", "knitwear"),
    ),
    _cloth(
        "fleece",
        "Fleece",
        0,
        (150, 350),
        knit=True,
        pile=True,
        one_way=True,
        stretch_along_pct=10,
        stretch_across_pct=20,
        fray_fact=trade(0),
        also_called=("polar fleece",),
    ),
    _cloth(
        "sweatshirt",
        "Sweatshirt fleece or French terry",
        0,
        (220, 380),
        knit=True,
        stretch_along_pct=10,
        stretch_across_pct=20,
        fray_fact=trade(0),
        also_called=("sweatshirt fleece", "french terry", "loopback"),
    ),
    _cloth(
        "felt",
        "Felt or boiled wool",
        0,
        (200, 500),
        stretch_across_pct=5,
        fray_fact=common(0),
        also_called=("boiled wool", "wool felt", "melton"),
    ),
    _cloth("quilted", "Quilted or padded", 2, (150, 500), also_called=("padded", "puffer")),
    _cloth(
        "coated",
        "Coated, waterproof or imitation leather",
        0,
        (100, 450),
        also_called=("waterproof", "vinyl", "imitation leather", "faux leather", "oilcloth"),
    ),
    _cloth(
        "leather",
        "Leather",
        0,
        (400, 1000),
        stretch_along_pct=3,
        stretch_across_pct=8,
        hide=True,
    ),
    _cloth(
        "suede",
        "Suede",
        0,
        (400, 900),
        stretch_along_pct=5,
        stretch_across_pct=10,
        pile=True,
        one_way=True,
        hide=True,
        also_called=("nubuck", "suedette"),
    ),
    _cloth(
        "fur-fabric",
        "Fur fabric or fur",
        1,
        (300, 900),
        pile=True,
        one_way=True,
        stretch_across_pct=10,
        also_called=("fur", "faux fur", "fake fur", "teddy", "sherpa"),
    ),
    _cloth(
        "sequinned",
        "Sequinned or beaded",
        2,
        (150, 500),
        one_way=True,
        stretch_across_pct=5,
        also_called=("sequined", "sequin", "sequins", "beaded", "beads", "embellished"),
    ),
    _cloth(
        "pleated",
        "Pleated or crinkled on purpose",
        2,
        (70, 250),
        one_way=True,
        stretch_across_pct=30,
        also_called=("pleats", "plisse"),
    ),
)

CONSTRUCTIONS: dict[str, Construction] = {each.name: each for each in _ALL}

_BY_ANY_NAME: dict[str, Construction] = {
    tidy_name(word): each for each in _ALL for word in (each.name, *each.also_called)
}


def construction_named(text: str) -> Construction:
    """The construction called ``text``, by its own name or another trade word.

    Raises :class:`UnknownName`, offering the nearest names, when there is none.

    >>> construction_named("French terry").name
    'sweatshirt'
    """
    word = tidy_name(text)
    found = _BY_ANY_NAME.get(word) or _BY_ANY_NAME.get(word.replace(" ", "-"))
    if found is None:
        raise UnknownName("construction", text, nearest_names(word, _BY_ANY_NAME))
    return found
