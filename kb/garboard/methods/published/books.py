"""Textbooks and printed tables that methods rest on: edition, page, and how each was read."""

from typing import Final

from garboard.calc.method import Published

__all__ = ["BOOKS"]

BOOKS: Final = (
    Published(
        "gerr-boat-systems",
        "Dave Gerr, Boat Mechanical Systems Handbook",
        "first edition, 2009",
        "bilge chapter, example near page 318",
        "original",
    ),
    Published(
        "moss-orifice-table",
        "Discharge of air through an orifice, compressed-air handbook table on the formula of"
        " S. A. Moss (American Machinist, 20 September 1906)",
        "reprint, not dated",
        "whole table with its notes",
        "secondary",
    ),
    Published(
        "navfac-mo-209",
        "NAVFAC MO-209, Maintenance of steam, hot water and compressed air distribution systems",
        "edition not recorded",
        "chapter 5, Tables 5-3 and 5-4",
        "original",
    ),
    Published(
        "arasu-thermal",
        "A. V. Arasu, Thermal Engineering",
        "first edition",
        "chapter 5, Example 5.1, page 250",
        "secondary",
    ),
    Published(
        "bhatt-mehta",
        "N. M. Bhatt and J. R. Mehta, Elements of Mechanical Engineering",
        "edition not recorded",
        "chapter 8, Examples 8.1, 8.3, 8.4, 8.5",
        "secondary",
    ),
    Published(
        "gtu-2019-3c",
        "Gujarat Technological University, Basic Mechanical Engineering (3110006), Summer "
        "2019 paper",
        "2019",
        "question 3(c), solution",
        "secondary",
    ),
    Published(
        "water-content-table",
        "The Engineering ToolBox, Compressed air: water content",
        "not dated",
        "table and example",
        "original",
    ),
    Published(
        "dryer-water-chart",
        "Dryer supplier chart, water in intake air in gallons per hour per cubic foot per minute",
        "not dated",
        "whole chart",
        "original",
    ),
    Published(
        "pipe-flow-textbook",
        "Fluid flow textbook companion, pressure drop in a 10 mm pipe",
        "title not identified",
        "Examples 4.1 and 4.2",
        "secondary",
    ),
    Published(
        "spellman-water",
        "F. R. Spellman, Handbook of Water and Wastewater Treatment Plant Operations",
        "edition not recorded",
        "10.2.12.1, Examples 10.10 and 10.11",
        "secondary",
    ),
    Published(
        "bachus-custodio",
        "L. Bachus and A. Custodio, Know and Understand Centrifugal Pumps",
        "2003",
        "chapter 2, suction head examples",
        "secondary",
    ),
    Published(
        "jones-tank",
        "D. Jones, computing fluid tank volumes",
        "as reprinted with the fluids library",
        "horizontal tank with ellipsoidal ends",
        "secondary",
    ),
    Published(
        "ship-stability-masters",
        "C. B. Barrass and D. R. Derrett, Ship Stability for Masters and Mates",
        "edition not recorded",
        "free surface, pages 205 to 207",
        "original",
    ),
    Published(
        "expansion-table",
        "The Engineering ToolBox, thermal expansion of pipes",
        "not dated",
        "examples in inches per 100 ft",
        "original",
    ),
    Published(
        "cat-lebv0915",
        "Caterpillar, Application and Installation Guide, Engine room ventilation",
        "LEBV0915",
        "heat removal formulas",
        "original",
    ),
    Published(
        "volvo-marine-install",
        "Volvo Penta, installation manual for marine diesel engines",
        "edition not recorded",
        "page 28, engine-room openings",
        "original",
    ),
    Published(
        "osha-propane",
        "US Occupational Safety and Health Administration, occupational chemical database, propane",
        "current text",
        "record 563",
        "original",
    ),
    Published(
        "osha-idlh",
        "US Occupational Safety and Health Administration, sampling record for propane",
        "current text",
        "CH_264000",
        "original",
    ),
    Published(
        "antoine-water",
        "Antoine's equation for the vapour pressure of water, as vapour pressure pages and several "
        "programs restate it alike",
        "not dated",
        "log10 of the pressure in mmHg, constants for 1 to 100 degC (verify before citing)",
        "secondary",
    ),
)
