"""How sure a result is: its range at worst, what it usually lies between, and what moves it.

What it rests on is listed to the last number that somebody wrote down, so that a printed page answers
for itself.
"""

from garboard.book import Book
from garboard.calc.show import Towards
from garboard.calc.value import Mover, Value
from garboard.views.draft import Draft
from garboard.views.inline import shown
from garboard.views.page import Cell, Column, HowSure, Link, MoverRow, Row, Strong, Table
from garboard.views.ranges import UNSTATED, ends, spread_words, towards, usual_words, worst_words

__all__ = ["MOST_ROWS", "how_sure", "rests_on"]

MOST_ROWS = 6
"""So many inputs are shown each; the others are summed up."""
SAMPLED = (
    "Between its corners it turns round, so it was tried at many points within the tolerances as well:"
    " these are the widest ends that were found."
)


def how_sure(book: Book, value: Value, name: str) -> HowSure | None:
    """How sure a value is; None where it is not computed.

    Args:
        book: Where the inputs are looked up.
        value: The result.
        name: What it is called on the page.
    """
    if value.si is None:
        return None
    worst, usual = worst_words(value), usual_words(value)
    said: list[Cell] = [(worst,) if worst == UNSTATED else (Strong(worst),)]
    if usual:
        said.append((usual,))
    if value.sampled:
        said.append((SAMPLED,))
    moving = value.movers if value.low is None or value.low != value.high else ()
    first, others = moving[:MOST_ROWS], moving[MOST_ROWS:]
    rows = tuple(_row(book, value, mover) for mover in first)
    return HowSure(name, tuple(said), rows, _rest(others))


def _row(book: Book, value: Value, mover: Mover) -> MoverRow:
    known = book.values.get(mover.address)
    label = known.label if known and known.label else mover.address
    spread = f" +/- {known.tolerance}" if known and known.tolerance else ""
    asked = " " if label.endswith("?") else ": "
    what: Cell = (f"{label}{asked}", shown(book, mover.address), spread)
    low, high = sorted((mover.low, mover.high))
    down, up = (Towards.DOWN, Towards.UP) if low < high else (Towards.NEAREST, Towards.NEAREST)
    least, most = towards(value, low, down), towards(value, high, up)
    return MoverRow(what, share_words(mover.share), mover.share, least, most)


def share_words(share: float) -> str:
    """A share in per cent, as text.

    >>> share_words(0.634), share_words(0.004), share_words(0.0)
    ('63 %', 'under 1 %', 'nothing')
    """
    if share <= 0:
        return "nothing"
    return f"{100 * share:.0f} %" if share >= 0.01 else "under 1 %"


def _rest(others: tuple[Mover, ...]) -> str:
    if not others:
        return ""
    together = share_words(sum(mover.share for mover in others))
    ones = "smaller one" if len(others) == 1 else "smaller ones"
    return f"and {len(others)} {ones}, {together}{'' if len(others) == 1 else ' together'}"


def rests_on(draft: Draft, block: str, answers: tuple[str, ...]) -> Table | None:
    """Every number from elsewhere that answers rest on and that somebody wrote down.

    Args:
        draft: The page; the sources join its list.
        block: The calculation, whose own numbers stand in it already.
        answers: Addresses of what it was made for, and of what is required.
    """
    book = draft.book
    found: dict[str, Value] = {}
    for answer in answers:
        for address in (answer, *book.network.upstream(answer)):
            value = book.values.get(address)
            elsewhere = address.partition(".")[0] != block
            if value and elsewhere and (address == answer or value.given or not value.uses):
                found[address] = value
    rows = tuple(
        Row(
            (
                (f"{value.label or address}",),
                (shown(book, address),),
                (_spread(value),),
                _whence(draft, address, value),
            )
        )
        for address, value in found.items()
    )
    titles = ("what it is", "value", "range", "source")
    columns = tuple(Column(title, number=title == "value") for title in titles)
    return Table("Rests on, from other pages", columns, rows) if rows else None


def _whence(draft: Draft, address: str, value: Value) -> Cell:
    """Where a number comes from: its sources, or the calculation it was worked out in."""
    refs = "".join(f"[{number}]" for number in draft.cite(*value.sources))
    owner = address.partition(".")[0]
    if value.given or owner not in draft.book.network.sheets:
        return (refs or "not given",)
    return (f"{refs} worked out in ".lstrip(), Link(owner, owner))


def _spread(value: Value) -> str:
    if value.tolerance:
        return f"+/- {value.tolerance}: {ends(value, value.low, value.high)}"
    return spread_words(value)
