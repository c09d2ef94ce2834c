"""A round past several systems: one order of places, nothing lost, a column for each watch."""

from garboard.errors import Where
from garboard.records.base import Interval, Tag
from garboard.records.component import Component
from garboard.records.system import Round, RoundStop, System
from garboard.records.walks import round_names, walk_of, watches_of

HERE = Where("system.yml")


def _part(tag: str, place: str) -> Component:
    return Component(tag=Tag(tag), system=tag[:2], where=HERE, place=place)


def _system(code: str, *stops: RoundStop, every: str = "4 h") -> System:
    walked = {"sea watch": Round(every=Interval(every), order=stops)}
    return System(code=code, folder=code.lower(), where=HERE, rounds=walked)


def test_stops_of_all_systems_stand_in_the_order_of_the_places() -> None:
    air = _system("SA", RoundStop(tag=Tag("SA-PI-001")), RoundStop(tag=Tag("SA-PI-002")))
    bilge = _system("BG", RoundStop(tag=Tag("BG-BW-001")), RoundStop(tag=Tag("BG-BW-002")))
    parts = {
        "SA-PI-001": _part("SA-PI-001", "engine room, port side"),
        "SA-PI-002": _part("SA-PI-002", "wheelhouse"),
        "BG-BW-001": _part("BG-BW-001", "fore hold, frame 12"),
        "BG-BW-002": _part("BG-BW-002", "Engine room"),
    }

    walk = walk_of("sea watch", [air, bilge], parts, ("wheelhouse", "engine room", "fore hold"))

    tags = [one.stop.tag for one in walk.stops]
    assert tags == ["SA-PI-002", "SA-PI-001", "BG-BW-002", "BG-BW-001"]
    assert all(one.on_the_way for one in walk.stops)


def test_the_longer_name_of_a_place_wins_and_half_a_word_is_no_place() -> None:
    air = _system("SA", RoundStop(at="engine room, port side"), RoundStop(at="engine roommate"))
    places = ("engine room, port", "engine room")

    walk = walk_of("sea watch", [air], {}, places)

    assert [(one.place, one.on_the_way) for one in walk.stops] == [
        ("engine room, port side", True),
        ("engine roommate", False),
    ]


def test_a_stop_at_a_place_that_nobody_named_is_walked_last_and_not_lost() -> None:
    air = _system("SA", RoundStop(at="mast"), RoundStop(look="no tag and no place"))
    bilge = _system("BG", RoundStop(at="fore hold"))

    walk = walk_of("sea watch", [air, bilge], {}, ("fore hold",))

    assert [one.place for one in walk.stops] == ["fore hold", "mast", ""]
    assert [one.on_the_way for one in walk.stops] == [True, False, False]


def test_where_one_stands_goes_before_where_the_part_is() -> None:
    air = _system("SA", RoundStop(tag=Tag("SA-PI-001"), at="control position"))

    walk = walk_of("sea watch", [air], {"SA-PI-001": _part("SA-PI-001", "engine room")})

    assert walk.stops[0].place == "control position"


def test_rounds_of_one_name_are_one_round() -> None:
    systems = {"SA": _system("SA", RoundStop(at="a")), "BG": _system("BG", RoundStop(at="b"))}

    assert round_names(systems) == {"sea watch": ("SA", "BG")}


def test_each_watch_of_a_day_has_a_column() -> None:
    assert watches_of("6 h") == ("00", "06", "12", "18")
    assert watches_of("1.5 h")[:3] == ("00", "01:30", "03")
    assert len(watches_of("1 h")) == 24
    assert watches_of("24 h") == ("",)
    assert watches_of("500 running h") == watches_of("before each start") == ("",) * 4
