import pytest

from inventory.advice.changes import changes_between
from inventory.advice.makeup import advise_parts
from inventory.advice.problems import BadFigure
from tests.inventory.advice.cloths import advice, cloth


def test_the_most_delicate_part_governs_the_whole_garment() -> None:
    jacket = advise_parts(
        {
            "shell": cloth("cotton 100", "twill"),
            "lining": cloth("acetate 100", "plain-weave"),
            "collar": cloth("wool 100", "felt"),
        }
    )
    assert jacket.wash_by == "collar"
    assert jacket.wash.method == "spot"
    assert jacket.press_by == "lining"
    assert jacket.press.max_c == 110
    assert jacket.max_c == 30
    assert jacket.parts["shell"].wash.method == "machine"
    assert "opened up" in jacket.notes[0].text


def test_one_unwashable_part_leaves_no_water_at_all() -> None:
    coat = advise_parts({"shell": cloth("cotton 100"), "trim": cloth("leather 100")})
    assert coat.wash.method == "none"
    assert coat.max_c is None


def test_a_garment_of_one_cloth_needs_no_note() -> None:
    assert advise_parts({"shell": cloth("cotton 100")}).notes == ()


def test_a_garment_without_parts_is_refused() -> None:
    with pytest.raises(BadFigure):
        advise_parts({})


def test_what_if_names_the_parts_that_change() -> None:
    before = advice("cotton 100", "plain-weave", mass_g_m2=115)
    after = advice("silk 100", "plain-weave", mass_g_m2=60)
    changes = changes_between(before, after)
    assert {"wash", "press", "interfacing", "needle"} <= {each.part for each in changes.parts}
    assert any("tumble" in each.text for each in changes.new_must_not)
    assert changes.gone_must_not == ()


def test_nothing_changes_between_equal_cloths() -> None:
    same = advice("cotton 100", "jersey")
    changes = changes_between(same, advice("cotton 100", "jersey"))
    assert changes.parts == changes.new_must_not == changes.gone_must_not == ()
