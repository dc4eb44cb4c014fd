"""What a spreadsheet's formula tells of its cell beside the value that is saved with it."""

import re

# Functions that sum up other cells: "=AVERAGE(C4:D4)", "=IFERROR(_xlfn.STDEV.P(C4:D4), "")", "of:=MEDIAN([.B2:.B9])".
_STATISTIC = re.compile(
    r"^(?:of:)?=\s*(?:IFERROR\()?(?:_xlfn\.)?"
    r"(?:AVERAGE\w*|MEDIAN|GEOMEAN|TRIMMEAN|STDEV[\w.]*|VAR[\w.]*|PERCENTILE[\w.]*|QUARTILE[\w.]*)\(",
    re.IGNORECASE,
)


def is_statistic(formula: str) -> bool:
    """Whether a cell's formula takes an average, a deviation or the like over other cells."""
    return _STATISTIC.match(formula) is not None
