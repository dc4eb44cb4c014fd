"""The frame doors give what the single sample gives, at any split of the samples."""

from datetime import date

import pandas as pd
import pytest
from interpretation.wells_reader import NAMES, Well, result

import wellchem
from wellchem import schema
from wellchem.errors import FrameError
from wellchem.models.codes import Role
from wellchem.models.sample import Sample

ON = date(2026, 5, 1)


@pytest.mark.parametrize("name", NAMES)
def test_problems_are_those_of_the_single_sample(name):
    well = Well(name)
    frame = schema.results_frame([well.sample])
    found = wellchem.problems(frame, authorities=well.authorities, on=well.on, household=well.household)
    schema.check(found, "problems")
    many = {(row.code, row.kind, row.certainty, row.urgency) for row in found.itertuples()}
    one = {
        (problem.code, problem.kind.value, problem.certainty.value, problem.urgency.value)
        for problem in well.interpreted().problems
    }
    assert many == one


@pytest.mark.parametrize("name", NAMES)
def test_checks_are_those_of_the_single_sample(name):
    well = Well(name)
    frame = schema.results_frame([well.sample])
    found = wellchem.checks(frame, authorities=well.authorities, on=well.on, household=well.household)
    schema.check(found, "checks")
    many = dict(zip(found["code"].astype(str), found["status"].astype(str), strict=True))
    one = {check.code: check.status.value for check in well.interpreted().checks}
    del many["holding_time"], one["holding_time"]  # needs the samples frame, see below
    assert many == one


def test_any_split_gives_the_same():
    samples = [Well(name).sample for name in NAMES]
    whole = wellchem.problems(schema.results_frame(samples), on=ON)
    parts = [wellchem.problems(schema.results_frame(samples[i : i + 7]), on=ON) for i in range(0, len(samples), 7)]
    columns = ["sample", "code", "kind", "certainty", "urgency", "evidence"]
    pd.testing.assert_frame_equal(
        whole[columns].astype("str").reset_index(drop=True),
        pd.concat([part[columns].astype("str") for part in parts]).reset_index(drop=True),
    )


def test_holding_times_come_from_the_samples_frame():
    late = Sample(key="late", results=(result("total_coliform", "absent"),))
    soon = Sample(key="soon", results=(result("total_coliform", "absent"),))
    frame = schema.results_frame([late, soon])
    times = pd.to_datetime(["2026-04-20 08:00"] * 2)
    samples = schema.conform(
        "samples",
        {
            "sample": ["soon", "late"],
            "collected": times,
            "collected_timed": [True, True],
            "analysed": pd.to_datetime(["2026-04-20 15:00", "2026-04-22 15:00"]),
        },
        2,
    )
    found = wellchem.checks(frame, samples, on=ON)
    status = found[found["code"] == "holding_time"].set_index("sample")["status"]
    assert status["late"] == "fail"
    assert status["soon"] == "pass"


def test_quality_control_is_left_out():
    blank = Sample(key="blank", role=Role.BLANK, results=(result("lead", "5"),))
    water = Sample(key="water", results=(result("ph", "7.2"),))
    assert len(wellchem.problems(schema.results_frame([blank, water]), on=ON)) == 0


def test_an_empty_frame_gives_an_empty_frame():
    assert len(wellchem.problems(schema.empty("results"), on=ON)) == 0
    assert len(wellchem.checks(schema.empty("results"), on=ON)) == 0


def test_a_frame_from_a_text_file_is_welcome(tmp_path):
    frame = schema.results_frame([Well("nitrate_bacteria").sample, Well("hard_iron").sample])
    frame.to_csv(tmp_path / "r.csv", index=False)
    back = pd.read_csv(tmp_path / "r.csv", parse_dates=["collected"])
    pd.testing.assert_frame_equal(
        wellchem.problems(back, on=ON).astype("str"), wellchem.problems(frame, on=ON).astype("str")
    )


def test_a_missing_column_is_named():
    with pytest.raises(FrameError, match="analyte"):
        wellchem.problems(schema.empty("results").drop(columns="analyte"))
