"""The invented workshop holds together: its facts, its photographs and its three verdicts."""

import json
from collections import Counter
from datetime import date
from functools import cache
from typing import Any

import pytest
from PIL import Image
from shapely import Polygon, get_coordinates

from demo_fixtures.draw_photos import PHOTOS
from demo_fixtures.photographs import LONG_SIDE, SHORT_SIDE, drawn
from demo_fixtures.pictures import all_photos
from inventory.advice.constructions import construction_named
from inventory.advice.fibres import fibre_named
from inventory.advice.grades import HAND_FEELS
from inventory.advice.label import read_mark
from inventory.choices import (
    Colour,
    Consent,
    DetailKind,
    FlawKind,
    Kind,
    PanelShape,
    Status,
    Surface,
    Trouble,
)
from inventory.measuring.shapes import outline_from
from inventory.measuring.usable import Place, usable_cloth
from inventory.models import Collection, Garment, Panel, Photo
from planning.coverage.check import check
from planning.coverage.problem import Panel as CoverPanel
from planning.coverage.problem import Piece, Problem
from planning.demo_data import load_demo
from planning.drafting.library import built_in_pattern
from planning.models import Keepsake, Pattern
from planning.pattern_checks import findings_of
from planning.problems import cloth_of
from planning.problems import problem_of as asked_of

type Facts = dict[str, Any]

MOST_BYTES_A_PHOTO, MOST_BYTES_IN_ALL = 160_000, 3_000_000
LONGEST_ALT_TEXT = 160  # the room a photograph's description has in the catalogue


@cache
def invented() -> Facts:
    facts: Facts = json.loads((PHOTOS.parent / "workshop.json").read_text(encoding="utf-8"))
    return facts


def collections() -> list[Facts]:
    return list(invented()["collections"])


def garments() -> list[Facts]:
    return [garment for collection in collections() for garment in collection["garments"]]


def panels() -> list[Facts]:
    return [panel for garment in garments() for panel in garment["panels"]]


def photos() -> list[Facts]:
    return [photo for garment in garments() for photo in garment["photos"]]


def places_of(panel: Facts) -> list[Place]:
    """The flaws, and the details kept aside, as the measuring room sees them."""
    kept_aside = [detail for detail in panel["details"] if detail["keep_aside"]]
    return [place_of(facts) for facts in [*panel["flaws"], *kept_aside]]


def place_of(facts: Facts) -> Place:
    if circle := facts.get("circle"):
        return Place(facts["name"], ((circle["x"], circle["y"]),), circle["radius"])
    return Place(facts["name"], tuple((x, y) for x, y in facts["polygon"]))


def ring_of(place: Place) -> tuple[tuple[float, float], ...]:
    return tuple((float(x), float(y)) for x, y in get_coordinates(place.shape)[:-1])


def problem_of(keepsake: Facts) -> Problem:
    """The keepsake's question, for cloth that is measured after washing or stays unwashed."""
    home = next(c for c in collections() if c["key"] == keepsake["collection"])
    cloth = []
    for garment in home["garments"]:
        for panel in garment["panels"]:
            assert panel["measured_after_wash"] or home["may_wash"] == "no"
            cloth.append(
                CoverPanel(
                    id=f"{garment['key']} {panel['name']}",
                    garment=garment["key"],
                    outline=outline_from(panel["shape"], panel["measures_mm"]),
                    flaws=tuple(ring_of(place) for place in places_of(panel)),
                    grain_deg=panel["grain_deg"],
                    one_way=garment["is_one_way"],
                )
            )
    sizes = built_in_pattern().sizes
    size = next(size for size in sizes if size.height_mm == keepsake["size_mm"])
    pieces = (Piece(p.name, p.cut_line, p.grain_deg, p.count, p.mirrored) for p in size)
    return Problem(panels=tuple(cloth), pieces=tuple(pieces))


def keepsake_that(expected: str) -> Facts:
    (keepsake,) = [k for k in invented()["keepsakes"] if k["expect"] == expected]
    assert isinstance(keepsake, dict)
    return keepsake


def test_the_workshop_is_large_enough_to_show_everything() -> None:
    assert len(collections()) >= 3
    assert len(garments()) >= 14
    assert len({fibre for garment in garments() for fibre in garment["fibres"]}) >= 8
    assert any(not garment["panels"] for garment in garments())
    assert {k["expect"] for k in invented()["keepsakes"]} == {"covers", "cannot", "undecided"}


def test_every_key_is_used_once_and_every_reference_is_met() -> None:
    assert max(Counter(c["key"] for c in collections()).values()) == 1
    assert max(Counter(g["key"] for g in garments()).values()) == 1
    for garment in garments():
        names = Counter(panel["name"] for panel in garment["panels"])
        assert not names or max(names.values()) == 1, garment["key"]
    keys = {c["key"] for c in collections()}
    assert {k["collection"] for k in invented()["keepsakes"]} <= keys
    assert any(person["username"] == "demo" for person in invented()["people"])


def test_every_collection_says_what_its_giver_allows() -> None:
    for collection in collections():
        assert {collection["may_cut"], collection["may_wash"]} <= set(Consent.values)
        assert isinstance(collection["keep_scent"], bool)
        assert isinstance(collection["return_scraps"], bool)
        assert date.fromisoformat(collection["received_on"])
    assert {c["may_cut"] for c in collections()} >= {"yes", "ask"}


@pytest.mark.parametrize("garment", garments(), ids=lambda g: g["key"])
def test_a_garment_uses_words_the_catalogue_knows(garment: Facts) -> None:
    assert garment["kind"] in Kind.values
    assert garment["colour"] in Colour.values
    assert garment["status"] in Status.values
    assert garment["pattern"] in Surface.values
    assert set(garment["troubles"]) <= set(Trouble.values)
    assert construction_named(garment["construction"]).name == garment["construction"]
    assert ("mass_g_m2" in garment) != ("hand_feel" in garment)
    assert garment.get("hand_feel", "light") in HAND_FEELS
    for part, mark in (garment["label"] or {}).items():
        assert read_mark(part, mark) == mark
    for note in garment["condition_notes"]:
        assert date.fromisoformat(note["on"])
        assert note["grade"] in range(5)


@pytest.mark.parametrize("garment", garments(), ids=lambda g: g["key"])
def test_fibre_shares_are_known_names_and_make_a_whole(garment: Facts) -> None:
    if garment.get("fibre_known", True):
        assert sum(garment["fibres"].values()) == 100
        assert [fibre_named(name).name for name in garment["fibres"]] == list(garment["fibres"])
    else:
        assert garment["fibres"] == {}


@pytest.mark.parametrize("garment", garments(), ids=lambda g: g["key"])
def test_every_panel_is_sound_and_its_places_lie_on_it(garment: Facts) -> None:
    for panel in garment["panels"]:
        assert panel["shape"] in PanelShape.values
        outline = outline_from(panel["shape"], panel["measures_mm"])
        cloth = Polygon(outline)
        assert cloth.is_valid
        assert {flaw["kind"] for flaw in panel["flaws"]} <= set(FlawKind.values)
        assert {detail["kind"] for detail in panel["details"]} <= set(DetailKind.values)
        for facts in [*panel["flaws"], *panel["details"]]:
            place = place_of(facts).shape
            on_it = place.intersection(cloth).area / place.area
            assert on_it > 0.75, f"{panel['name']}: {facts['name']} lies beside it"
        assert usable_cloth(outline, places_of(panel)).usable_mm2 > 0


def test_every_garment_has_a_described_photograph() -> None:
    for garment in garments():
        assert garment["photos"], garment["key"]
    for photo in photos():
        assert 20 <= len(photo["alt"]) <= LONGEST_ALT_TEXT, photo["file"]


def test_every_photograph_opens_small_and_without_private_facts() -> None:
    for photo in photos():
        path = PHOTOS / photo["file"]
        assert path.stat().st_size <= MOST_BYTES_A_PHOTO, path
        with Image.open(path) as picture:
            picture.load()
            assert picture.format == "JPEG"
            assert sorted(picture.size) == [SHORT_SIDE, LONG_SIDE]
            assert not picture.getexif(), path
    assert sum(p.stat().st_size for p in PHOTOS.glob("*.jpg")) < MOST_BYTES_IN_ALL


def test_the_photographs_are_those_the_program_draws_and_the_workshop_shows() -> None:
    on_disk = {path.stem for path in PHOTOS.glob("*.jpg")}
    assert on_disk == {photo.name for photo in all_photos()}
    assert Counter(photo["file"] for photo in photos()) == Counter(
        f"{name}.jpg" for name in on_disk
    )


def test_a_photograph_is_drawn_the_same_every_time() -> None:
    photo = next(photo for photo in all_photos() if photo.name == "muslin")
    first, second = (drawn(photo, finer=0.2) for _ in range(2))
    assert first.tobytes() == second.tobytes()


def test_the_fathers_shirts_cover_the_bear() -> None:
    verdict = check(problem_of(keepsake_that("covers")), seconds=20)
    assert verdict.verdict == "covers"
    assert not verdict.unplaced


def test_the_first_clothes_cannot_cover_the_bear() -> None:
    verdict = check(problem_of(keepsake_that("cannot")), seconds=20)
    assert verdict.verdict == "cannot"
    assert verdict.proof is not None
    assert "head gusset" in verdict.proof.pieces


def test_the_silk_blouse_is_neither_laid_nor_refuted() -> None:
    problem = problem_of(keepsake_that("undecided"))
    need_mm2 = sum(Polygon(piece.outline).area * piece.count for piece in problem.pieces)
    (blouse,) = [g for g in garments() if g["key"] == "blouse"]
    have_mm2 = sum(
        usable_cloth(outline_from(p["shape"], p["measures_mm"]), places_of(p)).usable_mm2
        for p in blouse["panels"]
    )
    assert 0.9 < need_mm2 / have_mm2 < 1
    verdict = check(problem, seconds=3)
    assert verdict.verdict == "undecided"
    assert verdict.unplaced


@pytest.mark.parametrize("expected", ["covers", "cannot", "undecided"])
def test_each_keepsake_shows_its_verdict_in_the_program_itself(db: None, expected: str) -> None:
    load_demo()
    facts = keepsake_that(expected)
    row = Keepsake.objects.get(name=facts["name"])
    size = row.pattern.sizes.get(height_mm=facts["size_mm"])
    question = asked_of(row, size, cloth_of(row))
    seconds = 4 if expected == "undecided" else 20
    assert check(question, seconds=seconds).verdict == expected


def test_the_workshop_loads_once_and_whole(db: None) -> None:
    assert load_demo()
    assert Collection.objects.count() == len(collections())
    assert Garment.objects.count() == len(garments())
    assert Panel.objects.filter(usable_area_mm2__gt=0).count() == len(panels())
    assert Photo.objects.count() == len(photos())
    assert Keepsake.objects.count() == 3
    assert not load_demo()


@pytest.mark.django_db
def test_the_workshops_own_pattern_meets_at_every_seam() -> None:
    load_demo()
    owl = Pattern.objects.get(name="Barn owl")
    for size in owl.sizes.prefetch_related("pieces"):
        found = findings_of(size, owl)
        assert not found.is_flawed, [each.seam.name for each in found.failing]
        assert not found.hands
