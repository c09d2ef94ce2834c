"""How the parts of a plant stand on a drawing, and what they are called there in words."""

from garboard.records.component_kinds import position_word
from garboard.schematic.symbol import Look
from garboard.systems.plant import Part, Plant

__all__ = ["look_of", "position_of", "spoken"]

METERS = {"voltmeter": "V", "ammeter": "A"}
SPOKEN = ("set", "rated", "makes", "cuts_out", "cuts_in", "trip")
"""The numbers that are said of a part, in this order."""


def position_of(part: Part, position: str = "") -> int:
    """The number of a position by its name; of its usual one where it has no such name."""
    return part.names.index(position) if position in part.names else part.usual


def look_of(plant: Plant, tag: str, position: str = "", *, numbered: bool = False) -> Look:
    """How a part stands.

    Args:
        plant: The plant.
        tag: The part.
        position: The position it is shown in; empty: its usual one.
        numbered: An instrument has its number in its circle, as no label beside it says it.
    """
    part = plant.part(tag)
    component = plant.components.get(tag)
    if part is None or component is None:
        return Look()
    stands = part.positions[position_of(part, position)]
    joined = {node for arc in stands for node in arc}
    apart = frozenset(port for port, node in part.ports.items() if node not in joined)
    _, letters, number = tag.split("-", 2)
    return Look(
        shut=part.movable and not stands,
        closed=apart if len(part.ports) > 2 else frozenset(),
        locked=bool(component.locked),
        blows=any(one.tag == tag and one.outlet is None for one in plant.reliefs),
        letters=METERS.get(part.kind, letters),
        number=number if numbered else "",
    )


def spoken(plant: Plant, tag: str, position: str = "") -> str:
    """A part in words: tag, name, kind, how it stands, its numbers.

    Args:
        plant: The plant.
        tag: The part.
        position: The position it is shown in; empty: its usual one.
    """
    part, component = plant.part(tag), plant.components.get(tag)
    if part is None or component is None:
        return tag
    name = component.name or ""
    said = [f"{tag} {name}".strip()]
    if part.kind not in name.casefold():
        said.append(part.kind)
    if part.movable and (word := part.names[position_of(part, position)]):
        word = position_word(part.kind, word)
        said.append(f"shown {word}" if position else f"usually {word}")
    if component.locked:
        said.append(f"locked {component.locked}")
    settings = plant.settings.get(tag, {})
    said += [
        f"{name.replace('_', ' ')} {settings[name].text}" for name in SPOKEN if name in settings
    ]
    if component.place:
        said.append(component.place)
    return ", ".join(said)
