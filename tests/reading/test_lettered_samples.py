"""Samples called by letters or places over a column of analytes, places of sampling, recoveries beside samples.

Each table is invented and its meaning typed by hand; most were not read right when first tried.
"""

from __future__ import annotations

import pytest

import wellchem
from wellchem.errors import NothingFound

ROWS = ("Iron (mg/L)", "Lead (ug/L)", "Sodium (mg/L)")
NUMBERS = ((0.1, 0.2, 0.3), (1, 2, 3), (10, 20, 30))


def _table(corner: str, samples: tuple[str, ...]) -> bytes:
    lines = [",".join((corner, *samples))]
    lines += [
        ",".join((name, *(str(n) for n in numbers[: len(samples)])))
        for name, numbers in zip(ROWS, NUMBERS, strict=True)
    ]
    return "\n".join(lines).encode()


@pytest.mark.parametrize(
    ("corner", "samples"),
    [
        ("Well", ("A", "B", "C")),
        ("Sample", ("K", "N", "P")),
        ("Well", ("U", "V")),
        ("Parameter", ("A", "B", "C")),
        ("Well", ("Pb", "House", "B2")),
        ("Parameter", ("Barn", "Kitchen", "House")),
        ("", ("Barn", "Kitchen", "House")),
    ],
)
def test_letters_and_places_over_a_column_of_analytes_are_samples(corner, samples):
    report = wellchem.read(_table(corner, samples), name="x.csv")
    got = {(s.id or s.site): {r.analyte: r.high for r in s.results} for s in report.samples}
    assert got == {
        name: {
            "iron": pytest.approx(NUMBERS[0][at]),
            "lead": pytest.approx(NUMBERS[1][at] / 1000),
            "sodium": pytest.approx(NUMBERS[2][at]),
        }
        for at, name in enumerate(samples)
    }
    assert report.explanation.balanced


def test_symbols_over_samples_stay_analytes():
    report = wellchem.read(b"Well,B,K,U\n,mg/L,mg/L,ug/L\nW-1,0.1,2,3\nW-2,0.2,4,5\n", name="x.csv")
    got = {(s.id or s.site): [r.analyte for r in s.results] for s in report.samples}
    assert got == {well: ["boron", "potassium", "uranium"] for well in ("W-1", "W-2")}


def test_a_matrix_of_correlations_is_no_result():
    with pytest.raises(NothingFound):
        wellchem.read(b"Element,Ca,Mg,Na\nCa,1.0,0.5,0.2\nMg,0.5,1.0,0.3\nNa,0.2,0.3,1.0\n", name="x.csv")


@pytest.mark.parametrize(
    "label", ["Entnahmestelle", "Point de prélèvement", "Punto de muestreo", "Sampling location", "Sampling point"]
)
def test_a_point_of_sampling_that_is_no_part_of_the_plumbing_is_the_place(label):
    text = f"{label}: Lohe 4;;\nParameter;Result;Unit\nIron;0.12;mg/L\nLead;<1;µg/L\n"
    (sample,) = wellchem.read(text.encode(), name="x.csv").samples
    assert (sample.site, sample.point) == ("Lohe 4", None)


def _recoveries(rows: str, more: str = "") -> wellchem.Report:
    return wellchem.read(f"Sample ID,Analyte,Result,Units,% Recovery{more}\n{rows}".encode(), name="x.csv")


def test_the_method_s_recovery_beside_every_result_leaves_them_the_household_s():
    report = _recoveries("W-1,Iron,0.1,mg/L,98\nW-1,Lead,2,ug/L,101\nW-1,Sodium,20,mg/L,97\n")
    assert [r.analyte for s in report.samples for r in s.results] == ["iron", "lead", "sodium"]
    assert not report.quality_control


@pytest.mark.parametrize(
    ("rows", "more"),
    [
        ("W-1,Iron,0.1,mg/L,\nB5-7,Iron,4.9,mg/L,98\nW-1,Lead,2,ug/L,\nB5-7,Lead,51,ug/L,102\n", ""),
        ("W-1,Iron,0.1,mg/L,,\nB5-7,Iron,4.9,mg/L,98,5\nW-1,Lead,2,ug/L,,\nB5-7,Lead,51,ug/L,102,50\n", ",Spike Added"),
        ("W-1,Iron,0.1,mg/L,\nLCS,Iron,4.9,mg/L,98\nW-1,Lead,2,ug/L,\nLCS,Lead,51,ug/L,102\n", ""),
    ],
)
def test_recoveries_of_spiked_samples_alone_stay_quality_control(rows, more):
    report = _recoveries(rows, more)
    assert [(s.id, r.printed.value) for s in report.samples for r in s.results] == [("W-1", "0.1"), ("W-1", "2")]
    assert sum(len(s.results) for s in report.quality_control) == 2


def test_a_heading_with_a_bound_names_no_sample() -> None:
    rows = "Constituent,Units,TT = 0.3 NTU AL,2018 Year\nCopper,ppm,1.3,0.16\nLead,ppb,15,2\nZinc,ppm,5,0.2\n"
    batch = wellchem.read_batch([rows.encode()])
    assert batch.results.empty
    assert len(batch.unread)
