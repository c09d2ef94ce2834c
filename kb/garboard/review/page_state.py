"""The review state of a page, in words with the reason: the worst of what stands against it.

Signatures are not weighed yet, so that the best a page can say is that nobody has checked it.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from garboard.records.base import Class
from garboard.records.finding import Finding
from garboard.records.vessel import Notice

__all__ = ["PageState", "page_state"]

NEVER = "NOT REVIEWED. Nobody has checked this page."


@dataclass(frozen=True, slots=True)
class PageState:
    """How far a page may be relied on."""

    words: str
    trusted: bool


def page_state(
    keys: frozenset[str], notices: Iterable[Notice], findings: Iterable[Finding]
) -> PageState:
    """Work out the state of a page.

    Args:
        keys: Ids and tags that the page is about.
        notices: Notices to holders.
        findings: Findings that are still open.

    Returns:
        The first that applies of: withdrawn by notice, an open class A finding, never reviewed.
    """
    for notice in notices:
        if notice.withdrawn is None and keys & set(notice.against):
            words = f"DO NOT USE. Notice {notice.number} to holders stands against this page: {notice.says}"
            return PageState(words, trusted=False)
    for finding in findings:
        if finding.weight is Class.A and keys & {*finding.where_, *finding.against}:
            words = f"NOT SAFE TO RELY ON. Open safety finding {finding.id}: {finding.title}."
            return PageState(words, trusted=False)
    return PageState(NEVER, trusted=False)
