"""The form at the end of a pack: what the reviewer fills in and sends back as text.

Its lines are short and plain, so that they come through any mail program. What binds the reply to
what was seen stands in one line; what it rested on stands in lines of its own.
"""

from collections.abc import Iterable, Iterator

from garboard.correspondence.pack import Line, Part, Sort, say
from garboard.reading.reply_form import END, HOW, TITLE
from garboard.records.finding import Danger
from garboard.records.reply import SCOPES, Label, Seal
from garboard.records.signoff import Capacity, Verdict
from garboard.review.covers import Cover

__all__ = ["blank_form", "reply_sheet"]

BLOCKS = 3
MOST_SEEN = 40
"""Lines of what it rests on; more would bury the form."""
BOXES_A_LINE = 4


def reply_sheet(seal: Seal, cover: Cover, capacities: Iterable[Capacity]) -> Part:
    """The form with what it is bound to.

    Args:
        seal: Of the record or page.
        cover: What it rests on.
        capacities: In which somebody could sign it.
    """
    lines = (Line(Sort.FORM, text) for text in blank_form(seal, cover, capacities))
    return Part(TITLE, (say(HOW), *lines))


def blank_form(seal: Seal, cover: Cover, capacities: Iterable[Capacity]) -> Iterator[str]:
    """The lines of the form."""
    yield f"{Label.REF}: {seal}"
    yield f"{Label.NAME}:"
    yield f"{Label.DATE}:"
    yield f"{Label.AS}: {_boxes(capacities)}"
    yield f"{Label.VERDICT}: {_boxes(Verdict)}"
    first, *others = _rows(SCOPES)
    yield f"{Label.CHECKED}: {first}"
    yield from others
    yield f"{Label.ALSO}:"
    yield f"{Label.NOT_CHECKED}:"
    yield f"{Label.WORDS}:"
    for _ in range(BLOCKS):
        yield ""
        yield "FINDING"
        yield f"{Label.WHERE}:"
        yield f"{Label.SEEN}:"
        yield f"{Label.DANGER}: {_boxes(Danger)}"
    yield ""
    seen = list(cover.saw.items())
    if len(seen) <= MOST_SEEN:
        for name, text in seen:
            yield f"{Label.SAW}: {name} = {text}"
    yield END


def _boxes(words: Iterable[str]) -> str:
    return "  ".join(f"[ ] {word}" for word in words)


def _rows(words: tuple[str, ...]) -> Iterator[str]:
    for at in range(0, len(words), BOXES_A_LINE):
        yield _boxes(words[at : at + BOXES_A_LINE])
