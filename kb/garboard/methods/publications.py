"""The publications that the methods rest on: edition, clause, and how each was read.

`original` is the document or a true copy of it; `secondary` a page, chart or worked companion
that restates it; `remembered` must be confirmed before it is cited; `constructed` is arithmetic
of our own that follows from a definition, with no publication behind the number.
"""

from typing import Final

from garboard.calc.method import Published

__all__ = ["PUBLISHED", "published"]

_CFR: Final = "United States Code of Federal Regulations, Title"

PUBLISHED: Final = {
    item.name: item
    for item in (
        Published(
            "iacs-ur-m61",
            "IACS Unified Requirement M61, Starting arrangements of internal combustion engines",
            "Rev.3, February 2024",
            "M61.1 and M61.2",
            "original",
        ),
        Published(
            "46cfr112.50-7",
            f"{_CFR} 46, section 112.50-7, Compressed air starting",
            "current text, 2024",
            "(c)",
            "original",
        ),
        Published(
            "dnv-ships-4-6-5",
            "DNV Rules for Classification, Ships, Part 4 Chapter 6 Section 5",
            "edition not stated in the copy",
            "9.4",
            "secondary",
        ),
        Published(
            "46cfr56.97-35",
            f"{_CFR} 46, section 56.97-35, Pneumatic tests",
            "current text",
            "(d) to (h)",
            "original",
        ),
        Published(
            "46cfr56.97-40",
            f"{_CFR} 46, section 56.97-40, Installation tests",
            "as amended 1997",
            "(a)",
            "original",
        ),
        Published(
            "46cfr182.435",
            f"{_CFR} 46, sections 182.435 and 119.435, Integral fuel tanks",
            "current text",
            "tank test",
            "original",
        ),
        Published(
            "46cfr58.16-19",
            f"{_CFR} 46, section 58.16-19, Liquefied petroleum gas for cooking and heating, tests",
            "as amended 2009",
            "(a)(1) and (b)",
            "original",
        ),
        Published(
            "46cfr181.300",
            f"{_CFR} 46, section 181.300, Fire pumps",
            "current text",
            "(b) and (c)",
            "original",
        ),
        Published(
            "46cfr182.510",
            f"{_CFR} 46, section 182.510, Bilge piping system",
            "October 2020",
            "(b)",
            "original",
        ),
        Published(
            "46cfr182.520",
            f"{_CFR} 46, section 182.520, Bilge pumps",
            "October 2004",
            "Table 182.520(a), first two rows; third row only in part",
            "original",
        ),
        Published(
            "46cfr169.559",
            f"{_CFR} 46, section 169.559, Fire pumps (sailing school vessels)",
            "October 2022",
            "(a), (b), (d)",
            "original",
        ),
        Published(
            "46cfr169.654",
            f"{_CFR} 46, section 169.654, Bilge pumps (sailing school vessels)",
            "current text",
            "(a) to (e)",
            "original",
        ),
        Published(
            "46cfr56.50-57",
            f"{_CFR} 46, section 56.50-57, Bilge piping and pumps, alternative requirements",
            "October 2022",
            "(a)(2)(i)",
            "original",
        ),
        Published(
            "tc-sail-training",
            "Transport Canada, standard for sail training vessels",
            "date not recorded",
            "7.1",
            "original",
        ),
        Published(
            "hsc-code-10.3",
            "International Code of Safety for High-Speed Craft",
            "2000",
            "10.3.5",
            "original",
        ),
        Published(
            "solas-ii-1-35-1",
            "International Convention for the Safety of Life at Sea, chapter II-1",
            "consolidated text",
            "regulation 35-1, bilge pumping arrangements",
            "secondary",
        ),
        Published(
            "bki-machinery-2016",
            "Biro Klasifikasi Indonesia, Rules for Machinery Installations, "
            "with the worked bilge calculation of an 83 m coastal cargo ship",
            "2016",
            "section 11",
            "secondary",
        ),
        Published(
            "bilge-design-exercise",
            "Bilge pipe calculation in a student ship design project",
            "not dated",
            "main, branch and pump capacity",
            "secondary",
        ),
        Published(
            "gerr-boat-systems",
            "Dave Gerr, Boat Mechanical Systems Handbook",
            "first edition, 2009",
            "bilge chapter, example near page 318",
            "original",
        ),
        Published(
            "29cfr1910.217",
            f"{_CFR} 29, section 1910.217, Mechanical power presses",
            "table as restated on an insurer guard sheet",
            "Table O-10 and (c)(1)(ii)",
            "secondary",
        ),
        Published(
            "iso-13857",
            "ISO 13857, Safety of machinery, "
            "safety distances to prevent hazard zones being reached",
            "2008 and 2019 (same rows)",
            "Table 4, persons aged 14 and over",
            "secondary",
        ),
        Published(
            "asme-viii-1",
            "ASME Boiler and Pressure Vessel Code, Section VIII Division 1",
            "formulas as restated in inspector study sheets",
            "UG-27, UG-32, UG-99(b), UG-100, Appendix 1-1",
            "secondary",
        ),
        Published(
            "ped-annex-i",
            "Directive 97/23/EC and Directive 2014/68/EU (pressure equipment)",
            "2014 text",
            "Annex I, 7.4",
            "secondary",
        ),
        Published(
            "pneumatics-exam",
            "Industrial pneumatics self-study examination",
            "not dated",
            "questions 1 and 5",
            "secondary",
        ),
        Published(
            "gauge-practice-half",
            "Gauge selection practice: working reading at 50 to 75 percent of the scale",
            "not dated",
            "range selection",
            "original",
        ),
        Published(
            "gauge-practice-middle",
            "Gauge selection practice: working reading at 25 to 75 percent of the scale",
            "not dated",
            "range selection",
            "original",
        ),
        Published(
            "nist-sp-811",
            "NIST Special Publication 811, Guide for the use of the SI",
            "reprinted in the CRC Handbook of Chemistry and Physics",
            "Appendix B",
            "secondary",
        ),
        Published(
            "definition",
            "Arithmetic that follows from the definition or formula stated with the method; "
            "no publication stands behind the number",
            "this edition",
            "method formula",
            "constructed",
        ),
        Published(
            "house-rule",
            "garboard house rule: deliberately stricter than the regulations it leans on",
            "this edition",
            "see method",
            "constructed",
        ),
    )
}


def published(*names: str) -> tuple[Published, ...]:
    """The publications of these names, in the order asked for."""
    return tuple(PUBLISHED[name] for name in names)
