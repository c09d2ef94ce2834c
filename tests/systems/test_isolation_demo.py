"""The isolations of the demo vessel, worked by hand from its connections, each answer whole."""

from functools import cache

import pytest

from garboard.book import Book
from garboard.handbook import read_book
from garboard.systems.isolation import isolate
from tests.demo_site import never_issued
from tests.systems.test_isolation import expected, told

ANSWERS = {
    "SA-AR-001": """
        shut: HV-002=shut HV-006=shut
        empty: AR-001
        sides: AR-001 by HV-004 at PI-001
        alive: CP-001:1 CP-002:1 SE-001:1 SE-002:1 AR-002:1
    """,
    "SA-AR-002": """
        shut: HV-003=shut HV-007=shut
        empty: AR-002
        sides: AR-002 by HV-005 at PI-002
        alive: CP-001:1 CP-002:1 SE-001:1 SE-002:1 AR-001:1
        lost: US-001
    """,
    "SA-HV-008 SA-EN-001": """
        shut: HV-006=shut HV-007=shut
        sides: start header by HV-012 at PI-003; engine line by HV-014 at PI-005
        alive: CP-001:1 CP-002:1 SE-001:1 SE-002:1 AR-001:1 AR-002:1
        lost: EN-001
    """,
    "SA-RG-001": """
        shut: HV-009=shut
        sides: reducing line by HV-015 at nothing; service line by HV-011 at PI-004
        alive: CP-001:1 CP-002:1 SE-001:1 SE-002:1 AR-001:1 AR-002:1
        lost: US-001
        against: isolation-unproved(reducing line)
    """,
    "BG-ST-001": """
        stop: PU-001
        shut: SN-001=shut SN-002=shut SN-003=shut HV-001=shut
        sides: bilge main by HV-009 at PI-002; outlet of NV-005 by no bleed at nothing
        alive: BW-001:1 BW-002:1 BW-003:1 SC-001:1 OD-001:1 OD-002:1 PU-002:1
        against: isolation-unproved(outlet of NV-005)
    """,
    "BG-HV-002": """
        shut: TV-001=bilge
        sides: inlet of HV-002 by no bleed at nothing; ST-002 by no bleed at nothing
        alive: BW-001:1 BW-002:1 BW-003:1 OD-001:1 OD-002:1 PU-001:1 PU-002:1
        lost: US-001 US-002
        against: isolation-incomplete(SC-001) isolation-unproved(inlet of HV-002) isolation-unproved(ST-002)
    """,
    "DC-BB-001": """
        shut: SW-001=shut SW-004=shut SW-003=shut SW-005=shut XO-001=essential
        sides: inlet of BB-001 by no bleed at EI-001; outlet of SW-004 by no bleed at nothing; outlet of SW-003 by no bleed at nothing; outlet of FU-005 by no bleed at nothing; outlet of FU-007 by no bleed at nothing
        alive: BA-001:1 GE-001:1 CH-001:1 BA-002:1
        lost: LD-001 LD-002 LD-003 LD-004
    """,
    "HY-HS-001": """
        shut: HV-001=shut
        sides: motor line by HV-003 at nothing
        alive: TK-001:1 PU-001:1 FI-001:1
        lost: US-001
        against: isolation-unproved(motor line)
    """,
}


@cache
def demo() -> Book:
    return read_book(never_issued())


@pytest.mark.parametrize("tags", ANSWERS)
def test_a_part_of_the_demo_is_isolated_as_by_hand(tags: str) -> None:
    surveyed = demo().surveys[tags[:2]]

    found = isolate(surveyed.plant, *tags.split(), survey=surveyed)

    assert told(found) == expected(ANSWERS[tags])
