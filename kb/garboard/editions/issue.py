"""Issue an edition: say what would be frozen, what stands against it, and write it only where nothing does."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from garboard.book import Book
from garboard.editions.changed import changed_lines, to_reprint
from garboard.editions.expiry import Limit, past, until
from garboard.editions.freeze import freeze
from garboard.errors import Diagnostic, GarboardError, Severity
from garboard.handbook import Handbook, read
from garboard.names import nearest
from garboard.reading.edition_file import edition_path, sealed, statement, write_edition
from garboard.reading.edits import create_file
from garboard.reading.ssh_signatures import Answer, sign_text, verify_text
from garboard.reading.whole_folder import read_files
from garboard.records.edition import Edition, IssuedCard
from garboard.records.signoff import Capacity
from garboard.rules import ISSUE_RULES
from garboard.rules.judge import judge

__all__ = ["Proposal", "propose", "write"]

ISSUERS = (Capacity.IN_CHARGE, Capacity.APPROVER)


@dataclass(frozen=True, slots=True)
class Proposal:
    """An edition that could be issued, or why it cannot."""

    handbook: Handbook
    found: tuple[Diagnostic, ...]
    """What stands against it, what is asked only at issue included."""
    refusals: tuple[str, ...]
    """Why it cannot be issued; empty where it can."""
    limit: Limit | None
    """What ends it."""
    past: tuple[Limit, ...]
    """What should have ended before today, and does not count for the last day."""
    edition: Edition | None
    """Frozen as it stands; None where nobody could say by whom or until when."""

    @property
    def held(self) -> tuple[Diagnostic, ...]:
        """The HOLDs that go with it."""
        return tuple(one for one in self.found if one.severity is Severity.HOLD)

    @property
    def changed(self) -> tuple[str, ...]:
        """What became different since the last edition, one line a kind."""
        book = self.handbook.book
        return tuple(changed_lines(self.edition, book.edition)) if self.edition else ()

    @property
    def cards(self) -> tuple[IssuedCard, ...]:
        """The cards to reprint."""
        return to_reprint(self.edition, self.handbook.book) if self.edition else ()


def propose(folder: Path, by: str, key: Path | None = None) -> Proposal:
    """Freeze a content folder as it stands, and say what keeps it from being issued.

    Args:
        folder: The content folder.
        by: Who issues it: a key of people.yml.
        key: File of a private key that proves it.

    Raises:
        GarboardError: It cannot be read, a file changed meanwhile, or the key does not sign.
    """
    handbook = read(folder)
    book = handbook.book
    found = tuple(
        sorted(
            {*handbook.diagnostics, *judge(book, ISSUE_RULES)},
            key=lambda one: (one.where, one.severity.rank, one.code, one.text),
        )
    )
    files = read_files(folder, book.content.digests)
    limit = until(book)
    edition = None
    if limit and by in book.content.people:
        whole = replace(handbook, diagnostics=found)
        edition = freeze(whole, files, by, limit.day, limit.words)
    refusals = tuple(_refusals(book, found, by, has_key=key is not None))
    if edition and key and not refusals:
        edition = sealed(replace(edition, proof=sign_text(statement(edition), key)))
        refusals = tuple(_unproved(book, edition))
    return Proposal(handbook, found, refusals, limit, past(book), edition)


def write(folder: Path, proposal: Proposal) -> Path:
    """Write an edition into the content folder.

    Args:
        folder: The content folder.
        proposal: What is issued.

    Raises:
        GarboardError: Something stands against it, a file changed meanwhile, or it is there already.
    """
    edition = proposal.edition
    if proposal.refusals or edition is None:
        raise GarboardError("the edition is not issued; nothing was written")
    files = read_files(folder, proposal.handbook.book.content.digests)
    photos = {path: one for path, one in edition.files.items() if path not in files.texts}
    if photos != files.photos:
        raise GarboardError("a photograph has changed since it was read; start again")
    return create_file(folder, edition_path(edition.number), write_edition(edition))


def _refusals(
    book: Book, found: tuple[Diagnostic, ...], by: str, *, has_key: bool
) -> Iterator[str]:
    yield from _issuer(book, by, has_key=has_key)
    last = book.edition
    if last and book.today < last.issued:
        yield f"today is {book.today}, and edition {last.number} was issued on {last.issued}"
    yield from (str(one) for one in found if one.severity is Severity.STOP)


def _issuer(book: Book, by: str, *, has_key: bool) -> Iterator[str]:
    """Why a person cannot issue it."""
    people = book.content.people
    if by not in people:
        near = nearest(by, people)
        cure = f"did you mean {near!r}?" if near else "add this person there, by a key and a role"
        yield f"people.yml knows nobody by the key {by!r}; {cure}"
        return
    if not set(ISSUERS) & set(people[by].may):
        able = [key for key, one in people.items() if set(ISSUERS) & set(one.may)]
        ask = f"ask {', '.join(able)}" if able else "give somebody `in charge` under may"
        yield f"{by} may act neither in charge nor as approver; {ask}"
    if not has_key and book.content.signers.of(by, book.today):
        yield f"{by} has a key in allowed_signers, so an edition of theirs is proved; add --key FILE"


def _unproved(book: Book, edition: Edition) -> Iterator[str]:
    """Why a proof just made would not be believed."""
    keys = book.content.signers.of(edition.by, edition.issued)
    if verify_text(statement(edition), edition.proof, keys) is Answer.FITS_NOT:
        cure = "add it there with its days, or leave --key out"
        yield f"that key does not speak for {edition.by} in allowed_signers on this day; {cure}"
