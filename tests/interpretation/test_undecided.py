"""Every undecided verdict of the invented wells says why, and each reason that a report can give comes up."""

import pytest
from interpretation.undecided_wells import counted, findings, reason_of

from wellchem.models.codes import Reason

# Reasons that say what a decided verdict rests on, and are none for leaving it open.
RESTS_ON = {Reason.DERIVED_FROM, Reason.DISSOLVED_MEASURED, Reason.TOTAL_MEASURED}
# No well stands for these: dates and units are of tests/limits.
ELSEWHERE = {Reason.DATE_UNKNOWN, Reason.NOT_DATED, Reason.UNIT_MISSING}


def test_each_reason_is_one_of_the_catalogue():
    assert set(counted()) <= set(Reason)
    assert set(counted()) - RESTS_ON


@pytest.mark.parametrize("reason", sorted(set(Reason) - RESTS_ON - ELSEWHERE))
def test_each_reason_comes_up_in_some_well(reason):
    assert counted().get(reason, (0, 0, 0))[2], f"no well leaves a verdict open by {reason}"


def test_no_undecided_verdict_rests_only_on_what_decides():
    for name, finding in findings():
        for one in finding.comparisons:
            if one.verdict == "undecided":
                assert {reason_of(text) for text in one.reasons} - {Reason.DERIVED_FROM}, (name, one.analyte)
