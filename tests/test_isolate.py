"""`garboard isolate`, and the pages that say the same."""

from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import Handbook, read
from garboard.views.page import Bullets, Heading, Page, Paragraph, Step, Steps, Table
from garboard.views.runs import plain
from tests.golden_case import Case

SYSTEM = """\
title: Starting air
medium: air
components:
  CP-001: {kind: compressor, name: Compressor, type: piston, makes: 42 bar(g), note: "started from the bridge too"}
  NV-001: {kind: check valve}
  HV-001: {kind: stop valve, name: Filling valve, usual: open, place: port side}
  AR-001: {kind: receiver, name: Receiver, rated: 33 bar(g)}
  RV-001: {kind: relief valve, set: 33 bar(g)}
  PI-001: {kind: gauge, name: Receiver gauge}
  HV-002: {kind: drain valve, name: Receiver drain, usual: shut}
  HV-003: {kind: stop valve, name: Start-air valve, usual: open}
  EN-001: {kind: consumer, name: Main engine}
  HV-009: {kind: stop valve}
headers: {engine line: {tag: LN-001}}
connections:
  - CP-001 > NV-001 > HV-001 > AR-001
  - AR-001.relief > RV-001
  - AR-001.gauge > PI-001
  - AR-001.drain > HV-002 > bilge
  - AR-001.out > HV-003 > engine line > EN-001
"""
BILGE = """\
title: Bilge
medium: sea water
components:
  SC-001: {kind: sea, name: Sea chest}
  HV-001: {kind: stop valve, name: Sea valve, usual: open}
  US-001: {kind: consumer}
connections:
  - SC-001 > HV-001 > US-001
"""
HAZARD = """\
---
id: SA-HZ-001
title: Stored air
system: SA
state: accepted
source: air in the receiver
where: [SA-AR-001]
harms: people
severity: 1
likelihood: C
if_ignored: could
message: {hazard: Air under pressure, harm: Can throw parts and kill., avoid: See the gauge at zero.}
---
Stays with the receiver.
"""
PROCEDURE = """\
---
id: SA-PR-001
title: Empty the receiver
system: SA
class: A
use: isolation
isolates: [SA-AR-001]
points: [SA-HV-001]
steps:
  - {do: Lock, tag: SA-HV-001, to: shut, see: {value: lock on}, if_not: stop}
  - {do: Open, tag: SA-HV-002, to: open, see: {tag: SA-PI-001, value: 0 bar(g)}, if_not: stop}
---
Two people.
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A handbook with a receiver that can be isolated, and a sea valve that cannot."""
    files = {
        "systems/starting-air/system.yml": SYSTEM,
        "systems/starting-air/hazard.md": HAZARD,
        "systems/starting-air/procedure.md": PROCEDURE,
        "systems/bilge-fire/system.yml": BILGE,
    }
    return Case("", "", "", files, "").write(tmp_path_factory.mktemp("isolate") / "content")


@pytest.fixture(scope="module")
def handbook(folder: Path) -> Handbook:
    """The same, read."""
    return read(folder)


def page(handbook: Handbook, key: str) -> Page:
    return next(one for one in handbook.pages if one.key == key)


def steps(of: Page) -> list[Step]:
    return [step for block in of.blocks if isinstance(block, Steps) for step in block.steps]


def words(of: Page) -> str:
    said: list[str] = []
    for block in of.blocks:
        match block:
            case Paragraph():
                said.append(plain(block.runs))
            case Bullets():
                said += [plain(item) for item in block.items]
            case Heading():
                said.append(block.text)
            case Table():
                said.append(block.caption)
                said += [" | ".join(plain(cell) for cell in row.cells) for row in block.rows]
            case _:
                pass
    return "\n".join(said)


def test_the_sheet_is_printed_with_every_step_in_order(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status = main(["isolate", "SA-AR-001", "--folder", str(folder)])

    said = capsys.readouterr().out
    assert status == 0
    order = (
        "ISOLATE SA-AR-001 Receiver",
        "Skerry Light. Working copy",
        "WARNING: Air under pressure",
        "  Can throw parts and kill. See the gauge at zero.",
        "Can be isolated.",
        "A written procedure governs: SA-PR-001",
        "[ ]  1 Shut, lock and tag SA-HV-001 Filling valve, port side",
        "lock no. ______",
        "[ ]  2 Open SA-HV-002 Receiver drain",
        "[ ]  3 Read SA-PI-001 Receiver gauge",
        "see: 0, and still 0 after a wait",
        "- SA-CP-001: held back by SA-HV-001; blocks 1",
        "- Without supply: SA-EN-001 Main engine.",
        "A single block: SA-HV-001. Behind it: SA-CP-001. A small leak fills",
        "- SA-HV-003 Start-air valve: nothing live is beyond it",
        "- Shut SA-HV-002 Receiver drain: stands shut",
        "- Take the lock off, and open slowly: SA-HV-001 Filling valve:",
        "Lines not traced.",
        "Not checked: sizes, capacity",
    )
    places = [said.find(words) for words in order]
    assert -1 not in places, order[places.index(-1)]
    assert places == sorted(places)
    assert max(map(len, said.splitlines())) <= 72


def test_what_charges_is_stopped_first_and_started_last_and_the_head_of_the_sheet_says_so(
    capsys: pytest.CaptureFixture[str],
) -> None:
    main(["isolate", "DC-CW-001", "--folder", "content_demo"])

    said = " ".join(capsys.readouterr().out.split())
    order = (
        "Stop what drives it first: DC-GE-001.",
        "STEPS",
        "[ ] 1 Stop what drives it, or switch its field off, lock and tag DC-GE-001 Alternator",
        "see: gives no current, lock no.",
        "[ ] 2 Switch off, lock and tag DC-SW-004 Alternator switch",
        "lock and tag DC-SW-001 Main battery switch",
        "GIVING BACK",
        "DC-SW-001 Main battery switch: stands on",
        "DC-SW-004 Alternator switch: stands on",
        "- Take the lock off, last of all: DC-GE-001 Alternator: stands ready",
    )
    places = [said.find(words) for words in order]
    assert -1 not in places, order[places.index(-1)]
    assert places == sorted(places)


@pytest.mark.parametrize(
    ("tag", "use", "words"),
    [
        ("SA-RV-001", "isolation", "shuts these very points, in its own order: SA-PR-001 Empty"),
        ("SA-AR-001", "maintenance", "makes it safe before its own work: SA-PR-001 Empty"),
        ("SA-EN-001", "isolation", "No written procedure makes this part safe"),
    ],
)
def test_a_procedure_that_isolates_is_named_whatever_it_is_for_and_whichever_part_it_names(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], tag: str, use: str, words: str
) -> None:
    files = {
        "systems/starting-air/system.yml": SYSTEM,
        "systems/starting-air/procedure.md": PROCEDURE.replace("use: isolation", f"use: {use}"),
    }

    main(["isolate", tag, "--folder", str(Case("", "", "", files, "").write(tmp_path / "content"))])

    assert words in " ".join(capsys.readouterr().out.split())


def test_what_cannot_be_isolated_says_why_has_no_steps_and_fails(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status = main(["isolate", "BG-HV-001", "--folder", str(folder)])

    said = " ".join(capsys.readouterr().out.split())
    assert status == 1
    assert "Cannot be isolated." in said
    assert "no valve that can be locked stands between BG-HV-001 and BG-SC-001" in said
    assert "[ ]" not in said
    assert "GIVING BACK" not in said


def test_several_parts_are_isolated_together(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["isolate", "SA-AR-001", "SA-HV-001", "--folder", str(folder)])

    said = " ".join(capsys.readouterr().out.split())
    assert "Stop, lock and tag SA-CP-001" in said
    assert "Note: started from the bridge too." in said
    assert "take the lock off" in said.casefold()


@pytest.mark.parametrize(
    ("tags", "words"),
    [
        (["SA-AR-01"], "there is no part 'SA-AR-01'; did you mean SA-AR-001?"),
        (["ar-001"], "there is no part 'ar-001'; did you mean SA-AR-001?"),
        (["SA-LN-001"], "SA-LN-001 is a pipe: name a part that is joined to it"),
        (["SA-HV-009"], "SA-HV-009 is in no connection of SA"),
        (["SA-AR-001", "BG-HV-001"], "SA and BG are two systems"),
    ],
)
def test_a_tag_that_cannot_be_looked_up_is_wrong_use(
    folder: Path, capsys: pytest.CaptureFixture[str], tags: list[str], words: str
) -> None:
    status = main(["isolate", *tags, "--folder", str(folder)])

    assert status == 2
    assert words in capsys.readouterr().err


def test_a_boundary_has_one_page_for_all_parts_within(handbook: Handbook) -> None:
    keys = [one.key for one in handbook.pages if one.key.startswith("isolate/SA")]

    assert keys == [
        "isolate/SA-CP-001",
        "isolate/SA-HV-001",
        "isolate/SA-AR-001",
        "isolate/SA-HV-002",
        "isolate/SA-HV-003",
        "isolate/SA-EN-001",
    ]
    receiver = page(handbook, "isolate/SA-AR-001")
    assert "The same points make safe: SA-RV-001, SA-PI-001." in words(receiver)
    assert receiver.kind == "isolation"
    assert receiver.deferral
    assert [message.source for message in receiver.messages] == ["SA-HZ-001"]
    assert [step.number for step in steps(receiver)] == ["1", "2", "3"]


def test_the_page_of_a_part_leads_to_its_isolation_or_says_why_there_is_none(
    handbook: Handbook,
) -> None:
    assert "It can be isolated: Isolate SA-AR-001." in words(page(handbook, "SA-RV-001"))
    assert "no valve that can be locked stands between" in words(page(handbook, "BG-HV-001"))
    assert "To work on it" not in words(page(handbook, "SA-HV-009"))


def test_the_list_of_a_system_has_what_can_be_isolated_and_what_cannot(handbook: Handbook) -> None:
    air = words(page(handbook, "starting-air/isolations"))
    bilge = words(page(handbook, "bilge-fire/isolations"))

    assert (
        "SA-AR-001, SA-RV-001, SA-PI-001 | SA-HV-001 | can be isolated | Isolate SA-AR-001" in air
    )
    assert "BG-HV-001 | no valve that can be locked" in bilge
    assert "isolate/BG-HV-001" not in {one.key for one in handbook.pages}


def test_a_side_that_nothing_shows_at_zero_is_named_where_it_is_read(handbook: Handbook) -> None:
    said = words(page(handbook, "isolate/SA-CP-001"))

    assert "Can be shut off, cannot be proved." in said
    assert "Nothing shows the outlet of SA-NV-001 at zero: do not take it for proved." in said


def test_the_contents_list_isolations_under_their_system(handbook: Handbook) -> None:
    (air,) = (one for one in handbook.contents if one.title == "Starting air")

    listed = {one.title: one.pages for one in air.sections}
    assert "isolate/SA-AR-001" in listed["Isolations"]
    assert "starting-air/isolations" in air.pages
