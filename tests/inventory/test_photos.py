import pytest
from PIL import Image

from inventory.models import Photo
from inventory.photos import prepared
from shared.errors import PhotoError
from tests import builders
from tests.inventory.pictures import picture, upload


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop))


def test_a_photograph_loses_its_place_and_date():
    exif = Image.Exif()
    exif[0x0132] = "2026:01:02 03:04:05"
    exif.get_ifd(0x8825)[1] = "N"
    full, small = prepared(upload(picture(exif=exif)), "image/jpeg")
    for file in (full, small):
        with Image.open(file) as kept:
            assert not kept.getexif()


def test_a_photograph_taken_sideways_is_turned_upright():
    exif = Image.Exif()
    exif[0x0112] = 6
    full, _ = prepared(upload(picture(size=(64, 48), exif=exif)), "image/jpeg")
    with Image.open(full) as kept:
        assert kept.size == (48, 64)


@pytest.mark.parametrize(
    ("content", "said_type", "words"),
    [
        (b"not a picture at all", "image/jpeg", "no picture"),
        (picture()[:200], "image/jpeg", "damaged"),
        (picture("PNG"), "image/jpeg", "says it is image/jpeg but is image/png"),
        (picture("GIF"), "image/gif", "no picture"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "image/svg+xml", "no picture"),
    ],
)
def test_what_is_no_honest_picture_is_refused(content, said_type, words):
    with pytest.raises(PhotoError, match=words):
        prepared(upload(content, said_type=said_type), said_type)


def test_more_than_forty_megapixels_are_refused():
    with pytest.raises(PhotoError, match="40 million"):
        prepared(upload(picture("PNG", (8000, 5001))), "image/png")


def test_a_refused_upload_is_named_and_stores_nothing(maker, garment):
    page = maker.post(
        f"/garments/{garment.pk}/photos/add/", {"photo": upload(b"words"), "description": "Back"}
    )
    assert "no picture" in str(page.context["form"].errors["photo"])
    assert "Back" in page.content.decode()
    assert not Photo.objects.exists()


def test_pictures_stay_inside_their_workshop(maker, stranger, garment, settings):
    maker.post(f"/garments/{garment.pk}/photos/add/", {"photo": upload()})
    photo = Photo.objects.get()
    address = f"/photos/{photo.pk}/small.jpg"
    assert b"".join(maker.get(address).streaming_content)[:2] == b"\xff\xd8"
    assert stranger.get(address).status_code == 404
    assert stranger.post(f"/photos/{photo.pk}/remove/").status_code == 404


def test_deleting_a_picture_deletes_its_files(maker, garment, settings):
    maker.post(f"/garments/{garment.pk}/photos/add/", {"photo": upload()})
    photo = Photo.objects.get()
    maker.post(f"/photos/{photo.pk}/remove/")
    assert not Photo.objects.exists()
    assert [p for p in settings.MEDIA_ROOT.rglob("*") if p.is_file()] == []
