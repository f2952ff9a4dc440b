"""How an animal is made to hold itself: standing or sitting, its face ahead or turned aside."""

from dataclasses import dataclass

from planning.drafting.errors import DraftError

POSES = ("standing", "sitting")
FACES = ("ahead", "aside")
TURN_DEG = 35.0  # how far a face looks aside; this project's own choice, by eye


@dataclass(frozen=True)
class Stance:
    """A pose and where the face looks. Raises DraftError for a word that is neither.

    A face aside looks to the animal's own left; the same pieces can be joined to look right.
    """

    pose: str = "standing"
    face: str = "ahead"

    def __post_init__(self) -> None:
        _refuse_unknown("pose", self.pose, POSES)
        _refuse_unknown("face", self.face, FACES)

    @property
    def is_sitting(self) -> bool:
        return self.pose == "sitting"

    @property
    def is_aside(self) -> bool:
        return self.face == "aside"


def _refuse_unknown(what: str, word: str, known: tuple[str, ...]) -> None:
    if word not in known:
        raise DraftError(f"“{word}” is no {what}. Choose one of: {', '.join(known)}.")
