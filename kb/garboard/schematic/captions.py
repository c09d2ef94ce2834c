"""The words beside a symbol: its tag without the letters of the system, and its number."""

from collections.abc import Mapping

from garboard.calc.value import Given
from garboard.records.component import Component, Unlimited
from garboard.schematic.sheet import STEP, TEXT
from garboard.systems.plant import Plant

__all__ = [
    "LINE",
    "NAMED_INSIDE",
    "VESSELS",
    "caption_of",
    "inside_words",
    "short_tag",
    "steps_high",
    "steps_wide",
]

LINE = 16
"""From one line of words to the next, in drawing units."""
BOLD, PLAIN = 0.68, 0.6
"""Width of a letter in heights of letters: those of a wide sans-serif face, so that others fit too."""
NUMBERS: Mapping[str, tuple[str, ...]] = {
    **dict.fromkeys(("relief valve", "bursting disc"), ("set",)),
    "regulator": ("set",),
    **dict.fromkeys(("hose", "bellows", "fuse", "breaker", "cable", "bus", "diode"), ("rated",)),
    **dict.fromkeys(("compressor", "pump", "pressure source", "battery"), ("makes",)),
    **dict.fromkeys(("alternator", "charger"), ("delivers",)),
    "load": ("draws",),
    **dict.fromkeys(
        ("pressure switch", "level switch", "transmitter"), ("cuts_out", "trip", "set")
    ),
    **dict.fromkeys(("receiver", "tank"), ("volume", "rated")),
    "vented loop": ("height",),
    "restrictor": ("size",),
}
"""Which numbers are shown; of a switch the first that it has."""
BEFORE = {"compressor": "max ", "pump": "max ", "pressure source": "max "}
BUBBLES = ("gauge", "pressure switch", "level switch", "transmitter", "voltmeter", "ammeter")
"""Their tag stands in their circle."""
VESSELS = ("receiver", "tank")
"""All their words stand inside their symbol."""
NAMED_INSIDE = ("consumer", "load", "compartment")
"""Their name stands inside their symbol, their tag beside it."""


def short_tag(tag: str, system: str) -> str:
    """A tag without the letters of its own system.

    >>> short_tag("SA-RV-001", "SA"), short_tag("BG-RV-001", "SA")
    ('RV-001', 'BG-RV-001')
    """
    return tag.removeprefix(f"{system}-")


def steps_wide(lines: tuple[str, ...]) -> int:
    """The room of some lines across, in steps; the first is bold."""
    wide = [len(line) * (PLAIN if number else BOLD) for number, line in enumerate(lines)]
    return -(-int(max(wide, default=0) * TEXT + 1) // STEP)


def steps_high(lines: tuple[str, ...]) -> int:
    """The room of some lines from top to bottom, in steps."""
    return -(-(len(lines) * LINE) // STEP)


def caption_of(plant: Plant, component: Component) -> tuple[str, ...]:
    """Tag and number of a part, a line each; of an instrument only what it does, as its circle has its tag."""
    tag = short_tag(str(component.tag), plant.system.code)
    lines = () if component.kind in BUBBLES else (tag,)
    return (*lines, *_values(plant, component))


def _values(plant: Plant, component: Component) -> tuple[str, ...]:
    code = plant.system.code
    stops = [short_tag(str(tag), code) for tag in component.stops]
    first = tuple(f"{'and' if number else 'stops'} {tag}" for number, tag in enumerate(stops))
    shown = [_shown(plant, component, name) for name in NUMBERS.get(component.kind, ())]
    numbers = [text for text in shown if text]
    if component.kind in BUBBLES:
        numbers = numbers[:1]
    before = BEFORE.get(component.kind, "")
    words = (before + " · ".join(numbers),) if numbers else ()
    locked = (f"locked {component.locked}",) if component.locked else ()
    return (*first, *words, *locked)


def _shown(plant: Plant, component: Component, name: str) -> str:
    """A number as written, without its tolerance; where it is drawn from elsewhere, as worked out there."""
    value = getattr(component, name)
    if isinstance(value, Given):
        return value.shown
    if isinstance(value, Unlimited):
        return "no limit"
    setting = plant.setting(str(component.tag), name) if value else None
    return setting.text.partition(" +/-")[0] if setting else ""


def inside_words(plant: Plant, component: Component, wide: int) -> tuple[str, ...]:
    """The words inside a vessel, tag, name, volume and rating, as far as they fit; of a user its name.

    Args:
        plant: The system.
        component: What is drawn.
        wide: Room across, in drawing units.
    """
    most = int(wide / (PLAIN * TEXT))
    if component.kind in NAMED_INSIDE:
        return _folded(component.name or "", most)
    name = (component.name,) if component.name else ()
    lines = (short_tag(str(component.tag), plant.system.code), *name, *_values(plant, component))
    return tuple(line for line in lines if len(line) <= most)


def _folded(name: str, most: int) -> tuple[str, ...]:
    """A name on three lines at most."""
    lines: list[str] = []
    for word in name.split():
        if lines and len(lines[-1]) + 1 + len(word) <= most:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    if len(lines) > 3:
        lines = [*lines[:2], f"{lines[2]} …"]
    return tuple(line if len(line) <= most else line[: most - 1] + "…" for line in lines)
