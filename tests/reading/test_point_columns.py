"""Columns headed by points of sampling are results of a sample each, whatever header word is known for one of them."""

import pytest

import wellchem


@pytest.mark.parametrize(
    "heads", [("Raw water", "Treated water"), ("Before softener", "After softener"), ("Result", "After filter")]
)
def test_no_column_of_results_is_lost(heads):
    text = f"Parameter,{heads[0]},{heads[1]},Units\nIron,3.1,0.05,mg/L\nManganese,0.4,<0.01,mg/L\n"
    report = wellchem.read(text.encode(), name="points.csv")
    read = [[(r.analyte, r.low, r.high) for r in sample.results] for sample in report.samples]
    assert read == [
        [("iron", 3.1, 3.1), ("manganese", 0.4, 0.4)],
        [("iron", 0.05, 0.05), ("manganese", 0.0, 0.01)],
    ]
