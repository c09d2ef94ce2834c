"""The colours of marks are read on the paper of each theme; a drawing says nothing by colour alone."""

import re
from pathlib import Path

import pytest

import mkdocs_garboard

CSS = Path(mkdocs_garboard.__file__).parent / "theme" / "assets" / "garboard.css"
THEMES = re.compile(r"\{([^{}]*--paper:[^{}]*)\}")


def themes() -> list[dict[str, str]]:
    """The variables of each theme, those of the day first."""
    found = [
        dict(re.findall(r"--([\w-]+):\s*(#\w+)", one))
        for one in THEMES.findall(CSS.read_text("utf-8"))
    ]
    return [found[0] | one for one in found]


def light(colour: str) -> float:
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """As WCAG 2.2 defines it."""
    low, high = sorted((light(one), light(other)))
    return (high + 0.05) / (low + 0.05)


def test_each_theme_is_found() -> None:
    assert len(themes()) == 4
    assert contrast("#000000", "#ffffff") == pytest.approx(21)


@pytest.mark.parametrize("theme", themes(), ids=lambda one: one["paper"] + one["ink"])
def test_marks_stand_out_and_words_are_read_on_the_tint(theme: dict[str, str]) -> None:
    assert contrast(theme["mark"], theme["paper"]) >= 3
    least = 3.9 if theme["ink"] == "#ff0000" else 7
    """The most that red can reach on a tint of red."""
    assert contrast(theme["ink"], theme["tint"]) >= least


def test_the_red_theme_has_no_green_and_no_blue() -> None:
    red = themes()[-1]

    assert {red[name][3:] for name in ("mark", "tint", "ink", "paper")} == {"0000"}
