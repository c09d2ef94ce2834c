"""A small handbook that an edition can be issued of: a relief valve, a calculation, a picture, a card."""

from pathlib import Path

from PIL import Image, ImageDraw

from tests.golden_case import BASE, lay_out

HANDBOOK = """\
vessel: Skerry Light
defers_to: [flag, class, surveyor, local codes, licensed trades]
systems: {SA: starting-air}
edition: {life: 12 months}
as_of: 2031-09-15
site: {atmosphere: "1013 mbar(a) [LOGBOOK]"}
holders:
  - {copy: "1", where: wheelhouse shelf, medium: paper}
  - {copy: "2", where: reviewer-1, medium: memory stick}
cards:
  - {card: K-01, of: SA-FT-001, place: start-air panel}
"""
SYSTEM = """\
title: Starting air
status: building
signed:
  - {capacity: in charge, by: lead, on: 2031-01-10, to: building}
components:
  SA-AR-001: {kind: receiver, name: receiver 1, rated: "33 bar(g) [plate-R1]"}
  SA-RV-001:
    kind: relief valve
    name: relief of receiver 1
    place: on the receiver
    set: 33 bar(g) [plate-R1]
    protects: SA-AR-001
    item: {serial: RV-1, due: 2034-01-14}
"""
SIZING = """\
---
id: SA-CL-001
title: Starts in one charge
system: SA
---
```calc sizing
V = 500 L  # both receivers [plate-R1]
each = 60 L  # one start [LOGBOOK]
n = V / each  # starts
require n >= 6  # enough [LOGBOOK]
```
It gives [8.33](value:sizing.n) starts.
"""
FAULT = """\
---
id: SA-FT-001
title: Engine does not turn
system: SA
---
Shut the stop valve of receiver 1 first.
"""
PAGE = """\
---
page: what it does
title: What starting air does
system: SA
---
The plant gives the engine air.

![plate of receiver 1, starboard side](photos/plate.png)
"""


def write(folder: Path, **changed: str) -> Path:
    """Lay the handbook out; files by name may be given anew, by path with `__` for a slash."""
    stem = "systems/starting-air"
    files = {
        "handbook.yml": HANDBOOK,
        "people.yml": BASE["people.yml"],
        "sources.yml": BASE["sources.yml"],
        f"{stem}/system.yml": SYSTEM,
        f"{stem}/sa-cl-001-starts.md": SIZING,
        f"{stem}/sa-ft-001-no-start.md": FAULT,
        f"{stem}/what-it-does.md": PAGE,
    }
    lay_out(folder, files | changed)
    picture = Image.new("RGB", (60, 40), "#8899aa")
    ImageDraw.Draw(picture).rectangle((0, 0, 20, 40), fill="#553311")
    (folder / stem / "photos").mkdir()
    picture.save(folder / stem / "photos" / "plate.png")
    return folder


def change(folder: Path, path: str, old: str, new: str) -> None:
    """Change one text that stands in a file exactly once."""
    text = (folder / path).read_text("utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {path}"
    (folder / path).write_text(text.replace(old, new), "utf-8")
