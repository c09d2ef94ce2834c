"""Notices to holders: each with the exact message that is sent, and how long it is."""

from garboard.errors import Where
from garboard.records.notice_message import LONGEST, messages, standing, unsendable, withdrawal
from garboard.records.vessel import Notice
from garboard.views.draft import Draft
from garboard.views.inline import cell, day
from garboard.views.page import Cell, Facts, Heading, Paragraph, Prose, Strong

__all__ = ["notices"]


def notices(draft: Draft) -> None:
    """Those that stand first, then those withdrawn; each as sent."""
    book = draft.book
    found = messages(book.content.vessel, book.content.editions.issued)
    stand = len(standing(book.content.vessel))
    draft.add(
        Paragraph((Strong(f"{stand} of {len(found)} stand.") if found else "None was sent.",))
    )
    for notice, message in sorted(found, key=lambda one: one[0].withdrawn is not None):
        draft.add(
            Heading(f"Notice {notice.number}", anchor=f"notice-{notice.number}"),
            Facts(tuple(_facts(draft, notice, message))),
            Prose(f"    {message}", _place(draft, notice)),
        )
        if notice.withdrawn:
            draft.add(
                Paragraph(("Told when it was withdrawn:",)),
                Prose(f"    {_withdrawal(draft, notice)}", _place(draft, notice)),
            )


def _facts(draft: Draft, notice: Notice, message: str) -> list[tuple[str, Cell]]:
    state = f"withdrawn {day(notice.withdrawn)}" if notice.withdrawn else "stands"
    against = ", ".join(notice.against) or "nothing by id or tag"
    signs = f"{len(message)} characters, {LONGEST} at most"
    strange = unsendable(message)
    if strange:
        signs += f"; not sent by every terminal: {' '.join(strange)}"
    return [
        ("sent", (day(notice.on),)),
        ("now", (Strong(state),)),
        ("do not use", cell(draft.book, against)),
        ("message", (signs,)),
    ]


def _withdrawal(draft: Draft, notice: Notice) -> str:
    vessel, issued = draft.book.content.vessel, draft.book.content.editions.issued
    on = notice.withdrawn or notice.on
    number = max((one.number for one in issued if one.issued <= on), default=0)
    return withdrawal(vessel.vessel, number, notice, vessel.notices.index(notice) + 1)


def _place(draft: Draft, notice: Notice) -> Where:
    vessel = draft.book.content.vessel
    return vessel.place(f"notices[{vessel.notices.index(notice)}]")
