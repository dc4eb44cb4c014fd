"""Public files, read and held against a seeded sample of what independent code says of them (see real_truth)."""

import random

import pytest
from real_truth import ANY, FILES, FOLDER

import wellchem

pytestmark = pytest.mark.skipif(not FOLDER.is_dir(), reason="the public data folder is not there")


def _near(a, b):
    return a == b or abs(a - b) <= 0.006 * max(abs(a), abs(b))


def compare(file, size=150):
    """Lines of what is missing, wrong or silently gone among a sample of the file's results."""
    truth = list(FILES[file]())
    chosen = random.Random(file).sample(truth, min(size, len(truth)))
    batch = wellchem.read_batch([FOLDER / file])
    frame, unread = batch.results, batch.unread
    frame = frame[frame["row"].notna()]
    by_place = {}
    for record in frame.to_dict("records"):
        by_place.setdefault((record["row"], record["analyte"]), []).append(record)
    rows_unread = set(unread["row"].dropna())
    missing, wrong, gone = [], [], []
    for one in chosen:
        found = [
            record
            for record in by_place.get((one.row, one.analyte), [])
            if (one.column is None or record["column"] == one.column)
            and (one.sheet is None or record["sheet"] == one.sheet)
        ]
        if not found:
            (missing if one.row in rows_unread else gone).append(one)
            continue
        right = any(
            _near(record["low"], one.low)
            and _near(record["high"], one.high)
            and (
                one.fraction == ANY
                or (one.fraction or "") == (record["fraction"] if record["fraction"] == record["fraction"] else "")
            )
            for record in found
        )
        if not right:
            record = found[0]
            wrong.append(
                (
                    one,
                    record["low"],
                    record["high"],
                    record["fraction"],
                    record["printed_value"],
                    record["printed_unit"],
                )
            )
    return chosen, missing, wrong, gone


@pytest.mark.parametrize("file", sorted(FILES))
def test_a_sample_of_results_is_right(file):
    chosen, missing, wrong, gone = compare(file)
    assert len(chosen) >= 3
    assert not wrong, wrong[:5]
    assert not gone, gone[:5]
    assert len(missing) <= 0.02 * len(chosen), missing[:5]
