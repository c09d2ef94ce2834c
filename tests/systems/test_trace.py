"""The digest of connections moves with what a person with a torch could find, and with nothing else."""

import random

import pytest

from garboard.systems.trace import connections_digest
from tests.systems.pieces import AIR, plant_of

PARTS = {
    "CP-001": "{kind: compressor, makes: 42 bar(g)}",
    "NV-001": "{kind: check valve}",
    "AR-001": "{kind: receiver, rated: 33 bar(g)}",
    "TV-001": "{kind: three-way valve, positions: {left: [common-a], right: [common-b]}, usual: left}",
    "PS-001": "{kind: pressure switch, stops: CP-001}",
    "HV-001": "{kind: drain valve, usual: shut}",
    "EN-001": "{kind: consumer}",
}
RUNS = (
    "CP-001 > NV-001 > filling line",
    "filling line > AR-001",
    "filling line > PS-001",
    "AR-001.drain > HV-001 > bilge",
    "AR-001.out > TV-001.common",
    "TV-001.a > EN-001",
    "TV-001.b > deck",
)
HEADER = "filling line: {tag: LN-001}"


def digest(
    parts: dict[str, str] = PARTS, runs: tuple[str, ...] = RUNS, header: str = HEADER
) -> str:
    """The digest of a small plant."""
    listed = "".join(f"  {tag}: {text}\n" for tag, text in parts.items())
    joined = "".join(f"  - {run}\n" for run in runs)
    text = f"{AIR}components:\n{listed}headers:\n  {header}\nconnections:\n{joined}"
    return connections_digest(plant_of(text))


def with_run(number: int, *runs: str) -> tuple[str, ...]:
    """The runs with others in place of one."""
    return (*RUNS[:number], *runs, *RUNS[number + 1 :])


@pytest.mark.parametrize("seed", range(20))
def test_the_order_of_runs_and_of_parts_does_not_count(seed: int) -> None:
    order = random.Random(seed)  # noqa: S311 - not for secrets
    parts = dict(order.sample(sorted(PARTS.items()), len(PARTS)))
    runs = tuple(order.sample(RUNS, len(RUNS)))

    assert digest(parts, runs) == digest()


@pytest.mark.parametrize(
    ("parts", "runs", "header"),
    [
        (PARTS, with_run(0, "CP-001 > NV-001", "NV-001 > filling line"), HEADER),
        (PARTS, with_run(4, "{run: AR-001.out > TV-001.common, size: 15 mm}"), HEADER),
        (PARTS, RUNS, "filling line: {tag: LN-001, place: port side, size: 15 mm}"),
        ({**PARTS, "HV-001": "{kind: drain valve, name: Drain, place: aft}"}, RUNS, HEADER),
        ({**PARTS, "AR-001": "{kind: receiver, rated: 30 bar(g), volume: 250 L}"}, RUNS, HEADER),
        ({**PARTS, "PI-009": "{kind: gauge}"}, RUNS, HEADER),
    ],
    ids=["run cut in two", "size", "header placed", "names", "ratings", "part joined nowhere"],
)
def test_words_numbers_and_cutting_do_not_count(
    parts: dict[str, str], runs: tuple[str, ...], header: str
) -> None:
    assert digest(parts, runs, header) == digest()


TURNED = "{kind: three-way valve, positions: {left: [common-b], right: [common-a]}, usual: left}"


@pytest.mark.parametrize(
    ("parts", "runs"),
    [
        (PARTS, with_run(2, "AR-001.gauge > PS-001")),
        (PARTS, with_run(3, "AR-001.service > HV-001 > bilge")),
        (PARTS, with_run(3, "AR-001.drain > HV-001 > deck")),
        (PARTS, with_run(0, "CP-001 > NV-001.out", "NV-001.in > filling line")),
        (PARTS, (*with_run(5, "TV-001.a > deck")[:-1], "TV-001.b > EN-001")),
        (PARTS, RUNS[:-1]),
        (PARTS, (*RUNS, "filling line > bilge")),
        (PARTS, (*RUNS, "TV-001.b > deck")),
        ({**PARTS, "NV-001": "{kind: stop valve}"}, RUNS),
        ({**PARTS, "TV-001": TURNED}, RUNS),
    ],
    ids=[
        "tap moved",
        "another port",
        "another end",
        "check valve turned round",
        "ports exchanged",
        "run left out",
        "run added",
        "second open end",
        "another kind",
        "positions exchanged",
    ],
)
def test_what_a_torch_would_show_counts(parts: dict[str, str], runs: tuple[str, ...]) -> None:
    assert digest(parts, runs) != digest()


def test_a_header_is_known_by_its_tag_and_without_one_by_its_name() -> None:
    renamed = tuple(run.replace("filling line", "fill") for run in RUNS)

    assert digest(runs=renamed, header="fill: {tag: LN-001}") == digest()
    assert digest(runs=renamed, header="fill: {}") != digest(header="filling line: {}")


def test_a_system_without_connections_has_no_digest() -> None:
    assert connections_digest(plant_of(f"{AIR}components:\n  AR-001: {PARTS['AR-001']}\n")) == ""
