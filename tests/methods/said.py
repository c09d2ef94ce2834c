"""What a line that calls a method came to: its line, a result as shown, why it was refused."""

from collections.abc import Callable

from garboard.calc.network import Network
from garboard.calc.sheet import WorkedLine

__all__ = ["AIR", "Work", "only_line", "reason", "shown"]

AIR = (
    "receiver_surge_volume",
    "leak_by_pressure_decay",
    "closed_volume_temperature",
    "orifice_air_flow",
    "compressed_air_water",
    "compressor_duty",
    "free_air_delivery",
    "air_line_pressure_drop",
)
"""The methods for compressed air."""
Work = Callable[..., Network]


def only_line(network: Network) -> WorkedLine:
    """The first line of the fence, which nothing is wrong with."""
    assert network.diagnostics == ()
    return network.sheets["case"].lines[0]


def shown(network: Network, result: str) -> str:
    """A result as shown; nothing is wrong with the fence."""
    assert network.diagnostics == ()
    return network.values[f"case.x.{result}"].text


def reason(network: Network) -> str:
    """Everything that is said against the fence."""
    return "; ".join(f"{found.text}; {found.help}" for found in network.diagnostics)
