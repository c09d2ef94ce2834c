"""Whether every piped relief valve always blows into open air."""

from collections.abc import Iterator

from garboard.systems.checks.parting import parting
from garboard.systems.checks.wording import secure
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import LineUp, line_up
from garboard.systems.medium import Medium
from garboard.systems.plant import Relief
from garboard.systems.telling import listed

__all__ = ["find_relief_outlet_cut_off"]

OUTLET = "relief-outlet-cut-off"


def find_relief_outlet_cut_off(enquiry: Enquiry) -> Iterator[PathFinding]:
    """The piped outlets that do not always reach open air; of a liquid, back to a pump is less grave."""
    plant = enquiry.plant
    open_air = enquiry.always(plant.open_air)
    suctions = {
        plant.parts[plant.numbers[each.tag]].ports["in"] for each in plant.sources if each.machine
    }
    back = enquiry.always(suctions) if plant.medium is Medium.LIQUID else frozenset[int]()
    for relief in plant.reliefs:
        if relief.outlet is not None and relief.outlet not in open_air:
            yield _found(enquiry, relief, relief.outlet, circulates=relief.outlet in back)


def _found(enquiry: Enquiry, relief: Relief, outlet: int, *, circulates: bool) -> PathFinding:
    plant = enquiry.plant
    line = line_up(enquiry.net, (), outlet, plant.open_air)
    wrong = parting(enquiry, outlet, plant.open_air) or ()
    why = f", with {line.words}" if line.words else ": no way leads there"
    if wrong:
        why = f": {listed(wrong)} lets nothing through that way"
    text = f"the outlet of {relief.tag} cannot reach open air{why}"
    if circulates:
        text += "; what it lets out goes round through the pump and heats up"
    other = secure(enquiry, line) if line.words else f"correct the connections of {relief.tag}"
    return PathFinding(
        code=OUTLET,
        level=Level.WARNING if circulates else Level.DANGER,
        of=about(plant, relief.tag),
        text=text,
        help=f"lead the outlet of {relief.tag} to open air with nothing in it that shuts, or {other}",
        line=LineUp() if wrong else line,
        at_fault=wrong,
        nodes=(outlet,),
    )
