"""What the search of the layouts caught between two books: gone, new, or found otherwise."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.changes.comparison import Comparison, LayoutChange, Rejoined, Sort
from garboard.changes.kept_comparisons import Compared
from garboard.views.inline import linked
from garboard.views.page import Cell, Column, Link, Row, Table

__all__ = ["caught_by_search", "join_parts", "layout_rows", "layout_words"]

TITLES = ("what was found", "how grave", "gone in", "behind it")


def layout_words(one: LayoutChange) -> str:
    """What became of a finding: `gone: danger`, `new: warning`, `danger -> note`."""
    if one.sort is not Sort.CHANGED:
        return f"{one.sort}: {one.level_before or one.level_after}"
    if one.level_before == one.level_after:
        return f"{one.level_after}, found otherwise"
    return f"{one.level_before} -> {one.level_after}"


def join_parts(one: Rejoined) -> Iterator[str]:
    """Parts that came and went with the joins of a system."""
    return (
        f"{word}: {', '.join(tags)}"
        for word, tags in (("new", one.new), ("gone", one.gone))
        if tags
    )


def layout_rows(book: Book, found: Comparison) -> tuple[Row, ...]:
    """The rows of a comparison: rule, what became of it, before, after, who is behind it."""
    return tuple(
        Row(
            (
                (Link(f"manual/rules/{one.code}", one.code), " of ", *linked(book, one.about)),
                (layout_words(one).replace("->", "\u2192"),),
                linked(book, one.before) or ("nothing",),
                linked(book, one.after) or ("nothing",),
                _behind(book, one),
            )
        )
        for one in found.layout
    )


def _behind(book: Book, one: LayoutChange) -> Cell:
    return linked(book, "; ".join(one.behind)) or ("no record names it",)


def caught_by_search(book: Book, compared: Iterable[Compared]) -> Table:
    """What the search of the layouts found in an edition and finds no more in what came after it."""
    rows = tuple(
        Row(
            (
                (Link(f"manual/rules/{one.code}", one.code), ": ", *linked(book, one.before)),
                (one.level_before,),
                (f"edition {pair.after}" if pair.after else "this book",),
                _behind(book, one),
            )
        )
        for pair in compared
        for one in (pair.found.layout if pair.found else ())
        if one.sort is Sort.GONE
    )
    caption = "Found in the connections, and gone since"
    return Table(caption, tuple(map(Column, TITLES)), rows, "nothing so far")
