"""Where no pressure can stand, none is passed on."""

import pytest

from garboard.systems.enquiry import Enquiry
from tests.systems.pieces import plant_of

PUMPED_UP = """\
system: FO
title: test piece
medium: fuel
components:
  PU-001: {{kind: pump, type: gear, makes: 6 bar(g)}}
  HV-001: {{kind: stop valve}}
  TK-001: {{kind: {kind}}}
  HS-001: {{kind: hose, rated: 1 bar(g)}}
  EN-001: {{kind: consumer}}
headers: {{gravity line: {{}}, transfer line: {{}}}}
connections:
  - PU-001 > transfer line > HV-001 > TK-001
  - TK-001.out > HS-001 > gravity line > EN-001
"""


@pytest.mark.parametrize(
    ("kind", "bar"),
    [("tank", 0), ("compartment", 0), ("sea", 0), ("tank, rated: 8 bar(g)", 6), ("receiver", 6)],
)
def test_a_pump_presses_through_what_is_closed_and_not_through_what_is_open(
    kind: str, bar: float
) -> None:
    plant = plant_of(PUMPED_UP.format(kind=kind), "FO")
    highest = Enquiry(plant).highest

    assert highest[plant.headers["transfer line"]] == 600_000
    assert highest[plant.headers["gravity line"]] == bar * 100_000
