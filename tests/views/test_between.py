"""The page that says what stands between each sensor and its vessel."""

from pathlib import Path

from garboard.handbook import read
from garboard.views.page import Page, Plate, Table
from tests.golden_case import lay_out

PAGE = "starting-air/what-stands-between"


def page_of(folder: Path, connections: str) -> Page | None:
    """The page of a system with one receiver, a gauge and a relief valve."""
    text = "medium: air\ncomponents:\n"
    text += "  AR-001: {kind: receiver, rated: 33 bar(g)}\n  HV-001: {kind: stop valve}\n"
    text += "  PI-001: {kind: gauge}\n  RV-001: {kind: relief valve, set: 32 bar(g)}\n"
    lay_out(folder, {"systems/starting-air/system.yml": text + connections})
    return next((page for page in read(folder).pages if page.key == PAGE), None)


def test_each_sensor_has_a_row_with_what_can_close_before_it(tmp_path: Path) -> None:
    page = page_of(
        tmp_path, "connections:\n  - AR-001.r > RV-001\n  - AR-001.g > HV-001 > PI-001\n"
    )

    assert page is not None
    (table,) = [block for block in page.blocks if isinstance(block, Table)]
    assert [row.cells for row in table.rows] == [
        (
            (Plate("SA-PI-001"),),
            (Plate("SA-AR-001"),),
            (Plate("SA-HV-001"),),
            (Plate("SA-HV-001"),),
            ("does not pass",),
        ),
        ((Plate("SA-RV-001"),), (Plate("SA-AR-001"),), ("nothing",), ("none",), ("passes",)),
    ]


def test_a_system_without_connections_has_no_such_page(tmp_path: Path) -> None:
    assert page_of(tmp_path, "") is None
