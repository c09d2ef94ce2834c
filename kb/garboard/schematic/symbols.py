"""How each kind of component is drawn: a symbol in its own coordinates, heading to the right.

In the plain manner of ISO 10628-2 for pipes and IEC 60617 for current, redrawn by us (verify before
citing). What is usually shut is filled; the check-valve symbols of the standards contradict each other, so
that an arrow stands over ours; a lock stands in the waist of a locked valve. Ink is the stroke of the group
that a symbol stands in; what covers a pipe has the class `o`, so that a theme gives it the colour of its paper.
"""

from collections.abc import Callable, Mapping

from garboard.schematic.current_symbols import CURRENT
from garboard.schematic.symbol import Drawn, Look, circle, line, over
from garboard.schematic.valve_symbols import VALVES

__all__ = ["LEADS", "SYMBOLS", "draw_symbol"]


def draw_symbol(kind: str, look: Look | None = None) -> Drawn:
    """The symbol of a kind.

    Args:
        kind: A kind of the table.
        look: How it stands; left out, open and unlocked.

    Raises:
        KeyError: There is no such kind.
    """
    return SYMBOLS[kind](look or Look())


def _receiver(_: Look) -> Drawn:
    return Drawn(over("M-48,-36H48A36,36 0 0 1 48,36H-48A36,36 0 0 1 -48,-36Z", 2.6))


def _tank(_: Look) -> Drawn:
    """Closed or open, a tank shows its level."""
    return Drawn(
        over("M-60,-36V36H60V-36", 2.6) + line("M-60,-21H-38M38,-21H60M-56,-32H-42L-49,-22Z", 1.2)
    )


def _separator(_: Look) -> Drawn:
    body = over("M-22,-14Q-22,-24 -12,-24H12Q22,-24 22,-14V14Q22,24 12,24H-12Q-22,24 -22,14Z")
    return Drawn(body + line("M-22,10H22M0,-17V5M-8,-13L8,1M8,-13L-8,1", 1.2))


def _filter(_: Look) -> Drawn:
    body = over("M-24,0L0,-24L24,0L0,24Z")
    return Drawn(body + '<path d="M0,-24V24" stroke-dasharray="5 4"/>')


def _strainer(_: Look) -> Drawn:
    body = over("M-24,-24H24V24H-24Z")
    return Drawn(body + '<path d="M-24,24L24,-24" stroke-dasharray="5 4"/>')


def _cooler(_: Look) -> Drawn:
    return Drawn(over(circle(23)) + line("M-23,0H-12L-6,-12L6,12L12,0H23"))


def _tee(_: Look) -> Drawn:
    return Drawn(f'<path d="{circle(4.5)}" fill="currentColor"/>')


def _hose(_: Look) -> Drawn:
    return Drawn(line("M-20,-8V8M20,-8V8M-20,0C-14,-15 -7,-15 0,0S14,15 20,0", 2.2))


def _bellows(_: Look) -> Drawn:
    return Drawn(line("M-18,-9V9M18,-9V9M-18,0L-13,-9L-7,9L0,-9L7,9L13,-9L18,0", 2))


def _restrictor(_: Look) -> Drawn:
    return Drawn(line("M-11,-10Q0,-2 11,-10M-11,10Q0,2 11,10", 2.2))


def _vented_loop(_: Look) -> Drawn:
    return Drawn(line("M-16,0V-10A16,10 0 0 1 16,-10V0M0,-20V-24M-5,-24H5", 2.2))


def _compressor(_: Look) -> Drawn:
    return Drawn(over(circle(23), 2.2) + line("M-15,-17.5L21.5,-8M-15,17.5L21.5,8"))


def _pump(_: Look) -> Drawn:
    return Drawn(over(circle(23), 2.2) + line("M-4,-22.6L23,0L-4,22.6"))


def _pressure_source(_: Look) -> Drawn:
    body = over("M-34,-14Q-34,-20 -26,-20H14Q24,-20 28,-6H34V6H28Q24,20 14,20H-26Q-34,20 -34,14Z")
    return Drawn(body + line("M-22,0H8M1,-6L9,0L1,6"))


def _relief(look: Look) -> Drawn:
    """An angle valve held down by a spring; where it blows free an arrow says so."""
    body = over("M-9,18H9L0,0ZM18,-9V9L0,0Z")
    return Drawn(body + line("M0,0V-3L-7,-6L7,-10L-7,-14L7,-18L0,-21V-24M-7,-24H7") + _blown(look))


def _bursting_disc(look: Look) -> Drawn:
    disc = line("M-12,9H12M-12,9Q0,-11 12,9", 2.2)
    return Drawn(over("M-12,18V-18H12V18Z") + disc + _blown(look))


def _blown(look: Look) -> str:
    return line("M18,0H34M27,-5L35,0L27,5") if look.blows else ""


def _bubble(look: Look) -> Drawn:
    words = (look.letters, look.number)
    return Drawn(over(circle(23)), tuple(one for one in words if one))


def _consumer(_: Look) -> Drawn:
    return Drawn(over("M-60,-24H46L60,0L46,24H-60Z", 2))


def _sea(_: Look) -> Drawn:
    wave = "q6,-8 12,0t12,0t12,0t12,0"
    return Drawn(line(f"M-24,-4{wave}M-24,7{wave}", 2))


def _compartment(_: Look) -> Drawn:
    open_top = '<path d="M-60,-24H60" stroke-dasharray="5 4"/>'
    return Drawn(over("M-60,-24V24H60V-24", 2) + open_top)


SYMBOLS: Mapping[str, Callable[[Look], Drawn]] = {
    **VALVES,
    **CURRENT,
    "receiver": _receiver,
    "tank": _tank,
    "separator": _separator,
    "filter": _filter,
    "strainer": _strainer,
    "cooler": _cooler,
    "tee": _tee,
    "hose": _hose,
    "bellows": _bellows,
    "restrictor": _restrictor,
    "vented loop": _vented_loop,
    "relief valve": _relief,
    "bursting disc": _bursting_disc,
    "compressor": _compressor,
    "pump": _pump,
    "pressure source": _pressure_source,
    **dict.fromkeys(("gauge", "pressure switch", "level switch", "transmitter"), _bubble),
    **dict.fromkeys(("voltmeter", "ammeter"), _bubble),
    "consumer": _consumer,
    "sea": _sea,
    "compartment": _compartment,
}
"""By kind: a function of how it stands."""

THROUGH = 24
LEADS: Mapping[str, float] = {
    **dict.fromkeys(VALVES, 6),
    **dict.fromkeys(("fuse", "diode", "measuring shunt"), 6),
    **dict.fromkeys(("switch", "breaker", "changeover"), 8),
    **dict.fromkeys(("restrictor", "cable"), THROUGH),
    "hose": 4,
    "bellows": 6,
    "vented loop": 8,
    "relief valve": 6,
    "bursting disc": 6,
    **dict.fromkeys(("gauge", "pressure switch", "level switch", "transmitter"), 1),
    **dict.fromkeys(("voltmeter", "ammeter", "compressor", "pump", "alternator"), 1),
    **dict.fromkeys(("pressure source", "battery", "charger"), 2),
    **dict.fromkeys(("receiver", "tank"), 30),
    **dict.fromkeys(("separator", "filter", "strainer", "cooler"), 20),
    "compartment": 4,
}
"""By kind: how far a pipe runs on from a port to what is drawn, in drawing units; in a vessel, under it."""
