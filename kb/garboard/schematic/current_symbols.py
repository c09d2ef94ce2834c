"""Symbols of direct current: what makes it, carries it, parts it and uses it."""

from collections.abc import Callable, Mapping

from garboard.schematic.symbol import Drawn, Look, circle, line, over, solid

__all__ = ["CURRENT"]

CONTACTS = "M-16,0A3,3 0 1 1 -10,0A3,3 0 1 1 -16,0ZM10,0A3,3 0 1 1 16,0A3,3 0 1 1 10,0Z"


def _lock(look: Look) -> str:
    return over("M-4,4H4V11H-4ZM-2.5,4V2A2.5,2.5 0 0 1 2.5,2V4", 1.6) if look.locked else ""


def _blade(look: Look) -> str:
    """Down on its contact, or lifted off it."""
    return "M-11,-2L12,-11" if look.shut else "M-10,-1L11,-3"


def _switch(look: Look) -> Drawn:
    return Drawn(over(CONTACTS) + line(_blade(look), 2.6) + _lock(look))


def _breaker(look: Look) -> Drawn:
    """A switch with the cross of what breaks by itself."""
    cross = line("M-18,-5L-8,5M-18,5L-8,-5", 2)
    return Drawn(
        cross + over(CONTACTS[CONTACTS.index("ZM") + 1 :]) + line(_blade(look), 2.6) + _lock(look)
    )


def _changeover(look: Look) -> Drawn:
    """A blade from the common contact to the one that is joined; to neither where both are apart."""
    b = "M-3,16A3,3 0 1 1 3,16A3,3 0 1 1 -3,16Z"
    if "a" not in look.closed:
        blade = "M-10,-1L11,-3"
    elif "b" not in look.closed:
        blade = "M-11,2L-2,14"
    else:
        blade = "M-11,-2L6,-14"
    return Drawn(over(CONTACTS + b) + line(blade, 2.6) + _lock(look))


def _fuse(look: Look) -> Drawn:
    """A wire in a body; without the wire it is pulled."""
    wire = "" if look.shut else line("M-18,0H18")
    return Drawn(over("M-18,-8H18V8H-18Z") + wire)


def _diode(_: Look) -> Drawn:
    return Drawn(line("M-18,0H18") + solid("M-10,-10V10L9,0Z") + line("M10,-10V10", 2.6))


def _cable(_: Look) -> Drawn:
    """A line of two conductors, struck through twice."""
    return Drawn(line("M-9,9L-1,-9M1,9L9,-9"))


def _shunt(_: Look) -> Drawn:
    """A body with the two taps that a meter reads across."""
    return Drawn(over("M-18,-6H18V6H-18Z") + line("M-10,-6V-12M10,-6V-12"))


def _battery(_: Look) -> Drawn:
    plates = "M-18,-14V14M-6,-7V7M6,-14V14M18,-7V7"
    return Drawn(
        over("M-34,-22H34V22H-34Z") + line(plates, 2.6) + line("M-29,-14H-23M24,-14H30M27,-17V-11")
    )


def _alternator(_: Look) -> Drawn:
    """In a box as wide as its room, so that its cable ends where it is drawn."""
    return Drawn(over(circle(23), 2.2) + line("M23,0H34"), ("G",))


def _charger(_: Look) -> Drawn:
    halves = line("M-34,22L34,-22")
    signs = line("M-26,-10q5,-8 10,0t10,0M10,10H28M10,16H28")
    return Drawn(over("M-34,-22H34V22H-34Z") + halves + signs)


def _bus(_: Look) -> Drawn:
    return Drawn(line("M0,-36V36", 7))


def _load(_: Look) -> Drawn:
    return Drawn(over("M-60,-24H60V24H-60Z", 2) + line("M-54,-24V24"))


CURRENT: Mapping[str, Callable[[Look], Drawn]] = {
    "battery": _battery,
    "alternator": _alternator,
    "charger": _charger,
    "fuse": _fuse,
    "breaker": _breaker,
    "switch": _switch,
    "changeover": _changeover,
    "bus": _bus,
    "cable": _cable,
    "diode": _diode,
    "load": _load,
    "measuring shunt": _shunt,
}
"""By kind."""
