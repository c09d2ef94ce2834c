"""The drawing in words: every join, and what the tool believes of each source, relief valve and switch."""

from garboard.schematic.words import believed, joined
from tests.schematic.pieces import PIECE, piece
from tests.systems.pieces import plant_of


def test_every_connection_is_said_once_with_its_service() -> None:
    said = joined(piece())

    assert said == (
        "SA-CP-001 to the filling line (start air)",
        "the filling line to SA-HV-001 (start air)",
        "SA-HV-001 to SA-AR-001 (start air)",
        "SA-AR-001.relief to SA-RV-001",
        "SA-AR-001.gauge to SA-PI-001",
        "SA-AR-001.drain to SA-HV-002 (drain)",
        "SA-HV-002 to bilge (drain)",
    )


def test_what_is_believed_of_a_machine_without_a_switch() -> None:
    first, *_ = believed(piece())

    assert first == (
        "SA-CP-001 (makes 42 bar(g)) can reach SA-AR-001, bilge; no switch stops it;"
        " no relief valve is always open to it"
    )


def test_a_relief_valve_says_what_it_always_guards_and_what_it_can_be_shut_off_from() -> None:
    text = PIECE.replace("set: 32 bar(g)}", "set: 32 bar(g), protects: [CP-001, AR-001]}")

    said = list(believed(plant_of(text)))

    assert said[1] == (
        "SA-RV-001 (set 32 bar(g)) is always open to SA-AR-001; can be shut off from SA-CP-001"
    )


def test_a_switch_says_what_it_stops_and_the_receiver_it_can_be_shut_off_from() -> None:
    text = PIECE.replace(
        "headers:",
        "  PS-001: {kind: pressure switch, stops: CP-001, cuts_out: 30 bar(g)}\nheaders:",
    )
    text += "  - {run: filling line > PS-001, service: sensing}\n"

    first, *_, last = believed(plant_of(text))

    assert "stopped by SA-PS-001 at 30 bar(g)" in first
    assert last == (
        "SA-PS-001 (cuts out 30 bar(g)) stops SA-CP-001; it always feels the outlet of SA-CP-001;"
        " can be shut off from SA-AR-001"
    )
