"""Standards and class rules that methods rest on: edition, clause, and how each was read."""

from typing import Final

from garboard.calc.method import Published

__all__ = ["STANDARDS"]

STANDARDS: Final = (
    Published(
        "iacs-ur-m61",
        "IACS Unified Requirement M61, Starting arrangements of internal combustion engines",
        "Rev.3, February 2024",
        "M61.1 and M61.2",
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
        "bki-machinery-2016",
        "Biro Klasifikasi Indonesia, Rules for Machinery Installations, with the worked bilge"
        " calculation of an 83 m coastal cargo ship",
        "2016",
        "section 11",
        "secondary",
    ),
    Published(
        "iso-13857",
        "ISO 13857, Safety of machinery, safety distances to prevent hazard zones being reached",
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
        "asme-pcc-2",
        "ASME PCC-2, Repair of pressure equipment and piping",
        "2008",
        "Article 5.1, Appendix II",
        "original",
    ),
    Published(
        "api-520-1",
        "API Standard 520 Part 1, Sizing of pressure-relieving devices",
        "edition not recorded",
        "gas examples 1 and 2",
        "secondary",
    ),
    Published(
        "class-rule-discharge-temp",
        "Class-rule requirement on compressor discharge temperature to starting-air receivers",
        "rule text as restated in 2012",
        "receiver inlet and compressor alarm",
        "secondary",
    ),
    Published(
        "iso-228-7",
        "ISO 228-1 and ISO 7-1, pipe threads",
        "values as restated on three thread charts that agree",
        "size tables",
        "secondary",
    ),
    Published(
        "asme-b36.10",
        "ASME B36.10M, Welded and seamless wrought steel pipe",
        "as held in the fluids library 1.3.1",
        "dimension tables",
        "secondary",
    ),
    Published(
        "iec-60079-20-1",
        "IEC 60079-20-1, Material characteristics for gas and vapour classification",
        "2010",
        "propane row",
        "secondary",
    ),
    Published(
        "nfpa-497",
        "NFPA 497, Classification of flammable liquids, gases or vapors",
        "2008",
        "propane row",
        "secondary",
    ),
    Published(
        "aws-f4.1",
        "AWS F4.1, Safe practices for the preparation of containers and piping for welding "
        "and cutting",
        "scope statement",
        "scope",
        "original",
    ),
    Published(
        "nist-sp-811",
        "NIST Special Publication 811, Guide for the use of the SI",
        "reprinted in the CRC Handbook of Chemistry and Physics",
        "Appendix B",
        "secondary",
    ),
)
