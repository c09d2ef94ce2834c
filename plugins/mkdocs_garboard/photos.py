"""Photos as they are published: upright, in plain colours, small, and with nothing else in the file.

A photo from a phone carries the place it was taken, and often lies on its side with a note that says
so. It is turned first, then brought to sRGB, then written anew: saving alone would drop the note
and keep the side. Only photos that a page shows are published.
"""

import io
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from PIL import Image, ImageCms, ImageOps

__all__ = ["Photos", "Picture"]

LONGEST: Final = 1600
"""Pixels of the longer side."""
QUALITY: Final = 78
PIXELS: Final = 120_000_000
"""More than any camera aboard makes: a picture that unpacks to more is not opened."""
FORMATS: Final = ("JPEG", "PNG", "WEBP", "TIFF", "GIF", "BMP")


@dataclass(frozen=True, slots=True)
class Picture:
    """A photo as a page shows it."""

    uri: str
    """Path in the site."""
    width: int
    height: int


class Photos:
    """The photos of one content folder that pages have asked for; kept between builds."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder.resolve()
        self._made: dict[tuple[str, int, int], bytes] = {}
        self.wanted: dict[str, Picture] = {}

    def forget(self) -> None:
        """Start a build: no page has asked for anything yet."""
        self.wanted = {}

    def want(self, path: str) -> Picture | None:
        """Ask for a photo of the content folder; None where there is no such picture."""
        if path not in self.wanted:
            source = self._source(path)
            size = _size(source) if source else None
            if size is None:
                return None
            self.wanted[path] = Picture(f"photos/{path.removeprefix('photos/')}.webp", *size)
        return self.wanted[path]

    def published(self) -> dict[str, bytes]:
        """What goes into the site: path and bytes of every photo that was asked for."""
        return {picture.uri: self._bytes(path) for path, picture in sorted(self.wanted.items())}

    def _source(self, path: str) -> Path | None:
        source = self._folder / path
        if source.is_file() and source.resolve().is_relative_to(self._folder):
            return source
        return None

    def _bytes(self, path: str) -> bytes:
        source = self._folder / path
        known = source.stat()
        key = (path, known.st_mtime_ns, known.st_size)
        if key not in self._made:
            self._made[key] = small(source)
        return self._made[key]


@contextmanager
def _opened(source: Path) -> Iterator[Image.Image]:
    """A photo, unpacked only when its pixels are asked for."""
    with warnings.catch_warnings():
        warnings.simplefilter(
            "ignore", Image.DecompressionBombWarning
        )  # we have a limit of our own
        with Image.open(source, formats=FORMATS) as image:
            yield image


def _size(source: Path) -> tuple[int, int] | None:
    """Width and height as published, read from the head of the file alone."""
    try:
        with _opened(source) as image:
            width, height = image.size
            lying = image.getexif().get(0x0112, 1) in (5, 6, 7, 8)
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        return None
    if width * height > PIXELS:
        return None
    if lying:
        width, height = height, width
    return fitted(width, height)


def fitted(width: int, height: int) -> tuple[int, int]:
    """The size of a picture when its longer side is at most 1600 pixels.

    >>> fitted(4000, 3000), fitted(800, 600)
    ((1600, 1200), (800, 600))
    """
    over = max(width, height) / LONGEST
    if over <= 1:
        return width, height
    return max(1, round(width / over)), max(1, round(height / over))


def small(source: Path) -> bytes:
    """A photo turned upright, in sRGB, at most 1600 pixels, as WebP without any note in the file."""
    with _opened(source) as opened:
        drawn = opened.format in ("PNG", "GIF", "BMP")
        image = _plain_colours(ImageOps.exif_transpose(opened))
    image = image.resize(fitted(*image.size), Image.Resampling.LANCZOS)
    image.info.clear()
    out = io.BytesIO()
    image.save(out, "WEBP", quality=100 if drawn else QUALITY, lossless=drawn, method=4)
    return out.getvalue()


def _plain_colours(image: Image.Image) -> Image.Image:
    """In sRGB: a wire that is brown aboard must not turn red on a screen."""
    profile = image.info.get("icc_profile")
    if profile and image.mode in ("RGB", "CMYK", "L"):
        try:
            held = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            turned = ImageCms.profileToProfile(
                image, held, ImageCms.createProfile("sRGB"), outputMode="RGB"
            )
        except (ImageCms.PyCMSError, OSError):
            turned = None
        if turned is not None:
            return turned
    return image.convert(
        "RGBA" if "A" in image.getbands() or "transparency" in image.info else "RGB"
    )
