"""The main job, from the door to the lay, as a person would do it; with script and without."""

from pathlib import Path

from inventory.models import Garment, Panel
from planning.models import Keepsake
from shared.models import Member
from tests import builders
from tests.browser.conftest import Visit
from tests.inventory.pictures import picture


def test_from_the_door_to_the_lay(
    visit_with_or_without_script: Visit, member: Member, tmp_path: Path
) -> None:
    visit = visit_with_or_without_script
    photo = tmp_path / "shirt.jpg"
    photo.write_bytes(picture(size=(640, 480)))
    builders.pattern(member.workshop)

    page = visit.go("/")
    page.get_by_role("link", name="Take in a garment").first.click()
    page.get_by_label("Name of the new collection").fill("Dad’s shirts")
    page.get_by_label("What is it?").select_option(label="Shirt")
    page.get_by_label("Name or description").fill("The blue one")
    page.get_by_label("Photograph").set_input_files(photo)
    page.get_by_label("Fibre", exact=True).select_option("cotton")
    page.get_by_label("How the cloth is made").select_option("plain-weave")
    page.get_by_role("button", name="Take it in").click()
    garment = Garment.objects.get()
    assert page.get_by_role("status").get_by_text(garment.tag).count() == 1
    assert page.get_by_text("at least one measured panel").is_visible()
    assert page.get_by_text("Needle", exact=True).is_visible()

    page.get_by_role("link", name="Measure a panel").click()
    page.get_by_role("link", name="Rectangle").click()
    page.get_by_label("Which part").fill("Back")
    page.get_by_label("Width").fill("50")
    page.get_by_label("Length", exact=False).first.fill("70,5")
    page.get_by_role("button", name="Save the panel").click()
    assert Panel.objects.get().measures_mm == {"width": 500, "length": 705}

    page.get_by_role("link", name="Mark a flaw").click()
    page.get_by_label("Centre, across").fill("10")
    page.get_by_label("Centre, up").fill("10")
    page.get_by_label("Widest part").fill("4")
    page.get_by_role("button", name="Mark it").click()
    assert page.get_by_text("less: Stain").is_visible()

    page.get_by_role("link", name="Keepsakes", exact=True).click()
    page.get_by_role("link", name="Plan a keepsake").first.click()
    page.get_by_label("Name").fill("A cushion for Ellen")
    page.get_by_label("Collection").select_option(label="Dad’s shirts")
    page.get_by_role("button", name="Save").click()
    assert page.get_by_text("has not said yet").is_visible()
    page.get_by_role("button", name="Check every size").click()
    page.get_by_role("link", name="See the lay").click()
    assert page.get_by_role("img", name="with 2 pieces").is_visible()
    page.get_by_role("button", name="Choose this size").click()
    assert Keepsake.objects.get().chosen_size is not None
