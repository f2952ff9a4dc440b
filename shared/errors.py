"""The few errors that cross room borders. Each message is a sentence a maker can act on."""


class ClothError(ValueError):
    """Base of every refusal in this project that a person can mend."""


class LengthError(ClothError):
    """A length that cannot be read or is out of range."""


class OutlineError(ClothError):
    """An outline that is no single, simple shape with an area."""


class PhotoError(ClothError):
    """An upload that is no usable picture."""
