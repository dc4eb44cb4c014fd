"""Public files, read and held against what independent code says of them (see real_truth and real_stream).

Small truths are compared whole; large ones by a seeded sample with every sheet, analyte, column and kind of censoring in it.
"""

import math
import random

import pytest
from real_counts import read, results
from real_rows import ROWS
from real_stream import book, sheet_csv
from real_truth import ANY, FILES, FOLDER, INF
from real_wide import WIDE

pytestmark = pytest.mark.skipif(not FOLDER.is_dir(), reason="the public data folder is not there")

TRUTHS = {
    **FILES,
    **WIDE,
    **{file: lambda told=told: told().results for file, told in ROWS.items()},
    "lab/csm_water.xlsx": book,
    "lab/csm_sheet_20170829.csv": lambda: sheet_csv("lab/csm_sheet_20170829.csv"),
    "lab/csm_sheet_20190909.csv": lambda: sheet_csv("lab/csm_sheet_20190909.csv"),
}
# Whole truths: what is read beside them is nobody's result, but for analytes that only eyes can leave out: a scandium row
# without `% Concentration` in the oldest sheets is printed as any other.
WHOLE = {
    "lab/csm_water.xlsx": {"scandium"},
    "lab/csm_sheet_20170829.csv": set(),
    "lab/csm_sheet_20190909.csv": set(),
    **{file: set() for file in (*WIDE, *ROWS, *FILES) if not file.endswith(".gz")},
}
# The one sheet that is left unread: RA and FA under one site and nothing else, so that no heading shows them to be samples.
TWO_UNDER_ONE = "7.14.17"
LARGE = 40_000
SAMPLE = 150


def _near(a, b):
    """Equal within the rounding of printed factors; a bound that is not known is written as none or infinity."""
    if b == INF:
        return math.isnan(a) or a == INF
    return a == b or abs(a - b) <= 0.006 * max(abs(a), abs(b))


def chosen_of(file, truth, size=SAMPLE):
    """All of a truth, or of a large one at least `size` results and one of every stratum."""
    if len(truth) <= LARGE:
        return truth
    mixed = random.Random(file).sample(truth, len(truth))
    strata = {}
    for one in mixed:
        strata.setdefault((one.sheet, one.column, one.analyte, one.fraction, one.low < one.high), one)
    return list({*strata.values(), *mixed[:size]})


def compare(file):
    """What is missing, wrong, silently gone, or read beside the truth."""
    truth = list(TRUTHS[file]())
    chosen = chosen_of(file, truth)
    frame = results(file)
    wanted = {one.row for one in chosen}
    frame = frame[frame["row"].notna()]
    by_place = {}
    for record in (frame if file in WHOLE else frame[frame["row"].isin(wanted)]).to_dict("records"):
        by_place.setdefault((record["row"], record["analyte"]), []).append(record)
    unread = {(one.origin.sheet or "", one.origin.row) for one in read(file)[1]}
    missing, wrong, gone, met = [], [], [], set()
    for one in chosen:
        found = [
            record
            for record in by_place.get((one.row, one.analyte), [])
            if (one.column is None or record["column"] == one.column)
            and (one.sheet is None or record["sheet"] == one.sheet)
        ]
        met.update(map(id, found))
        if not found:
            (missing if (one.sheet or "", one.row) in unread else gone).append(one)
        elif not any(
            _near(record["low"], one.low)
            and _near(record["high"], one.high)
            and one.fraction in (ANY, record["fraction"] if isinstance(record["fraction"], str) else None)
            for record in found
        ):
            record = found[0]
            wrong.append((one, record["low"], record["high"], record["fraction"], record["printed_value"]))
    extra = [
        record
        for records in by_place.values()
        for record in records
        if file in WHOLE and id(record) not in met and record["analyte"] not in WHOLE[file]
        if record["censoring"] != "not_reported"
    ]
    return chosen, missing, wrong, gone, extra


@pytest.mark.parametrize("file", sorted(TRUTHS))
def test_results_are_right(file):
    chosen, missing, wrong, gone, extra = compare(file)
    assert len(chosen) >= 3
    assert not wrong, wrong[:5]
    assert not gone, gone[:5]
    assert not extra, extra[:5]
    if file == "lab/csm_water.xlsx":
        unread = {one.origin.row: one.reason.value for one in read(file)[1] if one.origin.sheet == TWO_UNDER_ONE}
        left = [one for one in missing if one.sheet == TWO_UNDER_ONE]
        assert left == [one for one in chosen if one.sheet == TWO_UNDER_ONE]
        assert {unread[one.row] for one in left} == {"ambiguous_column"}
        missing = [one for one in missing if one not in left]
    assert not missing, missing[:5]
