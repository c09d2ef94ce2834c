"""Photos as published: upright, small, in plain colours, and with nothing else in the file."""

import io
from pathlib import Path

import pytest
from PIL import Image, ImageCms

from mkdocs_garboard.photos import Photos, small
from tests.mkdocs_garboard.conftest import content


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A content folder with a photo that lies on its side and knows who took it."""
    return content(tmp_path)


def test_a_photo_is_turned_upright_and_made_small(folder: Path) -> None:
    photos = Photos(folder)
    picture = photos.want("photos/receivers.jpg")
    (uri, made), *_ = photos.published().items()

    with Image.open(io.BytesIO(made)) as image:
        assert picture
        assert image.size == (picture.width, picture.height) == (800, 1600)
        assert image.getpixel((400, 100)) == pytest.approx((85, 51, 17), abs=12)
    assert uri == "photos/receivers.jpg.webp"


def test_nothing_but_the_picture_is_left_in_the_file(folder: Path) -> None:
    made = small(folder / "photos" / "receivers.jpg")

    with Image.open(io.BytesIO(made)) as image:
        assert not image.getexif()
        assert not {"exif", "icc_profile", "comment", "xmp"} & image.info.keys()
    assert b"maker" not in made
    assert b"home" not in made


def test_a_photo_becomes_the_same_bytes_every_time(folder: Path) -> None:
    source = folder / "photos" / "receivers.jpg"

    assert small(source) == small(source)


def test_a_picture_with_colours_of_its_own_is_brought_to_plain_ones(folder: Path) -> None:
    path = folder / "photos" / "lab.png"
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    Image.new("RGB", (20, 10), "#ff8800").save(path, icc_profile=profile)

    with Image.open(io.BytesIO(small(path))) as image:
        assert image.convert("RGB").getpixel((5, 5)) == (255, 136, 0)


def test_only_what_a_page_asked_for_is_published(folder: Path) -> None:
    photos = Photos(folder)
    photos.want("photos/receivers.jpg")
    photos.forget()

    assert photos.published() == {}


@pytest.mark.parametrize(
    "path",
    [
        "../outside.jpg",
        "photos/none.jpg",
        "handbook.yml",
        "photos",
        "",
        "photos/link.jpg",
        "photos/evil.svg",
    ],
)
def test_what_is_no_picture_of_the_folder_is_refused(folder: Path, path: str) -> None:
    outside = folder.parent / "outside.jpg"
    Image.new("RGB", (4, 4)).save(outside)
    (folder / "photos" / "link.jpg").symlink_to(outside)
    (folder / "photos" / "evil.svg").write_text("<svg onload='alert(1)'/>", "utf-8")

    assert Photos(folder).want(path) is None


def test_a_picture_that_would_fill_the_memory_is_refused(folder: Path) -> None:
    Image.new("1", (12000, 12000)).save(folder / "photos" / "bomb.png")

    assert Photos(folder).want("photos/bomb.png") is None
