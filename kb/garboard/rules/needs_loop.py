"""Work packages need one another in a ring, so that none of them can begin.

Why: a plan with a ring in it looks full of work and has nothing to do on Monday.

Fix: break it where a temporary means costs least: a borrowed pump, a blank, a hose with a tag and
a day; or take out the need that is only a wish.
"""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import is_record_id
from garboard.records.base import bare_id
from garboard.records.standing import has_left, refused
from garboard.records.work import WorkPackage

CODE = "needs-loop"
SEVERITY = Severity.STOP
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Follow the needs of every work package until they end or return."""
    needs = _needs(book)
    said: set[str] = set()
    for start in needs:
        ring = _ring(needs, start)
        if not ring or said & set(ring):
            continue
        said |= set(ring)
        text = f"{' needs '.join((*ring, ring[0]))}"
        work = book.records[ring[0]]
        number = next(n for n, name in enumerate(_listed(work)) if bare_id(name) == _after(ring))
        cure = "break it at the cheapest by temporary means, or take out a need that is a wish"
        where = work.place(f"needs[{number}]")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, ring[0])


def _needs(book: Book) -> dict[str, list[str]]:
    """The work packages that each work package needs."""
    works = {
        str(work.id): work
        for work in book.of_kind(WorkPackage)
        if not has_left(work) and not refused(work)
    }
    return {
        name: [bare_id(need) for need in work.needs if is_record_id(need) and need in works]
        for name, work in works.items()
    }


def _ring(needs: Mapping[str, list[str]], start: str) -> tuple[str, ...]:
    """The shortest ring that a package is part of, from it on; empty where there is none."""
    came_from: dict[str, str] = {}
    row = [start]
    while row:
        following: list[str] = []
        for name in row:
            for need in needs[name]:
                if need == start:
                    return _way(came_from, start, name)
                if need not in came_from:
                    came_from[need] = name
                    following.append(need)
        row = following
    return ()


def _way(came_from: Mapping[str, str], start: str, last: str) -> tuple[str, ...]:
    way = [last]
    while way[-1] != start:
        way.append(came_from[way[-1]])
    return tuple(reversed(way))


def _after(ring: tuple[str, ...]) -> str:
    return ring[1] if len(ring) > 1 else ring[0]


def _listed(work: object) -> tuple[str, ...]:
    return work.needs if isinstance(work, WorkPackage) else ()
