"""The way in: errors, batches, what a report says of how it was read."""

import pandas as pd
import pytest

import wellchem
from wellchem import errors, schema

TABLE = b"Sample ID,Analyte,Result,Units\nW-1,Iron,0.3,mg/L\nW-1,Mystery,5,mg/L\nMB-77,Iron,<0.05,mg/L\n"


def test_quality_control_is_kept_apart():
    report = wellchem.read(TABLE, name="lab.csv")
    assert [sample.id for sample in report.samples] == ["W-1"]
    assert [(sample.id, sample.role) for sample in report.quality_control] == [("MB-77", "blank")]
    assert report.samples[0].results[0].origin.row == 2
    assert str(report.samples[0].results[0].origin) == "lab.csv, row 2, column 3"


def test_unknown_names_are_unread_with_their_place():
    (unread,) = wellchem.read(TABLE, name="lab.csv").unread
    assert (unread.reason, unread.origin.row, unread.origin.column) == ("unknown_name", 3, 3)


def test_report_goes_through_json():
    report = wellchem.read(TABLE, name="lab.csv")
    again = wellchem.Report.model_validate_json(report.model_dump_json())
    assert again == report
    assert again.explanation.balanced


def test_nothing_found_says_what_was_there():
    with pytest.raises(errors.NothingFound, match=r"prices\.csv"):
        wellchem.read(b"Item,Price\nBread,3\nMilk,2\n", name="prices.csv")
    with pytest.raises(errors.EmptyFile):
        wellchem.read(b"", name="nothing")
    with pytest.raises(errors.MissingFile):
        wellchem.read("no/such/file.csv")


def test_batch_goes_on_past_what_cannot_be_read(tmp_path):
    good, bad = tmp_path / "good.csv", tmp_path / "bad.xlsx"
    good.write_bytes(TABLE)
    bad.write_bytes(b"PK\x03\x04 nonsense")
    batch = wellchem.read_batch([good, bad, tmp_path / "missing.csv"])
    assert len(batch.results) == 2
    assert list(batch.failed["error"]) == ["CorruptFile", "MissingFile"]
    for name in ("results", "samples", "unread", "failed"):
        schema.check(getattr(batch, name), name)
        assert list(getattr(batch, name).columns) == [column.name for column in schema.columns(name)]


def test_batch_keys_are_unique_over_files(tmp_path):
    paths = [tmp_path / "a.csv", tmp_path / "b.csv"]
    for path in paths:
        path.write_bytes(TABLE)
    batch = wellchem.read_batch(paths)
    assert batch.samples["sample"].is_unique
    assert len(batch.samples) == 4
    assert set(batch.results["sample"]) == set(batch.samples["sample"])


def test_batch_and_report_agree(tmp_path):
    path = tmp_path / "lab.csv"
    path.write_bytes(TABLE)
    report, batch = wellchem.read(path), wellchem.read_batch([path])
    pd.testing.assert_frame_equal(report.to_frame(), batch.results, check_categorical=False)


def test_own_vocabulary_adds_a_name():
    from wellchem.vocabulary import bundled

    more = bundled().extended(names=[{"name": "Mystery", "analyte": "manganese"}])
    report = wellchem.read(TABLE, vocabulary=more)
    assert report.unread == ()
    assert wellchem.read(TABLE).unread != ()
