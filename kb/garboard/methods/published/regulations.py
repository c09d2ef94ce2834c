"""Regulations that methods rest on: section, edition, and how each was read."""

from typing import Final

from garboard.calc.method import Published

__all__ = ["REGULATIONS"]

_CFR: Final = "United States Code of Federal Regulations, Title"

REGULATIONS: Final = (
    Published(
        "46cfr112.50-7",
        f"{_CFR} 46, section 112.50-7, Compressed air starting",
        "current text, 2024",
        "(c)",
        "original",
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
        "29cfr1917.155",
        f"{_CFR} 29, section 1917.155, Air receivers",
        "current text",
        "(b)(1) and (b)(2)",
        "original",
    ),
    Published(
        "wac-296-56-60241",
        "Washington Administrative Code, 296-56-60241, Air receivers",
        "January 2016",
        "(2)(a) and (2)(b)",
        "original",
    ),
    Published(
        "cal-t8-465",
        "California Code of Regulations, Title 8, section 465, air tank safety valves and fittings",
        "current text",
        "(b)",
        "original",
    ),
    Published(
        "oar-437-004-1505",
        "Oregon Administrative Rules, 437-004-1505, Air receivers and pressure systems",
        "December 2024",
        "(3)(c)",
        "original",
    ),
    Published(
        "30cfr57.13011",
        f"{_CFR} 30, section 57.13011, Air receiver tanks",
        "current text",
        "whole section",
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
        "33cfr183.425",
        f"{_CFR} 33, section 183.425, Conductors: general",
        "2001 and current text",
        "Table 5 and note 1",
        "original",
    ),
    Published(
        "ped-annex-i",
        "Directive 97/23/EC and Directive 2014/68/EU (pressure equipment)",
        "2014 text",
        "Annex I, 7.4",
        "secondary",
    ),
    Published(
        "29cfr1915-b-app-a",
        f"{_CFR} 29, Part 1915 Subpart B Appendix A",
        "current text",
        "confined and enclosed spaces",
        "original",
    ),
    Published(
        "cal-t8-8395",
        "California Code of Regulations, Title 8, section 8395",
        "current text",
        "(c)",
        "original",
    ),
)
