"""Printed values: numbers, censoring and what stands around them; and what is not a value."""

import csv
import gzip
import io
import math
import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st
from vocabulary_places import facts, real

from wellchem.models.codes import Censoring
from wellchem.vocabulary import Bound, bundled

V = bundled()
NONE, LEFT, RIGHT = Censoring.NONE, Censoring.LEFT, Censoring.RIGHT

# Forms of printed values (those of public exports and of Standard Methods 9222/9223; the rest common practice, no
# source): censoring, number, low, high.
NUMBERS = {
    "7.1": (NONE, 7.1, 7.1, 7.1),
    ".14": (NONE, 0.14, 0.14, 0.14),
    "5.": (NONE, 5, 5, 5),
    "-88.4": (NONE, -88.4, -88.4, -88.4),
    "1,234.5": (NONE, 1234.5, 1234.5, 1234.5),
    "1,234": (NONE, 1234, 1234, 1234),
    "12,345,678": (NONE, 12345678, 12345678, 12345678),
    "1.234,5": (NONE, 1234.5, 1234.5, 1234.5),
    "1 234,5": (NONE, 1234.5, 1234.5, 1234.5),
    "1\u202f234": (NONE, 1234, 1234, 1234),
    "1'234.5": (NONE, 1234.5, 1234.5, 1234.5),
    "0,8": (NONE, 0.8, 0.8, 0.8),
    "0,008": (NONE, 0.008, 0.008, 0.008),
    "1.2E-03": (NONE, 0.0012, 0.0012, 0.0012),
    "5.0E+01": (NONE, 50, 50, 50),
    "1.2 x 10^-3": (NONE, 0.0012, 0.0012, 0.0012),
    "1.2 x 10⁻³": (NONE, 0.0012, 0.0012, 0.0012),
    "1,2·10⁻³": (NONE, 0.0012, 0.0012, 0.0012),
    "<0.5": (LEFT, 0.5, 0, 0.5),
    "< 0.5": (LEFT, 0.5, 0, 0.5),
    "<.05": (LEFT, 0.05, 0, 0.05),
    "&lt;0.5": (LEFT, 0.5, 0, 0.5),
    "≤0.5": (LEFT, 0.5, 0, 0.5),
    "<=0.5": (LEFT, 0.5, 0, 0.5),
    "<0,8": (LEFT, 0.8, 0, 0.8),
    "< 1.0E-03": (LEFT, 0.001, 0, 0.001),
    "less than 0.5": (LEFT, 0.5, 0, 0.5),
    "ND (0.5)": (LEFT, 0.5, 0, 0.5),
    "ND<0.5": (LEFT, 0.5, 0, 0.5),
    "ND @ 0.5": (LEFT, 0.5, 0, 0.5),
    "ND (RL 0.5)": (LEFT, 0.5, 0, 0.5),
    "Not detected (less than 0.5)": (LEFT, 0.5, 0, 0.5),
    "ND": (LEFT, None, 0, None),
    "n.d.": (LEFT, None, 0, None),
    "BDL": (LEFT, None, 0, None),
    "< LQ": (LEFT, None, 0, None),
    "nicht nachweisbar": (LEFT, None, 0, None),
    "None detected": (LEFT, None, 0, None),
    ">2419.6": (RIGHT, 2419.6, 2419.6, math.inf),
    "> 2419,6": (RIGHT, 2419.6, 2419.6, math.inf),
    "≥ 200": (RIGHT, 200, 200, math.inf),
    "TNTC": (RIGHT, None, None, math.inf),
}


@pytest.mark.parametrize(("text", "expected"), NUMBERS.items(), ids=NUMBERS)
def test_number(text, expected):
    found = V.value(text)
    assert (found.censoring, found.number, found.low, found.high) == expected
    assert found.qualifiers == ()
    assert found.unit_text == ""


@pytest.mark.parametrize(
    ("text", "decimal", "number"),
    [
        ("1,234", ",", 1.234),
        ("1.234", ",", 1234),
        ("1.234", ".", 1.234),
        ("0.125", None, 0.125),
        ("12.5", ",", 12.5),
        ("1.234.567", ",", 1234567),
        ("1.234,5", ".", 1234.5),
    ],
)
def test_decimal_sign_of_the_table(text, decimal, number):
    assert V.value(text, decimal=decimal).number == number


@pytest.mark.parametrize("text", ["1,234", "1.234", "<1.234"])
def test_without_a_known_decimal_sign_it_is_ambiguous(text):
    found = V.value(text, decimal=None)
    assert found.note == "ambiguous_decimal"
    assert found.number is None


def test_votes_for_the_decimal_sign():
    assert V.decimal_votes("0,8") == (0, 1)
    assert V.decimal_votes("<0.25") == (1, 0)
    assert V.decimal_votes("1.234,5 mg/l") == (0, 1)
    assert V.decimal_votes("1,234") == (0, 0)
    assert V.decimal_votes("12.03.2024") == (0, 0)
    assert V.decimal_votes("ND") == (0, 0)


AROUND = {
    "0.5 U": (0.5, None, "", ("U",)),
    "0.005 U": (0.005, None, "", ("U",)),
    "12 J": (12, None, "", ("J",)),
    "0.5J": (0.5, None, "", ("J",)),
    "0.5 (J)": (0.5, None, "", ("J",)),
    "0.5 UJ": (0.5, None, "", ("UJ",)),
    "0.7 B J": (0.7, None, "", ("B", "J")),
    "0.7 J,B": (0.7, None, "", ("J", "B")),
    "0.31*": (0.31, None, "", ("*",)),
    "0.31²": (0.31, None, "", ("2",)),
    "0.31 †": (0.31, None, "", ("†",)),
    "12 H": (12, None, "", ("H",)),
    "0.020 R": (0.02, None, "", ("R",)),
    "3.1 ± 0.6": (3.1, 0.6, "", ()),
    "3.1 +/- 0.6 U": (3.1, 0.6, "", ("U",)),
    "3,1 ± 0,6": (3.1, 0.6, "", ()),
    "2.4 mg/L": (2.4, None, "mg/L", ()),
    "12 mg/L J": (12, None, "mg/L", ("J",)),
    "12 J mg/L": (12, None, "mg/L", ("J",)),
    "<5.0 ug/L U": (5, None, "ug/L", ("U",)),
    "7.2 SU": (7.2, None, "SU", ()),
    "7.2 C": (7.2, None, "C", ()),
    "68 °F": (68, None, "°F", ()),
    "0 CFU/100 mL": (0, None, "CFU/100 mL", ()),
    "<1 / 100 mL": (1, None, "/ 100 mL", ()),
    "2419.6 MPN/100mL": (2419.6, None, "MPN/100mL", ()),
    "1.5e3 pCi/L": (1500, None, "pCi/L", ()),
    "0.4 ± 0.2 pCi/L": (0.4, 0.2, "pCi/L", ()),
    "0.422* FNU": (0.422, None, "FNU", ("*",)),
    "0.5 mg/L*": (0.5, None, "mg/L", ("*",)),
    "5.0 U*": (5, None, "", ("U", "*")),
    "0.5 [1]": (0.5, None, "", ("1",)),
    "0.5ᵃ": (0.5, None, "", ("a",)),
    "21.5 ° C": (21.5, None, "° C", ()),
    "5 CU": (5, None, "CU", ()),
    "3 TON": (3, None, "TON", ()),
    '="0.5"': (0.5, None, "", ()),
}


@pytest.mark.parametrize(("text", "expected"), AROUND.items(), ids=AROUND)
def test_what_stands_around_a_number(text, expected):
    found = V.value(text)
    assert (found.number, found.uncertainty, found.unit_text, found.qualifiers) == expected


@pytest.mark.parametrize(
    ("text", "note"),
    [
        ("7.4 @ 21 C", "temperature"),
        ("ca. 5", "approximate"),
        ("~5", "approximate"),
        ("[0.0070]", "brackets"),
        ("0.5-1.2", "range"),
        ("ND-4.1", "range"),
        ("8.4-82 (a range)", "range"),
        ("Not analysed", "not_analysed"),
        ("NR", "not_analysed"),
        ("--", "blank"),
        ("", "blank"),
        ("trace", "trace"),
        ("confluent growth", "confluent"),
        ("TNTC", "too_numerous"),
    ],
)
def test_note(text, note):
    assert V.value(text).note == note


def test_words_of_presence():
    for text in ("Absent", "absence", "Negative", "No growth", "Absent/100 mL", "Absence dans 100 ml", "Absent (<1)"):
        assert V.value(text).censoring is Censoring.ABSENT, text
    for text in ("Present", "POSITIVE", "Present/100 mL", "nachgewiesen", "positif"):
        assert V.value(text).censoring is Censoring.PRESENT, text
    assert V.value("A") is None
    assert V.value("A", presence=True).censoring is Censoring.ABSENT
    assert V.value("P", presence=True).censoring is Censoring.PRESENT
    assert V.value("<1 (Absent)").high == 1


def test_ticked_boxes():
    assert V.value("[ ] Present [X] Absent").censoring is Censoring.ABSENT
    assert V.value("☒ Present ☐ Absent").censoring is Censoring.PRESENT
    assert V.value("[X] Present [X] Absent") is None
    assert V.value("Present [ ] Absent [X]").censoring is Censoring.ABSENT
    for empty in ("[ ] Present", "( ) Absent", "Absent [ ]", "☐ Absent", "Present ☐"):
        assert V.value(empty) is None, empty
    assert V.value("[ ] Present [ ] Absent") is None


def test_the_same_result_in_two_units():
    found = V.value("212 mg/L (12.4 gpg)")
    assert (found.number, found.unit_text, found.note) == (212, "mg/L", "restated")
    assert V.value("212 (12.4 gpg)") is None
    assert V.value("212 mg/L (see note)") is None


def test_bound_of_a_non_detect_without_a_number():
    assert V.value("BDL").bound is Bound.DETECTION
    assert V.value("<MDL").bound is Bound.DETECTION
    assert V.value("< LQ").bound is Bound.REPORTING
    assert V.value("<BG").bound is Bound.REPORTING
    assert V.value("ND").bound is None


NOT_VALUES = """
O.5; 1.2.3; 1,23,4; 05/12/2019; 2019-05-03; 10/30; 12:45; 555-123-4567; 555-1234; (555) 123-4567; 2016-2018; See note;
CLEAR; YES; NO; TT; 1-Beautiful, could not be nicer; YSI Pro DSS; INVALID 6.5; <#; 12 ½; >; <; SM 4500-H+ B; EPA 300.0;
BROWN; W-3; MW-12; 12 Elm St; 7 days; 4 °K; 5 mg; 3.1 (0.6); #REF!; 1/2; 12/5 mg/L; l2; 1O; 0..5; 5-; a0.5;
0.5 see note; 12 /; 5 (Absent); 0 (Present)
"""


@pytest.mark.parametrize("text", [text.strip() for text in NOT_VALUES.replace("\n", " ").split(";")])
def test_not_a_value(text):
    assert V.value(text) is None


@given(
    st.floats(1e-6, 1e6).map(lambda number: float(f"{number:.6g}")),
    st.sampled_from(["", "<", "< ", ">", "ND<"]),
    st.sampled_from(["", " J", " U", "*", " mg/L", " µg/L", " (B)"]),
)
def test_a_printed_number_comes_back(number, sign, tail):
    plain = f"{number:.9f}".rstrip("0").rstrip(".")
    if float(plain) != number:
        return
    for text, decimal in ((plain, "."), (plain.replace(".", ","), ",")):
        found = V.value(f"{sign}{text}{tail}", decimal=decimal)
        assert found.number == number
        assert found.censoring is {"": NONE, ">": RIGHT}.get(sign.strip(), LEFT)
        assert found.low <= number <= found.high


@given(st.integers(1000, 10**8), st.sampled_from([",", ".", " ", "'", "\u00a0"]))
def test_thousands(number, sign):
    printed = f"{number:,}".replace(",", sign)
    decimal = "," if sign == "." else "."
    assert V.value(printed, decimal=decimal).number == number


@given(st.text(max_size=30), st.sampled_from([".", ",", None]), st.booleans())
def test_any_text_has_an_answer(text, decimal, presence):
    found = V.value(text, decimal=decimal, presence=presence)
    if found and found.low is not None and found.high is not None:
        assert found.low <= found.high
    assert all(isinstance(vote, int) for vote in V.decimal_votes(text))


def _worked(topics):
    path = facts() / "worked" / "worked_examples.toml"
    if not path.exists():
        return []
    examples = tomllib.loads(path.read_text(encoding="utf-8"))["example"]
    return [
        (e["id"], value["name"], value["value"]) for e in examples if e["topic"] in topics for value in e["expected"]
    ]


# Ways in which laboratories write counts (Standard Methods 9221-9223, from memory in the collected examples).
_COUNTS = [row for row in _worked(("mpn",)) if isinstance(row[2], str) and row[2][:1] in "<>"]


@pytest.mark.parametrize(("source", "name", "printed"), _COUNTS, ids=[f"{s}-{n}" for s, n, _ in _COUNTS])
def test_bounds_of_counts(source, name, printed):
    found = V.value(f"{printed} MPN/100 mL")
    assert found.censoring is (LEFT if printed[0] == "<" else RIGHT)
    assert found.number == float(printed[1:])
    assert found.unit_text == "MPN/100 mL"


_OTHERS = [row for row in _worked(("qualifiers",)) if row[:2] == ("nondetect-forms", "others")]


@pytest.mark.parametrize("row", _OTHERS, ids=str)
def test_ways_a_non_detect_is_written(row):
    for printed in row[2].replace("0 for coliform", "0").split(","):
        found = V.value(printed.strip())
        assert found.censoring in (LEFT, Censoring.ABSENT) or found.number == 0


# Detection conditions of the WQX domain (values ResultDetectionCondition, version 3.0.249).
_CONDITIONS = {name: value for source, name, value in _worked(("qualifiers",)) if source == "wqx-detection-condition"}


@pytest.mark.skipif(not _CONDITIONS, reason="the public tables are absent")
def test_detection_conditions():
    left, right = _CONDITIONS["left_censored"], _CONDITIONS["right_censored"]
    for condition in _CONDITIONS["terms"]:
        found = V.value(condition)
        assert found is not None, condition
        if condition in left:
            assert found.censoring is LEFT, condition
        elif condition in right:
            assert found.censoring is RIGHT, condition
        elif condition in _CONDITIONS["no_value_known"]:
            assert found.censoring is Censoring.NOT_REPORTED, condition


@pytest.mark.parametrize(
    ("file", "column"),
    [
        ("wqp/dr_phosData_legacy_84k.csv.gz", "ResultMeasureValue"),
        ("wqp/dr_wi_phos_data_wqx3narrow_55k.csv.gz", "Result_Measure"),
        ("wqp/ugs_sample_chemistry.csv", "ResultDetectionConditionText"),
        ("wqp/ugs_sample_chemistry2.csv", "ResultMeasureValue"),
        ("lab/ca_waterboards_chem_sub.csv", "FINDING"),
        ("lab/wi_LDES_csls_2020_01_28.csv", "Result value"),
        ("nwis/dr_nwisData_qw.csv", "result_va"),
    ],
)
def test_values_of_public_files(file, column):
    path = real() / file
    if not path.exists():
        pytest.skip("the public data are absent")
    text = gzip.decompress(path.read_bytes()) if file.endswith("gz") else path.read_bytes()
    printed = {row[column] for row in csv.DictReader(io.StringIO(text.decode("utf-8-sig")))}
    unknown = {text for text in printed if V.value(text) is None}
    assert all(text.startswith("INVALID") for text in unknown), unknown
    for text in printed:
        try:
            number = float(text)
        except ValueError:
            continue
        assert V.value(text).number == number
