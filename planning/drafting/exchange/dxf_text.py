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

import ezdxf
from ezdxf import recover
from ezdxf.document import Drawing
from ezdxf.lldxf.const import DXFError

from planning.drafting.exchange.found import PatternFileError

MOST_ENTITIES = 100_000  # vertices of polylines counted in
MENDED = "The file was damaged and was mended while reading: compare each piece with its drawing."

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
    if "LWPOLYLINE" in tags.values and "AcDbPolyline" not in tags.values:
        tags = _with_markers(tags)
    text = "\n".join(line for pair in zip(tags.codes, tags.values, strict=True) for line in pair)
    document, is_mended = _read(f"{text}\n")
    blocks = {block.name.lower() for block in document.blocks}
    lost = [name for name in _block_names(tags) if name.lower() not in blocks]
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
    lines = [line.strip() for line in re.split(r"\r\n|\r|\n", text.strip())]
    if len(lines) % 2:
        lines.append("")
    tags = Tags(lines[0::2], lines[1::2])
    for number, code in enumerate(tags.codes):
        if not (code.isascii() and code.removeprefix("-").isdigit()):
            raise PatternFileError(
                f"The file is no sound DXF at line {2 * number + 1}: “{code[:30]}” is no group "
                "code. Save it again as DXF, release 12."
            )
    return tags


def _check_whole(tags: Tags) -> list[str]:
    words = [word for word, _ in tags.structure()]
    count = Counter(words)
    if len(words) > MOST_ENTITIES:
        raise PatternFileError(
            f"The file has {len(words)} entities; at most {MOST_ENTITIES} are read. "
            "Save only the pieces."
        )
    names = _block_names(tags)
    twice = [name for name, times in Counter(n.lower() for n in names).items() if times > 1]
    if twice:
        raise PatternFileError(
            f"Two blocks are called “{twice[0]}”. Give each piece and size a block of its own name."
        )
    is_whole = count["SECTION"] == count["ENDSEC"] and count["BLOCK"] == count["ENDBLK"]
    if words and words[-1] == "EOF" and is_whole:
        return []
    if not is_whole or not count["SECTION"]:
        where = f" in the block “{names[-1]}”" if count["BLOCK"] > count["ENDBLK"] else ""
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


def _with_markers(tags: Tags) -> Tags:
    """Give each LWPOLYLINE the two subclass markers that an R12 file lacks."""
    codes: list[str] = []
    values: list[str] = []
    held: list[tuple[str, str]] = []
    is_held = False
    for code, value in [*zip(tags.codes, tags.values, strict=True), ("0", "")]:
        if code == "0" and is_held:
            common = [tag for tag in held if tag[0] in _COMMON_CODES]
            own = [tag for tag in held if tag[0] not in _COMMON_CODES]
            # ezdxf looks for the layer ahead of the markers in an R12 file, after them in others
            for tag in [*common, ("100", "AcDbEntity"), *common, ("100", "AcDbPolyline"), *own]:
                codes.append(tag[0])
                values.append(tag[1])
            held = []
        if code == "0":
            is_held = value.upper() == "LWPOLYLINE"
        if is_held and code != "0":
            held.append((code, value))
        else:
            codes.append(code)
            values.append(value)
    return Tags(codes[:-1], values[:-1])


def _read(text: str) -> tuple[Drawing, bool]:
    try:
        return ezdxf.read(io.StringIO(text)), False
    except (DXFError, ValueError, TypeError, KeyError, IndexError, AttributeError):
        pass  # the mending reader's own words are the better ones
    try:
        document, _ = recover.read(io.BytesIO(text.encode("utf-8", errors="replace")))
    except (DXFError, ValueError, TypeError, KeyError, IndexError, AttributeError) as error:
        raise PatternFileError(
            f"The file is no sound DXF ({' '.join(str(error).split())[:120]}). "
            "Save it again as DXF, release 12."
        ) from error
    return document, True
