"""A printed book, read back from its PDF: words with their places, headings, sheets."""

import re
import subprocess
from collections import Counter
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import hypot
from pathlib import Path
from typing import Any

from pypdf import PdfReader

MM = 72 / 25.4
PAGE = re.compile(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', re.DOTALL)
WORD = re.compile(
    r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>'
)


@dataclass(frozen=True)
class Word:
    """A word, in points from the left upper corner of its sheet."""

    left: float
    top: float
    right: float
    bottom: float
    text: str


@dataclass(frozen=True)
class Sheet:
    """A side of paper."""

    width: float
    height: float
    words: tuple[Word, ...]
    """Between the running head and the running foot."""
    edges: tuple[Word, ...]
    """Of the running head and foot."""

    @property
    def across(self) -> bool:
        return self.width > self.height


def squeezed(text: str) -> str:
    """Text without what a line end may add or take."""
    return re.sub(r"[\s\u00ad\u200b]+", "", text)


@dataclass(frozen=True)
class PrintedBook:
    """A PDF of a book; margins in millimetres: top, right, foot, left."""

    pdf: Path
    upright: tuple[float, float, float, float]
    lying: tuple[float, float, float, float] = (17, 10, 17, 10)

    @cached_property
    def sheets(self) -> list[Sheet]:
        found = subprocess.run(
            ["pdftotext", "-bbox", str(self.pdf), "-"],
            capture_output=True, text=True, check=True, timeout=120,
        ).stdout  # fmt: skip
        return [self._sheet(*page) for page in PAGE.findall(found)]

    def _sheet(self, width: str, height: str, rest: str) -> Sheet:
        wide, high = float(width), float(height)
        top, _, foot, _ = self._margins(wide, high)
        words = [
            Word(float(left), float(upper), float(right), float(lower), text)
            for left, upper, right, lower, text in WORD.findall(rest)
        ]
        inner = [
            one for one in words if one.top > top * MM - 2 and one.bottom < high - foot * MM + 2
        ]
        return Sheet(wide, high, tuple(inner), tuple(one for one in words if one not in set(inner)))

    def _margins(self, width: float, height: float) -> tuple[float, float, float, float]:
        return self.lying if width > height else self.upright

    @cached_property
    def stream(self) -> list[str]:
        """The text of each sheet in the order in which it was painted, without its running head and foot."""
        texts = {lies: self._painted(lies=lies) for lies in {sheet.across for sheet in self.sheets}}
        return [texts[sheet.across][number] for number, sheet in enumerate(self.sheets)]

    def _painted(self, *, lies: bool) -> list[str]:
        first = next(sheet for sheet in self.sheets if sheet.across == lies)
        top, _, foot, _ = self._margins(first.width, first.height)
        crop = (0, top * MM - 2, first.width, first.height - (top + foot) * MM + 4)
        sides = [
            part
            for name, number in zip("xyWH", crop, strict=True)
            for part in (f"-{name}", str(round(number)))
        ]
        found = subprocess.run(
            ["pdftotext", "-raw", *sides, str(self.pdf), "-"],
            capture_output=True, text=True, check=True, timeout=120,
        ).stdout  # fmt: skip
        return found.split("\f")[: len(self.sheets)]

    @cached_property
    def reader(self) -> PdfReader:
        return PdfReader(self.pdf)

    @cached_property
    def headings(self) -> list[tuple[int, float, str]]:
        """Number of the sheet, from 0, height on it from its top, and text of every heading."""
        found = []

        def walk(items: list[Any]) -> None:
            for item in items:
                if isinstance(item, list):
                    walk(item)
                elif (number := self.reader.get_destination_page_number(item)) is not None:
                    top = float(self.reader.pages[number].mediabox.height) - float(item.top or 0)
                    found.append((number, top, str(item.title)))

        walk(self.reader.outline)
        return found

    def outside(self) -> list[str]:
        """Every word that stands in a margin."""
        return [
            f"sheet {number + 1}: {word.text} at {word.left / MM:.0f} to {word.right / MM:.0f} mm"
            for number, sheet in enumerate(self.sheets)
            for word in (*sheet.words, *sheet.edges)
            if word.right > sheet.width - self._margins(sheet.width, sheet.height)[1] * MM + 2
            or word.left < self._margins(sheet.width, sheet.height)[3] * MM - 2
            or not 3 * MM < word.top < word.bottom < sheet.height - 2 * MM
        ]

    def empty(self) -> list[int]:
        return [number + 1 for number, sheet in enumerate(self.sheets) if len(sheet.words) < 4]

    def scanty(self) -> list[str]:
        """Sheets with under five lines on under a tenth of their height, where others stand before them."""
        found = []
        for number, sheet in enumerate(self.sheets):
            feet = sorted(word.bottom for word in sheet.words)
            lines = sum(foot - before > 6 for before, foot in pairwise([-9.0, *feet]))
            high = feet[-1] - min(word.top for word in sheet.words) if feet else 0
            if number and lines < 5 and high < sheet.height / 10:
                found.append(f"sheet {number + 1}: {' '.join(word.text for word in sheet.words)}")
        return found

    def orphans(self) -> list[str]:
        """Headings with nothing under them on their sheet."""
        return [
            f"sheet {number + 1}: {text}"
            for number, top, text in self.headings
            if not any(word.top > top + 12 for word in self.sheets[number].words)
            or self._last_words(number) == squeezed(text)
        ]

    def ending_with(self, titles: set[str]) -> list[str]:
        """Sheets whose last line is one of these, each without white space."""
        return [
            f"sheet {number + 1}: {last}"
            for number in range(len(self.sheets))
            if (last := self._last_words(number)) in titles
        ]

    def lines(self, number: int) -> list[str]:
        """The lines of a sheet, counted from 0, from its top, without white space."""
        lines: list[list[Word]] = []
        for word in sorted(self.sheets[number].words, key=lambda one: -one.bottom):
            if not lines or lines[-1][0].bottom - word.bottom >= 4:
                lines.append([])
            lines[-1].append(word)
        return [
            squeezed("".join(one.text for one in sorted(line, key=lambda one: one.left)))
            for line in reversed(lines)
        ]

    def _last_words(self, number: int) -> str:
        """The last line of a sheet."""
        return self.lines(number)[-1] if self.sheets[number].words else ""

    def letters(self, number: int) -> Counter[float]:
        """Sizes of type on a sheet, counted from 0, in points, with how many letters have each."""
        found: Counter[float] = Counter()

        def see(
            text: str, matrix: list[float], line: list[float], _font: object, size: float
        ) -> None:
            # turned words too: the length of the upright of a letter, wherever it points
            across = line[2] * matrix[0] + line[3] * matrix[2]
            along = line[2] * matrix[1] + line[3] * matrix[3]
            found[round(size * hypot(across, along), 2)] += len(text.strip())

        self.reader.pages[number].extract_text(visitor_text=see)
        return Counter({size: letters for size, letters in found.items() if size and letters})

    def sizes(self, number: int) -> list[float]:
        """Sizes of type that more than a few letters of a sheet have, the smallest first."""
        return sorted(size for size, letters in self.letters(number).items() if letters > 5)
