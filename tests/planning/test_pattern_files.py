"""Files in and out through the pages: looked at first, taken in whole or not at all."""

import io

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from shapely import Polygon

from planning.library import give_built_in
from planning.models import Pattern, PatternFile

# lengths by CSS Values and Units: 1in = 25.4mm; the drawing is 100 mm wide by its own word
SVG = """<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">
<path id="ear" d="M10 10h40v30h-40z"/><path id="sole" d="M60 60h20v20h-20z"/></svg>"""


def upload(maker, text=SVG, name="ear.svg"):
    data = text if isinstance(text, bytes) else text.encode()
    return maker.post("/patterns/new/file/", {"file": SimpleUploadedFile(name, data)})


def answers(file, **changes):
    """What the form would be sent with nothing changed but a height."""
    form = file.context["form"]
    facts = {field.html_name: field.value() for field in form if field.value() is not None}
    return {**facts, "height_0": "20", **changes}


def test_a_file_is_looked_at_before_it_is_a_pattern(maker, workshop):
    page = maker.get(upload(maker).url)
    assert not Pattern.objects.filter(workshop=workshop, built_in="").exists()
    assert [piece.name for piece in page.context["found"].pieces] == ["ear", "sole"]
    done = maker.post(PatternFile.objects.get().get_absolute_url(), answers(page))
    pattern = Pattern.objects.get(name="ear")
    assert done.url == pattern.get_absolute_url()
    assert not PatternFile.objects.exists()
    ear = pattern.sizes.get().pieces.get(name="ear")
    wide, tall = _span(ear.cut_line_mm)
    assert (wide, tall) == (pytest.approx(40), pytest.approx(30))
    wide, tall = _span(ear.seam_line_mm)
    assert (wide, tall) == (pytest.approx(28), pytest.approx(18))


def _span(ring):
    left, low, right, high = Polygon(ring).bounds
    return right - left, high - low


def test_a_true_width_scales_everything(maker):
    page = maker.get(upload(maker).url)
    maker.post(PatternFile.objects.get().get_absolute_url(), answers(page, true_width="8"))
    sole = Pattern.objects.get(name="ear").sizes.get().pieces.get(name="sole")
    assert _span(sole.cut_line_mm)[0] == pytest.approx(40)


@pytest.mark.parametrize(
    ("text", "name", "words"),
    [
        ("<svg xmlns='http://www.w3.org/2000/svg'><script>1</script></svg>", "a.svg", "script"),
        ("<svg xmlns='http://www.w3.org/2000/svg'/>", "a.svg", ""),
        ("not a drawing", "a.svg", ""),
        ("0\nSECTION\n2\nENTITIES\n", "a.dxf", ""),
        (b"\x89PNG\r\n\x1a\n", "a.svg", ""),
        ("", "a.svg", "empty"),
    ],
)
def test_a_file_that_cannot_be_read_is_refused_in_words(maker, text, name, words):
    page = upload(maker, text, name)
    assert words in str(page.context["form"].errors["file"]).lower()
    assert not PatternFile.objects.exists()


SMALL = (
    "<svg xmlns='http://www.w3.org/2000/svg' width='2mm' height='2mm' viewBox='0 0 2 2'>{}</svg>"
)


def test_the_unit_can_be_said_where_the_file_names_a_wrong_one(maker):
    file = SMALL.format("<path d='M0 0h2v1h-2z'/>")
    refused = upload(maker, file, "small.svg")
    assert "which unit" in str(refused.context["form"].errors["file"])
    maker.post(
        "/patterns/new/file/",
        {"file": SimpleUploadedFile("small.svg", file.encode()), "unit": "in"},
    )
    assert PatternFile.objects.get().found["width_mm"] == pytest.approx(2 * 25.4)


def test_a_file_that_waits_is_listed(maker, stranger):
    address = upload(maker).url
    assert address in maker.get("/patterns/new/").content.decode()
    assert address not in stranger.get("/patterns/new/").content.decode()


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"height_0": ""}, "height_0"),
        ({"height_0": "900"}, "height_0"),
        ({"name_1": "ear"}, "name_1"),
        ({"mirrored_0": "9"}, "mirrored_0"),
        ({"seam_allowance": "3"}, "take_0"),
        ({"seam_allowance": "x"}, "seam_allowance"),
    ],
)
def test_nothing_is_half_taken_in(maker, workshop, changes, field):
    page = maker.get(upload(maker).url)
    page = maker.post(PatternFile.objects.get().get_absolute_url(), answers(page, **changes))
    assert field in page.context["form"].errors
    assert not Pattern.objects.filter(workshop=workshop, built_in="").exists()
    assert PatternFile.objects.exists()


def test_a_file_can_be_dropped(maker):
    row_url = upload(maker).url
    maker.post(f"{row_url}drop/")
    assert not PatternFile.objects.exists()


@pytest.mark.parametrize("kind", ["svg", "dxf"])
def test_a_size_goes_out_and_comes_back_the_same(maker, workshop, kind):
    size = give_built_in(workshop).sizes.get(height_mm=300)
    sent = maker.get(f"/sizes/{size.pk}/pattern.{kind}")
    assert f'filename="bearing-cloth-bear-30-cm.{kind}"' in sent.headers["Content-Disposition"]
    data = io.BytesIO(sent.content).read()
    page = maker.get(upload(maker, data, f"bear.{kind}").url)
    maker.post(PatternFile.objects.get().get_absolute_url(), answers(page, name="again"))
    back = {p.name: p for p in Pattern.objects.get(name="again").sizes.get().pieces.all()}
    assert set(back) == {piece.name for piece in size.pieces.all()}
    for piece in size.pieces.all():
        twin = back[piece.name]
        assert (twin.count, twin.mirrored) == (piece.count, piece.mirrored)
        before, after = Polygon(piece.cut_line_mm), Polygon(twin.cut_line_mm)
        assert after.area == pytest.approx(before.area, rel=1e-4)


def test_a_stranger_sees_no_file(maker, stranger, workshop):
    address = upload(maker).url
    size = give_built_in(workshop).sizes.first()
    assert stranger.get(address).status_code == 404
    assert stranger.post(f"{address}drop/").status_code == 404
    assert stranger.get(f"/sizes/{size.pk}/pattern.svg").status_code == 404
