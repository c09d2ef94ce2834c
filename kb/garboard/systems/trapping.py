"""What may stay shut in between valves, and which places a single movement lets out.

A gas stores far more than a liquid at the same pressure, so it is let off at less. Both limits can be set among
the conditions of the vessel, as `site.trapped_gas` and `site.trapped_liquid`.
"""

from collections.abc import Collection, Mapping

from garboard.calc.value import Value
from garboard.errors import Where
from garboard.systems.medium import Medium
from garboard.systems.net import Net
from garboard.systems.search import always_reaches
from garboard.systems.settings import setting_of

__all__ = ["TRAPPED_GAS", "TRAPPED_LIQUID", "harmless_pressures", "let_out"]

TRAPPED_GAS = "site.trapped_gas"
TRAPPED_LIQUID = "site.trapped_liquid"
USUALLY = {Medium.GAS: 0.5e5, Medium.LIQUID: 10e5}
"""Pa above the atmosphere, where the vessel's conditions do not say."""
NO_BLEED = ("plug", "coupling")
"""Can be opened, but not under pressure."""


def harmless_pressures(values: Mapping[str, Value]) -> Mapping[Medium, float]:
    """What may stay shut in, by medium [Pa above the atmosphere].

    Args:
        values: Values by address.
    """
    found = dict(USUALLY)
    for medium, address in ((Medium.GAS, TRAPPED_GAS), (Medium.LIQUID, TRAPPED_LIQUID)):
        own = setting_of(values.get(address), values, Where(""))
        if own is not None:
            found[medium] = own.low
    return found


def let_out(net: Net, open_air: Collection[int]) -> set[int]:
    """The nodes that lose their pressure with every valve shut and one of them moved.

    Backward from the open air whatever the valves, then from what one movement joins with that; both times only
    through parts that carry relief. Coupled parts stand anywhere.

    Args:
        net: The net.
        open_air: Nodes that are open to the air.
    """
    good = always_reaches(net, open_air)
    near = set(good)
    for number, part in enumerate(net.parts):
        if net.is_free(number) and part.kind not in NO_BLEED:
            near.update(u for u, v in net.arcs(number) if v in good)
    return always_reaches(net, near)
