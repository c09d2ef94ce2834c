"""What counts as one barrier."""

import pytest

from garboard.systems.line_up import line_up
from garboard.systems.net import net_of
from garboard.systems.search import fewest_barriers, way_to
from tests.systems.pieces import AIR, plant_of

FROM_A_TO_B = f"""{AIR}components:
  TV-001: {{kind: three-way valve, positions: {{all: [common-a, common-b], none: []}}}}
headers: {{store line: {{}}, work line: {{}}, third line: {{}}}}
connections:
  - store line > TV-001.a
  - TV-001.b > work line
  - TV-001.common > third line
"""


def test_a_valve_with_three_ports_is_one_barrier_whichever_two_a_path_takes() -> None:
    plant = plant_of(FROM_A_TO_B)

    found = fewest_barriers(net_of(plant), [plant.headers["store line"]], lambda *_: 1)

    assert [found.count[plant.headers[name]] for name in ("third line", "work line")] == [1, 1]


@pytest.mark.parametrize(
    ("positions", "named"),
    [
        ("all: [common-a, common-b], none: []", "all"),
        ("a: [common-a], b: [common-b]", "b"),
        ("a: [common-a], across: [a-b]", "across"),
    ],
)
def test_a_way_by_a_third_port_names_the_position_in_which_it_passes(
    positions: str, named: str
) -> None:
    """In the second no one position joins the two: what waits in the common line comes out in the last."""
    plant = plant_of(FROM_A_TO_B.replace("all: [common-a, common-b], none: []", positions))
    net = net_of(plant)
    work = plant.headers["work line"]

    way = way_to(fewest_barriers(net, [plant.headers["store line"]], lambda *_: 1).came, work)

    assert line_up(net, way, work).turned == (("SA-TV-001", named),)
