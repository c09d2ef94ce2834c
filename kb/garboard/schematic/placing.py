"""Place what stands on a sheet: across, then the order of its rows, their heights, bars, ports."""

from garboard.schematic.bars import stand_bars
from garboard.schematic.columns import columns_of
from garboard.schematic.lanes import lanes_of
from garboard.schematic.nets import Circuit
from garboard.schematic.place import Pins, Place
from garboard.schematic.ports import find_ports
from garboard.schematic.rows import stack_rows
from garboard.schematic.stand import Captions
from garboard.schematic.trunk import trunk_of

__all__ = ["place_circuit"]


def place_circuit(circuit: Circuit, captions: Captions, pins: Pins, spread: int) -> Place:
    """Give everything on a sheet its place.

    Args:
        circuit: What stands on the sheet.
        captions: The words beside each piece.
        pins: Where authors want their bars.
        spread: Steps more between neighbours, where a closer drawing had no room.
    """
    trunk = trunk_of(circuit)
    columns = columns_of(trunk, captions, spread)
    place = Place(circuit, trunk, captions)
    stack_rows(place, columns, lanes_of(trunk, columns), spread)
    stand_bars(place, columns, pins)
    find_ports(place)
    return place
