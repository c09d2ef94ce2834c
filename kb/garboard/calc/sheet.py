"""One calc fence: as it stands in a record, and as a page shows it worked out."""

from dataclasses import dataclass

from garboard.calc.value import Citation, Requirement, Value
from garboard.errors import Diagnostic, Where

__all__ = ["Fence", "Options", "Sheet", "Table", "WorkedLine"]


@dataclass(frozen=True, slots=True)
class Fence:
    """A calc fence as it stands in a record or page."""

    name: str
    """The name of the block, unique in the handbook."""
    options_text: str
    """What stands behind the name: `; digits 3; hide working; what-if p_max`."""
    lines: tuple[str, ...]
    where: Where
    """Of the first line inside the fence."""
    owner: str
    """The record id or page path it stands in."""


@dataclass(frozen=True, slots=True)
class Options:
    """How a block is shown."""

    digits: int = 3
    """Significant digits of what is worked out."""
    hide_working: bool = False
    what_if: tuple[str, ...] = ()
    """Names that the reader may change in the page."""


@dataclass(frozen=True, slots=True)
class Table:
    """The rows of a table or rule that a method has read."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class WorkedLine:
    """One line of a block as a page shows it."""

    name: str
    """The name it sets; empty for a requirement."""
    label: str
    sources: tuple[Citation, ...]
    written: str
    """The statement as its author wrote it, without the comment."""
    worked: str
    """Symbols = numbers = result, as plain text; for a broken line the reason."""
    mathml: str
    """The same as MathML, escaped; empty for a broken line."""
    where: Where
    value: Value | None = None
    """What it sets; None for a requirement and for a method with several results."""
    requirement: Requirement | None = None
    steps: tuple["WorkedLine", ...] = ()
    """The inner lines and results of a method."""
    table: Table | None = None
    notes: tuple[str, ...] = ()
    """What was taken for granted, and what a method adds."""
    alarms: tuple[str, ...] = ()
    fault: Diagnostic | None = None


@dataclass(frozen=True, slots=True)
class Sheet:
    """One block, worked out."""

    name: str
    owner: str
    where: Where
    options: Options
    lines: tuple[WorkedLine, ...] = ()
    """In the order they are written."""
    faults: tuple[Diagnostic, ...] = ()
    """What is wrong with it, also in lines that could not be read at all."""
    what_if: str = ""
    """What a page needs to follow the opened inputs, as JSON; empty where there is nothing to follow."""
