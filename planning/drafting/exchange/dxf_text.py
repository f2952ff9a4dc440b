"""From the bytes of a DXF file to a document that ezdxf has read whole, or a refusal.

The tags are looked over before ezdxf sees them: a file that breaks off inside a block is refused,
because a reader that mends it would lose pieces without a word. Facts about what ezdxf refuses
were measured on release 1.4.5.
"""

import io
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import ezdxf
from ezdxf import recover
from ezdxf.document import Drawing
from ezdxf.lldxf.const import DXFError

from planning.drafting.exchange.checked import MOST_PIECES, MOST_POINTS
from planning.drafting.exchange.found import PatternFileError

MOST_ENTITIES = 60_000  # vertices of polylines counted in
MOST_BLOCKS = 2 * MOST_PIECES
NO_PIECES = ("*", "$")  # how blocks of a program's own begin
MENDED = "The file was damaged and was mended while reading: compare each piece with its drawing."

_LINE_END = re.compile(r"\r\n|\r|\n")
# Entities younger than release 12, which picky writers still put into such files.
_MODERN = {"LWPOLYLINE", "SPLINE", "ELLIPSE", "MTEXT"}
# The tags that ezdxf expects ahead of an LWPOLYLINE's own (DXF reference, common group codes).
_COMMON_CODES = ("5", "6", "8", "48", "60", "62", "330", "370", "410", "420")


@dataclass(frozen=True)
class Tags:
    """The file's lines, two to a tag: codes and values, both stripped of blanks."""

    codes: list[str]
    values: list[str]

    def structure(self) -> Iterator[tuple[str, str]]:
        """Yield each entity or section word and the value of the tag after it."""
        for index, code in enumerate(self.codes):
            if code == "0":
                after = self.values[index + 1] if index + 1 < len(self.values) else ""
                yield self.values[index].upper(), after


def document_of(data: bytes) -> tuple[Drawing, list[str]]:
    """Return the document and a sentence for each mending.

    Raises PatternFileError for a binary, oversized, unsound or cut-off file.
    """
    if b"\0" in data:
        raise PatternFileError("The file is a binary DXF. Save it as a text DXF, release 12.")
    tags = _tags(_text(data))
    notes = _check_whole(tags)
    if not _MODERN.isdisjoint(tags.values):
        tags = _with_release(tags)
    text = "\n".join(line for pair in zip(tags.codes, tags.values, strict=True) for line in pair)
    document, is_mended = _read(f"{text}\n")
    blocks = {block.name.lower() for block in document.blocks}
    lost = [
        name
        for name in _block_names(tags)
        if name.lower() not in blocks and not name.startswith(NO_PIECES)
    ]
    if lost:
        raise PatternFileError(f"The block “{lost[0]}” could not be read. Save the file again.")
    return document, [*notes, MENDED] if is_mended else notes


def _text(data: bytes) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")


def _tags(text: str) -> Tags:
    # A blank line ahead of the first tag is refused by ezdxf; a value may be blank, a code not.
    lines = [line.strip() for line in _LINE_END.split(text)]
    first = next((number for number, line in enumerate(lines) if line), 0)
    while lines and not lines[-1]:
        lines.pop()
    lines = lines[first:]
    if len(lines) % 2:
        lines.append("")
    tags = Tags(lines[0::2], lines[1::2])
    for number, (code, value) in enumerate(zip(tags.codes, tags.values, strict=True)):
        line = first + 2 * number + 1
        if not (code.isascii() and code.removeprefix("-").isdigit()):
            raise PatternFileError(
                f"The file is no sound DXF at line {line}: “{code[:30]}” is no group code. "
                "Save it again as DXF, release 12."
            )
        if len(code) == 2 and "10" <= code <= "59" and not _is_number(value):
            raise PatternFileError(
                f"The file is no sound DXF at line {line + 1}: “{value[:30]}” is no number. "
                "Decimals need a point."
            )
    return tags


def _is_number(value: str) -> bool:
    """A mending reader would take 60 for "60,5", so numbers are looked at here."""
    try:
        float(value)
    except ValueError:
        return False
    return True


def _check_whole(tags: Tags) -> list[str]:
    structure = list(tags.structure())
    words = [word for word, _ in structure]
    count = Counter(words)
    names = _block_names(tags)
    for number, most, what in (
        (len(words), MOST_ENTITIES, "entities"),
        (tags.codes.count("10"), MOST_POINTS, "points"),
        (len(names), MOST_BLOCKS, "blocks"),
    ):
        if number > most:
            raise PatternFileError(
                f"The file has {number} {what}; at most {most} are read. Save only the pieces."
            )
    twice = [name for name, times in Counter(n.lower() for n in names).items() if times > 1]
    if twice:
        raise PatternFileError(
            f"Two blocks are called “{twice[0]}”. Give each piece and size a block of its own name."
        )
    is_whole = count["SECTION"] == count["ENDSEC"] and count["BLOCK"] == count["ENDBLK"]
    if words and words[-1] == "EOF" and is_whole:
        return []
    if not is_whole or ("SECTION", "ENTITIES") not in structure:
        where = f" in the block “{names[-1]}”" if names and count["BLOCK"] > count["ENDBLK"] else ""
        raise PatternFileError(
            f"The file breaks off{where}: it was not saved or sent whole. Fetch it again."
        )
    tags.codes.append("0")
    tags.values.append("EOF")
    return ["The file's end mark was missing; every section was whole."]


def _block_names(tags: Tags) -> list[str]:
    """The names of the blocks: the first tag 2 after each BLOCK."""
    names, is_open = [], False
    for code, value in zip(tags.codes, tags.values, strict=True):
        if code == "0":
            is_open = value.upper() == "BLOCK"
        elif code == "2" and is_open:
            names.append(value)
            is_open = False
    return names


def _with_release(tags: Tags) -> Tags:
    """Say release 2000 of a file that says 12, or none, yet holds younger entities.

    Otherwise ezdxf passes by their layers and flags. An LWPOLYLINE without subclass markers is
    given them.
    """
    pairs = list(zip(tags.codes, tags.values, strict=True))
    version = [("9", "$ACADVER"), ("1", "AC1015")]
    if version[0] in pairs:
        at = pairs.index(version[0])
        if pairs[at + 1][1] <= "AC1009":
            pairs[at : at + 2] = version
    elif ("2", "HEADER") in pairs:
        at = pairs.index(("2", "HEADER")) + 1
        pairs[at:at] = version
    else:
        pairs = [("0", "SECTION"), ("2", "HEADER"), *version, ("0", "ENDSEC"), *pairs]
    return _with_markers(pairs)


def _with_markers(pairs: list[tuple[str, str]]) -> Tags:
    starts = [index for index, (code, _) in enumerate(pairs) if code == "0"]
    mended: list[tuple[str, str]] = []
    for start, end in pairwise((*starts, len(pairs))):
        head, *rest = pairs[start:end]
        if head[1].upper() == "LWPOLYLINE" and ("100", "AcDbPolyline") not in rest:
            common = [tag for tag in rest if tag[0] in _COMMON_CODES]
            own = [tag for tag in rest if tag[0] not in _COMMON_CODES]
            rest = [("100", "AcDbEntity"), *common, ("100", "AcDbPolyline"), *own]
        mended += [head, *rest]
    return Tags([code for code, _ in mended], [value for _, value in mended])


def _read(text: str) -> tuple[Drawing, bool]:
    try:
        return ezdxf.read(io.StringIO(text)), False
    except (DXFError, ValueError, TypeError, LookupError, AttributeError):
        pass  # the mending reader's own words are the better ones
    try:
        document, _ = recover.read(io.BytesIO(text.encode("utf-8", errors="replace")))
    except (DXFError, ValueError, TypeError, LookupError, AttributeError) as error:
        why = f" ({' '.join(str(error).split())[:120]})" if isinstance(error, DXFError) else ""
        raise PatternFileError(
            f"The file is no sound DXF{why}. Save it again as DXF, release 12."
        ) from error
    return document, True
