"""Code lists, spellings counted in public files, and rows that a caller adds."""

import csv
import subprocess
import sys

import pytest
from vocabulary_places import facts

from wellchem.vocabulary import bundled

V = bundled()


def _rows(name):
    path = facts() / name
    if not path.exists():
        return []
    with path.open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


def test_a_number_means_something_only_in_its_list():
    nitrate = V.name("00618", code_list="nwis")
    assert (nitrate.analyte, nitrate.fraction, nitrate.basis) == ("nitrate", "dissolved", "N")
    assert V.name("618", code_list="nwis") == nitrate  # leading noughts lost in a spreadsheet
    assert V.name("00618") is None
    assert V.name("00618", code_list="storet") is None
    assert V.name("7439-89-6", code_list="cas").analyte == "iron"
    assert V.name("07439-89-6", code_list="cas").analyte == "iron"
    assert V.name("57-12-5", code_list="cas") is None  # cyanide or free cyanide
    assert V.name("99999", code_list="nwis") is None


def test_units_of_codes_convert():
    """Of the 924 collected codes, those whose unit is not of the analyte, with the reason."""
    reasons = {
        "JTU": "another scale of turbidity", "NTRU": "another scale of turbidity", "NTMU": "another scale of turbidity",
        "FNRU": "another scale of turbidity", "FBU": "another scale of turbidity", "FAU": "another scale of turbidity",
        "FNMU": "another scale of turbidity", "FBRU": "another scale of turbidity", "SBU": "another scale of turbidity",
        "mg/l SiO2": "turbidity against silica", "mg/l as H": "acidity as hydrogen ion", "code": "a code",
        "Bcol/day": "a load", "CCE/100 mL": "gene copies", "CE/100 mL": "gene copies", "cn/100 mL": "gene copies",
        "ug/l": "asbestos by mass", "AU": "absorbance without its path",
    }  # fmt: skip
    for row in _rows("parameter_codes.csv"):
        meaning = V.name(row["parameter_code"], code_list="nwis")
        assert meaning.analyte == row["analyte"]
        unit = V.unit(meaning.unit, meaning.analyte, meaning)
        assert unit.problem is None or meaning.unit in reasons, (row["parameter_code"], meaning.unit, unit.detail)


def test_long_names_of_codes_are_read_like_their_codes():
    """The long names are names like others: at least nine in ten are understood, and none as something else."""
    rows = [row for row in _rows("parameter_codes.csv") if "STORET number" not in row["name"]]
    if not rows:
        pytest.skip("the public tables are absent")
    read = 0
    for row in rows:
        found = V.name(row["name"], unit=row["unit"])
        if found is None:
            continue
        read += 1
        known = V.name(row["parameter_code"], code_list="nwis")
        if row["parameter_code"] not in ("00435",) and known.analyte != "phenolphthalein_alkalinity":
            assert found.analyte == known.analyte, row["name"]
        if V.analytes[known.analyte].fractions and found.fraction:
            assert found.fraction == known.fraction or known.fraction is None, row["name"]
        if found.basis and known.basis:
            assert found.basis == known.basis, row["name"]
    assert read >= 0.9 * len(rows)


# Printed names counted in public files that stay unknown, and why.
UNKNOWN = {
    "no analyte of water": (
        "CLOUD COVER", "WIND", "AIR TEMPERATURE", "APPEARANCE", "USER PERCEPTION", "WATER LEVEL", "VISUAL", "SECCHI",
        "CALIBRATED", "METER TYPE", "DEPTH OF BOTTOM", "Localization", "Geology", "UTM-", "Code", "Data", "Flow",
        "T_avg", "Identifier",
    ),
    "a sum or a difference that the report has worked out": ("Cation_sum", "Anion_sum", "Pct_Diff", "H_ion"),
    "not of a private well's report": (
        "CHLOROPHYLL", "Ar 420", "d 18O", "d2H", "delta_", "Suspended Sediment", "volatile solids", "m-Nitroaniline",
        "HAA6Br", "HAA9", "PCB-1", "Precursors",
    ),
    "sediment": ("bed sediment",),
    "a laboratory's own code": ("~",),
    "two analytes": ("Chlorine Residual", "RA-226 OR TOTAL RA", "RADIUM, TOTAL", "TCA", "D-D", "DI & MONO ACID"),
    "a trade name of old, or misspelt": (
        "HYDRAM", "WEED-B-GON", "BASANITE", "PHOSPHAMIDE", "DIELDRINE", "POLYCHLORINATEDBIPHENOLS", "DICHLOROPROPANE",
    ),
    "another column of the table": ("Raw", "C1Nitrate", "C2Nitrate"),
}  # fmt: skip


def test_names_counted_in_public_files():
    rows = _rows("spellings/names.csv")
    if not rows:
        pytest.skip("the public tables are absent")
    marks = [mark for marks in UNKNOWN.values() for mark in marks]
    unknown = [row["printed_name"] for row in rows if V.name(row["printed_name"]) is None]
    assert [name for name in unknown if not any(mark.lower() in name.lower() for mark in marks)] == []


# Units of public result files that are of no water analyte.
NOT_OF_WATER = {"MPH", "FEET", "FT", "Arc 1960", "cfm", "% Positive Samples", "# Positive Samples", "% Samples"}


def test_units_counted_in_public_files():
    for row in _rows("spellings/units.csv"):
        unit = row["printed_unit"]
        if int(row["in_result_files"]) and unit.strip() not in NOT_OF_WATER | {"None"}:
            assert V.is_unit(unit), unit


def test_fractions_and_limit_types_counted_in_public_files():
    not_of_water = {"Bed Sediment", "Bedload", "Supernate", "Sieved", "Settleable", "Non-settleable", "Comb Available"}
    for row in _rows("spellings/fractions.csv"):
        if row["printed_fraction"] not in not_of_water:
            assert V.fraction(row["printed_fraction"]) is not None, row["printed_fraction"]
    for row in _rows("spellings/qualifiers.csv"):
        if row["where"] == "limit type" and not row["printed_qualifier"].startswith("Upper"):
            assert V.phrase(row["printed_qualifier"]).limit_role is not None, row["printed_qualifier"]


def test_rows_of_a_caller_come_first_and_change_nothing_else():
    more = V.extended(
        names=[{"name": "Eau ferrugineuse", "analyte": "iron", "fraction": "total"}],
        units=[{"printed": "splash", "quantities": "concentration", "expression": "2*milligram/liter"}],
        columns=[{"header": "Zahl der Woche", "role": "value"}],
        codes=[{"code_list": "own", "code": "FE1", "analyte": "iron"}],
        analytes=[{"analyte": "unobtainium", "group": "metal", "formula": "", "charge": "", "cas": "",
                   "canonical_unit": "mg/L", "canonical_basis": "", "label": "Unobtainium"}],
    )  # fmt: skip
    assert more.name("Eau ferrugineuse").fraction == "total"
    assert more.unit("splash", "iron").factor == 2
    assert more.column("Zahl der Woche").role == "value"
    assert more.name("fe1", code_list="own").analyte == "iron"
    assert more.name("Unobtainium, dissolved").analyte == "unobtainium"
    assert V.name("Eau ferrugineuse") is None
    assert V.unit("splash", "iron").problem is not None
    with pytest.raises(ValueError, match="no table"):
        V.extended(colours=[])


def test_pint_is_not_loaded_before_a_unit_is_converted():
    code = (
        "import sys; from wellchem.vocabulary import bundled; v = bundled();"
        "assert v.name('Iron, total').analyte == 'iron'; v.value('<0.5'); v.column('Result'); v.phrase('Metals');"
        "assert 'pint' not in sys.modules and 'pandas' not in sys.modules and 'pydantic' not in sys.modules"
    )
    subprocess.run([sys.executable, "-c", code], check=True)
