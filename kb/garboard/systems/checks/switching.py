"""Which switches stop which machine, and at what it is stopped in ordinary running."""

from collections.abc import Mapping
from dataclasses import dataclass

from garboard.systems.plant import Part, Plant, Source
from garboard.systems.settings import Setting

__all__ = ["PRESSURE_SENSES", "SENSES", "Stop", "ordinary", "stopping"]

PRESSURE_SENSES = ("pressure switch", "transmitter")
SENSES = (*PRESSURE_SENSES, "level switch")
"""What acts on what it feels; a gauge only shows it."""


@dataclass(frozen=True, slots=True)
class Stop:
    """What a source comes up to in ordinary running."""

    tag: str
    """The switch that cuts it out, or the source itself."""
    name: str
    """Which of its numbers: `cuts_out` or `normal`."""
    setting: Setting


def stopping(plant: Plant) -> Mapping[str, tuple[Part, ...]]:
    """What feels pressure and stops each machine of a plant, by tag of the machine."""
    found: dict[str, list[Part]] = {}
    machines = {source.tag for source in plant.sources if source.machine}
    for part in plant.of_kind(*PRESSURE_SENSES):
        for machine in plant.components[part.tag].stops:
            tag = str(machine)
            if tag in machines:
                found.setdefault(tag, []).append(part)
    return {tag: tuple(parts) for tag, parts in found.items()}


def ordinary(plant: Plant) -> tuple[tuple[Source, Stop], ...]:
    """The sources whose ordinary running is known: up to the cut-out, else to what is normal for it.

    Of several cut-outs the highest counts: which of them stops it first depends on the valves.
    """
    switches = stopping(plant)
    found: list[tuple[Source, Stop]] = []
    for source in plant.sources:
        stops = [
            Stop(part.tag, "cuts_out", setting)
            for part in switches.get(source.tag, ())
            if (setting := plant.setting(part.tag, "cuts_out"))
        ]
        normal = plant.setting(source.tag, "normal")
        if not stops and normal:
            stops = [Stop(source.tag, "normal", normal)]
        if stops:
            found.append((source, max(stops, key=lambda stop: stop.setting.high)))
    return tuple(found)
