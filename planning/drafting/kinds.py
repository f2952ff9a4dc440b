"""The kinds of keepsake that come with the program: their words, sizes and limits. No geometry."""

from dataclasses import dataclass

from planning.drafting import heart, measures, pillow
from planning.drafting.errors import DraftError
from planning.drafting.stance import FACES, POSES, Stance

FIRST_KEY = "bearing-cloth-bear"  # the classic bear's pattern keeps the key it was first given
_ANIMAL_HEIGHTS_MM = (150.0, 230.0, 300.0, 380.0, 460.0)


@dataclass(frozen=True)
class Kind:
    """One kind of keepsake that can be drafted at any height from ``least_mm`` to ``most_mm``.

    ``heights_mm`` are its usual sizes. A kind without a choice of pose or face names the one.
    """

    key: str
    name: str
    description: str
    heights_mm: tuple[float, ...]
    least_mm: float
    most_mm: float
    poses: tuple[str, ...]
    faces: tuple[str, ...]

    @property
    def pattern_key(self) -> str:
        """The key of its built-in pattern."""
        return FIRST_KEY if self.key == "bear" else self.key


def _animal(key: str, name: str, description: str) -> Kind:
    least, most = measures.SMALLEST_MM, measures.LARGEST_MM
    return Kind(key, name, description, _ANIMAL_HEIGHTS_MM, least, most, POSES, FACES)


_ALL = (
    _animal(
        "bear",
        "Bearing Cloth bear",
        "A bear with a long muzzle, a round tummy and paw pads, drafted from body measures. Ten "
        "kinds of piece; arms and legs are closed limbs joined to the body.",
    ),
    _animal(
        "bear-baby",
        "Baby bear",
        "A bear with a large head, low eyes, a short muzzle and short plump limbs, so soft in "
        "shape that small garments go a long way. Ten kinds of piece.",
    ),
    _animal(
        "bear-long",
        "Long-limbed bear",
        "A slender bear with a pointed muzzle, long arms and long legs that love to be carried by "
        "one paw. Ten kinds of piece.",
    ),
    _animal(
        "rabbit",
        "Rabbit",
        "A rabbit with long lined ears, long feet and a round tail. The linings of the ears are "
        "pieces of their own, for a cloth that wants to be seen. Twelve kinds of piece.",
    ),
    Kind(
        "pillow",
        "Pillow",
        "A pillow with a plain front, upright, so that a shirt can keep its buttons, and two backs "
        "that overlap. Sized by its longer side. Three kinds of piece.",
        (200.0, 300.0, 400.0, 500.0),
        pillow.SMALLEST_MM,
        pillow.LARGEST_MM,
        POSES[:1],
        FACES[:1],
    ),
    Kind(
        "heart",
        "Heart",
        "A full heart of two halves in front and two behind, with a band all round: each half may "
        "come from another garment. Four kinds of piece.",
        (120.0, 160.0, 200.0, 250.0, 300.0),
        heart.SMALLEST_MM,
        heart.LARGEST_MM,
        POSES[:1],
        FACES[:1],
    ),
)
KINDS: dict[str, Kind] = {kind.key: kind for kind in _ALL}


def kind_of(key: str) -> Kind:
    """Return the kind with this key or this pattern key; raises DraftError for another."""
    for kind in _ALL:
        if key in (kind.key, kind.pattern_key):
            return kind
    raise DraftError(f"There is no pattern “{key}” here. Choose one of: {', '.join(KINDS)}.")


def stance_of(kind: Kind, pose: str, face: str) -> Stance:
    """Return the stance asked for; raises DraftError when the kind cannot take it."""
    for what, word, known in (("pose", pose, kind.poses), ("face", face, kind.faces)):
        if word not in known:
            raise DraftError(f"{kind.name}: the {what} cannot be “{word}”, only {_or(known)}.")
    return Stance(pose, face)


def _or(words: tuple[str, ...]) -> str:
    return " or ".join(f"“{word}”" for word in words)
