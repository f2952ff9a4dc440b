import pytest

from planning.drafting.exchange.dxf_lines import Words
from planning.drafting.exchange.dxf_words import keyed, labels, quantity_of, remarks, size_of


@pytest.mark.parametrize(
    ("text", "count", "mirrored", "asks"),
    [
        (None, 1, 0, "does not say how many"),
        ("", 1, 0, "does not say how many"),
        ("1", 1, 0, ""),
        ("2", 2, 0, "alike, or half of them turned over"),
        ("4", 4, 0, "alike, or half of them turned over"),
        ("1,1", 2, 1, ""),
        ("1 / 1", 2, 1, ""),
        ("2+2", 4, 2, ""),
        ("L 1 R 1", 2, 1, ""),
        ("L1 R1", 2, 1, ""),
        ("Left 2, Right 2", 4, 2, ""),
        ("0,1", 1, 1, ""),
        ("1 pair", 2, 1, ""),
        ("2 pairs", 4, 2, ""),
        ("cut 1", 1, 0, ""),
        ("0", 1, 0, "not understood: “0”"),
        ("some", 1, 0, "not understood: “some”"),
        ("2 of fur, 1 of felt", 1, 0, "not understood"),
        ("1,2,3", 1, 0, "not understood"),
        ("99999", 1, 0, "not understood"),
        ("2 on fold", 1, 0, "not understood"),
    ],
)
def test_how_many_to_cut(text, count, mirrored, asks):
    assert quantity_of(text)[:2] == (count, mirrored)
    assert asks in quantity_of(text)[2]
    assert bool(asks) is bool(quantity_of(text)[2])


@pytest.mark.parametrize(
    ("said", "block", "size"),
    [
        ({"size": "M", "piece name": "leg"}, "leg-38", "M"),
        ({"piece name": "leg"}, "leg-38", "38"),
        ({"piece name": "leg"}, "LEG 38 cm", "38 cm"),
        ({"piece name": "leg"}, "leg", ""),
        ({"piece name": "leg"}, "P17", ""),
        ({}, "leg-38", ""),
    ],
)
def test_the_size_is_the_text_or_the_rest_of_the_block_name(said, block, size):
    assert size_of(said, block) == size


def words(*texts):
    return [Words(text, (0, 0)) for text in texts]


def test_the_first_text_of_a_key_counts_and_keys_have_no_case():
    assert keyed(words("SIZE: M", "size: L", "no key", "Units:METRIC ")) == {
        "size": "M",
        "units": "METRIC",
    }


def test_escapes_are_letters():
    assert keyed(words("Piece Name: \\U+00C4rmel")) == {"piece name": "Ärmel"}


def test_what_a_maker_should_see_is_told_once():
    told = remarks(
        words("Fabric: fur", "Fabric: fur", "# 3", "Piece Name: leg", "mind the pile", "")
    )
    assert told == ["The file says: “fabric: fur”.", "The file says: “mind the pile”."]


def test_labels_are_known_by_their_key():
    (label,) = labels([Words("Double notch: hip", (3, 4)), Words("Notch:", (0, 0))])
    assert (label.kind, label.name, label.at) == ("double notch", "hip", (3, 4))
