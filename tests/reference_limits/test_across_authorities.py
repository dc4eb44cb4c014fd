"""The same analyte across authorities: a slip of µg for mg cannot hide.

Within a factor of ten the authorities agree. Where they do not, outliers.csv names the lowest and the highest value
of all (in the reference unit of limit_tables.UNITS, nitrogen as N) and a word why, confirmed by a reader.
"""

from collections import defaultdict
from pathlib import Path

import pytest
from limit_tables import canonical, read, rows

FACTOR = 9.99
CONFIRMED = {(row["analyte"], row["kind"]): row for row in read(Path(__file__).with_name("outliers.csv"))}


def spans():
    """Lowest and highest maximum of every analyte and kind that two authorities or more limit."""
    found = defaultdict(list)
    for row in rows():
        compared = not row["limit_term"].endswith(("(postponed)", "(proposed)", "not yet due)"))
        if compared and row["combine"] != "sum_of_ratios" and row["maximum"] and float(row["maximum"]) > 0:
            value = canonical(row["maximum"], row["unit"], row["basis"], row["analyte"])
            found[row["analyte"], row["kind"]].append((value, row["authority"]))
    return {
        key: (min(values)[0], max(values)[0])
        for key, values in found.items()
        if len({authority for _, authority in values}) > 1
    }


def test_every_wide_span_is_confirmed():
    wide = {key for key, (low, high) in spans().items() if high / low > FACTOR}
    assert wide == set(CONFIRMED)


@pytest.mark.parametrize("key", sorted(CONFIRMED), ids=" ".join)
def test_confirmed_span_is_the_span(key):
    low, high = spans()[key]
    assert low == pytest.approx(float(CONFIRMED[key]["lowest"]), rel=1e-4)
    assert high == pytest.approx(float(CONFIRMED[key]["highest"]), rel=1e-4)
    assert CONFIRMED[key]["why"]
