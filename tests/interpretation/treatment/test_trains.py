"""Trains for invented waters against what published guidance leads to (named in `expected_trains.toml`)."""

import pytest
from treatment_waters import EXPECTED, scenario


@pytest.mark.parametrize("name", EXPECTED)
def test_train_is_the_one_that_guidance_leads_to(name):
    row = EXPECTED[name]
    _, _, treatment = scenario(name)
    assert [stage.code for stage in treatment.stages] == row["stages"], treatment.text
    assert list(treatment.unanswered) == row.get("unanswered", [])
    assert not {stage.code for stage in treatment.stages} & set(row.get("never", ()))
