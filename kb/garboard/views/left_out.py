"""What of a handbook is not printed in a binder, where it is, and which page of the binder stands for it.

The cover says the first two; the third is where a printed link to it leads.
"""

from dataclasses import dataclass

__all__ = [
    "CARD",
    "CHANGES",
    "EARLIER",
    "KEYS_LEFT_OUT",
    "KINDS_LEFT_OUT",
    "ONLY_IN_ITS_BINDER",
    "SOURCES",
    "SOURCES_ELSEWHERE",
    "TOLD_UNDER",
    "UNWRITTEN",
    "LeftOut",
]

CARD = "quick card"
WORKED = "calculation"


@dataclass(frozen=True, slots=True)
class LeftOut:
    """What is not printed, and where it is."""

    what: str
    where: str


SITE = "in the handbook on the screen"
KINDS_LEFT_OUT = {
    "part": LeftOut("a page for each part", "its row in the register of tags, and its system's layout"),
    "line-ups drawn": LeftOut("each line-up drawn", "in words under Line-ups and valves; drawn " + SITE),
    "questions to the layout": LeftOut("what each layout was asked", SITE),
    "hazard": LeftOut("the record of each hazard", "its message under What could hurt you"),
    "test": LeftOut("the record of each test", "results under Tests and proof; readings " + SITE),
    "plan line": LeftOut("each line of the inspection plans", "under Tests and proof"),
    "decision": LeftOut("each decision in full", "one sentence under Why it is so; reasons " + SITE),
    "change": LeftOut("each change in full", "under Why it is so; what it reached " + SITE),
    "finding": LeftOut("each finding in full", "under What went wrong"),
    "action": LeftOut("each corrective action", "under What went wrong"),
    "lesson": LeftOut("each lesson in full", "under What went wrong"),
    "review": LeftOut("the words of reviews", SITE),
    "open item": LeftOut("each open item", "under May it be run?"),
    "work package": LeftOut("job sheets", "printed singly for the job, " + SITE),
    "job sheet": LeftOut("job sheets", "printed singly for the job, " + SITE),
    CARD: LeftOut("quick cards", "printed by themselves"),
    "method": LeftOut("bundled methods in full", SITE),
    "rule": LeftOut("the rules that are checked", SITE),
    "manual": LeftOut("the manual of the tool", SITE),
    "report": LeftOut("reports of the checks", SITE),
    "list of pages": LeftOut("lists of effective pages", SITE),
    "front page": LeftOut("the front page", "the contents take its place"),
}  # fmt: skip
"""By page kind."""
UNWRITTEN = LeftOut("isolations that no procedure was written for", SITE)
IN_ITS_BINDER = "in the binder of its system"
IN_EVERY_BINDER = "in the binder of every system"
ONLY_IN_ITS_BINDER = {
    WORKED: LeftOut(
        "the working of each calculation", f"{IN_ITS_BINDER}; what must hold, under Normal values"
    ),
    "calculations": LeftOut("lists of calculations", IN_ITS_BINDER),
    "isolations": LeftOut("lists of what can be shut off", IN_ITS_BINDER),
    "tests and proof": LeftOut("Tests and proof", IN_ITS_BINDER),
    "maintenance": LeftOut("Maintenance", f"{IN_ITS_BINDER}; what is due, among the registers"),
    "maintenance task": LeftOut("each maintenance task in full", IN_ITS_BINDER),
    "how to rebuild it": LeftOut("How to rebuild it", IN_ITS_BINDER),
    "required reading": LeftOut("required reading", IN_EVERY_BINDER),
}
"""What one works through beside one system and nobody looks for in a hurry: two sheets of the whole
book in five, and with them it fills two binders."""
SOURCES = "registers/sources"
SOURCES_ELSEWHERE = LeftOut("the register of sources", "at the end of each section; whole, " + SITE)
CHANGES = LeftOut("what an edition changed, record by record", "in the whole book")
EARLIER = LeftOut("earlier editions", SITE)
KEYS_LEFT_OUT = {
    "registers/values": LeftOut("where each value comes from", SITE),
    "registers/records": LeftOut("the register of records", SITE),
    "registers/decisions": LeftOut("decisions by date", SITE),
    "registers/findings": LeftOut("the register of findings", "under What went wrong"),
    "registers/who-caught-what": LeftOut("who caught what", SITE),
    "registers/lessons": LeftOut("the register of lessons", "under What went wrong"),
    "registers/milestones": LeftOut("what must be done before what", SITE),
    "registers/to-be-filed": LeftOut("notes not filed yet", SITE),
    "registers/path-findings": LeftOut("what the layouts show", "under May it be run?"),
    "registers/labels": LeftOut("labels for valves", "printed by themselves"),
}
"""Pages of the vessel that are for a desk."""
TOLD_UNDER = {
    "hazard": "hazards",
    "finding": "what went wrong",
    "action": "what went wrong",
    "lesson": "what went wrong",
    "decision": "why it is so",
    "change": "why it is so",
    "open item": "open against it",
    "test": "tests and proof",
    "plan line": "tests and proof",
}
"""By page kind: on which page of its system a record is told that has no page in the book."""
