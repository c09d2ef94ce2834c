"""Hazards that do not stand in full are named under their signal word, each once."""

from garboard.views.page import Link, Page, Paragraph, Strong
from tests.demo_site import demo_handbook


def _page(path: str) -> Page:
    return next(page for page in demo_handbook().pages if page.path == path)


def _named(page: Page) -> dict[str, list[str]]:
    """Signal word to the hazards named under it."""
    found = {}
    for block in page.blocks:
        if not isinstance(block, Paragraph) or not isinstance(block.runs[0], Strong):
            continue
        word, more, _ = block.runs[0].text.partition(" as well: ")
        if more:
            found[word] = [
                run.target
                for run in block.runs
                if isinstance(run, Link) and not run.target.startswith("registers/")
            ]
    return found


def test_the_first_day_names_every_hazard_once_the_worst_first() -> None:
    page = _page("people/first-day")
    named = _named(page)
    full = [message.source for message in page.messages]
    all_hazards = {page.ident for page in demo_handbook().pages if page.kind == "hazard"}

    assert list(named) == ["WARNING", "CAUTION"]
    told = [*full, *named["WARNING"], *named["CAUTION"]]
    assert len(told) == len(set(told))
    assert set(told) == all_hazards
