"""The pages about people and their work: the first day, who may do what, reading, job sheets."""

from collections.abc import Callable, Iterator

from garboard.book import Book
from garboard.views.draft import Draft
from garboard.views.first_day import first_day
from garboard.views.job_sheet import JOBS, job_drafts
from garboard.views.required_reading import FIRST_DAY, required_reading
from garboard.views.who_may_do_what import who_may_do_what

__all__ = ["is_about_people", "people_drafts"]

FOLDERS = ("people/", JOBS)


def people_drafts(book: Book) -> Iterator[Draft]:
    """Every page about people, then a sheet for every job.

    Args:
        book: The book.
    """
    makers: tuple[tuple[str, str, str, Callable[[Draft], None]], ...] = (
        (FIRST_DAY, "First day aboard", "first day", first_day),
        ("people/who-may-do-what", "Who may do what", "competence", who_may_do_what),
        ("people/required-reading", "Required reading", "required reading", required_reading),
    )
    for key, title, kind, fill in makers:
        draft = Draft(book, key, title, kind)
        fill(draft)
        yield draft
    yield from job_drafts(book)


def is_about_people(key: str) -> bool:
    """Whether a page is about people or a job.

    >>> is_about_people("people/first-day"), is_about_people("id/SA-WP-001")
    (True, False)
    """
    return key.startswith(FOLDERS)
