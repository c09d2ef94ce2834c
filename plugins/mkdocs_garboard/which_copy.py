"""Which copy of the handbook a page belongs to, and the days that the reader's own clock is held against."""

from markupsafe import Markup

from garboard.views.page import Copy
from mkdocs_garboard.links import whole_numbers

__all__ = ["clock", "which"]


def clock(copy: Copy) -> Markup:
    """What the reader's own clock is held against: the days of an edition; a working copy has none."""
    if not copy.number:
        return Markup("")
    days = Markup(' data-edition="{}" data-issued="{}" data-until="{}"')
    return days.format(copy.number, copy.issued, copy.valid_until)


def which(copy: Copy) -> Markup:
    """Which copy of the handbook a page belongs to, under its title block; no line end splits a day."""
    beside = Markup(' <span class="beside">{}</span>').format(copy.beside) if copy.beside else ""
    look = "issued" if copy.number else "working"
    made = Markup('<p class="which-copy {}">{}{}</p>').format(look, copy.words, beside)
    return Markup(whole_numbers(str(made)))  # noqa: S704 - figures and hyphens
