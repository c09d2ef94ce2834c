"""What a rule says of itself: its docstring by paragraphs, its question, from when it binds."""

from types import ModuleType

from garboard.systems.finding import GRADED
from garboard.views.runs import Cell, Strong

__all__ = ["asks_the_layout", "binds_from", "labelled", "paragraphs_of", "question_of"]

LABELS = ("Question", "Why", "Basis", "Bad", "Good", "Fix")
QUESTION = "Question: "
BY_LEVEL = (
    "by the level of what is found: a danger from a sketch on, a warning from building, a note from the"
    " tests"
)


def paragraphs_of(rule: ModuleType) -> tuple[str, ...]:
    """The paragraphs of its docstring, each on one line, without the marks of code; the first says what is."""
    text = (rule.__doc__ or "").strip().replace("`", "")
    return tuple(part.replace("\n", " ") for part in text.split("\n\n"))


def labelled(paragraph: str) -> Cell:
    """A paragraph with its label set off: `Question`, `Why`, `Bad`, `Good`, `Fix`."""
    label, colon, rest = paragraph.partition(": ")
    if not colon or label not in LABELS:
        return (paragraph,)
    return (Strong(f"{label}:"), f" {rest}")


def question_of(rule: ModuleType) -> str:
    """The question it asks, in one sentence; what it finds, where it asks none."""
    paragraphs = paragraphs_of(rule)
    asked = (part for part in paragraphs if part.startswith(QUESTION))
    said = next(asked, "").removeprefix(QUESTION)
    if not said:
        return paragraphs[0]
    question = said[: said.find("?") + 1] or said
    return f"{question[0].upper()}{question[1:]}"


def asks_the_layout(rule: ModuleType) -> bool:
    """Whether it is a question to the layout of a system, with findings of several levels."""
    return str(rule.BINDS_FROM) == GRADED


def binds_from(rule: ModuleType) -> str:
    """From when on it binds, in words."""
    return BY_LEVEL if asks_the_layout(rule) else str(rule.BINDS_FROM)
