"""Read the connections of a system: names joined by `>`, which reads "flows to".

Each name keeps its place in the line. Whether a name is declared is asked later, when everything
has been read; here it is only told apart by its form.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from garboard.calc.value import Given
from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.fields import UNREAD, FieldReader, text_where
from garboard.reading.nodes import Entry, ListNode, Node, ScalarNode
from garboard.reading.scalars import full_tag
from garboard.reading.strict_yaml import CODE, shorten
from garboard.records.system import OUTSIDE, End, Joins, Run

__all__ = ["CONNECTION", "RunReader"]

CONNECTION = "CONNECTION"
"""The family of what is said of a run that cannot be read."""

PART = re.compile(
    r"(?P<tag>(?:[A-Z]{2}-)?[A-Z]{2}-\d{3})(?:\.(?P<port>[A-Za-z0-9][A-Za-z0-9_-]*))?"
)
MOST_NAMES = 200
ARROWS = re.compile(r"-+>|=+>|>{2,}|\u2192|\u21d2|<[-=]*")


@dataclass(frozen=True, slots=True, kw_only=True)
class _WrittenRun:
    """A run that says more than its names."""

    run: str
    service: str | None = None
    size: Given | None = None


class RunReader:
    """Reads the connections of one system."""

    def __init__(self, code: str, headers: Sequence[str], faults: list[Diagnostic]) -> None:
        """Start.

        Args:
            code: Of the system.
            headers: Names of its headers.
            faults: Where faults are added.
        """
        self.code = code
        self.headers = headers
        self.faults = faults

    def refuse(self, where: Where, text: str, cure: str) -> None:
        """Note a fault."""
        said = Diagnostic(where, Severity.STOP, text, cure, CODE, self.code, CONNECTION)
        self.faults.append(said)

    def read(self, entry: Entry | None) -> tuple[Run, ...]:
        """Every run, in the order of the file."""
        if entry is None or (isinstance(entry.value, ScalarNode) and entry.value.empty):
            return ()
        if not isinstance(entry.value, ListNode):
            text = "connections is no list of runs"
            self.refuse(entry.value.where, text, "write each as a line: - CP-001 > NV-001 > AR-001")
            return ()
        runs = (self.run(node) for node in entry.value.items)
        return tuple(run for run in runs if run is not None)

    def run(self, node: Node) -> Run | None:
        """One run, or None where it cannot be read."""
        if isinstance(node, ScalarNode):
            return self.line(node, None, None)
        if isinstance(node, ListNode):
            self.refuse(node.where, "a run is a list", "write it as one line: CP-001 > NV-001")
            return None
        reader = FieldReader(self.code, system=self.code)
        values = reader.values(_WrittenRun, node, "run")
        self.faults += reader.faults
        line = next((one.value for one in node.entries if one.key.text == "run"), None)
        if values is UNREAD or not isinstance(line, ScalarNode):
            return None
        return self.line(line, values.get("service"), values.get("size"))

    def line(self, node: ScalarNode, service: str | None, size: Given | None) -> Run | None:
        """The names of a run."""
        arrow = ARROWS.search(node.text)
        where = text_where(node)
        one_line = node.where.line == node.end.line
        if arrow:
            place = _along(where, arrow.start()) if one_line else where
            self.refuse(
                place, f"`{arrow[0]}` stands between two names", "write > and read it as flows to"
            )
            return None
        ends: list[End] = []
        start = 0
        if node.text.count(">") > MOST_NAMES:
            self.refuse(where, f"a run of more than {MOST_NAMES} names", "split it")
            return None
        for part in node.text.split(">"):
            offset = start + len(part) - len(part.lstrip())
            place = _along(where, offset) if one_line else where
            start += len(part) + 1
            if not part.strip():
                self.refuse(
                    place, "a name is missing in this run", "write a name on both sides of each >"
                )
                return None
            ends.append(self.end(part.strip(), place))
        if len(ends) < 2:
            text = f"`{shorten(node.text)}` joins nothing"
            self.refuse(where, text, "write at least two names with > between")
            return None
        return Run(tuple(ends), where, node.text, service, size)

    def end(self, written: str, where: Where) -> End:
        """One name."""
        if written in self.headers:
            return End(written, "", Joins.HEADER, where, written)
        found = PART.fullmatch(written)
        if found:
            tag = full_tag(found["tag"], self.code)
            return End(tag, found["port"] or "", Joins.PART, where, written)
        joins = Joins.OUTSIDE if written in OUTSIDE else Joins.UNKNOWN
        return End(written, "", joins, where, written)


def _along(where: Where, signs: int) -> Where:
    return Where(where.path, where.line, where.column + signs)
