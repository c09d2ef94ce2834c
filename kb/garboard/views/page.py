"""The parts that pages are made of.

A page is a title block, messages, and a row of blocks. Blocks are data: an adapter draws them, and
nothing in them has been marked up. Only Prose holds contributed text, which an adapter renders as
Markdown and sanitises; everything else is shown as it is, escaped.
"""

from dataclasses import dataclass, field

from garboard.errors import Diagnostic, Where
from garboard.views.at_once import (
    AgainstIt,
    DoFirst,
    Looks,
    MessagesHere,
    Tiles,
    WaysIn,
)
from garboard.views.by_hand import ToSign
from garboard.views.card_block import CardLine, Label, LabelSheet, QuickCard
from garboard.views.checklist import Message, Step, Steps
from garboard.views.figures import (
    Drawing,
    HowSure,
    Ladder,
    MoverRow,
    Rung,
    RungSort,
    Schematic,
    Tick,
)
from garboard.views.listing import Jumps, Listing
from garboard.views.log_sheet import LogSheet
from garboard.views.reliance import InShort, Review, SourceLine
from garboard.views.runs import Cell, Download, Link, Plate, Run, Shown, Strong
from garboard.views.which_copy import WORKING, Copy

__all__ = [
    "WORKING",
    "AgainstIt",
    "Block",
    "Bullets",
    "Calculation",
    "CardLine",
    "Cell",
    "Column",
    "Copy",
    "DoFirst",
    "Download",
    "Drawing",
    "Facts",
    "Fold",
    "Heading",
    "HowSure",
    "Jumps",
    "Label",
    "LabelSheet",
    "Ladder",
    "Link",
    "Listing",
    "LogSheet",
    "Looks",
    "Message",
    "MessagesHere",
    "MoverRow",
    "Page",
    "Paragraph",
    "Photo",
    "Plate",
    "Prose",
    "QuickCard",
    "Review",
    "Row",
    "Run",
    "Rung",
    "RungSort",
    "Schematic",
    "Shown",
    "SourceLine",
    "Step",
    "Steps",
    "Strong",
    "Table",
    "Tick",
    "Tiles",
    "ToSign",
    "WaysIn",
    "WorkedLine",
]


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; the page's own title is level 1."""

    text: str
    level: int = 2
    anchor: str = ""
    """Made from the text where empty."""


@dataclass(frozen=True, slots=True)
class Prose:
    """Contributed Markdown, never templated, sanitised by the adapter."""

    text: str
    where: Where
    """Of its first line."""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A line of our own."""

    runs: Cell
    quiet: bool = False


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list."""

    items: tuple[Cell, ...]
    ordered: bool = False


@dataclass(frozen=True, slots=True)
class Facts:
    """Labels and what stands against them."""

    rows: tuple[tuple[str, Cell], ...]


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table."""

    title: str
    number: bool = False
    """Right-aligned, tabular figures."""
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """A row of a table; `anchor` lets a link land on it."""

    cells: tuple[Cell, ...]
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Table:
    """A table; on a narrow screen each row becomes a list of label and value."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    empty: str = "nothing recorded"
    """What is said where there are no rows."""
    across: bool = False
    """Printed, its page lies on its side, so that no column is cut."""


@dataclass(frozen=True, slots=True)
class WorkedLine:
    """One line of a calculation, as a reader sees it."""

    name: str
    anchor: str
    """`receiver-sizing.n`"""
    label: str
    text: str
    """Symbols = numbers = result, in plain text."""
    mathml: str
    """The same as MathML made by the core: trusted."""
    result: str
    """As shown."""
    range: str
    """`8 to 10 at worst`, or empty."""
    given: bool
    sources: tuple[int, ...] = ()
    """Numbers in the page's list of sources."""
    kind: str = "value"
    """value, requirement, note or alarm."""
    verdict: str = ""
    """For a requirement: how it stands and the margin, in words."""
    fails: bool = False
    fault: str = ""
    """Why it is not computed."""
    answer: bool = False
    """What the calculation was made for: something is required of it, or nothing else uses it."""
    sure: HowSure | None = None
    """Of an answer: its range, and what moves it."""
    limit: str = ""
    """Of a requirement: what it is held against, `at least 6`."""
    plot: Drawing | None = None
    """Of a requirement: the answer against what moves it most."""


@dataclass(frozen=True, slots=True)
class Calculation:
    """A fence, worked."""

    name: str
    title: str
    lines: tuple[WorkedLine, ...]
    tables: tuple[Table, ...] = ()
    """Rows that a table method read."""
    hide_working: bool = False
    rests_on: Table | None = None
    """Numbers from other pages that somebody wrote down, and that this rests on."""
    what_if: str = ""
    """What the reader may change, as JSON of the core; empty where nothing is open."""
    card: bool = False
    """One question and its answer: drawn compact, the question first."""


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture with its text alternative."""

    path: str
    """Inside the content folder."""
    alt: str
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Fold:
    """What may be folded away: working, decision history, sign-off list. Never a limit or a step."""

    title: str
    """Says what and how many."""
    blocks: tuple["Block", ...]


Block = (
    Heading
    | Prose
    | Paragraph
    | Bullets
    | Facts
    | Table
    | LogSheet
    | Message
    | Steps
    | Ladder
    | Calculation
    | Photo
    | Drawing
    | Schematic
    | Tiles
    | Jumps
    | Listing
    | ToSign
    | AgainstIt
    | DoFirst
    | Looks
    | MessagesHere
    | WaysIn
    | Fold
    | QuickCard
    | LabelSheet
)


@dataclass(frozen=True, slots=True)
class Page:
    """One page of the handbook."""

    key: str
    """What links name: a record id, a tag, or a path such as `starting-air/normal-values`."""
    path: str
    """Path in the site without suffix: `starting-air/normal-values`, `records/SA-DD-003`."""
    title: str
    kind: str
    """Page kind in words."""
    review: Review
    system: str = ""
    """System code, or empty for the vessel."""
    system_title: str = ""
    ident: str = ""
    """What the title block shows as id."""
    status: str = ""
    """Service status of the system, in words."""
    copy: Copy = WORKING
    """Of which edition, or of a working copy; the page says so."""
    messages: tuple[Message, ...] = ()
    """Head of the page."""
    standing: tuple[Diagnostic, ...] = ()
    """What the rules found against it."""
    in_short: tuple[InShort, ...] = ()
    """The gravest of it in short, on a page that is read in a hurry."""
    blocks: tuple[Block, ...] = ()
    sources: tuple[SourceLine, ...] = ()
    deferral: str = ""
    """The common line, where anything is calculated or can hurt."""
    used_on: tuple[Link, ...] = ()
    last_change: str = ""
    source_path: str = ""
    """The content file it is written in, where it is one."""
    nav: tuple[str, ...] = field(default=())
    """Where it stands in the contents: section, subsection."""
