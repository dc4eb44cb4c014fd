"""The bundled report is read as it was drawn."""

import demo_report
import pytest

import wellchem
from wellchem import demo


@pytest.fixture(scope="module")
def report():
    return wellchem.read(demo.REPORT)


@pytest.mark.parametrize(
    "section, row", [(title, row) for title, rows in demo_report.SECTIONS.items() for row in rows], ids=lambda x: x[0]
)
def test_every_printed_result_is_read(report, section, row):
    name, _, _, _, _, _, analyte, low, high = row
    result = report.samples[0].get(analyte)
    assert result is not None
    assert result.printed.name == name
    assert result.low == pytest.approx(low, rel=2e-3)
    assert result.high == pytest.approx(high, rel=2e-3)
    assert (result.fraction == "total") == (section == "Metals, total")


def test_head_and_quality_control(report):
    sample = report.samples[0]
    assert (sample.id, sample.site, sample.point) == (demo_report.SAMPLE, "Tarn Edge well", "tap_flushed")
    assert sample.collected.isoformat() == "2026-10-12T08:40:00"
    assert len(report.samples) == 1
    assert sum(len(part.results) for part in report.quality_control) == len(demo_report.QUALITY_CONTROL)
    assert not report.unread
    assert report.explanation.balanced


def test_the_bundled_file_is_what_the_script_draws(tmp_path):
    fresh = tmp_path / "report.pdf"
    demo_report.draw(fresh)
    again = wellchem.read(fresh)
    kept = wellchem.read(demo.REPORT)
    assert [r.printed for r in again.samples[0].results] == [r.printed for r in kept.samples[0].results]
