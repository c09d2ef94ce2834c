"""Something of class A was put in before anybody authorised it, or an emergency waits for its review.

Why: whoever fits it sees the fault that it cures; whoever authorises it looks for the one that it
makes. 29 CFR 1910.119(l) asks for that look before the change. At sea a master may do it first; then it
is looked at within 48 hours of contact, which is counted here in days from the signed emergency.

Fix: stop using it and have it checked and authorised, or take it out again. Where there was no contact,
ask for a concession that says so; the late day stays in the signatures.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.rules.authorised import CONTACT, PutIn, put_in

CODE = "installed-unauthorised"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare the days of everything that was put in."""
    for one in put_in(book):
        about = str(one.record.id)
        if one.emergency and (late := _late(book, one)):
            cure = "have it reviewed now, or ask for a concession that says why it could not be"
            yield Diagnostic(one.record.place("state"), SEVERITY, late, cure, CODE, about)
        if one.record.weight is Class.A and (said := _unauthorised(one)):
            text = f"{about} was put in {one.installed}, {said}"
            cure = "stop, have it checked and authorised, or take it out"
            yield Diagnostic(one.record.place(one.path), SEVERITY, text, cure, CODE, about)


def _unauthorised(one: PutIn) -> str:
    """What is wrong with its authority; empty where it is not in yet, or had it in time."""
    if one.installed is None or one.in_emergency:
        return ""
    if one.emergency:
        return f"called an emergency only {one.emergency}"
    if one.authorised is None:
        return "nobody authorised it"
    return f"authorised {one.authorised}" if one.installed < one.authorised else ""


def _late(book: Book, one: PutIn) -> str:
    """That the look at an emergency came too late, or is still owed."""
    if one.emergency is None or (one.reviewed or book.today) - one.emergency <= CONTACT:
        return ""
    looked = f"was reviewed {one.reviewed}" if one.reviewed else f"is not reviewed on {book.today}"
    return f"{one.record.id}, an emergency of {one.emergency}, {looked}"
