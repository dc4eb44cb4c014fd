"""Comments of a data standard that say of the number beside them that it is a bound."""

import pytest

import wellchem

HEAD = "DNR Parameter Description,Result value,Units,LOD,LOQ,Result Comment,"
HEAD += "Type of Sample (QC),Field #,Sample/Labslip ID,Waterbody ID #,Sig Figs"


def _read(*rows):
    text = "\n".join((HEAD, *rows)) + "\n"
    found = wellchem.read(text.encode(), format="csv").to_frame()
    return {one.analyte: (one.censoring, one.low, one.high) for one in found.itertuples()}


def test_a_number_that_its_comment_calls_the_least_is_a_lower_bound():
    found = _read(
        'ALKALINITY TOTAL CACO3,840,MG/L,36,36,"Above the range. The result is greater than 840 mg/L.",1,W1,L1,,3',
        "CHLORIDE,12,MG/L,1,3,Duplicate QC exceeded; duplicate result is 12.9 mg/L.,1,W1,L1,,3",
        "SULFATE TOTAL,30,MG/L,1,3,Spike recovery greater than 111 %.,1,W1,L1,,3",
        "IRON TOTAL RECOVERABLE,0.4,MG/L,0.1,0.3,,1,W1,L1,,3",
    )
    assert found["total_alkalinity"] == ("right", 840, float("inf"))
    assert found["chloride"] == ("none", 12, 12)
    assert found["sulfate"] == ("none", 30, 30)
    assert found["iron"] == ("none", pytest.approx(0.4), pytest.approx(0.4))


def test_advice_beside_a_result_bounds_nothing():
    """A column of comments that is no data standard's may speak of limits."""
    text = "Analyte,Result,Units,Comment\nIron,0.3,mg/L,should be less than 0.3\nZinc,5,mg/L,more than 5 tastes\n"
    found = wellchem.read(text.encode(), format="csv").to_frame()
    assert found["censoring"].tolist() == ["none", "none"]
