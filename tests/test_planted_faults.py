"""Faults of links, pictures and markup, planted in one handbook, are each found at their line."""

from pathlib import Path

from tests.golden_case import Case, found_in

PAGE = """\
---
page: what it does
title: Starting air
system: SA
---
1 [gone](no-such-page.md)
2 [wrong anchor](what-it-does.md#nowhere)
3 [Wrong case](WHAT-IT-DOES.md)
4 ![tap](photos/none.png)
5 ![](photos/tap.png)
6 <a href="no-such-page.md">raw</a>
7 <img src="photos/none.png" alt="x">
8 [never defined][here]
9 [ashore](https://example.invalid/page)
10 SA-RV-099 is not there
11 [](value:nothing.here)
12 <script>alert(1)</script>
13 ![tap](photos/Tap.png)
14 <div onclick="x()">hidden</div>
15 [script](javascript:alert(1))
16 [out](../../../etc/passwd)

## Same heading

## Same heading
"""

EXPECTED = {
    6: "broken-link",
    7: "broken-link",
    8: "broken-link",
    9: "broken-link",
    10: "image-without-text",
    11: "raw-html-removed",
    12: "raw-html-removed",
    13: "broken-link",
    14: "broken-link",
    15: "reference-to-nothing",
    16: "reference-to-nothing",
    17: "raw-html-removed",
    18: "broken-link",
    19: "raw-html-removed",
    20: "broken-link",
    21: "broken-link",
    25: "duplicate-heading-id",
}
"""Line of the file to the code that must be reported there."""


def test_each_planted_fault_is_found_at_its_line(tmp_path: Path) -> None:
    path = "systems/starting-air/what-it-does.md"
    folder = Case("", "", "", {path: PAGE, "systems/starting-air/photos/tap.png": ""}, "").write(
        tmp_path
    )

    found = {(item.where.line, item.code) for item in found_in(folder) if item.where.path == path}

    assert {place for place in EXPECTED.items() if place not in found} == set()
    assert len(EXPECTED) >= 15
