"""Files with a result a row: every row is accounted for, and what stands beside results of other rows became part of them."""

import pytest
from real_counts import read, results
from real_rows import ROWS
from real_truth import FOLDER

pytestmark = pytest.mark.skipif(not FOLDER.is_dir(), reason="the public data folder is not there")


@pytest.mark.parametrize("file", sorted(ROWS))
def test_every_row_is_a_result_or_beside_one_or_unread(file):
    told = ROWS[file]()
    expected = {one.row for one in told.results}
    assert not expected & told.unread
    assert not expected & told.beside.keys()
    frame = results(file)
    assert set(frame["row"]) == expected
    assert {one.origin.row for one in read(file)[1]} == told.unread


def test_counting_errors_and_detectable_activities_are_beside_their_results():
    file = "lab/ca_waterboards_chem_sub.csv"
    beside = ROWS[file]().beside
    frame = results(file)
    assert len(beside) == 72
    lost = []
    for analyte, column, amount in beside.values():
        mine = frame.loc[frame["analyte"] == analyte, column]
        if not ((mine - amount).abs() <= 1e-6 * max(amount, 1)).any():
            lost.append((analyte, column, amount))
    assert not lost
