"""handbook.yml and the lists are read entry by entry, and refuse what nobody asked for."""

from datetime import date

import pytest

from garboard.errors import Where
from garboard.reading.vessel_files import LISTS, ListFile, VesselFile, read_list, read_vessel
from garboard.records.base import Class
from garboard.records.signoff import Capacity
from garboard.records.vessel import Seen

HANDBOOK = """\
vessel: Skerry Light
defers_to: [flag, class, surveyor, local codes, licensed trades]
systems: {SA: starting-air, BG: bilge-fire}
edition: {life: 12 months}
site: {atmosphere: "1013 mbar(a) +/- 40 mbar [SA-TR-003]", T_room: "25 degC +/- 10 K [LOGBOOK]"}
instruments: {G-07: {what: test gauge 0-100 bar, calibrated: 2031-01-12, due: 2032-01-12}}
as_of: 2031-10-01   # for time rules; left out = today
holders: [{copy: "1", where: wheelhouse, medium: paper, edition: "3"}]
cards: [{card: "7", of: SA-PR-002, place: engine room, printed: 2031-06-01, edition: "3"}]
notices: [{number: "4", on: 2031-07-01, says: SA-PR-002 must not be used, against: [SA-PR-002]}]
windows: {haul-out: {from: 2031-10-01, to: 2031-10-14, what: on the slip}}
milestones: {first start: {needs: [SA-WP-001, crew trained], by: 2031-12-01}}
"""


def vessel(text: str) -> VesselFile:
    """handbook.yml."""
    return read_vessel(text, "handbook.yml")


def listed(file: str, text: str) -> ListFile[object]:
    """One of the lists."""
    return read_list(next(kind for kind in LISTS if kind.file == file), text)


def said(found: VesselFile | ListFile[object]) -> list[str]:
    """The messages, without the code."""
    return [str(item).replace(" [unreadable-record]", "") for item in found.diagnostics]


def test_a_whole_handbook_file_reads_without_a_fault() -> None:
    found = vessel(HANDBOOK)

    assert found.diagnostics == ()
    read = found.vessel
    assert read.folders == {"SA": "starting-air", "BG": "bilge-fire"}
    atmosphere = read.conditions["atmosphere"]
    assert (atmosphere.address, atmosphere.shown) == ("site.atmosphere", "1013 mbar(a)")
    assert (atmosphere.low, atmosphere.high) == (97_300, 105_300)
    assert atmosphere.where == Where("handbook.yml", 5, 21)
    assert atmosphere.sources[0].source == "SA-TR-003"
    assert read.instruments is not None
    assert read.instruments["G-07"].due == date(2032, 1, 12)
    assert read.as_of == date(2031, 10, 1)
    assert read.windows is not None
    assert read.windows["haul-out"].from_ == date(2031, 10, 1)


def test_people_are_roles_and_what_they_may_do() -> None:
    found = listed(
        "people.yml",
        "lead: {role: lead builder, may: [author, doer, in charge]}\n"
        "reviewer-1: {role: reviewer, may: [checker], class: A, aboard: [{from: 2031-01-02}]}\n",
    )

    assert found.diagnostics == ()
    lead, reviewer = found.entries.values()
    assert lead.may == (Capacity.AUTHOR, Capacity.DOER, Capacity.IN_CHARGE)  # type: ignore[attr-defined]
    assert reviewer.class_ is Class.A  # type: ignore[attr-defined]
    assert reviewer.where == Where("people.yml", 2, 1)  # type: ignore[attr-defined]


def test_what_would_tell_more_of_a_person_than_a_role_is_refused() -> None:
    found = listed("people.yml", "lead: {role: lead builder, phone: 0123}\n")

    assert len(found.diagnostics) == 1
    assert said(found)[0].startswith("people.yml:1:28: STOP: key phone is not known")


def test_sources_words_spares_and_retired_names_are_read() -> None:
    sources = listed("sources.yml", "BOYLE: {title: Boyle's law, seen: secondary, by: lead}\n")
    words = listed("glossary.yml", "strum box: {means: bilge strainer, crew_words: [the rose]}\n")
    spares = listed(
        "spares.yml", "SK-1: {name: seal, fits: [SA-CP-001], aboard: 1, where: drawer 3}\n"
    )
    keyed = listed("retired.yml", "SA-HV-017: {on: 2031-02-18, why: taken out}\n")
    as_list = listed("retired.yml", "- {id: SA-HV-017, on: 2031-02-18, why: taken out}\n")

    for found in (sources, words, spares, keyed, as_list):
        assert found.diagnostics == ()
    assert sources.entries["BOYLE"].seen is Seen.SECONDARY  # type: ignore[attr-defined]
    assert words.entries["strum box"].crew_words == ("the rose",)  # type: ignore[attr-defined]
    assert spares.entries["SK-1"].where_ == "drawer 3"  # type: ignore[attr-defined]
    assert list(keyed.entries) == list(as_list.entries) == ["SA-HV-017"]


def test_an_empty_list_is_no_fault() -> None:
    assert listed("spares.yml", "# none yet\n") == ListFile({})


REFUSED = {
    "no name": (
        "systems: {}\n",
        "1:1: STOP: the vessel has no name\n  help: write vessel: and its name",
    ),
    "a code of three letters": (
        "vessel: S\nsystems: {SAX: starting-air}\n",
        "2:11: STOP: `SAX` is no code of a system\n  help: write two capital letters",
    ),
    "a folder with a way out": (
        "vessel: S\nsystems: {SA: ../../other}\n",
        "2:11: STOP: `../../other` is no name for a folder of a system\n"
        "  help: write small letters, figures and hyphens",
    ),
    "two systems in one folder": (
        "vessel: S\nsystems: {SA: air, AS: air}\n",
        "2:20: STOP: AS and SA have the same folder, air\n  help: give each its own",
    ),
    "a condition that no line could name": (
        'vessel: S\nsite: {engine room: "25 degC"}\n',
        "2:8: STOP: site.engine room is no address, so no line can name it\n"
        "  help: write a letter, then letters, figures and _: T_engine_room",
    ),
    "a life that is no interval": (
        "vessel: S\nedition: {life: 12months}\n",
        "2:17: STOP: edition.life: `12months` is no interval\n"
        "  help: write number, space and h, d, weeks, months, years or running h: 6 months",
    ),
    "a list for a file": (
        "- vessel\n",
        "1:1: STOP: handbook.yml holds no keys\n  help: write key: value, one a line",
    ),
}


@pytest.mark.parametrize("says", REFUSED)
def test_a_broken_handbook_file_is_refused_with_place_reason_and_cure(says: str) -> None:
    text, expected = REFUSED[says]

    assert said(vessel(text)) == [f"handbook.yml:{expected}"]


REFUSED_LISTS = {
    "a person by name": (
        "people.yml",
        "Anna Berg: {role: builder}\n",
        "1:1: STOP: `Anna Berg` is no key for people.yml\n"
        "  help: write small letters, figures and hyphens, such as volunteer-1",
    ),
    "a person without a role": (
        "people.yml",
        "lead: {may: [author]}\n",
        "1:7: STOP: lead has no role\n  help: write role: and text, or leave the entry out",
    ),
    "an entry that is one text": (
        "sources.yml",
        "BOYLE: Boyle's law\n",
        "1:8: STOP: BOYLE is no entry with keys of its own\n  help: write BOYLE: {...}",
    ),
    "a source seen in no known way": (
        "sources.yml",
        "BOYLE: {title: law, seen: heard}\n",
        "1:27: STOP: seen: `heard` is none of its words\n"
        "  help: write one of original, secondary, remembered, constructed",
    ),
    "a retired name that is none": (
        "retired.yml",
        "HV-017: {why: taken out}\n",
        "1:1: STOP: `HV-017` is no key for retired.yml\n  help: write an id or a tag",
    ),
    "a retired entry without its id": (
        "retired.yml",
        "- {why: taken out}\n",
        "1:3: STOP: an entry that does not say its id\n"
        "  help: write - {id: SA-DD-009, on: ..., why: ...}",
    ),
    "one retired name twice": (
        "retired.yml",
        "- {id: SA-HV-017}\n- {id: SA-HV-017}\n",
        "2:8: STOP: SA-HV-017 stands twice\n  help: keep one",
    ),
}


@pytest.mark.parametrize("says", REFUSED_LISTS)
def test_a_broken_list_is_refused_with_place_reason_and_cure(says: str) -> None:
    file, text, expected = REFUSED_LISTS[says]

    assert said(listed(file, text)) == [f"{file}:{expected}"]


def test_a_text_set_in_as_the_last_of_a_file_is_read_to_its_end() -> None:
    text = 'vessel: Skerry Light\nnotices:\n  - number: "1"\n    on: 2031-09-03\n    says: >-\n      Mind the\n      aft hose\n'

    read = read_vessel(text, "handbook.yml")

    assert read.diagnostics == ()
    assert read.vessel.notices[0].says == "Mind the aft hose"
    assert "aft hose" in next(one.text for one in read.texts if one.field == "notices[0].says")
