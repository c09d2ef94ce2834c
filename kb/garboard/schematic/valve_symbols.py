"""Symbols of what opens, shuts and turns in a pipe."""

from collections.abc import Callable, Mapping

from garboard.schematic.symbol import Drawn, Look, line, over, solid

__all__ = ["VALVES"]

LEFT = "M-18,-10V10L0,0Z"
RIGHT = "M18,-10V10L0,0Z"
BELOW = "M-10,18H10L0,0Z"
HANDLE = "M0,0V-12M-8,-12H8"
LOCK = "M-5,-9H5V-2H-5ZM-3,-9V-11A3,3 0 0 1 3,-11V-9"


def _body(look: Look, *outlines: str) -> str:
    path = "".join(outlines)
    return solid(path) if look.shut else over(path)


def _lock(look: Look) -> str:
    """A lock in the waist, of paper, so that it is seen on a filled valve too."""
    return over(LOCK, 1.6) + solid("M-5,-7H5V-2H-5Z") if look.locked else ""


def _stop(look: Look) -> Drawn:
    handle = "" if look.locked else line(HANDLE)
    return Drawn(_body(look, LEFT, RIGHT) + handle + _lock(look))


def _plain(look: Look) -> Drawn:
    """Drain and vent: the body alone."""
    return Drawn(_body(look, LEFT, RIGHT) + _lock(look))


def _cock(look: Look) -> Drawn:
    plug = "M-5,0A5,5 0 1 1 5,0A5,5 0 1 1 -5,0Z"
    ball = solid(plug) if look.shut else over(plug)
    return Drawn(_body(look, LEFT, RIGHT) + ball + _lock(look))


def _test_cock(look: Look) -> Drawn:
    """A drain that can be read: an open mouth stands on its stem."""
    mouth = "" if look.locked else line("M0,0V-6M-6,-12Q-6,-6 0,-6Q6,-6 6,-12")
    return Drawn(_body(look, LEFT, RIGHT) + mouth + _lock(look))


def _plug(look: Look) -> Drawn:
    head = "M-2,-9H12V9H-2Z"
    return Drawn(line("M-18,0H-2") + (solid(head) if look.shut else over(head)) + line("M17,-6V6"))


def _coupling(look: Look) -> Drawn:
    """Two halves that meet; pulled apart where it is shut."""
    gap = 6 if look.shut else 0
    halves = f"M-18,0H{-gap - 2}M{-gap - 2},-10V10M18,0H{gap + 2}M{gap + 2},-10V10"
    return Drawn(line(halves + "M-12,-6V6M12,-6V6", 2.2))


def _quick(look: Look) -> Drawn:
    """A stop valve with the wire that pulls it shut from elsewhere."""
    pull = '<path d="M0,-16H20" stroke-dasharray="4 3"/>'
    grip = over("M-6,-22H6V-11H-6Z") if not look.locked else ""
    stem = line("M0,0V-11M20,-22V-10") if not look.locked else line("M20,-22V-10")
    return Drawn(_body(look, LEFT, RIGHT) + stem + pull + grip + _lock(look))


def _solenoid(look: Look) -> Drawn:
    box = line("M0,0V-8") + over("M-10,-24H10V-8H-10Z")
    return Drawn(_body(look, LEFT, RIGHT) + box, ("S",), (0, -16))


def _check(_: Look) -> Drawn:
    return Drawn(over(LEFT) + solid(RIGHT) + line("M-14,-17H12M4,-22L13,-17L4,-12", 2))


def _stop_check(look: Look) -> Drawn:
    """A check valve that can be shut: its handle stands under the arrow, on the other side."""
    handle = "" if look.locked else line("M0,0V13M-8,13H8")
    arrow = line("M-14,-17H12M4,-22L13,-17L4,-12", 2)
    left = solid(LEFT) if look.shut else over(LEFT)
    return Drawn(left + solid(RIGHT) + handle + arrow + _lock(look))


def _three_way(look: Look) -> Drawn:
    """The branches that its position leaves apart are filled."""
    sides = (("common", LEFT), ("a", RIGHT), ("b", BELOW))
    branches = [solid(path) if port in look.closed else over(path) for port, path in sides]
    handle = "" if look.locked else line(HANDLE)
    return Drawn("".join(branches) + handle + _lock(look))


def _regulator(look: Look) -> Drawn:
    """A diaphragm, and the line by which it feels its outlet."""
    dome = line("M0,0V-10") + over("M-11,-10A11,10 0 0 1 11,-10Z")
    return Drawn(_body(look, LEFT, RIGHT) + dome + line("M10,-16H22V0", 1.2))


VALVES: Mapping[str, Callable[[Look], Drawn]] = {
    "stop valve": _stop,
    "drain valve": _plain,
    "vent valve": _plain,
    "cock": _cock,
    "test cock": _test_cock,
    "plug": _plug,
    "coupling": _coupling,
    "quick-closing valve": _quick,
    "solenoid valve": _solenoid,
    "check valve": _check,
    "stop-check valve": _stop_check,
    "three-way valve": _three_way,
    "regulator": _regulator,
}
"""By kind."""
