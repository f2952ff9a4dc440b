import json
from dataclasses import replace

import pytest

from planning.drafting.errors import DraftError
from planning.drafting.exchange.checked import clean_name, found_of
from planning.drafting.exchange.found import (
    FoundPiece,
    PatternFileError,
    found_from_json,
    found_to_json,
)
from planning.drafting.exchange.read import read_pattern_file
from planning.drafting.exchange.write import svg_of
from planning.drafting.library import built_in_pattern
from tests.planning.drafting.exchange.files_for_tests import BOX, SQUARE, from_svg


def test_a_reading_survives_being_kept_as_json():
    found = read_pattern_file(svg_of(built_in_pattern().sizes[0], "Bear").encode(), "b.svg")
    assert found_from_json(json.loads(json.dumps(found_to_json(found)))) == found
    plain = from_svg(SQUARE)
    assert found_from_json(json.loads(json.dumps(found_to_json(plain)))) == plain


@pytest.mark.parametrize(
    "spoil",
    [
        lambda data: data.pop("pieces"),
        lambda data: data.update(kind="pdf"),
        lambda data: data["pieces"][0].update(outline=[[1, 2, 3]]),
        lambda data: data["pieces"][0].update(outline=[["x", 2]]),
        lambda data: data["pieces"][0].update(count="many"),
        lambda data: data["pieces"][0].pop("line"),
        lambda data: data.update(pieces=[5]),
        lambda data: data.update(width_mm=None),
    ],
)
def test_a_spoilt_reading_is_refused(spoil):
    data = found_to_json(from_svg(SQUARE))
    spoil(data)
    with pytest.raises(PatternFileError, match="Read the file again"):
        found_from_json(data)


def test_a_pattern_file_error_is_one_that_a_maker_can_mend():
    assert issubclass(PatternFileError, DraftError)


PIECE = FoundPiece("leg", "", BOX, "cut", None, 1, 0, 90.0, False)


def test_pieces_of_one_name_and_size_are_named_apart():
    pieces = [PIECE, PIECE, replace(PIECE, size="38"), replace(PIECE, name="leg 2"), PIECE]
    found = found_of("svg", ("mm", True), pieces, [])
    assert [(p.name, p.size) for p in found.pieces] == [
        ("leg", ""),
        ("leg 2", ""),
        ("leg", "38"),
        ("leg 2 2", ""),
        ("leg 3", ""),
    ]


def test_no_piece_and_too_many_are_refused():
    for pieces in ([], [PIECE] * 501):
        with pytest.raises(PatternFileError):
            found_of("svg", ("mm", True), pieces, [])


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("  a\tb\n", "a b"),
        ("a\x00\x1b[2Jb", "a [2Jb"),
        ("\u202eab\ud800", "ab"),
        ("x" * 99, "x" * 60),
    ],
)
def test_a_name_is_made_fit_to_show(text, name):
    assert clean_name(text) == name
