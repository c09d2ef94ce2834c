"""Which service a pipe is drawn as, where its run names none."""

from garboard.schematic.node_services import services_of
from tests.systems.pieces import AIR, plant_of

TEXT = f"""{AIR}status: sketch
services:
  start air: {{line: heavy}}
components:
  CP-001: {{kind: compressor, makes: 42 bar(g)}}
  HV-001: {{kind: stop valve}}
  AR-001: {{kind: receiver, rated: 33 bar(g)}}
  PI-001: {{kind: gauge}}
  HV-002: {{kind: drain valve}}
  RG-001: {{kind: regulator, set: 8 bar(g)}}
  US-001: {{kind: consumer}}
headers:
  filling line: {{service: start air}}
connections:
  - CP-001 > filling line > HV-001 > AR-001
  - AR-001.gauge > PI-001
  - AR-001.drain > HV-002 > bilge
  - AR-001.out > RG-001 > US-001
"""


def test_a_service_spreads_through_what_passes_it_and_stops_at_a_reducing_valve() -> None:
    plant = plant_of(TEXT)

    services = services_of(plant)

    at = {
        (part.tag, port): services[node]
        for part in plant.parts
        for port, node in part.ports.items()
    }
    assert at["SA-AR-001", "in"] == "start air"
    assert at["SA-RG-001", "in"] == "start air"
    assert at["SA-RG-001", "out"] == ""


def test_what_ends_in_an_instrument_is_sensing_and_what_ends_in_the_bilge_a_drain() -> None:
    plant = plant_of(TEXT)

    services = services_of(plant)

    assert services[plant.node("SA-PI-001")] == "sensing"
    assert services[plant.parts[plant.numbers["SA-HV-002"]].ports["out"]] == "drain"


def test_what_is_written_stands() -> None:
    written = TEXT.replace(
        "- AR-001.gauge > PI-001", "- {run: AR-001.gauge > PI-001, service: start air}"
    )
    plant = plant_of(written)

    assert services_of(plant)[plant.node("SA-PI-001")] == "start air"
