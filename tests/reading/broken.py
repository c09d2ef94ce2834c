"""Broken front matter, one fault a case: what it says, the lines, and every word of the answer."""

__all__ = ["BROKEN", "HEAD"]

HEAD = "---\nid: SA-FN-001\ntitle: Low air\nsystem: SA\n"
"""Four lines; what a case writes starts on line 5."""

BROKEN: dict[str, tuple[str, str]] = {
    "a key that is not known gets the nearest one": (
        "clas: A",
        (
            "a.md:5:1: STOP: key clas is not known [unreadable-record]\n"
            "  help: write class, or remove it"
        ),
    ),
    "a key of another kind names its owner": (
        "set: SA-PS-001.set",
        (
            "a.md:5:1: STOP: key set is not known [unreadable-record]\n"
            "  help: remove it, or say it in the text: set belongs to alarm"
        ),
    ),
    "a key far from any lists what is known": (
        "xyzzy: A",
        (
            "a.md:5:1: STOP: key xyzzy is not known [unreadable-record]\n"
            "  help: remove it; known here: id, title, system, class, state, author, drafted, "
            "revision, affects, sources, supersedes, follows, effective, media, gaps, signed, "
            "words, grade, where, found, danger, interim, against, requirement, cause, escaped, "
            "extent, disposition, actions, effective_on, credit"
        ),
    ),
    "a key that stands twice": (
        ("danger: none\ndanger: immediate"),
        (
            "a.md:6:1: STOP: key danger stands twice, first on line 5 [unreadable-record]\n"
            "  help: keep one"
        ),
    ),
    "a colon in unquoted text": (
        "words: Gauge said: nothing",
        (
            "a.md:5:18: STOP: a colon stands in unquoted text [unreadable-record]\n"
            '  help: write words: "Gauge said: nothing"'
        ),
    ),
    "a hash that cuts text short": (
        "words: Update #2 of the gauge",
        (
            "a.md:5:15: STOP: `#2 of the gauge` is left out as a comment [unreadable-record]\n"
            "  help: put the whole text in quotes; before a comment write two spaces, after # "
            "one"
        ),
    ),
    "a hash that starts the text": (
        "words: #2 gauge reads low",
        (
            "a.md:5:8: STOP: `#2 gauge reads low` is left out as a comment "
            "[unreadable-record]\n"
            "  help: put the whole text in quotes; before a comment write two spaces, after # "
            "one"
        ),
    ),
    "a comment set off by one space only": (
        "danger: none # I think",
        (
            "a.md:5:14: STOP: `# I think` is left out as a comment [unreadable-record]\n"
            "  help: put the whole text in quotes; before a comment write two spaces, after # "
            "one"
        ),
    ),
    "a key without a space behind its colon": (
        "danger:none",
        (
            "a.md:5:7: STOP: no space stands after danger: [unreadable-record]\n"
            "  help: write a space after the colon"
        ),
    ),
    "a line without a colon": (
        "danger none",
        (
            "a.md:5:1: STOP: `danger none` has no colon, so it is neither key nor text "
            "[unreadable-record]\n"
            "  help: write key: value, or set the line in under the text it belongs to"
        ),
    ),
    "a line set in too far": (
        ("danger: none\n  grade: observation"),
        (
            "a.md:6:3: STOP: this line is set in further than the one above, and runs on its "
            "text [unreadable-record]\n"
            "  help: set it under the key above, or quote the text"
        ),
    ),
    "a quote never closed": (
        "words: 'Hissing after stop",
        (
            "a.md:5:8: STOP: the quote ' is never closed [unreadable-record]\n"
            "  help: close it with '"
        ),
    ),
    "text behind a closing quote": (
        'words: "Hissing" after stop',
        (
            'a.md:5:18: STOP: `after stop` follows the closing " [unreadable-record]\n'
            "  help: put the whole text in one pair of quotes"
        ),
    ),
    "a bracket never closed": (
        "where: [SA-RV-001, SA-RV-002",
        (
            "a.md:5:8: STOP: the [ is not closed on its line [unreadable-record]\n"
            "  help: close it, or put the text within it in quotes"
        ),
    ),
    "brackets in unquoted text of a one-line entry": (
        "found: {by: lead, on: 2031-03-09, during: test [first]}",
        (
            "a.md:5:48: STOP: `[` stands in unquoted text within { [unreadable-record]\n"
            "  help: put the text before it and the [ in quotes together"
        ),
    ),
    "a comma that ends the text of a one-line entry": (
        "found: {by: lead, on: 2031-03-09, during: test, the first}",
        (
            "a.md:5:49: STOP: key the first is not known [unreadable-record]\n"
            "  help: put the text before it in quotes: a comma ends the text of a one-line "
            "entry"
        ),
    ),
    "a tab": (
        "danger:\tnone",
        ("a.md:5:8: STOP: a tab stands here [unreadable-record]\n  help: write spaces"),
    ),
    "an anchor": (
        "words: &first Hissing",
        (
            "a.md:5:8: STOP: `&first` names this text for use elsewhere [unreadable-record]\n"
            "  help: delete it, or put the text in quotes"
        ),
    ),
    "an alias": (
        "words: *first",
        (
            "a.md:5:8: STOP: `*first` would stand for text from elsewhere [unreadable-record]\n"
            "  help: write the text itself, or put it in quotes"
        ),
    ),
    "a tag": (
        "words: !!str Hissing",
        (
            "a.md:5:8: STOP: `!!str` asks for a type [unreadable-record]\n"
            "  help: delete it, or put the text in quotes"
        ),
    ),
    "a merge key": (
        "<<: {danger: none}",
        (
            "a.md:5:1: STOP: `<<` would draw in another mapping [unreadable-record]\n"
            "  help: write its entries here"
        ),
    ),
    "a list as a key": (
        ("? [a, b]\n: c"),
        (
            "a.md:5:3: STOP: a list or mapping stands as a key [unreadable-record]\n"
            "  help: write a word as the key"
        ),
    ),
    "a word for nothing": (
        "words: ~",
        (
            "a.md:5:8: STOP: `~` means nothing [unreadable-record]\n"
            "  help: leave it empty, or put it in quotes"
        ),
    ),
    "a reserved sign at the start of text": (
        "words: @lead saw it",
        (
            "a.md:5:8: STOP: `@` cannot start unquoted text [unreadable-record]\n"
            "  help: put the text in quotes"
        ),
    ),
    "a percent sign at the start of text": (
        "words: %5 low",
        (
            "a.md:5:8: STOP: `%` cannot start unquoted text [unreadable-record]\n"
            "  help: put the text in quotes"
        ),
    ),
    "a backslash in double quotes": (
        'words: "C:\\gauge"',
        (
            "a.md:5:11: STOP: `\\g` in double quotes is no sign [unreadable-record]\n"
            "  help: write \\\\ for a backslash, or use single quotes"
        ),
    ),
    "a dash without a space": (
        ("where:\n  - SA-RV-001\n  -SA-RV-002"),
        (
            "a.md:7:3: STOP: no space stands after the dash [unreadable-record]\n"
            "  help: write a space after it"
        ),
    ),
    "a dash that runs on the line above": (
        ("where:\n  - SA-RV-001\n   -SA-RV-002"),
        (
            "a.md:7:4: STOP: a dash without a space runs on the text above "
            "[unreadable-record]\n"
            "  help: write a space after the dash, or quote the text\n"
            "a.md:6:5: STOP: where[0]: `SA-RV-001 -SA-RV-002` is no id or tag "
            "[unreadable-record]\n"
            "  help: write the id alone; say the rest in the text below"
        ),
    ),
    "a list behind its key": (
        "where: - SA-RV-001",
        (
            "a.md:5:8: STOP: a list starts behind its key [unreadable-record]\n"
            "  help: start each - on a line of its own"
        ),
    ),
    "a date with the day first": (
        "effective_on: 09.03.2031",
        (
            "a.md:5:15: STOP: effective_on: `09.03.2031` is no date as this book writes them "
            "[unreadable-record]\n"
            "  help: write 2031-03-09 or 2031-09-03, whichever it was"
        ),
    ),
    "a date that can only be read one way": (
        "effective_on: 25/03/2031",
        (
            "a.md:5:15: STOP: effective_on: `25/03/2031` is no date as this book writes them "
            "[unreadable-record]\n"
            "  help: write 2031-03-25"
        ),
    ),
    "a date without its zeros": (
        "effective_on: 2031-3-9",
        (
            "a.md:5:15: STOP: effective_on: `2031-3-9` is no date as this book writes them "
            "[unreadable-record]\n"
            "  help: write 2031-03-09"
        ),
    ),
    "a date with a time": (
        "effective_on: 2031-03-09 14:00",
        (
            "a.md:5:15: STOP: effective_on: `2031-03-09 14:00` is no date as this book writes "
            "them [unreadable-record]\n"
            "  help: write the day alone: 2031-03-09"
        ),
    ),
    "a date in words": (
        "effective_on: 9 March 2031",
        (
            "a.md:5:15: STOP: effective_on: `9 March 2031` is no date as this book writes them "
            "[unreadable-record]\n"
            "  help: write 2031-03-09"
        ),
    ),
    "a day that does not exist": (
        "effective_on: 2031-02-30",
        (
            "a.md:5:15: STOP: effective_on: there is no day 2031-02-30 [unreadable-record]\n"
            "  help: write year-month-day, such as 2031-03-09"
        ),
    ),
    "an event where a date is wanted": (
        "effective_on: after the trial",
        (
            "a.md:5:15: STOP: effective_on: `after the trial` is no date as this book writes "
            "them [unreadable-record]\n"
            "  help: write year-month-day, such as 2031-03-09"
        ),
    ),
    "a date of the wrong form where an event would do": (
        "effective: 9/3/2031",
        (
            "a.md:5:12: STOP: effective: `9/3/2031` is neither a date nor an event "
            "[unreadable-record]\n"
            "  help: write 2031-03-09 or 2031-09-03, whichever it was"
        ),
    ),
    "a count with a leading zero": (
        "revision: 010",
        (
            "a.md:5:11: STOP: revision: `010` is no whole number [unreadable-record]\n"
            "  help: write 10; with the 0 before it, it is read as 10 by some, 8 by others"
        ),
    ),
    "a count as a time of day": (
        "revision: 12:30",
        (
            "a.md:5:11: STOP: revision: `12:30` is no whole number [unreadable-record]\n"
            "  help: write one number; 12:30 is a time of day to some, 750 to others"
        ),
    ),
    "a count with an exponent": (
        "revision: 1e3",
        (
            "a.md:5:11: STOP: revision: `1e3` is no whole number [unreadable-record]\n"
            "  help: write it out: 1000; 1e3 is a number to some, text to others"
        ),
    ),
    "a count in sixteens": (
        "revision: 0x10",
        (
            "a.md:5:11: STOP: revision: `0x10` is no whole number [unreadable-record]\n"
            "  help: write it out in tens; 0x10 is a number to some, text to others"
        ),
    ),
    "a count with underscores": (
        "revision: 1_000",
        (
            "a.md:5:11: STOP: revision: `1_000` is no whole number [unreadable-record]\n"
            "  help: write 1000"
        ),
    ),
    "a count with a decimal comma": (
        "revision: 1,5",
        (
            "a.md:5:11: STOP: revision: `1,5` is no whole number [unreadable-record]\n"
            "  help: write 1.5 or 15, whichever it is"
        ),
    ),
    "a count in words": (
        "revision: two",
        (
            "a.md:5:11: STOP: revision: `two` is no whole number [unreadable-record]\n"
            "  help: write figures alone, such as 12"
        ),
    ),
    "a word of no list": (
        "danger: perhaps",
        (
            "a.md:5:9: STOP: danger: `perhaps` is none of its words [unreadable-record]\n"
            "  help: write one of none, possible, immediate"
        ),
    ),
    "a word nearly of the list": (
        "grade: Nonconformity",
        (
            "a.md:5:8: STOP: grade: `Nonconformity` is none of its words [unreadable-record]\n"
            "  help: write nonconformity"
        ),
    ),
    "a class that is none": (
        "class: D",
        (
            "a.md:5:8: STOP: class: `D` is none of its words [unreadable-record]\n"
            "  help: write one of A, B, C"
        ),
    ),
    "a person by name": (
        "author: Anna Berg",
        (
            "a.md:5:9: STOP: author: `Anna Berg` is no key of people.yml [unreadable-record]\n"
            "  help: write the person's key, such as volunteer-1"
        ),
    ),
    "a tag where a record is wanted": (
        "against: [SA-RV-001]",
        (
            "a.md:5:11: STOP: against[0]: `SA-RV-001` is no record [unreadable-record]\n"
            "  help: write the id of a record; SA-RV-001 is the tag of a component"
        ),
    ),
    "an id without its zeros": (
        "against: [SA-DD-3]",
        (
            "a.md:5:11: STOP: against[0]: `SA-DD-3` is no record id [unreadable-record]\n"
            "  help: write SA-DD-003"
        ),
    ),
    "an id in small letters": (
        "against: [sa-dd-003]",
        (
            "a.md:5:11: STOP: against[0]: `sa-dd-003` is no record id [unreadable-record]\n"
            "  help: write SA-DD-003"
        ),
    ),
    "an id with words behind it": (
        "against: [SA-DD-003 the switch]",
        (
            "a.md:5:11: STOP: against[0]: `SA-DD-003 the switch` is no record id "
            "[unreadable-record]\n"
            "  help: write the id alone; say the rest in the text below"
        ),
    ),
    "a tag with a slip of the finger": (
        "where: [SA-RV-O01]",
        (
            "a.md:5:9: STOP: where[0]: `SA-RV-O01` is no id or tag [unreadable-record]\n"
            "  help: write system, letters and three figures, such as SA-RV-001"
        ),
    ),
    "one thing where a list is wanted": (
        "where: SA-RV-001",
        (
            "a.md:5:8: STOP: where is one thing, and a list of ids or tags is wanted "
            "[unreadable-record]\n"
            "  help: write where: [SA-RV-001]"
        ),
    ),
    "a list where text is wanted": (
        "cause: [tap, switch]",
        ("a.md:5:8: STOP: cause is a list [unreadable-record]\n  help: write text"),
    ),
    "keys where text is wanted": (
        "cause: {tap: low}",
        (
            "a.md:5:8: STOP: cause is written as keys with values [unreadable-record]\n"
            '  help: write "tap: low", if that is the text'
        ),
    ),
    "a colon that made keys of a list line": (
        ("gaps:\n  - Note: no drawing"),
        (
            "a.md:6:5: STOP: gaps[0] is written as keys with values [unreadable-record]\n"
            '  help: write "Note: no drawing", if that is the text'
        ),
    ),
    "text where keys are wanted": (
        "found: lead on 2031-03-09",
        (
            "a.md:5:8: STOP: found is the text `lead on 2031-03-09` [unreadable-record]\n"
            "  help: write by, on, during"
        ),
    ),
    "an entry that lacks what it needs": (
        "found: {by: lead}",
        (
            "a.md:5:8: STOP: found has no on [unreadable-record]\n"
            "  help: write on: and a date, or leave the entry out"
        ),
    ),
    "an empty line of a list": (
        ("where:\n  - SA-RV-001\n  -"),
        (
            "a.md:7:4: STOP: where[1] is empty [unreadable-record]\n"
            "  help: write it, or delete the dash or comma"
        ),
    ),
    "a state the kind does not have": (
        "state: aproved",
        (
            "a.md:5:8: STOP: `aproved` is no state of a finding [unreadable-record]\n"
            "  help: write one of raised, not accepted, accepted, contained, evaluated, action "
            "agreed, action done, verified, closed, reopened"
        ),
    ),
    "a signature to a state the kind does not have": (
        "signed: [{capacity: approver, by: lead, on: 2031-03-09, to: approved}]",
        (
            "a.md:5:61: STOP: `approved` is no state of a finding [unreadable-record]\n"
            "  help: write one of raised, not accepted, accepted, contained, evaluated, action "
            "agreed, action done, verified, closed, reopened"
        ),
    ),
    "a capacity that is none": (
        "signed: [{capacity: boss, by: lead, on: 2031-03-09}]",
        (
            "a.md:5:21: STOP: signed[0].capacity: `boss` is none of its words "
            "[unreadable-record]\n"
            "  help: write one of author, checker, approver, doer, verifier, witness, named "
            "party, in charge, any hand, machine"
        ),
    ),
    "a source with spaces": (
        "sources: [the plate]",
        (
            "a.md:5:11: STOP: sources[0]: `the plate` is no key of sources.yml "
            "[unreadable-record]\n"
            "  help: write the key alone, without spaces"
        ),
    ),
    "a hidden sign": (
        "words: Hiss\u200bing",
        (
            "a.md:5:12: STOP: a sign that cannot be seen, U+200B, stands here "
            "[unreadable-record]\n"
            "  help: delete it, or retype the line"
        ),
    ),
    "a space that is none": (
        "\u00a0danger: none",
        (
            "a.md:5:1: STOP: a U+00A0 stands here and looks like a space [unreadable-record]\n"
            "  help: write plain spaces"
        ),
    ),
    "a quoted value outside a link": (
        'cause: "[9] (value:receiver-sizing.n)"',
        (
            "a.md:5:14: STOP: `value:receiver-sizing.n` quotes no value as it stands "
            "[unreadable-record]\n"
            "  help: write [text](value:block.name) in one piece"
        ),
    ),
    "a quoted value of no address": (
        'cause: "[9](value:SA-RV-001)"',
        (
            "a.md:5:19: STOP: `SA-RV-001` is no address of a value [unreadable-record]\n"
            "  help: write which property: SA-RV-001.set, SA-RV-001.rated"
        ),
    ),
}
