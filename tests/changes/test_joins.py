"""What is joined otherwise between two books: in sentences, with the parts that came, went or were moved."""

from garboard.changes.comparison import Rejoined
from garboard.changes.joins import rejoined
from tests.changes.pairs import Desk
from tests.systems.pieces import AIR, plant_of

BEFORE = f"""{AIR}status: sketch
components:
  CP-001: {{kind: compressor, makes: 42 bar(g)}}
  HV-001: {{kind: stop valve}}
  AR-001: {{kind: receiver, rated: 33 bar(g)}}
  PS-001: {{kind: pressure switch, stops: CP-001, cuts_out: 30 bar(g)}}
headers:
  start header: {{}}
connections:
  - CP-001 > HV-001 > AR-001
  - AR-001.out > start header
  - start header > PS-001
"""
AFTER = BEFORE.replace("start header > PS-001", "CP-001.out > PS-001").replace(
    "  PS-001:", "  RV-001: {kind: relief valve, set: 33 bar(g)}\n  PS-001:"
)
AFTER += "  - CP-001.out > RV-001\n"


def test_a_switch_moved_before_the_valve_is_said_as_one_join_gone_and_one_come() -> None:
    found = rejoined("SA", "Starting air", plant_of(BEFORE), plant_of(AFTER))

    assert found == Rejoined(
        system="SA",
        title="Starting air",
        new=("SA-RV-001",),
        gone=(),
        moved=("SA-CP-001", "SA-PS-001"),
        parted=("the start header to SA-PS-001",),
        joined=("SA-CP-001 to SA-PS-001", "SA-CP-001 to SA-RV-001"),
    )


def test_the_same_joins_in_another_order_are_no_difference() -> None:
    head, _, runs = BEFORE.partition("connections:\n")
    turned = f"{head}connections:\n" + "".join(reversed(runs.splitlines(keepends=True)))

    assert rejoined("SA", "Starting air", plant_of(BEFORE), plant_of(turned)) is None


def test_a_system_that_is_new_is_joined_whole() -> None:
    found = rejoined("SA", "Starting air", None, plant_of(BEFORE))

    assert found is not None
    assert found.parted == ()
    assert len(found.joined) == 4
    assert found.new == ("SA-AR-001", "SA-CP-001", "SA-HV-001", "SA-PS-001")


def test_a_comparison_of_two_books_tells_it(desk: Desk) -> None:
    path = "systems/starting-air/system.yml"

    found = desk.compared({path: BEFORE}, {path: AFTER})

    assert [one.parted for one in found.joins] == [("the start header to SA-PS-001",)]
    assert not found.empty


def test_two_books_that_are_joined_alike_say_nothing(desk: Desk) -> None:
    path = "systems/starting-air/system.yml"

    found = desk.compared({path: BEFORE}, {path: BEFORE.replace("33 bar(g)", "34 bar(g)")})

    assert found.joins == ()
