"""Limits typed again from the documents, not from the tables, and looked for in the tables.

Source of each: its own line in retyped.csv (document and place). The numbers were typed from knowledge of the
documents, in the unit that came to hand, so that a slip of a factor of 1,000 or of a nitrogen form in the tables
cannot repeat itself here.
"""

from pathlib import Path

import pytest
from limit_tables import canonical, in_force, read, rows

RETYPED = read(Path(__file__).with_name("retyped.csv"))


@pytest.mark.parametrize("typed", RETYPED, ids=lambda typed: f"{typed['authority']} {typed['analyte']} {typed['on']}")
def test_limit_as_typed_from_the_document(typed):
    expected = canonical(typed["number"], typed["unit"], typed["basis"], typed["analyte"])
    found = [
        canonical(row[typed["bound"]], row["unit"], row["basis"], row["analyte"])
        for row in rows()
        if row["authority"] == typed["authority"]
        and row["analyte"] == typed["analyte"]
        and row["kind"] == typed["kind"]
        and row[typed["bound"]]
        and in_force(row, typed["on"])
    ]
    assert any(value == pytest.approx(expected, rel=1e-9, abs=1e-15) for value in found), (expected, found)


def test_enough_of_every_authority():
    assert len(RETYPED) >= 60
    assert {typed["authority"] for typed in RETYPED} == {row["authority"] for row in rows()}
