"""Reading the pieces of a DXF drawing: blocks by the layers of ASTM D6673, or plain closed lines.

METRIC is read as millimetres and ENGLISH as inches, as public readers do.
"""

from collections import Counter
from collections.abc import Sequence

from ezdxf.document import Drawing

from planning.drafting.exchange.checked import clean_name, found_of
from planning.drafting.exchange.dxf_layers import (
    BOUNDARY,
    CHECK_LAYER,
    CUT_OUT,
    NOT_NEEDED,
    READ,
    WORDS,
)
from planning.drafting.exchange.dxf_lines import Drawn, drawn_of, refuse_too_many, rings_of
from planning.drafting.exchange.dxf_marks import grain_deg, marks_of
from planning.drafting.exchange.dxf_rings import piece_rings
from planning.drafting.exchange.dxf_text import NO_PIECES, document_of
from planning.drafting.exchange.dxf_words import (
    keyed,
    labels,
    quantity_of,
    remarks,
    size_of,
)
from planning.drafting.exchange.found import Found, FoundPiece, PatternFileError
from planning.drafting.exchange.outlines import Outline, pieces_among

MM_PER_INSUNITS = {1: 25.4, 4: 1.0, 5: 10.0, 6: 1000.0}  # DXF reference, header variable $INSUNITS
UNIT_WORDS = {1.0: "millimetres", 10.0: "centimetres", 25.4: "inches", 1000.0: "metres"}
SAID_UNITS = {"metric": 1.0, "english": 25.4}
PILE_NOTE = (
    "A grain line in this kind of file has no head: on cloth with a pile, check which way it runs."
)
UNIT_NOTE = "The file does not say its unit: millimetres were assumed. Check a length with a tape."


def read_dxf(data: bytes, mm_per_unit: float | None = None) -> Found:
    """Return the pieces of a drawing; ``mm_per_unit`` overrides the unit that the file gives.

    Raises PatternFileError for a file that is unsound, cut off or without a closed boundary.
    """
    document, notes = document_of(data)
    said = keyed(drawn_of(document.modelspace().query("TEXT MTEXT"), "", "the drawing", 1.0).words)
    scale, words, is_sure = _unit(document, said, mm_per_unit)
    model = drawn_of(document.modelspace(), "", "the drawing", scale)
    blocks = _blocks(document, scale, model.points)
    pieces, block_notes = _block_pieces(blocks, said)
    if pieces:
        block_notes += _left_out([model], "outside the blocks", read=())
    else:
        pieces, plain_notes = _plain_pieces(model)
        block_notes += plain_notes
        if not pieces and blocks:
            raise PatternFileError(f"{block_notes[0]} Join its lines and save the file again.")
    if not is_sure:
        notes.append(UNIT_NOTE)
    if any(piece.has_grain for piece in pieces):
        notes.append(PILE_NOTE)
    return found_of("dxf", (words, is_sure), pieces, [*notes, *block_notes])


def _blocks(document: Drawing, mm_per_unit: float, points: int) -> list[Drawn]:
    blocks = []
    for block in document.blocks:
        if not block.name.startswith(NO_PIECES):
            place = f"the block “{clean_name(block.name)}”"
            blocks.append(drawn_of(block, block.name, place, mm_per_unit))
            points += blocks[-1].points
            refuse_too_many(points)
    return blocks


def _unit(
    document: Drawing, said: dict[str, str], mm_per_unit: float | None
) -> tuple[float, str, bool]:
    if mm_per_unit is not None:
        return mm_per_unit, f"{mm_per_unit:g} mm to the unit, as you said", True
    scale = SAID_UNITS.get(said.get("units", "").lower())
    if scale is None:
        scale = MM_PER_INSUNITS.get(document.header.get("$INSUNITS", 0))
    if scale is None:
        return 1.0, "millimetres, assumed", False
    return scale, f"{UNIT_WORDS[scale]}, said by the file", True


def _block_pieces(
    blocks: Sequence[Drawn], style: dict[str, str]
) -> tuple[list[FoundPiece], list[str]]:
    pieces, notes = [], []
    for drawn in blocks:
        piece = _piece(drawn, style)
        name = clean_name(drawn.name)
        if piece is None:
            notes.append(
                f"The block “{name}” has no closed boundary on layer {BOUNDARY}; it was left out."
            )
            continue
        pieces.append(piece)
    return pieces, [*notes, *_left_out(blocks, "in the blocks", READ)]


def _piece(drawn: Drawn, style: dict[str, str]) -> FoundPiece | None:
    rings = piece_rings(drawn, f"the block “{clean_name(drawn.name)}”")
    if rings is None:
        return None
    said = keyed(drawn.words)
    count, mirrored, question = quantity_of(said.get("quantity"))
    grain = grain_deg(drawn)
    marks = marks_of(drawn, rings.seam or rings.outline, labels(drawn.words), rings.fold)
    holes = len(drawn.strokes.get(CUT_OUT, []))
    cut_outs = f"Cut-outs inside, left out: {holes}." if holes else ""
    notes = [*rings.notes, question, cut_outs, *remarks(drawn.words)]
    return FoundPiece(
        name=said.get("piece name") or clean_name(drawn.name) or "piece",
        size=size_of(said, drawn.name) or style.get("sample size", ""),
        outline=rings.outline,
        line="cut",
        seam_line=rings.seam,
        count=count,
        mirrored=mirrored,
        grain_deg=90.0 if grain is None else grain,
        has_grain=grain is not None,
        notches=marks.notches,
        marks=marks.marks,
        lines=marks.lines,
        is_unfolded=rings.fold is not None,
        notes=tuple(note for note in notes if note),
    )


def _plain_pieces(model: Drawn) -> tuple[list[FoundPiece], list[str]]:
    """The closed lines of a drawing without blocks, on whatever layer."""
    outlines: list[Outline] = []
    still_open: Counter[str] = Counter()
    for layer, strokes in model.strokes.items():
        if layer == CHECK_LAYER:
            continue
        rings, open_lines = rings_of(strokes)
        still_open[layer] += len(open_lines)
        for closed in rings:
            place = f"closed line number {len(outlines) + 1}, layer “{layer}”"
            gap = f"The outline missed closing by {closed.gap_mm:.1f} mm and was closed."
            outlines.append(Outline(closed.ring, "", place, (gap,) if closed.gap_mm else ()))
    opened = [f"{count} on layer “{layer}”" for layer, count in still_open.items() if count]
    if opened and not outlines:
        raise PatternFileError(
            f"No outline is closed; open lines: {', '.join(opened[:8])}. Join each outline's ends "
            "and save the file again."
        )
    pieces, notes = pieces_among(outlines)
    if opened:
        notes.append(f"Open lines were left out: {', '.join(opened)}.")
    return pieces, [*notes, *remarks(model.words), *_left_out([model], "in the drawing", None)]


def _left_out(layouts: Sequence[Drawn], where: str, read: Sequence[str] | None) -> list[str]:
    """A sentence for each layer, not among those ``read``, that was passed by; None reads all."""
    counts: Counter[str] = Counter()
    for drawn in layouts:
        for layer, strokes in drawn.strokes.items():
            if read is not None and layer not in (*read, *NOT_NEEDED):
                counts[layer] += len(strokes)
        for (layer, _), count in drawn.unread.items():
            counts[layer] += count
    return [
        f"Left out {where}: {count} on layer “{clean_name(layer)}”"
        f"{f' ({WORDS[layer]})' if layer in WORDS else ''}."
        for layer, count in sorted(counts.items())
        if count
    ]
