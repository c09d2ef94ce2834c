"""A handbook made by hand: one page of every block kind, and the starting air of a small vessel."""

from dataclasses import dataclass, replace
from typing import Any, cast

from garboard.errors import Diagnostic, Severity, Where
from garboard.handbook import Handbook
from garboard.views.contents import Entry, Section, Target
from garboard.views.page import (
    Bullets,
    Calculation,
    Column,
    Drawing,
    Facts,
    Fold,
    Heading,
    HowSure,
    Ladder,
    Link,
    Message,
    MoverRow,
    Page,
    Paragraph,
    Photo,
    Plate,
    Prose,
    Review,
    Row,
    Rung,
    RungSort,
    Schematic,
    Shown,
    SourceLine,
    Step,
    Steps,
    Strong,
    Table,
    Tick,
    Tiles,
    WorkedLine,
)

VALUES = {
    "SA-RV-001.set": "30 bar(g)",
    "SA-PS-001.set": "18 bar(g)",
    "receiver-sizing.n": "9 starts",
    "receiver-sizing.p_min": "12 bar(g)",
    "receiver-sizing.lost": "not computed",
}
IN_PSI = {"SA-RV-001.set": "435 psi(g)"}

NOT_REVIEWED = Review("NOT REVIEWED. Nobody has checked this page.")
REVIEWED = Review(
    "Reviewed 12 May 2027 by two people, edition 7. Nothing it rests on has changed.", trusted=True
)
DEFERRAL = (
    "An estimate to be checked, not a design approval. Flag state, class, surveyor, local pressure,"
    " electrical and fire codes and licensed trades decide."
)


@dataclass(frozen=True, slots=True)
class SampleHandbook(Handbook):
    """A handbook that knows its few values by heart, and has no book behind it."""

    @property
    def vessel(self) -> str:
        return "Skerry Light"

    def show(self, address: str, unit: str = "") -> str | None:
        return (IN_PSI if unit == "psi" else VALUES).get(address)

    def agrees(self, typed: str, address: str, unit: str = "") -> bool:
        shown = self.show(address, unit) or ""
        return typed == shown or shown.split(" ")[0] == typed


def prose(text: str, path: str = "systems/starting-air/what-it-does.md") -> Prose:
    return Prose(text, Where(path, 9, 1))


DANGER = Message(
    "DANGER",
    (
        "Air at ",
        Shown("SA-RV-001.set", "30 bar(g)", strong=True),
        " in the filling line and both receivers",
    ),
    ("It throws a loosened fitting through a hand or an eye.",),
    (
        "Open no fitting before ",
        Plate("SA-PI-001"),
        " reads 0 bar(g) and ",
        Plate("SA-HV-009"),
        " blows nothing.",
    ),
    "SA-HZ-001",
)
WARNING = Message(
    "WARNING",
    ("Hot discharge pipe, 140 degC, at knee height",),
    ("It burns bare skin at a touch.",),
    ("Wait until the hand held 5 cm from it feels no heat.",),
    "SA-HZ-002",
)
CAUTION = Message(
    "CAUTION",
    ("Noise of 105 dB(A) while the drain blows",),
    ("It harms hearing within minutes.",),
    ("Put on ear defenders before opening the drain.",),
    "SA-HZ-003",
)
NOTICE = Message(
    "NOTICE",
    ("Water in the start header",),
    ("It cracks the starting valve in frost.",),
    ("Drain it daily.",),
)

HOLD = Diagnostic(
    Where("systems/starting-air/system.yml", 41, 10),
    Severity.HOLD,
    "SA-PS-001 can be cut off from SA-AR-001 by SA-HV-006",
    "tap it before SA-HV-006, or secure that valve open and put it on a round",
    "switch-cut-off",
    fingerprint="e2c873b51b9e2581",
)
WARN = Diagnostic(
    Where("systems/starting-air/procedures.md", 12, 3),
    Severity.WARN,
    "step 4 holds two actions",
    "make it two steps",
    "vague-step",
)

PROCEDURE = Page(
    key="SA-PR-001",
    path="id/SA-PR-001",
    title="Empty the start header",
    kind="procedure",
    review=NOT_REVIEWED,
    system="SA",
    system_title="Starting air",
    ident="SA-PR-001",
    status="in test",
    blocks=(
        Steps(
            (
                Step(
                    "1",
                    "Shut",
                    (Plate("SA-HV-006"), " receiver 1 stop valve"),
                    "on the receiver, port side",
                    see=("shut, handwheel hard down",),
                    if_not=("If it will not shut, stop and call the person in charge.",),
                    message=DANGER,
                    under="At: receiver 1",
                    anchor="step-1",
                ),
                Step(
                    "2",
                    "Shut",
                    (Plate("SA-HV-007"), " receiver 2 stop valve"),
                    "on the receiver, starboard side",
                    see=("shut, handwheel hard down",),
                ),
                Step(
                    "3",
                    "Open",
                    (Plate("SA-HV-009"), " header drain valve"),
                    "under the gangway, knee height",
                    to="one turn",
                    see=("0 bar(g) on ", Plate("SA-PI-001")),
                    within="2 min",
                    if_not=(
                        Strong("If not:"),
                        " go back to ",
                        Link("SA-PR-001#step-1", "step 1"),
                        ": a stop valve leaks.",
                    ),
                    second="a second person checks by themselves",
                ),
                Step(
                    "4",
                    "Hang",
                    ("tag 12 on ", Plate("SA-HV-006")),
                    see=("tag hung",),
                    hold=(
                        "HOLD POINT ",
                        Link("SA-IT-001", "header empty"),
                        ": the surveyor releases it.",
                    ),
                    message=NOTICE,
                ),
            ),
            end="Empty the start header complete",
        ),
        Heading("Before you start"),
        Facts((("People", ("two",)), ("Tools", ("19 mm spanner, tags",)), ("Time", ("15 min",)))),
    ),
    sources=(SourceLine(1, "plate-R1", "plate of receiver 1, 1961", "original"),),
    deferral=DEFERRAL,
    used_on=(Link("SA-AL-001", "Low starting air"),),
    last_change="2031-03-11, SA-CN-002: second low-air switch",
    source_path="systems/starting-air/empty-header.md",
)

SURE = HowSure(
    "starts in one charge",
    (("Between 8 and 10 if everything is at its worst.",), ("Usually between 8.4 and 9.7.",)),
    (MoverRow(("free air of one start",), "63 %", 0.63, "8", "10"), MoverRow(("cut-out",), "33 %", 0.33, "8", "9")),
    "and 2 smaller ones, 4 % together",
)  # fmt: skip

CALCULATION = Calculation(
    "receiver-sizing",
    "How many starts one charge holds",
    (
        WorkedLine("p_max", "receiver-sizing.p_max", "compressor cut-out", "p_max = 30 bar(g)", "", "30 bar(g)", "29.5 to 30.5 bar(g) at worst", given=True, sources=(1,)),
        WorkedLine("V", "receiver-sizing.V", "both receivers, water volume", "V = 2 x 250 L = 500 L", "", "500 L", "", given=True, sources=(1, 2)),
        WorkedLine("p_min", "receiver-sizing.p_min", "lowest that still turns the engine", "p_min = 12 bar(g)", "", "12 bar(g)", "", given=True),
        WorkedLine("stored", "receiver-sizing.stored", "air between the two pressures",
                   "stored = V x (p_max - p_min) / p_n = 500 L x 18 bar / 1.013 bar = 8.12 m3(n)",
                   "<math display='block'><mrow><mi>stored</mi><mo>=</mo><mfrac><mrow><mi>V</mi><mo>(</mo><msub><mi>p</mi><mi>max</mi></msub><mo>−</mo><msub><mi>p</mi><mi>min</mi></msub><mo>)</mo></mrow><msub><mi>p</mi><mi>n</mi></msub></mfrac><mo>=</mo><mn>8.12</mn><mtext> m³(n)</mtext></mrow></math>",
                   "8.12 m3(n)", "", given=False),
        WorkedLine("lost", "receiver-sizing.lost", "what leaks in a night", "", "", "not computed", "", given=False, fault="leak_rate is not given"),
        WorkedLine("n", "receiver-sizing.n", "starts in one charge", "n = floor(8.12 / 0.9) = 9", "<math><mi>n</mi><mo>=</mo><mn>9</mn></math>", "9 starts", "", given=False, sources=(2,), sure=SURE),
        WorkedLine("require", "receiver-sizing.require-1", "six starts, non-reversible engine", "n >= 6", "", "", "", given=False, kind="requirement", verdict="holds at the worst corner, margin 2 starts (33 %)", sources=(3,)),
        WorkedLine("require", "receiver-sizing.require-2", "twelve starts, reversible engine", "n >= 12", "", "", "", given=False, kind="requirement", verdict="fails: 9 starts, needs 12", fails=True),
        WorkedLine("note", "receiver-sizing.note-1", "Cold air holds more: count in winter.", "", "", "", "", given=False, kind="note"),
    ),
    rests_on=Table("Rests on, from other pages", (Column("what it is"), Column("value", number=True)), ((Row((("barometer",), ("1013 mbar(a)",)))),)),
    tables=(Table("Rows read", (Column("engine"), Column("starts", number=True)), ((Row((("non-reversible",), ("6",)))),)),),
)  # fmt: skip

LIMITS = Table(
    "Starting air, in test",
    (Column("item"), Column("low", number=True, strong=True), Column("normal", number=True),
     Column("high", number=True, strong=True), Column("unit")),
    (
        Row(((Plate("SA-AR-001"), " pressure"), ("18",), ("25 to 30",), ("30",), ("bar(g)",)), "SA-AR-001.p"),
        Row((("Oil pressure",), ("1.2",), ("2.5",), ("none",), ("bar(g)",))),
        Row((("Discharge temperature",), ("none",), ("110",), ("140",), ("degC",))),
        Row((("Drain interval",), ("none",), ("4",), ("8",), ("h",))),
        Row((("Belt sag",), ("8",), ("10",), ("12",), ("mm",))),
        Row((("Leak over a night",), ("none",), ("0.4",), ("not computed",), ("bar",))),
    ),
)  # fmt: skip

LADDER = Ladder(
    "Pressure in the receivers, bar(g)",
    (
        Rung("rating", ("33 bar(g)",), (Plate("SA-AR-001"), " the weaker of the two"), 1.0),
        Rung("relief", (Shown("SA-RV-001.set", "30 bar(g)"),), (Plate("SA-RV-001"),), 0.86),
        Rung("trip", ("29.5 bar(g)",), (Plate("SA-PS-003"),), 0.83),
        Rung("measured", ("29 bar(g)",), ("12 May 2031",), 0.8, strong=False, sort=RungSort.MEASURED),
        Rung("normal", ("25 to 28 bar(g)",), ("both receivers",), 0.6, strong=False,
             sort=RungSort.DESIGN, band=(0.56, 0.7)),
        Rung("low alarm", (Shown("SA-PS-001.set", "18 bar(g)"),), (Plate("SA-PS-001"),), 0.29),
        Rung("measured", ("17.9 bar(g)",), ("outside the tolerance",), 0.28, sort=RungSort.OUT),
        Rung("least for function", ("12 bar(g)",), ("turns the cold engine",), 0.0),
    ),
    (Tick(0.59, "25"), Tick(0.86, "30")),
)  # fmt: skip

WRITTEN = """\
The plant gives the engine its first turns. Without it the vessel has one anchor and no engine.
The relief valve SA-RV-001 lifts at [30 bar(g)](value:SA-RV-001.set), that is
[](value:SA-RV-001.set?in=psi); why is told in SA-DD-003. One charge holds
[9 starts](value:receiver-sizing.n).

## What is lost, and how soon

- no start after [8 starts](value:receiver-sizing.n)
- the whistle, at once: see [the alarm](alarms/low-air.md)

| loss | after |
|---|--:|
| engine | 2 h |
| whistle | 0 h |

`SA-RV-001` in code stays as it is. Nothing leads from XX-YY-999.

![The two receivers on the port side](../../photos/receivers.jpg)
"""

WHAT_IT_DOES = Page(
    key="starting-air/what-it-does",
    path="starting-air/what-it-does",
    title="What starting air does",
    kind="what it does",
    review=REVIEWED,
    system="SA",
    system_title="Starting air",
    ident="SA",
    status="in test",
    messages=(WARNING, CAUTION),
    standing=(HOLD, WARN),
    blocks=(
        prose(WRITTEN),
        Photo(
            "photos/receivers.jpg",
            "Both receivers seen from the gangway",
            "From the gangway, 9 March 2031",
        ),
        Fold(
            "Decisions, 2",
            (
                Bullets(
                    ((Link("SA-DD-003", "Low-air switch on each receiver"),), ("an older one",))
                ),
            ),
        ),
        Paragraph(("Nothing more is recorded.",), quiet=True),
    ),
    used_on=(Link("index", "Front page"),),
    last_change="2031-03-11, SA-CN-002",
    source_path="systems/starting-air/what-it-does.md",
)

NORMAL = Page(
    key="starting-air/normal-values",
    path="starting-air/normal-values",
    title="Normal values",
    kind="normal values",
    review=Review(
        "NOT SAFE TO RELY ON. Open safety finding SA-FN-012: the sensing line can be shut off."
    ),
    system="SA",
    system_title="Starting air",
    ident="SA",
    status="in test",
    standing=(HOLD,),
    blocks=(LADDER, LIMITS, Table("Concessions", (Column("id"), Column("until")), ())),
)

SIZING = Page(
    key="SA-CL-001",
    path="id/SA-CL-001",
    title="Receiver sizing",
    kind="calculation",
    review=Review("PARTLY REVIEWED 12 May 2027, edition 7. Not checked: pump curve.", trusted=True),
    system="SA",
    system_title="Starting air",
    ident="SA-CL-001",
    blocks=(CALCULATION,),
    sources=(
        SourceLine(1, "plate-R1", "plate of receiver 1, 1961", "original"),
        SourceLine(2, "SA-TR-006", "SA-TR-006 cold start test", ""),
        SourceLine(3, "IACS-UR-M61", "starting arrangements, Rev.3 2024, M61.1.4", "secondary"),
    ),
    deferral=DEFERRAL,
)

SVG = (
    '<svg viewBox="0 0 300 80" width="300" height="80" role="graphics-document"><title>Starting air</title>'
    '<path d="M20 40H280" fill="none" stroke="currentColor" stroke-width="3"/>'
    '<a href="find:SA-RV-001"><text x="120" y="30" fill="currentColor" font-size="14">RV-001</text></a></svg>'
)
LAYOUT = Page(
    key="starting-air/layout",
    path="starting-air/layout",
    title="Layout",
    kind="layout",
    review=NOT_REVIEWED,
    system="SA",
    system_title="Starting air",
    ident="SA",
    blocks=(
        Drawing(
            "Starting air, not to scale",
            SVG,
            (("from ", Plate("SA-AR-001"), " to ", Plate("SA-HV-006")),),
        ),
        Schematic(
            "Starting air: schematic",
            SVG.replace("<svg ", '<svg id="sa-1" ', 1).replace("<title>", '<title id="sa-1-t">'),
            ("sa-1", "sa-1-t"),
        ),
        Bullets((("first ", Strong("the compressor")), ("then the receivers",)), ordered=True),
    ),
)


def _stub(key: str, title: str, kind: str) -> Page:
    return Page(
        key=key, path=f"id/{key}", title=title, kind=kind, review=NOT_REVIEWED, system="SA",
        system_title="Starting air", ident=key, blocks=(Paragraph((f"{title}, recorded.",)),),
    )  # fmt: skip


TAGS = {
    "SA-AR-001": "air receiver 1",
    "SA-RV-001": "relief valve of receiver 1",
    "SA-HV-006": "receiver 1 stop valve",
    "SA-HV-007": "receiver 2 stop valve",
    "SA-HV-009": "header drain valve",
    "SA-PI-001": "header gauge",
    "SA-PS-001": "low-air switch of receiver 1",
    "SA-PS-003": "compressor trip",
}
RECORDS = {
    "SA-DD-003": ("Low-air switch on each receiver", "decision"),
    "SA-FN-012": ("Low-air switch behind the stop valves", "finding"),
    "SA-HZ-001": ("Air at 30 bar(g)", "hazard"),
    "SA-HZ-002": ("Hot discharge pipe", "hazard"),
    "SA-HZ-003": ("Noise of the drain", "hazard"),
    "SA-IT-001": ("Header empty", "plan line"),
    "SA-CN-002": ("Second low-air switch", "change"),
    "SA-TR-006": ("Cold start test", "test"),
}
ALARM = replace(
    _stub("SA-AL-001", "STARTING AIR PRESS LOW", "alarm"),
    blocks=(
        Steps((Step("1", "Start", (Plate("SA-PS-003"), " the compressor"), see=("25 bar(g)",)),)),
        Facts(
            (("Alarm priority", ("warning",)), ("Set at", (Shown("SA-PS-001.set", "18 bar(g)"),)))
        ),
    ),
    source_path="systems/starting-air/alarms/low-air.md",
)
ALARMS = Page(
    "registers/alarms", "registers/alarms", "Alarms", "register", NOT_REVIEWED, blocks=(
        Tiles((
            (Link("SA-AL-001", "STARTING AIR PRESS LOW"), "Starting air, set at 18 bar(g)"),
            (Link("SA-AL-001", "BILGE HIGH ER"), "Bilge and fire"),
        )),
    ),
)  # fmt: skip
FRONT = Page(
    "index", "index", "Skerry Light", "front page", NOT_REVIEWED, blocks=(
        Paragraph(("A handbook of an invented vessel.",)),
        Tiles((
            (Link("registers/alarms", "Alarms"), "by what the panel says"),
            (Link("starting-air/what-it-does", "Starting air"), "in test"),
            (Link("contents", "All contents"), ""),
        )),
    ),
)  # fmt: skip


def handbook() -> SampleHandbook:
    """The whole sample, made anew."""
    pages = (
        FRONT, ALARMS, WHAT_IT_DOES, LAYOUT, NORMAL, PROCEDURE, ALARM, SIZING,
        *(_stub(tag, name, "component") for tag, name in TAGS.items()),
        *(_stub(key, title, kind) for key, (title, kind) in RECORDS.items()),
    )  # fmt: skip
    targets = {page.key: Target(page.path, "", page.title) for page in pages}
    for line in CALCULATION.lines:
        targets[line.anchor] = Target(SIZING.path, line.anchor, line.label)
    targets["SA-RV-001.set"] = Target("id/SA-RV-001", "", "set")
    targets["SA-PS-001.set"] = Target("id/SA-PS-001", "", "set")
    written = (
        "starting-air/what-it-does",
        "starting-air/layout",
        "starting-air/normal-values",
        "SA-PR-001",
        "SA-AL-001",
        "SA-CL-001",
    )
    sections = (
        Section(
            "Starting air",
            written,
            (Section("Parts", tuple(TAGS)), Section("Records", tuple(RECORDS))),
        ),
        Section("Vessel", ("registers/alarms",)),
    )
    return SampleHandbook(cast("Any", None), (HOLD, WARN), pages, sections, entries(pages), targets)


def entries(pages: tuple[Page, ...]) -> tuple[Entry, ...]:
    more = {
        "SA-RV-001": (("30 bar(g)", "RV-4471"), "pops, blows off, set pressure", "Lifts at 30 bar(g), protects SA-AR-001."),
        "SA-AL-001": (("STARTING AIR PRESS LOW",), "won't turn over, no air", "First: start the compressor. Set at 18 bar(g)."),
        "SA-FN-012": ((), "switch valve shut", "SA-PS-001 can be cut off by SA-HV-006."),
        "SA-CL-001": (("500 L",), "starts charge", "One charge holds 9 starts."),
        "SA-HV-006": (("Sjøsetting",), "handwheel", "Stop valve, port side."),
    }  # fmt: skip
    made = []
    for page in pages:
        keys, words, text = more.get(page.key, ((), "", ""))
        own = (page.key,) if page.ident == page.key else ()
        review = page.review.words.partition(".")[0]
        made.append(
            Entry(
                page.title,
                page.kind,
                page.system_title,
                page.path,
                "",
                review,
                own + keys,
                words,
                text,
            )
        )
    return tuple(made)
