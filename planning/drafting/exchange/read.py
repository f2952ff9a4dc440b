"""Reading a pattern file that a maker brings, by what is in it; its name is used for words only.

Nothing is fetched, run or kept here. A file is read whole or refused with a sentence.
"""

import math

from planning.drafting.exchange.dxf_read import read_dxf
from planning.drafting.exchange.found import Found, PatternFileError
from planning.drafting.exchange.svg_read import read_svg

MOST_BYTES = {"dxf": 8_000_000, "svg": 4_000_000}

_UTF16 = (b"\xff\xfe", b"\xfe\xff")
_OTHER_KINDS = {
    b"%PDF": "a PDF",
    b"PK\x03\x04": "a packed folder",
    b"\x1f\x8b": "a compressed file",
    b"\x89PNG": "a picture made of dots",
    b"\xff\xd8\xff": "a picture made of dots",
}


def read_pattern_file(data: bytes, name: str, mm_per_unit: float | None = None) -> Found:
    """Return the pieces in an SVG or DXF file, in millimetres.

    ``mm_per_unit`` overrides the unit that the file names: 1 for millimetres, 25.4 for inches.
    Raises PatternFileError for a file that is too large, of another kind, unsafe or not whole.
    """
    if mm_per_unit is not None and not (math.isfinite(mm_per_unit) and mm_per_unit > 0):
        raise PatternFileError("The unit must be more than nothing in millimetres.")
    kind = _kind(data, name)
    if len(data) > MOST_BYTES[kind]:
        raise PatternFileError(
            f"“{name}” has {len(data) / 1e6:.1f} MB; a {kind.upper()} file may have at most "
            f"{MOST_BYTES[kind] / 1e6:.0f} MB. Save only the pieces, without pictures."
        )
    return (read_svg if kind == "svg" else read_dxf)(data, mm_per_unit)


def _kind(data: bytes, name: str) -> str:
    for start, words in _OTHER_KINDS.items():
        if data.startswith(start):
            raise PatternFileError(f"“{name}” is {words}. Save the drawing as SVG or DXF.")
    head = data[:2000].removeprefix(b"\xef\xbb\xbf").lstrip()
    if head.startswith(b"<") or head.startswith(_UTF16):
        return "svg"
    is_dxf = head.partition(b"\n")[0].strip() in (b"0", b"999")
    if is_dxf or name.lower().endswith(".dxf"):
        return "dxf"
    raise PatternFileError(
        f"“{name}” is neither an SVG nor a DXF drawing. Save the pattern as one of them."
    )
