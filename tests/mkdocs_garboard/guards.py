"""What must stand with a step on its sheet: the safety message that guards it, and the place over it."""

from collections.abc import Iterator
from itertools import pairwise

from selectolax.lexbor import LexborNode

from tests.mkdocs_garboard.printed import PrintedBook, squeezed


def with_message(sheets: list[str], message: LexborNode) -> list[str]:
    """The sheets that have the whole of a safety message."""
    parts = [squeezed(part.text()) for part in message.css("p:not(.band)")]
    return [sheet for sheet in sheets if all(part in sheet for part in parts)]


def unguarded(sheets: list[str], stretch: LexborNode) -> list[str]:
    """Steps that stand on no sheet which has their message too, or the line of a long one that goes along."""
    where = [
        sheet for message in stretch.css(".message") for sheet in with_message(sheets, message)
    ]
    lines = [squeezed(line.text()) for line in stretch.css(".again")]
    along = [sheet for sheet in sheets if lines and lines[0] in sheet]
    return [
        step.text()
        for step in stretch.css(".step")
        if not any(_stands(step, sheet) for sheet in (*where, *(along if _onward(step) else ())))
    ]


def lone_places(book: PrintedBook, checklists: list[LexborNode]) -> Iterator[str]:
    """Places with no step under them on their sheet: only its end, another place, or how it all ends."""
    places = {squeezed(one.text()) for part in checklists for one in part.css("h3")}
    ends = [squeezed(one.text()) for part in checklists for one in part.css(".done")]
    for number in range(len(book.sheets)):
        for line, after in pairwise([*book.lines(number), ""]):
            if line in places and (
                not after or after in places or any(end.startswith(after) for end in ends)
            ):
                yield f"sheet {number + 1}: {line}"


def bare(node: LexborNode) -> list[str]:
    """Pieces of text directly in an element."""
    return [
        one.text_content or ""
        for one in node.iter(include_text=True)
        if one.tag == "-text" and squeezed(one.text_content or "")
    ]


def _stands(step: LexborNode, sheet: str) -> bool:
    do = step.css_first(".do")
    return do is not None and all(squeezed(one) in sheet for one in bare(do))


def _onward(step: LexborNode) -> bool:
    return step.parent is not None and step.css_matches(".onward .step")
