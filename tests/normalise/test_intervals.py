"""A censored number is an interval: the conventions of reading, through a printed table."""

import math

import pytest

import wellchem

INFINITE = math.inf


def read_row(name, value, unit="mg/L", **columns):
    """The one result of a table with these columns."""
    heads = {
        "Analyte": name,
        "Result": value,
        "Units": unit,
        **{key.replace("_", " "): v for key, v in columns.items()},
    }
    table = "\n".join((",".join(heads), ",".join(heads.values()))) + "\n"
    report = wellchem.read(table.encode(), format="csv", name="table")
    (sample,) = (*report.samples, *report.quality_control)
    (result,) = sample.results
    return result


def bounds(result):
    return result.censoring, result.low, result.high


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        ("0.5", ("none", 0.5, 0.5)),
        ("<0.5", ("left", 0.0, 0.5)),
        ("< 0.5", ("left", 0.0, 0.5)),
        ("0.005 U", ("left", 0.0, 0.005)),
        ("ND (0.5)", ("left", 0.0, 0.5)),
        ("ND<0.5", ("left", 0.0, 0.5)),
        (">2420", ("right", 2420.0, INFINITE)),
    ],
)
def test_concentration(value, expected):
    assert bounds(read_row("Chloride", value)) == expected


def test_not_detected_is_bounded_by_the_reporting_limit_before_the_detection_limit():
    result = read_row("Iron", "ND", RL="0.05", MDL="0.01")
    assert bounds(result) == ("left", 0.0, 0.05)
    assert result.assumptions == ()


def test_not_detected_with_only_a_detection_limit_is_bounded_by_it_and_says_so():
    result = read_row("Iron", "ND", MDL="0.01")
    assert bounds(result) == ("left", 0.0, 0.01)
    assert "bound=detection_limit" in map(str, result.assumptions)


def test_not_detected_without_any_limit_bounds_nothing():
    assert bounds(read_row("Iron", "ND")) == ("left", 0.0, None)


def test_an_estimate_lies_between_the_limits():
    assert bounds(read_row("Iron", "0.03 J", RL="0.05", MDL="0.01")) == ("interval", 0.01, 0.05)
    assert bounds(read_row("Iron", "0.03", RL="0.05", MDL="0.01", Qualifier="J")) == ("interval", 0.01, 0.05)


def test_an_estimate_above_the_limits_is_the_number():
    assert bounds(read_row("Iron", "0.3 J", RL="0.05", MDL="0.01")) == ("none", 0.3, 0.3)


def test_found_in_the_blank_is_an_upper_bound_and_over_range_a_lower_one():
    assert bounds(read_row("Iron", "0.3", Qualifier="B"))[1:] == (0.0, 0.3)
    assert bounds(read_row("Iron", "0.3", Qualifier="E"))[1:] == (0.3, INFINITE)


def test_rejected_is_not_used():
    result = read_row("Iron", "0.3", Qualifier="R")
    assert (result.censoring, result.value, result.low, result.high) == ("not_reported", None, None, None)
    assert "R" in result.qualifiers


def test_holding_time_is_kept_as_a_qualifier():
    result = read_row("E. coli", "<1", "MPN/100 mL", Qualifier="H")
    assert "H" in result.qualifiers
    assert bounds(result)[1:] == (0.0, 0.0)


@pytest.mark.parametrize(
    ("value", "low", "high"),
    [
        ("Absent", 0, 0),
        ("0", 0, 0),
        ("<1", 0, 0),
        ("<2", 0, 1),
        ("<10", 0, 9),
        ("4", 4, 4),
        ("Present", 1, INFINITE),
        ("TNTC", 1, INFINITE),
        (">2419.6", 2419.6, INFINITE),
    ],
)
def test_count_of_organisms(value, low, high):
    assert bounds(read_row("E. coli", value, "CFU/100 mL"))[1:] == (low, high)


@pytest.mark.parametrize(("value", "high"), [("<1", 0), ("<1.1", 0), ("<1.8", 1.8), ("<15", 15)])
def test_most_probable_number(value, high):
    # <1.1: ten tubes of 10 mL without a positive one (Standard Methods 9221 C); none found in 100 mL.
    assert bounds(read_row("E. coli", value, "MPN/100 mL"))[1:] == (0, high)


def test_confluent_growth_is_an_invalid_sample():
    result = read_row("Total Coliform", "Confluent", "CFU/100 mL")
    assert (result.censoring, result.high) == ("not_reported", None)
    assert "CG" in result.qualifiers


def test_activity_is_bounded_by_its_uncertainty():
    result = read_row("Gross Alpha", "3.1 +/- 0.6", "pCi/L")
    assert result.low == pytest.approx(2.5 * 0.037)
    assert result.high == pytest.approx(3.7 * 0.037)  # 1 pCi = 0.037 Bq, exact by the definition of the curie


def test_activity_not_detected_is_a_measurement_and_reaches_the_detectable_concentration():
    result = read_row("Radium-226", "0.3", "pCi/L", Uncertainty="0.4", MDC="0.9", Qualifier="U")
    assert result.censoring == "none"
    assert result.detected is False
    assert result.low == pytest.approx(-0.1 * 0.037)
    assert result.high == pytest.approx(0.9 * 0.037)


def test_activity_may_be_negative_and_a_concentration_may_not():
    assert read_row("Gross Beta", "-0.4", "pCi/L", Uncertainty="1.1").low == pytest.approx(-1.5 * 0.037)
    with pytest.raises(wellchem.errors.NothingFound):
        read_row("Iron", "-0.4")


def test_not_analysed_is_not_reported():
    assert read_row("Iron", "Not analysed").censoring == "not_reported"


def test_the_reports_legend_decides_what_a_qualifier_means():
    table = "Analyte,Result,Units,Qualifier\nIron,0.3,mg/L,Q\nLead,0.4,mg/L,Q\nQ = analyte not detected,,,\n"
    report = wellchem.read(table.encode(), format="csv")
    assert [bounds(result) for result in report.samples[0].results] == [("left", 0.0, 0.3), ("left", 0.0, 0.4)]
    assert not any(str(a).startswith("qualifier") for r in report.samples[0].results for a in r.assumptions)


def test_the_reports_own_words_bound_its_non_detects():
    table = "Analyte,Result,Units\nBenzene,ND,µg/L\nND = not detected at 0.5 µg/L,,\n"
    report = wellchem.read(table.encode(), format="csv")
    assert report.samples[0].results[0].high == pytest.approx(0.0005)


def test_codes_of_a_data_standard_have_its_own_meaning():
    """USGS NWIS remark codes: E is estimated there, while a laboratory's E is above the calibration range."""
    table = (
        "agency_cd\tsite_no\tsample_dt\tparm_cd\tremark_cd\tresult_va\trpt_lev_va\n"
        "5s\t15s\t10d\t5s\t1s\t12n\t12n\n"
        "USGS\t990000000000001\t2026-05-06\t00940\tE\t8.4\t\n"
        "USGS\t990000000000001\t2026-05-06\t00915\t<\t0.5\t\n"
    )
    results = wellchem.read(table.encode(), format="delimited", name="codes.rdb").samples[0].results
    assert [bounds(result) for result in results] == [("none", 8.4, 8.4), ("left", 0.0, 0.5)]
    assert bounds(read_row("Chloride", "8.4", Qualifier="E")) == ("right", 8.4, INFINITE)


def test_the_wide_printing_of_a_data_standard_has_the_same_codes():
    table = "site_no\tsample_dt\tr00940\tp00940\tr00915\tp00915\n990000000000001\t2026-05-06\tE\t8.4\t<\t0.5\n"
    results = wellchem.read(table.encode(), format="delimited", name="wide.rdb").samples[0].results
    assert sorted((result.analyte, *bounds(result)) for result in results) == [
        ("calcium", "left", 0.0, 0.5),
        ("chloride", "none", 8.4, 8.4),
    ]
