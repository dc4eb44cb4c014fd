"""The results frame's door: the same verdicts as one sample at a time, in the types that the schema states."""

from datetime import date

import numpy as np
import pandas as pd
import pytest
from compared import TODAY, absent, amount, below, over, present, sample

from wellchem import compare, limits, schema
from wellchem.errors import FrameError
from wellchem.models.codes import Role, SamplingPoint

AUTHORITIES = ("us-epa", "eu", "health-canada")


def wells():
    """Three invented wells and a blank."""
    return (
        sample(
            amount("lead", 0.012, fraction="total"),
            amount("nitrate", 11.0, assumptions={"basis": "N"}),
            below("arsenic", 0.02, fraction="dissolved"),
            present("total_coliform"),
            absent("e_coli", qualifiers=("H",)),
            amount("gross_alpha", 22.0, unit="pCi/L"),
            amount("ph", 6.4),
            key="w1",
            collected=date(2019, 5, 1),
            point=SamplingPoint.TAP_FIRST_DRAW,
        ),
        sample(
            amount("gross_alpha", 22.0, unit="pCi/L"),
            amount("uranium", 12.0, unit="µg/L", fraction="total"),
            amount("chloroform", 0.03),
            over("nitrate", 9.0),
            amount("fluoride", 1.4, uncertainty=0.2),
            key="w2",
            collected=date(2028, 5, 1),
        ),
        sample(amount("nitrate_plus_nitrite", 0.5), amount("iron", 4.0, qualifiers=("R",)), key="w3"),
        sample(amount("lead", 5.0), key="w4", role=Role.BLANK),
    )


def told(samples, on):
    """Comparisons of one sample at a time, as the frame tells them."""
    for one in samples:
        for made in limits.compare_sample(one, AUTHORITIES, on=on):
            reasons = ";".join(made.reasons)
            yield (one.key, made.limit.id, made.analyte, str(made.verdict), made.near, made.condition_settled, reasons)


@pytest.mark.parametrize("on", [TODAY, "collected"])
def test_both_doors_tell_the_same(on):
    frame = compare(schema.results_frame(wells()), AUTHORITIES, on=on)
    names = ["sample", "limit", "analyte", "verdict", "near", "settled"]
    rows = frame[names].assign(reasons=frame["reasons"].astype("object").fillna("")).itertuples(index=False)
    assert sorted(map(tuple, rows)) == sorted(told(wells(), on))


def test_types_are_the_schemas():
    frame = compare(schema.results_frame(wells()), AUTHORITIES, on=TODAY)
    schema.check(frame, "comparisons")
    assert list(frame.columns) == [column.name for column in schema.columns("comparisons")]
    for name, dtype in schema.empty("comparisons").dtypes.items():
        if isinstance(dtype, pd.CategoricalDtype) and not len(dtype.categories):
            assert isinstance(frame[name].dtype, pd.CategoricalDtype)
        else:
            assert frame[name].dtype == dtype, name
    assert set(frame["on"]) == {pd.Timestamp(TODAY)}


def test_results_are_found_by_their_position():
    results = schema.results_frame(wells())
    frame = compare(results, AUTHORITIES, on=TODAY)
    single = frame[frame["result"].notna()]
    of = results.iloc[single["result"].astype(int)]
    assert (single["sample"].astype(str).to_numpy() == of["sample"].astype(str).to_numpy()).all()
    assert set(single["result"]) == set(range(14))
    assert set(frame.loc[frame["result"].isna(), "sample"]) == {"w1", "w2", "w3"}


def test_quality_control_is_never_compared():
    frame = compare(schema.results_frame(wells()), AUTHORITIES, on=TODAY)
    assert "w4" not in set(frame["sample"])


def test_split_by_sample_and_put_together():
    results = schema.results_frame(wells())
    whole = compare(results, AUTHORITIES, on="collected")
    parts = [compare(part, AUTHORITIES, on="collected") for _, part in results.groupby("sample", observed=True)]
    together = pd.concat([part.astype(dict.fromkeys(("sample", "reasons"), "object")) for part in parts])
    assert sorted(map(str, told_by(together))) == sorted(map(str, told_by(whole)))


def told_by(frame):
    names = ["sample", "limit", "verdict", "low", "high", "near", "settled", "on"]
    reasons = frame["reasons"].astype("object").fillna("")
    return list(frame[names].astype({"limit": "object"}).assign(reasons=reasons).itertuples(index=False, name=None))


def test_the_order_of_rows_does_not_matter():
    results = schema.results_frame(wells())
    mixed = results.sample(frac=1.0, random_state=7)
    assert sorted(map(str, told_by(compare(results, AUTHORITIES, on=TODAY)))) == sorted(
        map(str, told_by(compare(mixed, AUTHORITIES, on=TODAY)))
    )


def test_a_frame_back_from_csv(tmp_path):
    results = schema.results_frame(wells())
    results.to_csv(tmp_path / "results.csv", index=False)
    again = pd.read_csv(tmp_path / "results.csv", parse_dates=["collected"])
    assert told_by(compare(again, AUTHORITIES, on="collected")) == told_by(
        compare(results, AUTHORITIES, on="collected")
    )


def test_an_empty_frame():
    frame = compare(schema.empty("results"), AUTHORITIES)
    assert frame.empty
    assert list(frame.columns) == [column.name for column in schema.columns("comparisons")]


def test_what_is_no_results_frame():
    with pytest.raises(FrameError, match="lacks the column"):
        compare(pd.DataFrame({"analyte": ["lead"]}))
    results = schema.results_frame(wells())
    with pytest.raises(FrameError, match="µg/L"):
        compare(results.assign(unit="µg/L"))
    with pytest.raises(FrameError, match="nitrate has the basis 'NO3', not 'N'"):
        compare(results.assign(basis=np.where(results["analyte"] == "nitrate", "NO3", None)))
    with pytest.raises(FrameError, match="'Lead'"):
        compare(results.assign(analyte=results["analyte"].astype("str").replace("lead", "Lead")))
    with pytest.raises(FrameError, match="Total"):
        compare(results.assign(fraction="Total"))
    with pytest.raises(FrameError, match="collected"):
        compare(results.assign(collected="1 May 2020"))
    with pytest.raises(FrameError, match="sample"):
        compare(results.assign(sample=None))


def test_only_the_needed_columns():
    least = schema.results_frame(wells())[["sample", "analyte", "censoring", "low", "high"]]
    frame = compare(least, ["us-epa"], on=TODAY)
    made = frame[frame["limit"] == "us-epa/nitrate/mcl"].set_index("sample")["verdict"]
    assert made["w1"] == "above"
