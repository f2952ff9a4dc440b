from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.drafting.bear import bear
from planning.drafting.bear_seams import SEAMS
from planning.drafting.errors import SeamNameError
from planning.drafting.measures import CHARACTERS
from planning.drafting.seams import walk, walk_seam
from planning.drafting.sewing import Seam, Stretch


@settings(max_examples=30, deadline=None)
@given(st.floats(150, 500), st.sampled_from(sorted(CHARACTERS)))
def test_every_seam_walks_within_a_millimetre(height: float, character: str) -> None:
    for walked in walk(bear(height, character)):
        assert walked.ok, walked.text
        if walked.ease_pct == (0, 0):
            assert abs(walked.difference_mm) < 1, walked.text


@pytest.mark.parametrize("character", sorted(CHARACTERS))
def test_the_ear_is_three_percent_fuller_than_its_line(character: str) -> None:
    for walked in walk(bear(300, character)):
        if walked.name.startswith("ear to head"):
            assert walked.difference_mm / walked.b_mm == pytest.approx(0.03, abs=0.002)


def test_every_edge_of_every_copy_is_sewn_exactly_once() -> None:
    sewn = Counter[tuple[str, str]]()
    for seam in SEAMS:
        for stretch in (*seam.a, *seam.b):
            sewn[stretch.piece, stretch.name] += stretch.times * seam.copies
    for piece in bear(300):
        for edge in piece.edges:
            # both layers of an ear go into one seam at its foot
            wanted = (
                piece.count // 2 if edge.name == "foot" and piece.name == "ear" else piece.count
            )
            assert sewn[piece.name, edge.name] == wanted, (piece.name, edge.name)


def test_openings_are_closed_by_hand() -> None:
    by_hand = {(s.piece, s.name) for seam in SEAMS if seam.by_hand for s in seam.a}
    for piece in bear(300):
        if piece.opening and piece.name != "arm inner":
            assert (piece.name, piece.opening.name) in by_hand


def test_a_longer_side_is_found_and_named() -> None:
    size = bear(300)
    too_long = Seam("sole", (Stretch("leg", "foot"),), (Stretch("leg", "opening"),))
    walked = walk_seam(size, too_long)
    assert not walked.ok
    assert walked.difference_mm == pytest.approx(24.3, abs=0.5)
    assert "longer, more than the ease allows" in walked.text


def test_ease_lets_one_side_be_longer_but_not_shorter() -> None:
    size = bear(300)
    long, short = Stretch("leg", "foot"), Stretch("leg", "opening")
    eased = Seam("eased", (long,), (short,), ease_pct=(0, 60))
    assert walk_seam(size, eased).ok
    assert not walk_seam(size, replace(eased, a=(short,), b=(long,))).ok


def test_a_seam_to_a_piece_that_is_not_there_is_refused() -> None:
    with pytest.raises(SeamNameError, match="tail"):
        walk(bear(300), (Seam("tail", (Stretch("tail", "rim"),), (Stretch("leg", "foot"),)),))
