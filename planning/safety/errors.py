"""What the safety room refuses to answer, with a sentence that says what to mend."""

from shared.errors import ClothError


class SafetyError(ClothError):
    """A size, an age, a market or a material the rules cannot be asked about."""
