"""A handbook of one's own, started: the least that reads clean, with questions where facts belong."""

from collections.abc import Mapping
from pathlib import Path

from garboard.errors import GarboardError

__all__ = ["FILES", "start_handbook"]

FILES: Mapping[str, str] = {
    "content/handbook.yml": """\
# What belongs to the whole vessel.
vessel: Our Vessel
defers_to: [flag, class, surveyor, local codes, licensed trades]
systems: {BG: bilge}   # two capital letters, and the name of the folder under systems/
edition: {life: 12 months}
site:
  atmosphere: "1013 mbar(a) +/- 40 mbar [WEATHER]"
instruments: {}   # G-01: {what: test gauge 0-60 bar, serial: "1", calibrated: 2031-01-12, due: 2032-01-12}
holders:          # who is told when something changes; an edition needs one
  - {copy: "1", where: wheelhouse shelf, medium: paper}
""",
    "content/people.yml": """\
# One key a person. Only the role is ever printed; write no names, addresses or numbers here.
lead: {role: lead builder, may: [author, doer, in charge]}
reviewer-1: {role: remote reviewer, may: [author, checker, approver], class: A}
volunteer-1: {role: volunteer, may: [author, doer, verifier]}
""",
    "content/sources.yml": """\
# Where numbers come from. seen: original, secondary or remembered (which bears nothing of class A).
WEATHER: {title: barometer in the wheelhouse, edition: this year, seen: original, by: lead}
""",
    "content/glossary.yml": """\
# Words of the trade, and what the crew says for them; the search knows both.
strum box: {means: strainer on the end of a bilge suction, crew_words: [the rose]}
""",
    "content/index.md": """\
---
title: Handbook of Our Vessel
page: what it does
---
What is this vessel for, and who is this book for?

This book is a working copy and no approval. Flag, class, surveyor, local codes and licensed trades
decide.
""",
    "content/systems/bilge/system.yml": """\
system: BG
title: Bilge
status: sketch
purpose: keeps water out of the hull
medium: sea water
components:
  BW-001: {kind: compartment, name: Engine room bilge, place: engine room}
  ST-001: {kind: strainer, name: Strum box, place: engine room bilge}
  PU-001: {kind: pump, name: Bilge pump, type: centrifugal, makes: "1.2 bar(g) [assumed]", place: engine room}
  NV-001: {kind: check valve, name: Discharge check valve, place: engine room}
connections:
  - BW-001 > ST-001 > PU-001 > NV-001 > overboard
""",
    "content/log/.keep": "",
}
"""Path inside the new folder to text."""


def start_handbook(folder: Path, more: Mapping[str, str]) -> tuple[Path, ...]:
    """Write a started handbook into a new or empty folder.

    Args:
        folder: Where it goes; it must not exist, or be empty.
        more: Further files, path to text, such as the settings of a site generator.

    Returns:
        The files written.

    Raises:
        GarboardError: Something stands in the folder already.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise GarboardError(f"{folder} is not empty; name a new folder")
    written = []
    for path, text in {**FILES, **more}.items():
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, "utf-8", newline="\n")
        written.append(target)
    return tuple(written)
