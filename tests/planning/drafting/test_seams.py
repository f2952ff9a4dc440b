from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.drafting.bear import bear
from planning.drafting.errors import SeamNameError
from planning.drafting.library import drafted, seams_for
from planning.drafting.pieces import DraftPiece
from planning.drafting.seams import (
    HAND_DRAWN_TOLERANCE_MM,
    SeamWalk,
    unsewn_edges,
    walk,
    walk_seam,
)
from planning.drafting.sewing import Seam, Stretch
from tests.planning.drafting.shapes_for_tests import ANIMALS, EVERY_MAKE, Make

every_make = pytest.mark.parametrize("make", EVERY_MAKE, ids=str)


def walks_within_a_millimetre(make: Make, height_mm: float) -> None:
    size = drafted(make.key, height_mm, pose=make.pose, face=make.face)
    for walked in walk(size, seams_for(make.key, make.pose, make.face)):
        assert walked.ok, walked.text
        if walked.ease_pct == (0, 0):
            assert abs(walked.difference_mm) < 1, walked.text


@every_make
def test_every_seam_walks_at_the_ends_of_its_range_and_between(make: Make) -> None:
    for height_mm in (make.kind.least_mm, *make.kind.heights_mm, make.kind.most_mm):
        walks_within_a_millimetre(make, height_mm)


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(EVERY_MAKE), st.floats(0, 1))
def test_every_seam_walks_at_any_height(make: Make, share: float) -> None:
    least, most = make.kind.least_mm, make.kind.most_mm
    walks_within_a_millimetre(make, least + share * (most - least))


@pytest.mark.parametrize("key", ANIMALS)
def test_the_ear_is_three_percent_fuller_than_its_line(key: str) -> None:
    onto = [w for w in walk(drafted(key, 300), seams_for(key)) if " to head" in w.name]
    assert len(onto) == (4 if key == "rabbit" else 2)
    for walked in onto:
        assert walked.difference_mm / walked.b_mm == pytest.approx(0.03, abs=0.002)


def times_sewn(piece: DraftPiece, edge: str) -> int:
    """How many seams an edge is in, on all copies of its piece."""
    if (piece.name, edge) == ("ear", "foot"):
        return piece.count // 2  # both layers of an ear go into one seam at its foot
    if piece.name == "front" and edge.endswith("overlap"):
        return 2  # once with each back
    return piece.count


@every_make
def test_every_edge_of_every_copy_is_sewn_once(make: Make) -> None:
    sewn = Counter[tuple[str, str]]()
    for seam in seams_for(make.key, make.pose, make.face):
        for stretch in (*seam.a, *seam.b):
            sewn[stretch.piece, stretch.name] += stretch.times * seam.copies
    for piece in drafted(make.key, 300, pose=make.pose, face=make.face):
        for edge in piece.edges:
            wanted = times_sewn(piece, edge.name)
            assert sewn[piece.name, edge.name] == wanted, (piece.name, edge.name)


@every_make
def test_seams_have_names_of_their_own(make: Make) -> None:
    names = [seam.name for seam in seams_for(make.key, make.pose, make.face)]
    assert len(set(names)) == len(names)


def test_openings_are_closed_by_hand() -> None:
    for make in EVERY_MAKE:
        seams = seams_for(make.key, make.pose, make.face)
        by_hand = {(s.piece, s.name) for seam in seams if seam.by_hand for s in (*seam.a, *seam.b)}
        for piece in drafted(make.key, 300, pose=make.pose, face=make.face):
            if piece.opening:
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


def test_a_failing_seam_says_the_place_and_the_amount() -> None:
    size = bear(300)
    foot, opening = Stretch("leg", "foot"), Stretch("leg", "opening")
    said = "“foot” of “leg” is 24.4 mm too long for “opening” of “leg”."
    assert walk_seam(size, Seam("sole", (foot,), (opening,))).text.endswith(said)
    assert walk_seam(size, Seam("sole", (opening,), (foot,))).text.endswith(said)


def test_the_amount_is_what_the_ease_leaves() -> None:
    size = bear(300)
    foot, opening = Stretch("leg", "foot"), Stretch("leg", "opening")
    walked = walk_seam(size, Seam("eased", (foot,), (opening,), ease_pct=(0, 10)))
    over_mm = walked.a_mm - 1.1 * walked.b_mm
    assert f"is {over_mm:.1f} mm too long for" in walked.text
    asked = walk_seam(size, Seam("eased", (foot,), (opening,), ease_pct=(60, 80)))
    under_mm = 1.6 * asked.b_mm - asked.a_mm
    assert f"“opening” of “leg” is {under_mm:.1f} mm too long for “foot”" in asked.text


def test_a_side_of_several_stretches_names_them_all() -> None:
    seam = Seam(
        "neck",
        (Stretch("body front", "neck", 2), Stretch("body back", "neck", 2)),
        (Stretch("head side", "neck"),),
    )
    assert "“neck” of “body front” (2 times) with “neck” of “body back” (2 times) is" in (
        walk_seam(bear(300), seam).text
    )


def test_a_walk_without_its_sides_still_has_its_sentence() -> None:
    walked = SeamWalk("sole", 50.0, 40.0, 10.0, (0, 0), ok=False)
    assert walked.text == (
        "sole: 50.0 mm against 40.0 mm, 10.0 mm longer, more than the ease allows."
    )


def test_a_hand_drawn_seam_may_be_a_millimetre_and_a_half_off() -> None:
    size = bear(300)
    foot, opening = Stretch("leg", "foot"), Stretch("leg", "opening")
    least = 100 * (walk_seam(size, Seam("", (foot,), (opening,))).a_mm - 1.4)
    ease = least / size.piece("leg").stretch_mm("opening") - 100
    near = Seam("near", (foot,), (opening,), ease_pct=(0, ease))
    assert not walk_seam(size, near).ok
    assert walk_seam(size, near, HAND_DRAWN_TOLERANCE_MM).ok


@every_make
def test_no_edge_is_left_unsewn(make: Make) -> None:
    size = drafted(make.key, 300, pose=make.pose, face=make.face)
    assert unsewn_edges(size, seams_for(make.key, make.pose, make.face)) == ()


def test_edges_that_are_in_no_seam_are_named_but_openings_are_not() -> None:
    size = bear(300)
    loose = unsewn_edges(size, ())
    assert ("arm outer", "opening") not in loose
    assert ("paw pad", "rim") in loose
    assert len(loose) == sum(len(piece.edges) - bool(piece.opening) for piece in size)
