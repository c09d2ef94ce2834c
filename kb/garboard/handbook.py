"""The main path and the one door: read a folder, work it out, check it, lay out its pages."""

from dataclasses import dataclass, field
from datetime import date
from functools import cache
from pathlib import Path

from garboard.book import Book, make_book
from garboard.calc.quoting import agrees
from garboard.changes.kept_comparisons import KeptComparisons
from garboard.errors import Diagnostic
from garboard.methods import METHODS
from garboard.methods.proof import ProofResult, prove_all
from garboard.reading.folder import read_folder
from garboard.reading.kept_work import KeptWork
from garboard.records.edition import Edition
from garboard.rules import ISSUE_RULES, RULES
from garboard.rules.judge import judge
from garboard.views.a_to_z import must_be_found
from garboard.views.binder_plan import BinderPlan, binders
from garboard.views.contents import Entry, Section, Target
from garboard.views.entries import entries
from garboard.views.labels import label_files
from garboard.views.numbers import NumberRow, number_rows
from garboard.views.page import WORKING, Copy, Page
from garboard.views.site import as_copy, contents, lay_out, targets, which_copy

__all__ = ["Handbook", "read", "read_book"]


@dataclass(frozen=True, slots=True)
class Handbook:
    """Everything that was read, worked out, found and laid out; it never changes."""

    book: Book
    diagnostics: tuple[Diagnostic, ...]
    pages: tuple[Page, ...]
    contents: tuple[Section, ...]
    entries: tuple[Entry, ...]
    targets: dict[str, Target]
    """By page key, id, tag, block name, value address, source id and content file."""
    numbers: tuple[NumberRow, ...] = ()
    """Every number as plain data, by address."""
    labels: dict[str, str] = field(default_factory=dict)
    """Lists of labels, by their path in the site."""
    copy: Copy = WORKING
    """Of which edition, or a working copy."""
    looked_up: tuple[tuple[str, str], ...] = ()
    """What nobody may look for in vain, each name after what sort of name it is."""
    binders: tuple[BinderPlan, ...] = ()
    """What is printed: the binder of each system, then the whole book."""

    @property
    def vessel(self) -> str:
        """Name of the vessel."""
        return self.book.content.vessel.vessel

    def find(self, key: str) -> Target | None:
        """Where a bare id, tag, address, page key or content file leads, or None."""
        return self.targets.get(key)

    def show(self, address: str, unit: str = "") -> str | None:
        """A value as shown, in another unit where one is named; None when there is no such value."""
        return self.book.show(address, unit)

    def agrees(self, typed: str, address: str, unit: str = "") -> bool:
        """Whether the text of a quotation says what its value says."""
        shown, value = self.show(address, unit), self.book.values.get(address)
        if shown is None or value is None:
            return False
        return agrees(typed, shown, has_unit=bool(unit or value.unit.text))


def read(folder: Path, edition: Edition | None = None) -> Handbook:
    """Read a content folder: the whole main path.

    Args:
        folder: The folder that holds handbook.yml.
        edition: The issued edition that was laid out there; left out, it is a working copy.

    Returns:
        The handbook, with every fault that was found in it.

    Raises:
        GarboardError: There is no such folder, or it is no content folder.
    """
    kept = KeptWork(folder)
    on = edition.issued if edition else None
    book = make_book(read_folder(folder), METHODS, kept.store, on)
    found = judge(book, RULES)
    rules = (*RULES, *ISSUE_RULES)
    comparisons = KeptComparisons(folder)
    compared = comparisons.all_of(book)
    made = lay_out(book, found, rules, METHODS, kept.proofs(METHODS, proofs), compared)
    pages = as_copy(book, made, edition)
    where = targets(book, pages)
    kept.save()
    comparisons.save()
    return Handbook(
        book,
        found,
        pages,
        contents(book, pages),
        tuple(entries(book, pages, where)),
        where,
        tuple(number_rows(book, pages, where)),
        label_files(book),
        which_copy(book, edition),
        must_be_found(book),
        binders=tuple(binders(book, pages)),
    )


def read_book(folder: Path, on: date | None = None) -> Book:
    """Read and work out a content folder, without judging it or laying out a page.

    Args:
        folder: The folder that holds handbook.yml.
        on: The day that time rules are judged by, whatever the vessel says.

    Raises:
        GarboardError: There is no such folder, or it is no content folder.
    """
    kept = KeptWork(folder)
    book = make_book(read_folder(folder), METHODS, kept.store, on)
    kept.save()
    return book


@cache
def proofs() -> tuple[ProofResult, ...]:
    """Every published case of every method, run once in a process: the methods cannot change in it."""
    return prove_all(METHODS)
