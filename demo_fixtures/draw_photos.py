"""Draws every picture of the invented workshop into demo_fixtures/photos.

Run from the project's root: `python -m demo_fixtures.draw_photos [NAME ...]`. The same code
always draws the same pictures; no camera, person or shop was involved in any of them.
"""

from __future__ import annotations

import io
import sys
from collections.abc import Sequence
from itertools import product
from pathlib import Path

from PIL import Image, ImageFilter

from demo_fixtures.photographs import drawn
from demo_fixtures.pictures import all_photos

PHOTOS = Path(__file__).parent / "photos"
LARGEST_FILE = 102_000


def packed(picture: Image.Image) -> bytes:
    """JPEG bytes no larger than `LARGEST_FILE`, at the best quality that allows."""
    data = b""
    for soft, quality in product((0.0, 0.4, 0.6, 0.8, 1.0), range(87, 51, -4)):
        lens = picture.filter(ImageFilter.GaussianBlur(soft)) if soft else picture
        store = io.BytesIO()
        lens.save(store, "JPEG", quality=quality, optimize=True, progressive=True, subsampling=2)
        data = store.getvalue()
        if len(data) <= LARGEST_FILE:
            break
    return data


def main(names: Sequence[str]) -> None:
    """Draw the named pictures, or all of them."""
    PHOTOS.mkdir(exist_ok=True)
    for photo in all_photos():
        if not names or photo.name in names:
            data = packed(drawn(photo))
            (PHOTOS / f"{photo.name}.jpg").write_bytes(data)
            sys.stdout.write(f"{photo.name}.jpg {len(data) // 1000} kB\n")


if __name__ == "__main__":
    main(sys.argv[1:])
