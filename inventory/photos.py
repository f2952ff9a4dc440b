"""Takes in a photograph: checks that it is one, turns it upright, drops everything private.

The picture is drawn afresh, so no place, date or device survives, and nothing but a picture can
be stored. Sizes: the long side at most 2400 px, and a small one of 480 px for lists.
"""

from io import BytesIO
from typing import IO

from django.core.files.base import ContentFile
from PIL import Image, ImageOps, UnidentifiedImageError

from shared.errors import PhotoError

MOST_PIXELS = 40_000_000
MOST_BYTES = 40 * 1024 * 1024
LONG_SIDE_PX = 2400
SMALL_SIDE_PX = 480
TYPES = {"JPEG": "image/jpeg", "PNG": "image/png", "WEBP": "image/webp"}


def prepared(upload: IO[bytes], said_type: str) -> tuple[ContentFile[bytes], ContentFile[bytes]]:
    """Return the full and the small picture as JPEG files.

    ``said_type`` is the media type the upload claims. Raises PhotoError for no picture, a picture
    over 40 megapixels, a kind that is not JPEG, PNG or WebP, or one that lies about its kind.
    """
    try:
        with Image.open(upload, formats=list(TYPES)) as picture:
            _check(picture, said_type)
            upright = ImageOps.exif_transpose(picture).convert("RGB")
    except UnidentifiedImageError:
        raise PhotoError("This is no picture in JPEG, PNG or WebP.") from None
    except Image.DecompressionBombError:
        raise PhotoError(_TOO_LARGE) from None
    except (OSError, SyntaxError, ValueError) as error:
        if isinstance(error, PhotoError):
            raise
        raise PhotoError("This picture is damaged and cannot be read.") from None
    return _as_jpeg(upright, LONG_SIDE_PX, "full.jpg"), _as_jpeg(
        upright, SMALL_SIDE_PX, "small.jpg"
    )


_TOO_LARGE = "This picture has more than 40 million points. Choose a smaller size in the camera."


def _check(picture: Image.Image, said_type: str) -> None:
    kind = TYPES[picture.format or ""]
    if said_type not in (kind, "image/jpg" if kind == "image/jpeg" else kind):
        raise PhotoError(f"This file says it is {said_type} but is {kind}. Save it again.")
    if picture.width * picture.height > MOST_PIXELS:
        raise PhotoError(_TOO_LARGE)


def _as_jpeg(picture: Image.Image, long_side_px: int, name: str) -> ContentFile[bytes]:
    smaller = picture.copy()
    smaller.thumbnail((long_side_px, long_side_px), Image.Resampling.LANCZOS)
    file = BytesIO()
    smaller.save(file, "JPEG", quality=86, optimize=True)
    return ContentFile(file.getvalue(), name=name)
