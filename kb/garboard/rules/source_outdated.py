"""A number or a record cites a source that another one replaced.

Why: limits move from one edition to the next, and the old one goes on being quoted long after the
people who enforce it read the new.

Fix: read the new edition and cite it; where the old one still applies to this vessel, ask a
concession that says why.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Class
from garboard.records.relations import Names
from garboard.records.standing import is_live
from garboard.rules.citing import cited_sources

CODE = "source-outdated"
SEVERITY = Severity.WARN
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look up every source that is cited."""
    seen: set[tuple[str, str]] = set()
    for by, key, where in _citations(book):
        source = book.content.sources.get(key)
        if source is None or not source.superseded_by or (by, key) in seen:
            continue
        seen.add((by, key))
        owner = book.records.get(by)
        if owner is not None and not is_live(owner):
            continue
        grave = owner is not None and owner.weight is Class.A
        severity = Severity.HOLD if grave else SEVERITY
        text = f"cites {key}, superseded by {source.superseded_by}"
        cure = f"read {source.superseded_by} and cite it, or ask a concession to keep the old one"
        yield Diagnostic(where, severity, text, cure, CODE, by)


def _citations(book: Book) -> Iterator[tuple[str, str, Where]]:
    """Every source that is cited, by whom and where: for numbers, and in fields."""
    for cited in cited_sources(book):
        yield cited.by, cited.source, cited.where
    for item in book.mentions:
        if item.names is Names.SOURCE:
            yield item.by, item.to, item.where
