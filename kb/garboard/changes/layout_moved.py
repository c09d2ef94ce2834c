"""What the search of the layouts finds in one book and not in another, and who is behind that.

A finding that is gone was mended, or its part is; the search is a catcher like any other, and is
credited with what it caught.
"""

from collections import defaultdict
from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.behind import Behind
from garboard.changes.comparison import LayoutChange, Sort
from garboard.systems.finding import Level, PathFinding

__all__ = ["layout_moved"]

Key = tuple[str, str]
"""Code of the rule, and what the finding is about."""


def layout_moved(old: Book, new: Book, behind: Behind) -> Iterator[LayoutChange]:
    """Findings of the layouts that differ, by what they are about; one that is as it was is left out.

    Args:
        old: The older book.
        new: The newer one.
        behind: Looks up who is behind a part.
    """
    before, after = _findings(old), _findings(new)
    known = {one.fingerprint for them in before.values() for one in them}
    still = {one.fingerprint for them in after.values() for one in them} & known
    for key in sorted(before | after):
        gone = [one for one in before.get(key, ()) if one.fingerprint not in still]
        come = [one for one in after.get(key, ()) if one.fingerprint not in still]
        for number in range(max(len(gone), len(come))):
            was = gone[number] if number < len(gone) else None
            now = come[number] if number < len(come) else None
            yield _change(was, now, behind)


def _findings(book: Book) -> dict[Key, list[PathFinding]]:
    found: dict[Key, list[PathFinding]] = defaultdict(list)
    for surveyed in book.surveys.values():
        for one in surveyed.findings:
            if one.level is not Level.ASIDE:
                found[one.code, one.about].append(one)
    return found


def _change(was: PathFinding | None, now: PathFinding | None, behind: Behind) -> LayoutChange:
    both = [one for one in (was, now) if one]
    sort = Sort.CHANGED if len(both) == 2 else Sort.GONE if was else Sort.NEW
    return LayoutChange(
        code=both[0].code,
        about=both[0].about,
        sort=sort,
        level_before=str(was.level) if was else "",
        level_after=str(now.level) if now else "",
        before=was.text if was else "",
        after=now.text if now else "",
        behind=tuple(dict.fromkeys(who for one in both for who in _behind(one, behind))),
    )


def _behind(found: PathFinding, behind: Behind) -> Iterator[str]:
    """The records that name the part it is about, or a part that it hangs on."""
    for tag in (found.about, *found.line.tags, *found.at_fault, *found.endangers):
        yield from behind.of(tag)
