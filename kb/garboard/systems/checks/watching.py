"""Whether what says that it watches a vessel feels its pressure rise and fall."""

from collections.abc import Iterator

from garboard.systems.checks.parting import parting
from garboard.systems.checks.switching import SENSES
from garboard.systems.checks.wording import secure
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import LineUp, line_up
from garboard.systems.plant import Part
from garboard.systems.telling import listed

__all__ = ["watching"]

CUT_OFF = "switch-cut-off"


def watching(enquiry: Enquiry) -> Iterator[PathFinding]:
    """What says that it watches a vessel, and can be parted from it."""
    plant = enquiry.plant
    for part in plant.of_kind(*SENSES, "gauge"):
        here = plant.node(part.tag)
        for tag in plant.components[part.tag].watches:
            vessel = plant.part(str(tag))
            if vessel is None:
                continue
            there = plant.node(vessel.tag)
            if there not in enquiry.always([here]):
                yield _parted_from(enquiry, part, vessel)
            elif here not in enquiry.always([there]):
                yield _holds_on(enquiry, part, vessel)


def _parted_from(enquiry: Enquiry, part: Part, vessel: Part) -> PathFinding:
    here, there = (enquiry.plant.node(each.tag) for each in (part, vessel))
    between = parting(enquiry, there, [here])
    line = line_up(enquiry.net, (), there, [here]) if between == () else LineUp()
    why = f"can be parted from it, with {line.words}"
    if between is None:
        why = "is joined to it by nothing"
    elif between:
        why = f"never feels it: {listed(between)} between them lets nothing through that way"
    return _watch(enquiry, (part, vessel), why, line, between or ())


def _holds_on(enquiry: Enquiry, part: Part, vessel: Part) -> PathFinding:
    """It feels the vessel rise, but what is beyond a check valve does not fall with it."""
    plant = enquiry.plant
    between = parting(enquiry, plant.node(part.tag), [plant.node(vessel.tag)]) or ()
    why = f"does not feel it fall: {listed(between)} between them holds the pressure"
    return _watch(enquiry, (part, vessel), why, LineUp(), between)


def _watch(
    enquiry: Enquiry, pair: tuple[Part, Part], why: str, line: LineUp, between: tuple[str, ...]
) -> PathFinding:
    plant, (part, vessel) = enquiry.plant, pair
    return PathFinding(
        code=CUT_OFF,
        level=Level.ASIDE if part.kind == "gauge" else Level.DANGER,
        of=about(plant, part.tag),
        text=f"{part.tag} watches {vessel.tag} and {why}",
        help=f"tap {part.tag} on {vessel.tag} itself, or {secure(enquiry, line)}",
        line=line,
        at_fault=between,
        endangers=(vessel.tag,),
        nodes=(plant.node(vessel.tag), plant.node(part.tag)),
    )
