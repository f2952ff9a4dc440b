import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.drafting.entry import (
    EnteredNotch,
    EnteredPoint,
    Entry,
    EntryError,
    edge_names,
    entry_from_json,
    entry_to_json,
)
from planning.drafting.errors import DraftError
from planning.drafting.pieces import Mark
from tests.planning.drafting.entries_for_tests import NAMED_SQUARE, entry_of

numbers = st.floats(allow_nan=False)
words = st.text(max_size=20)
entries = st.builds(
    Entry,
    points=st.lists(st.builds(EnteredPoint, numbers, numbers, st.booleans(), words)).map(tuple),
    is_cut_line=st.booleans(),
    allowance_mm=numbers,
    fold_edge=words,
    outside_mm=numbers,
    notches=st.lists(st.builds(EnteredNotch, words, words, numbers, st.booleans())).map(tuple),
    marks=st.lists(st.builds(Mark, words, st.tuples(numbers, numbers))).map(tuple),
    opening=words,
)


@given(entries)
def test_an_entry_comes_back_from_json_as_it_was(entry: Entry) -> None:
    assert entry_from_json(json.loads(json.dumps(entry_to_json(entry)))) == entry


def test_unnamed_edges_are_called_after_their_place() -> None:
    typed = entry_of([(0, 0), (9, 0, False, "top"), (9, 5, True), (9, 9), (0, 9)])
    assert edge_names(typed.points) == ("edge 1", "top", "edge 3", "edge 4")


def test_an_outline_of_curve_points_has_one_edge() -> None:
    assert edge_names(entry_of([(0, 0, True), (9, 0, True), (9, 9, True)]).points) == ("outline",)


def changed(**changes: Any) -> dict[str, Any]:
    full = entry_of(
        NAMED_SQUARE, notches=(EnteredNotch("n", "foot", 9),), marks=(Mark("eye", (50, 50)),)
    )
    return json.loads(json.dumps(entry_to_json(full))) | changes


@pytest.mark.parametrize(
    ("data", "field", "row"),
    [
        (None, "points", None),
        ([], "points", None),
        ({}, "points", None),
        (changed(points="square"), "points", None),
        (changed(points=[{"x_mm": 1, "y_mm": 2, "is_curve": False, "edge": ""}, 7]), "points", 1),
        (changed(points=[{"x_mm": "1", "y_mm": 2, "is_curve": False, "edge": ""}]), "points", 0),
        (changed(points=[{"x_mm": True, "y_mm": 2, "is_curve": False, "edge": ""}]), "points", 0),
        (changed(points=[{"x_mm": 1, "y_mm": 2, "is_curve": 1, "edge": ""}]), "points", 0),
        (changed(points=[{"x_mm": 1, "y_mm": 2, "is_curve": False, "edge": None}]), "points", 0),
        (changed(is_cut_line=None), "is_cut_line", None),
        (changed(allowance_mm=None), "allowance_mm", None),
        (changed(allowance_mm=10**400), "allowance_mm", None),
        (changed(outside_mm=[]), "outside_mm", None),
        (changed(fold_edge=3), "fold_edge", None),
        (changed(notches=[{"name": "n", "edge": "foot"}]), "notches", 0),
        (changed(marks=[{"name": "eye", "x_mm": 1}]), "marks", 0),
        (changed(opening={}), "opening", None),
    ],
)
def test_json_that_is_no_entry_is_refused_with_field_and_row(
    data: object, field: str, row: int | None
) -> None:
    with pytest.raises(EntryError) as refused:
        entry_from_json(data)
    assert (refused.value.field, refused.value.row) == (field, row)
    assert str(refused.value).endswith(".")


def test_the_sentence_names_the_row_as_a_person_counts() -> None:
    bad = changed(marks=[{"name": "eye", "x_mm": 1, "y_mm": 1}, {"name": "eye", "x_mm": 1}])
    with pytest.raises(EntryError, match="row 2 of marks: y_mm"):
        entry_from_json(bad)


def test_an_entry_error_is_a_refusal_of_the_drafting_room() -> None:
    error = EntryError("Mend this.", field="points", row=4)
    assert isinstance(error, DraftError)
    assert (str(error), error.field, error.row) == ("Mend this.", "points", 4)
