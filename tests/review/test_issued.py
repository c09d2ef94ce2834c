"""A newer tool that digests otherwise takes nothing for altered that nobody touched."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import msgspec
import pytest

from garboard.reading.edition_file import edition_path, sealed, write_edition
from garboard.records.edition import Edition
from tests.golden_case import found_in, issue, lay_out

PATH = "systems/starting-air/sa-cl-001.md"
RECORD = """\
---
id: SA-CL-001
title: Starts in one charge
system: SA
class: B
state: checked
---
Both receivers in use.
"""


@pytest.mark.parametrize(
    ("now", "fires"),
    [
        ({PATH: RECORD}, False),
        ({"systems/starting-air/moved.md": RECORD}, False),
        ({PATH: RECORD.replace("Both", "All")}, True),
    ],
    ids=["untouched", "moved", "altered"],
)
def test_a_record_that_an_older_tool_digested_is_read_again_before_it_is_called_altered(
    now: dict[str, str],
    fires: bool,  # noqa: FBT001 - a case of the table
    tmp_path: Path,
) -> None:
    kept = issue(tmp_path, {PATH: RECORD}, date(2031, 5, 1))
    edition = msgspec.json.decode(kept[edition_path(1)], type=Edition)
    older = replace(edition.records["SA-CL-001"], digest="0" * 64)
    other = sealed(replace(edition, records={"SA-CL-001": older}))
    lay_out(tmp_path, {**now, edition_path(1): write_edition(other)})

    found = [one.code for one in found_in(tmp_path)]

    assert ("issued-text-altered" in found) is fires
    assert "edition-altered" not in found
