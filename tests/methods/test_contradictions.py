"""Where publications contradict each other, a method says so and shows both; it never picks quietly."""

import pytest

from garboard.calc.method import Method
from garboard.methods import METHODS
from garboard.methods.publications import PUBLISHED
from tests.methods.said import Work

every_method = pytest.mark.parametrize("method", METHODS.values(), ids=METHODS)

TOPICS = {
    "pressure_datum": ("55 psi gauge", "60 psi gauge"),
    "guard_opening": ("1910.127", "1910.217", "no distance at all", "100 mm", "0.625 inch"),
    "bilge_and_fire_pump_rules": (
        "14.3 m3/h",
        "66.6 gpm",
        "under 120 ft",
        "over 120 ft",
        "maximum of 5 gpm",
    ),
    "bilge_pipe_bore": ("51.3 mm", "73.8 mm"),
    "test_pressure_by_code": ("150 percent", "120 to 125 percent"),
    "gauge_range": ("50 to 75 percent", "25 to 75 percent"),
    "gas_test_stored_energy": (
        "99 kJ",
        "132 kJ",
        "27 574 000 ft.lbf",
        "4 702 000 ft.lbf",
        "4 266 920 J/kg",
        "1 488 617 ft.lbf/lb",
        "Rs x TNT^(1/3)",
        "Rs x (2 x TNT)^(1/3)",
    ),
    "ship_motion_load": ("1.28", "1.43"),
    "thermal_movement": ("24 mm", "18.7 mm", "22.4 mm", "19.5 mm"),
}
"""What stands side by side on the page of a method."""


@every_method
def test_a_contradiction_shows_two_sides_and_says_what_is_done(method: Method) -> None:
    for found in method.contradictions:
        assert found.topic, method.name
        assert len(found.printed) > 1, found.topic
        assert len({side.says for side in found.printed}) == len(found.printed), found.topic
        assert all(side.says and side.where for side in found.printed), found.topic
        assert found.effect, found.topic
        assert found.handbook, found.topic


@every_method
def test_a_contradiction_names_sources_of_its_method(method: Method) -> None:
    own = {source.name for source in method.sources}
    for found in method.contradictions:
        assert found.sources, found.topic
        assert set(found.sources) <= own & set(PUBLISHED), found.topic


@pytest.mark.parametrize("name", TOPICS)
def test_both_editions_stand_side_by_side(name: str) -> None:
    said = [side.says for found in METHODS[name].contradictions for side in found.printed]

    assert [text for text in TOPICS[name] if not any(text in one for one in said)] == []


def test_the_two_columns_of_a_fire_pump_are_five_point_eight_percent_apart(work: Work) -> None:
    found = work("metric = 14.3 m3/h", "us = 66.6 gal_us/min", "apart = us / metric - 1 in %")

    assert found.values["case.apart"].si == pytest.approx(0.058, abs=0.0005)


def test_the_columns_of_the_code_on_tnt_are_four_percent_apart(work: Work) -> None:
    found = work("us = 1488617 ft.lbf/lb in J/kg", "apart = us / (4266920 J/kg) - 1 in %")

    assert found.values["case.us"].si == pytest.approx(4449576, abs=0.5)
    assert found.values["case.apart"].si == pytest.approx(0.0428, abs=0.00005)


def test_a_connected_volume_counts_the_air_already_in_the_pipe(work: Work) -> None:
    found = work(
        "atm = 14.7 psi(a)",
        "receiver = 10 ft3 * (difference(90 psi(g)) + atm)",
        "pipe = 5 ft3 * atm",
        "p = difference((receiver + pipe) / 15 ft3 - atm) in psi(d)",
    )

    assert found.diagnostics == ()
    assert found.values["case.p"].text == "60.0 psi(d)"


def test_nothing_is_rounded_inside_a_sum(work: Work) -> None:
    """8 minutes on in 56: 128.57 ft3/min and 20.57 kW, not the 127.8 and 20.45 of 0.142 first."""
    found = work(
        "share = 8 min / (8 min + 48 min)",
        "leak = share * 900 ft3/min in ft3/min",
        "power = leak / (6.25 ft3/(min.kW)) in kW",
    )

    assert found.values["case.share"].text == "0.143"
    assert found.values["case.leak"].unit.from_si(found.values["case.leak"].si or 0) == (
        pytest.approx(900 / 7, rel=1e-12)
    )
    assert found.values["case.power"].text == "20.6 kW"


def test_the_metric_form_of_the_freeing_port_rule_is_in_no_method() -> None:
    """One square inch a cubic foot is 227.8 cm2 a cubic metre; the printed 4389.12 is not that."""
    assert pytest.approx(227.84, abs=0.01) == 6.4516 / 0.028316846592
    texts = " ".join(
        f"{method.title} {method.purpose} {[one.name for one in method.results]}"
        for method in METHODS.values()
    )
    assert "freeing" not in texts
