"""What people see: the page stands alone, every health finding has its caution, and nothing says that water is safe."""

import re
from datetime import date

import pytest

import wellchem
from wellchem import demo
from wellchem.display import page, plots, text, words

ASSURANCE = re.compile(
    r"\b(?:water|it|this|well|tap)\b[^.<]{0,30}\b(?:is|are)\s+(?:now\s+)?(?:safe|potable|fit to drink|fine to drink)\b"
    r"|\bsafe to drink\b|\bno health risk\b|\ball clear\b",
    re.IGNORECASE,
)


@pytest.fixture(scope="module")
def finding():
    sample = wellchem.read(demo.REPORT).samples[0]
    household = wellchem.Household.model_validate_json(demo.HOUSEHOLD.read_text())
    return wellchem.interpret(sample, authorities=["us-epa", "who"], on=date(2026, 11, 1), household=household)


def test_the_page_loads_nothing(finding):
    html = page.render(finding)
    assert not re.search(r"<(?:script|link|img|iframe)\b|url\(|@import", html)


def test_every_health_problem_has_a_caution_and_says_who_decides(finding):
    html = page.render(finding)
    health = [problem for problem in finding.problems if problem.kind == "health"]
    assert health
    for problem in health:
        assert problem.cautions, problem.code
        assert problem.decides, problem.code
        assert problem.title in html


@pytest.mark.parametrize("how", [page.render, text.render])
def test_nothing_says_that_water_is_safe(finding, how):
    assert not ASSURANCE.search(re.sub(r"<[^>]+>", " ", how(finding)))


def test_printed_text_cannot_break_out_of_the_page():
    sample = wellchem.Sample.from_values({"Iron": "2.4 mg/L"}, id="<script>alert(1)</script>", site="a & b")
    html = wellchem.interpret(sample, on=date(2026, 11, 1)).to_html()
    assert "<script>alert" not in html
    assert "a &amp; b" in html


def test_an_empty_sample_still_makes_a_page():
    finding = wellchem.interpret(wellchem.Sample(id="nothing"), on=date(2026, 11, 1))
    assert "not tested" in finding.to_html()
    assert not ASSURANCE.search(finding.to_text())


def test_a_censored_result_is_drawn_as_an_open_bar(finding):
    svg = plots.against_limits(finding)
    assert "stroke-dasharray" in svg
    assert "cannot be told" in svg or "within" in svg


@pytest.mark.parametrize(
    "low, high, unit, shown",
    [
        (0.3, 0.3, "mg/L", "0.3 mg/L"),
        (0, 0.05, "mg/L", "0 to 0.05 mg/L"),
        (2420, float("inf"), "1/(100 mL)", "at least 2420 per 100 mL"),
        (None, None, "mg/L", "unknown"),
        (0.00012345, 0.00012345, "", "0.000123"),
        (1234567, 1234567, "", "1230000"),
    ],
)
def test_intervals_as_words(low, high, unit, shown):
    assert words.interval(low, high, unit) == shown
