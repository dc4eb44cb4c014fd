"""Delimited layouts are read the same by pyarrow, as a file of many rows is; reading by the csv module is the oracle."""

import io
from functools import partial

import pytest
from reports_score import MAKERS

import wellchem
from wellchem.reading import delimited, delimited_arrow


def frames(data):
    report = wellchem.read_batch([io.BytesIO(data)])
    return [getattr(report, frame).to_csv() for frame in ("results", "samples", "unread")]


def test_delimited_layouts_are_read_the_same_by_pyarrow(monkeypatch):
    pytest.importorskip("pyarrow")
    layouts = [made for maker in MAKERS.values() if (made := maker()).suffix in ("csv", "tsv", "txt")]
    alone = {one.name: frames(one.data) for one in layouts}
    monkeypatch.setattr(delimited_arrow, "LONG", 0)  # every column's texts stay with pyarrow
    monkeypatch.setattr(delimited, "read_delimited", partial(delimited.read_delimited, arrow=True))
    assert len(alone) > 50
    assert not [one.name for one in layouts if frames(one.data) != alone[one.name]]
