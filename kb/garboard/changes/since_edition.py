"""What became of the records since the last edition, counted."""

from dataclasses import dataclass

from garboard.book import Book
from garboard.records.standing import state_of
from garboard.review.issued import issued_digest

__all__ = ["SinceEdition", "since_edition"]


@dataclass(frozen=True, slots=True)
class SinceEdition:
    """How many records differ from the last edition, and how; one may count under several heads."""

    number: int
    on: str
    """The day of that edition, as in the files."""
    new: tuple[str, ...] = ()
    raised: tuple[str, ...] = ()
    """Say something else under a revision that was raised."""
    drafts: tuple[str, ...] = ()
    """Say something else under the revision they had."""
    moved: tuple[str, ...] = ()
    """Stand in another state."""

    def __str__(self) -> str:
        words = f"compared with edition {self.number} of {self.on}: {_some(self.new)} new, "
        words += f"{len(self.raised)} changed (revision raised), {len(self.moved)} moved state"
        return f"{words}, {len(self.drafts)} changed as drafts" if self.drafts else words


def _some(names: tuple[str, ...]) -> str:
    return "1 record" if len(names) == 1 else f"{len(names)} records"


def since_edition(book: Book) -> SinceEdition | None:
    """Compare the records with the last edition.

    Args:
        book: The book.

    Returns:
        What differs, by id; None where no edition was issued.
    """
    edition = book.edition
    if edition is None:
        return None
    new: list[str] = []
    raised: list[str] = []
    drafts: list[str] = []
    moved: list[str] = []
    for key, record in book.records.items():
        issued = edition.records.get(key)
        if issued is None:
            new.append(key)
            continue
        now = book.reviews[key].cover.whole
        if now != issued.digest and now != issued_digest(book.content.editions, issued):
            (raised if record.revision > issued.revision else drafts).append(key)
        if state_of(record) != issued.state:
            moved.append(key)
    found = (tuple(names) for names in (new, raised, drafts, moved))
    return SinceEdition(edition.number, edition.issued.isoformat(), *found)
