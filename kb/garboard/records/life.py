"""How long something lasts, counted by the calendar: 12 months after 15 September is 15 September."""

import re
from calendar import monthrange
from datetime import date, timedelta

__all__ = ["end_of_life"]

LIFE = re.compile(r"(?P<count>\d{1,4}) (?P<unit>d|days?|weeks?|months?|years?)")
MONTHS = {"m": 1, "y": 12}


def end_of_life(start: date, life: str) -> date | None:
    """The last day of something that lasts so long.

    Args:
        start: Its first day.
        life: `12 months`, `90 d`, `26 weeks`, `1 year`.

    Returns:
        None where the words are no count of days, weeks, months or years, or lead past all calendars.

    >>> end_of_life(date(2031, 9, 15), "12 months"), end_of_life(date(2032, 2, 29), "1 year")
    (datetime.date(2032, 9, 15), datetime.date(2033, 2, 28))
    >>> end_of_life(date(2031, 1, 31), "1 month"), end_of_life(date(2031, 9, 15), "500 running h")
    (datetime.date(2031, 2, 28), None)
    """
    found = LIFE.fullmatch(life.strip())
    if found is None or int(found["count"]) == 0:
        return None
    count, unit = int(found["count"]), found["unit"][0]
    try:
        if unit in MONTHS:
            months = start.year * 12 + start.month - 1 + count * MONTHS[unit]
            year, month = divmod(months, 12)
            return date(year, month + 1, min(start.day, monthrange(year, month + 1)[1]))
        return start + timedelta(days=count * (7 if unit == "w" else 1))
    except (OverflowError, ValueError):
        return None
