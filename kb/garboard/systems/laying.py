"""Lay a system out as a graph: its runs of connections joined to nodes, its components as parts.

What of the text cannot be understood (a port that such a thing does not have, a part that no connection
names, an end that leads nowhere) is a Diagnostic of the plant; the rest is laid out all the same.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from garboard.calc.value import Value
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import nearest
from garboard.records.component import Component
from garboard.records.system import End, Joins, Run, System
from garboard.systems.behaviour import BEHAVIOURS, Behaviour, Passes
from garboard.systems.medium import medium_of
from garboard.systems.passing import (
    OPENS_OUT,
    open_ends_of,
    part_of,
    reliefs_of,
    sources_of,
    users_that_exhaust,
)
from garboard.systems.plant import Joint, Pipe, Plant
from garboard.systems.settings import Setting, setting_of, settings_of
from garboard.systems.telling import listed
from garboard.systems.trapping import harmless_pressures

__all__ = ["LOOSE", "NO_PORT", "lay_out_plant"]

NO_PORT = "port-unknown"
LOOSE = "joined-to-nothing"
MAY_END = (Passes.JOINED, Passes.RELIEF, Passes.MACHINE, Passes.SOURCE, Passes.MARKS)
"""What may have a port that nothing is joined to."""
NOT_JOINED = ("compartment", "level switch")
"""What may stand in no connection at all."""


def lay_out_plant(
    system: System, components: Mapping[str, Component], values: Mapping[str, Value]
) -> Plant:
    """A system as a graph.

    Args:
        system: The system, with its runs.
        components: Every component of the handbook, by full tag.
        values: Every value, by address.
    """
    laying = _Laying(system, components)
    for run in system.runs:
        laying.run(run)
    return laying.finish(values)


@dataclass(slots=True)
class _Draft:
    """A pipe before its node has a number."""

    a: Joint
    b: Joint
    run: Run
    where: Where


class _Laying:
    """One system on its way to being a graph."""

    def __init__(self, system: System, components: Mapping[str, Component]) -> None:
        self.system = system
        self.known = {tag: part for tag, part in components.items() if part.kind in BEHAVIOURS}
        self.own = [tag for tag, part in self.known.items() if part.system == system.code]
        self.parent: dict[Joint, Joint] = {}
        self.pipes: list[_Draft] = []
        self.faults: list[Diagnostic] = []

    # ---- the text of a run

    def run(self, run: Run) -> None:
        """Join the ends of one run."""
        before: Joint | None = None
        for number, end in enumerate(run.ends):
            enters, leaves = self.joints(end, first=number == 0)
            if before is not None:
                self.pipes.append(_Draft(before, enters, run, end.where))
                self.join(before, enters)
            self.root(leaves)
            before = leaves

    def joints(self, end: End, *, first: bool) -> tuple[Joint, Joint]:
        """Where a run enters what it names, and where it leaves it."""
        if end.joins is Joins.HEADER:
            here = Joint(Joins.HEADER, end.name)
            return here, here
        part = self.known.get(end.name) if end.joins is Joins.PART else None
        if part is None:
            number = len(self.pipes) + (1 if first else 0)
            here = Joint(end.joins, end.name, f"{number}{'a' if first else 'b'}")
            return here, here
        ports = self.ports(BEHAVIOURS[part.kind], end, part)
        return Joint(Joins.PART, end.name, ports[0]), Joint(Joins.PART, end.name, ports[1])

    def ports(self, behaviour: Behaviour, end: End, part: Component) -> tuple[str, str]:
        """The ports by which a run enters and leaves a part."""
        known = behaviour.ports
        if len(known) == 1:
            return known[0], known[0]
        if end.port:
            if end.port not in known and not behaviour.any_port:
                near = nearest(end.port, known)
                cure = f"did you mean {near}?" if near else f"write {' or '.join(known)}"
                text = f"a {part.kind} has no port `{end.port}`; it has {listed(known)}"
                self.refuse(end.where, text, cure, part.tag)
            return end.port, end.port
        if len(known) > 2:
            text = f"{part.tag} is named here without a port; it has {listed(known)}"
            cure = f"write {' or '.join(f'{end.written}.{port}' for port in known)}"
            self.refuse(end.where, text, cure, part.tag)
        return known[0], known[-1] if len(known) == 2 else known[0]

    def refuse(self, where: Where, text: str, cure: str, about: str, code: str = NO_PORT) -> None:
        """Note a fault of the text."""
        severity = Severity.STOP if code == NO_PORT else Severity.HOLD
        self.faults.append(Diagnostic(where, severity, text, cure, code, about))

    # ---- nodes, by union of what is joined

    def root(self, joint: Joint) -> Joint:
        """The joint that speaks for everything joined with this one."""
        parent = self.parent
        parent.setdefault(joint, joint)
        while parent[joint] != joint:
            parent[joint] = parent[parent[joint]]
            joint = parent[joint]
        return joint

    def join(self, one: Joint, other: Joint) -> None:
        """Make two joints one node."""
        self.parent[self.root(other)] = self.root(one)

    def at_nodes(self) -> tuple[tuple[Joint, ...], ...]:
        """What stands at each node, in the order in which the connections first name it."""
        found: dict[Joint, list[Joint]] = {}
        for joint in list(self.parent):
            found.setdefault(self.root(joint), []).append(joint)
        return tuple(map(tuple, found.values()))

    def finish(self, values: Mapping[str, Value]) -> Plant:
        """The graph."""
        named = {joint.name for joint in self.parent if joint.joins is Joins.PART}
        own = set(self.own)
        foreign = [tag for tag in self.known if tag in named and tag not in own]
        tags = [tag for tag in (*self.own, *foreign) if tag in named]
        self.look_for_loose(named)
        for tag in tags:
            for port in BEHAVIOURS[self.known[tag].kind].ports:
                if not BEHAVIOURS[self.known[tag].kind].any_port:
                    self.root(Joint(Joins.PART, tag, port))
        joints = self.at_nodes()
        numbers = {joint: number for number, them in enumerate(joints) for joint in them}
        nodes = {joint: numbers[joint] for joint in self.parent}
        pipes = tuple(_pipe(draft, nodes) for draft in self.pipes)
        joined = {joint for pipe in pipes for joint in (pipe.a, pipe.b)}
        ports: dict[str, dict[str, int]] = {tag: {} for tag in tags}
        for joint, node in nodes.items():
            if joint.joins is Joins.PART and joint.name in ports:  # else it is declared nowhere
                ports[joint.name][joint.port] = node
        self.look_for_ends(tags, joined)
        settings = {tag: settings_of(self.known[tag], values) for tag in tags}
        headers = {one.name: node for one, node in nodes.items() if one.joins is Joins.HEADER}
        stops = self.system.stops
        parts = tuple(
            part_of(self.known[tag], ports[tag], settings[tag], joined, stops) for tag in tags
        )
        open_ends = frozenset(open_ends_of(self.known, parts, nodes, joined))
        medium = medium_of(self.system)
        return Plant(
            system=self.system,
            medium=medium,
            count=len(joints),
            parts=parts,
            components={tag: self.known[tag] for tag in tags},
            settings={**settings, **_header_ratings(self.system, headers, values)},
            behaviours={tag: BEHAVIOURS[self.known[tag].kind] for tag in tags},
            pipes=pipes,
            joints=joints,
            headers=headers,
            services=_services(self.system, pipes, nodes, len(joints)),
            reliefs=tuple(reliefs_of(parts, settings, joined)),
            sources=tuple(sources_of(parts, self.known, settings, medium)),
            open_air=open_ends.union(users_that_exhaust(self.known, parts)),
            vented=open_ends.union(part.nodes[0] for part in parts if part.kind == "sea"),
            harmless=harmless_pressures(values),
            faults=tuple(self.faults),
            numbers={tag: number for number, tag in enumerate(tags)},
        )

    def look_for_loose(self, named: set[str]) -> None:
        """Components of a system with connections that none of them names."""
        for tag in self.own if self.system.runs else ():
            part = self.known[tag]
            if tag not in named and part.kind not in NOT_JOINED:
                text, cure = f"{tag} is in no connection", "join it, or take it out of the file"
                self.refuse(part.where, text, cure, tag, LOOSE)

    def look_for_ends(self, tags: list[str], joined: set[Joint]) -> None:
        """Ports that nothing is joined to, of what must lead somewhere."""
        for tag in tags:
            part = self.known[tag]
            behaviour = BEHAVIOURS[part.kind]
            if behaviour.passes in MAY_END or part.kind in OPENS_OUT:
                continue
            for port in behaviour.ports:
                if Joint(Joins.PART, tag, port) not in joined:
                    text = f"nothing is joined to the {port} of {tag}"
                    cure = "go on with the run, or end it in a tank, a user or the open air"
                    self.refuse(part.where, text, cure, tag, LOOSE)


def _pipe(draft: _Draft, nodes: Mapping[Joint, int]) -> Pipe:
    run = draft.run
    size = run.size.shown if run.size else ""
    return Pipe(draft.a, draft.b, nodes[draft.a], draft.where, run.service or "", size)


def _header_ratings(
    system: System, named: Mapping[str, int], values: Mapping[str, Value]
) -> Mapping[str, Mapping[str, Setting]]:
    """The rating of each header that a connection names."""
    found: dict[str, Mapping[str, Setting]] = {}
    for name, header in (system.headers or {}).items():
        where = system.place(f"headers.{name}.rated")
        own = header.rated
        number = values.get(own) if isinstance(own, str) else own
        rated = setting_of(number, values, where)
        if rated is not None and name in named:
            found[name] = {"rated": rated}
    return found


def _services(
    system: System, pipes: tuple[Pipe, ...], nodes: Mapping[Joint, int], count: int
) -> tuple[str, ...]:
    """The service of each node: of its header, else of the first run that says one."""
    found = [""] * count
    for pipe in pipes:
        found[pipe.node] = found[pipe.node] or pipe.service
    for name, header in (system.headers or {}).items():
        node = nodes.get(Joint(Joins.HEADER, name))
        if node is not None and header.service:
            found[node] = header.service
    return tuple(found)
