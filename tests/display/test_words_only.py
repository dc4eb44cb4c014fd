"""Nothing that people read holds an internal code: every well of the tests, as text and as page."""

import re
from html import unescape

import pytest
from interpretation import wells_more_reader, wells_reader

import wellchem
from wellchem import demo

CODE = re.compile(r"\w+_\w+")


def named(sample):
    """The sample with printed names of words, so that a code can only come of the library."""
    results = tuple(
        one.model_copy(update={"printed": one.printed.model_copy(update={"name": one.printed.name.replace("_", " ")})})
        for one in sample.results
    )
    return sample.model_copy(update={"results": results, "id": "a well", "key": "a well"})


def interpreted(case):
    kind, name = case
    if kind == "well":
        well = wells_reader.Well(name)
        return wellchem.interpret(named(well.sample), well.authorities, on=well.on, household=well.household)
    table = wells_more_reader.TABLES[name]
    return wellchem.interpret(
        named(wells_more_reader.sample(name)),
        tuple(table.get("authorities", ("us-epa",))),
        on=table.get("on", wells_more_reader.USUAL_DAY),
        household=wells_more_reader.household(name),
    )


def seen(html):
    """What a page shows: without style, tags and their attributes, but with what is read out or shown on pointing."""
    html = re.sub(r"<style.*?</style>", " ", html, flags=re.DOTALL)
    spoken = " ".join(re.findall(r'(?:aria-label|alt|title)="([^"]*)"', html))
    return unescape(f"{re.sub(r'<[^>]+>', ' ', html)} {spoken}")


CASES = [("well", name) for name in wells_reader.NAMES] + [("more", name) for name in wells_more_reader.NAMES]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_text_and_page_hold_no_code(case):
    finding = interpreted(case)
    for shown in (finding.to_text(), seen(finding.to_html())):
        shown = re.sub(r"https?://\S+", " ", shown)
        assert not (found := sorted(set(CODE.findall(shown)))), found
        flowing = " ".join(shown.split())
        for code in finding.treatment.unanswered:
            assert next(one.title for one in finding.problems if one.code == code) in flowing
        if finding.treatment.runner_up:
            assert "; ".join(finding.treatment.runner_up_titles) in flowing


def test_a_report_that_was_read_holds_no_code():
    from wellchem.display import reports

    report = wellchem.read(demo.REPORT)
    shown = reports.render(report, explain=True).replace(report.source, "")
    assert not (found := sorted(set(CODE.findall(shown)))), found
