"""The examples of README.md run, and those of DEVELOPERS.md do what it says: one row each, nothing set globally."""

import re
from datetime import date
from pathlib import Path

import pytest

import wellchem

REPORT = b"Name,Level measured,Units\nRust metal,0.62,mg/L\nChloride,14,mg/L\n"
SPELLING = {"name": "Rust metal", "analyte": "iron", "language": "en", "source": "a laboratory's report"}
HEADER = {"header": "Level measured", "role": "value"}


def test_without_the_rows_the_name_is_unread():
    report = wellchem.read(b"Name,Result,Units\nRust metal,0.62,mg/L\nChloride,14,mg/L\n", format="delimited")
    assert [unread.reason for unread in report.unread] == ["unknown_name"]
    assert report.unread[0].suggestions


def test_a_spelling_and_a_header_word_are_one_row_each():
    vocabulary = wellchem.vocabulary.bundled().extended(names=[SPELLING], columns=[HEADER])
    report = wellchem.read(REPORT, format="delimited", vocabulary=vocabulary)
    assert {r.analyte: r.value for r in report.samples[0].results} == {"iron": 0.62, "chloride": 14}
    assert not report.unread


def test_a_state_s_limit_is_one_row_of_a_file(tmp_path):
    path = tmp_path / "my_state.csv"
    path.write_text(
        "analyte,limit_term,kind,minimum,maximum,unit,basis,fraction,combine,members,applies_when,compliance,"
        "in_force_from,in_force_to,source,locator,checked,note\n"
        "iron,state limit,aesthetic,,0.5,mg/L,,,,,,,2020-01-01,,State rule 12-3 (invented),table 1,page,\n"
    )
    mine = wellchem.limits.load(path, authority="my-state")
    sample = wellchem.Sample.from_values({"Iron": "0.62 mg/L"})
    finding = wellchem.interpret(sample, authorities=["my-state"], on=date(2026, 11, 1), limits=mine)
    assert [(c.limit.authority, c.verdict) for c in finding.comparisons] == [("my-state", "above")]


def test_a_faulty_row_is_named(tmp_path):
    path = tmp_path / "faulty.csv"
    columns = "analyte,limit_term,kind,minimum,maximum,unit,source,locator,checked,in_force_from"
    rows = ("unobtainium,limit,health,,3,mg/L,x,t1,page,", "iron,limit,health,,many,mg/L,x,t1,page,")
    path.write_text("\n".join([columns, *rows, "lead,limit,health,,3,furlongs,x,t1,page,"]))
    with pytest.raises(wellchem.errors.LimitsError) as caught:
        wellchem.limits.load(path, authority="faulty")
    for fault in ("unobtainium", "many", "furlongs"):
        assert fault in str(caught.value)


def test_the_readme_s_python_runs(monkeypatch):
    top = Path(__file__).parents[1]
    monkeypatch.chdir(top)
    blocks = re.findall(r"```python\n(.*?)```", (top / "README.md").read_text(encoding="utf-8"), re.DOTALL)
    names: dict[str, object] = {}
    for block in blocks:
        exec(block, names)
    assert len(blocks) == 3
    assert names["iron"].value == 2.41
    assert names["finding"].problems
    assert names["treated"].role == "predicted"
    assert len(names["flags"])
    assert len(names["problems"])
