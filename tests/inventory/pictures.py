"""Small pictures to upload, honest and otherwise."""

from io import BytesIO

from django.core.files.uploadedfile import SimpleUploadedFile
from PIL import Image


def picture(kind: str = "JPEG", size: tuple[int, int] = (64, 48), **options) -> bytes:
    file = BytesIO()
    Image.new("RGB", size, "#4466aa").save(file, kind, **options)
    return file.getvalue()


def upload(
    content: bytes | None = None, name: str = "shirt.jpg", said_type: str = "image/jpeg"
) -> SimpleUploadedFile:
    return SimpleUploadedFile(name, content or picture(), content_type=said_type)
