"""Who may object when a garment is taken off the list.

Other rooms add a question here when they start; this room knows nothing of them.
"""

from collections.abc import Callable

from inventory.models import Garment

OBJECTIONS: list[Callable[[Garment], list[str]]] = []


def objections_to_removing(garment: Garment) -> list[str]:
    """Return a sentence for each thing that still needs the garment."""
    return [words for ask in OBJECTIONS for words in ask(garment)]
