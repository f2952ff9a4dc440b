"""What the drafting room refuses, each with a sentence that names the place."""

from shared.errors import ClothError, OutlineError


class DraftError(ClothError):
    """A bear, a size or a measure that cannot be drafted."""


class CutLineCrosses(OutlineError):
    """A seam allowance so wide that the cutting line runs into itself."""


class SeamNameError(DraftError):
    """A seam that names a piece, an edge or a line which the size does not have."""
