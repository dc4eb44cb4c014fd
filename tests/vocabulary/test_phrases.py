"""Text around the tables, cells of closed columns, and qualifiers."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st
from vocabulary_places import facts

from wellchem.models.codes import Role
from wellchem.vocabulary import Consequence, PhraseKind, bundled

V = bundled()


# Titles and labels of laboratories' reports (common practice, no source).
@pytest.mark.parametrize(
    ("text", "kind", "more"),
    [
        ("Metals, dissolved", "section", {"fraction": "dissolved"}),
        ("Total Recoverable Metals by ICP-MS", "section", {"fraction": "total_recoverable"}),
        ("General Chemistry", "section", {"fraction": None}),
        ("Field Parameters", "section", {"measured": "field"}),
        ("Microbiology", "section", {}),
        ("Paramètres microbiologiques", "section", {}),
        ("Physikalisch-chemische Parameter", "section", {}),
        ("Dissolved", "section", {"fraction": "dissolved"}),
        ("Method Blank", "quality_control", {"role": "blank"}),
        ("Laboratory Control Sample (LCS)", "quality_control", {"role": "control"}),
        ("Matrix Spike Duplicate", "quality_control", {"role": "spike"}),
        ("Surrogate Recovery", "surrogates", {"role": "spike"}),
        ("Quality Control Summary", "quality_control", {"role": None}),
        ("MB 240311-1", "quality_control", {"role": "blank"}),
        ("13C4 PFOA", "quality_control", {"role": "spike"}),
        ("Naphthalene-d8", "quality_control", {"role": "spike"}),
        ("Blindwert", "quality_control", {"role": "blank"}),
        ("Sample ID: W-3", "sample_head", {"field": "sample_id", "rest": "W-3"}),
        ("Collected", "sample_head", {"field": "date_collected"}),
        ("Prélevé le : 12/03/2024", "sample_head", {"field": "date_collected", "rest": "12/03/2024"}),
        ("Entnahmestelle: Küche", "sample_head", {"field": "point", "rest": "Küche"}),
        ("Phone:", "sample_head", {"field": "administrative"}),
        ("Well depth: 120 ft", "sample_head", {"field": "well_depth", "rest": "120 ft"}),
        ("ND = not detected", "legend", {"note": "ND", "rest": "not detected"}),
        ("J - Estimated value", "legend", {"note": "J", "rest": "Estimated value"}),
        ("* exceeds MCL", "legend", {"note": "*", "rest": "exceeds MCL"}),
        ("mg/L = milligrams per liter", "legend", {"note": "mg/L"}),
        ("¹ Not accredited", "legend", {"note": "1", "rest": "Not accredited"}),
        ("Qualifiers:", "legend", {}),
        ("Page 1 of 3", "footer", {}),
        ("*** End of report ***", "footer", {}),
        ("Certificate of Analysis", "title", {}),
        ("Comments: water looks fine", "note", {}),
        ("kitchen tap, first draw", "point", {"point": "tap_first_draw"}),
        ("Method Detection Level", "limit_type", {"limit_role": "detection_limit"}),
        ("Laboratory Reporting Level", "limit_type", {"limit_role": "reporting_limit"}),
        ("Soil", "matrix", {"water": False}),
    ],
)
def test_phrase(text, kind, more):
    found = V.phrase(text)
    assert found.kind == kind
    assert {name: getattr(found, name) for name in more} == more


@pytest.mark.parametrize(
    "text",
    ["Iron", "Total Iron", "W-3", "0.5", "mg/L", "Nitrate as N", "E. coli", "12 Elm Street", "Ms Smith kitchen",
     "BS EN ISO 9308-1", "MS 12 Elm Street", "Spike Lane", "Blank Road 5", "TDS: 320 mg/L", "pH: 7.1", "Fe: 0.3"],
)  # fmt: skip
def test_no_phrase(text):
    assert V.phrase(text) is None


@pytest.mark.parametrize(
    ("cell", "role"),
    [
        ("Sample-Routine", "routine"),
        ("Field Msr/Obs", "routine"),
        ("REG", "routine"),
        ("N", "routine"),
        ("Quality Control Sample-Field Blank", "blank"),
        ("Quality Control Sample-Field Replicate", "duplicate"),
        ("Quality Control Sample-Lab Matrix Spike Duplicate", "spike"),
        ("MB", "blank"),
        ("LCS", "control"),
        ("MSD", "spike"),
        ("DUP", "duplicate"),
        ("FD", "duplicate"),
    ],
)
def test_sample_types(cell, role):
    assert V.sample_role(cell) == role


def test_identifiers_built_of_a_quality_control_code():
    expected = {
        "MB-1234": Role.BLANK,
        "LCS 240311-1": Role.CONTROL,
        "W-3 DUP": Role.DUPLICATE,
        "K2 Dup": Role.DUPLICATE,
        "Trip Blank": Role.BLANK,
        "BLANK #2": Role.BLANK,
        "240311-01 MS": Role.SPIKE,
        "240311-01MSD": Role.SPIKE,
        "W-3": None,
        "MS Smith": None,
        "Ms. Jones kitchen": None,
        "BS-12": None,
        "FD-1": None,
        "dup street 4": None,
        "MW-12": None,
    }
    assert {text: V.id_role(text) for text in expected} == expected


def test_matrix_and_point():
    assert V.is_water("Drinking water") is True
    assert V.is_water("Groundwater") is True
    assert V.is_water("Sediment") is False
    assert V.is_water("Boden") is False
    assert V.is_water("Basement") is None
    assert V.point("Kitchen tap before softener") == "before_treatment"
    assert V.point("kitchen tap after RO") == "after_treatment"
    assert V.point("raw well water at pressure tank") == "well_head"
    assert V.point("1st draw kitchen") == "tap_first_draw"
    assert V.point("before and after softener") is None
    assert V.point("12 Elm Street") is None


def test_fraction_and_form_cells():
    fractions = {"T": "total", "D": "dissolved", "Total": "total", "Filtered field and/or lab": "dissolved",
                 "Unfiltered": "total", "Suspended": "suspended", "Bed Sediment": None, "": None}  # fmt: skip
    assert {cell: V.fraction(cell) for cell in fractions} == fractions
    forms = {"as P": "P", "as PO4": "PO4", "as N": "N", "as CaCO3": "CaCO3", "None": None, "dry": None, "": None}
    assert {cell: V.form(cell) for cell in forms} == forms


def test_the_report_s_legend_decides_what_a_qualifier_means():
    legend = {
        "B": "Analyte detected between the MDL and the PQL; value is estimated",
        "H": "High result, see note",
        "*": "Exceeds EPA MCL",
        "E": "Value is estimated",
        "Q": "Sample held beyond the accepted holding time",
        "U": "Analyzed for but not detected",
        "X": "Result exceeds the calibration range",
    }
    found = {code: V.qualifier(code, legend) for code in legend}
    assert {code: meaning.consequence for code, meaning in found.items()} == {
        "B": Consequence.BETWEEN_LIMITS,
        "H": Consequence.NOTED,
        "*": Consequence.EXCEEDS,
        "E": Consequence.ESTIMATED,
        "Q": Consequence.HOLDING_TIME,
        "U": Consequence.NOT_DETECTED,
        "X": Consequence.LOWER_BOUND,
    }
    assert all(meaning.from_legend and not meaning.assumptions for meaning in found.values())


def test_usual_reading_of_a_qualifier_is_an_assumption():
    """The design's usual readings; in Florida B is colony counts (F.A.C. 62-160.700 Table 1), not the blank."""
    usual = {
        "U": Consequence.NOT_DETECTED,
        "J": Consequence.ESTIMATED,
        "UJ": Consequence.NOT_DETECTED_ESTIMATED,
        "B": Consequence.UPPER_BOUND,
        "E": Consequence.LOWER_BOUND,
        "H": Consequence.HOLDING_TIME,
        "R": Consequence.REJECTED,
    }
    for code, consequence in usual.items():
        found = V.qualifier(code)
        assert found.consequence is consequence
        assert found.assumptions == (f"qualifier={code}",)
    assert V.qualifier("B", family="florida").consequence is Consequence.NOTED
    assert V.qualifier("M", family="nwis_remark").consequence is Consequence.PRESENT
    assert V.qualifier("E", family="nwis_remark").consequence is Consequence.ESTIMATED
    assert V.qualifier("<").consequence is Consequence.LESS_THAN
    assert V.qualifier("zzz") is None


@given(st.text(max_size=60))
def test_any_text_has_an_answer(text):
    found = V.phrase(text)
    assert found is None or isinstance(found.kind, PhraseKind)
    for answer in (V.sample_role, V.id_role, V.is_water, V.point, V.fraction, V.form, V.measured, V.qualifier):
        answer(text)


def _document_keys():
    path = facts() / "worked" / "worked_examples.toml"
    if not path.exists():
        return []
    examples = tomllib.loads(path.read_text(encoding="utf-8"))["example"]
    families = {"qualifiers-nfg": "usual", "qualifiers-florida": "florida", "qualifiers-dow": "usual"}
    return [
        (example["id"], families[example["id"]], value["name"], value["value"])
        for example in examples
        if example["id"] in families
        for value in example["expected"]
    ]


_KEYS = _document_keys()


@pytest.mark.parametrize(("source", "family", "code", "words"), _KEYS, ids=[f"{s}-{c}" for s, _, c, _ in _KEYS])
def test_words_of_a_key_amount_to_its_table_s_reading(source, family, code, words):
    """Published keys of qualifiers: their words, taken as a report's legend, do what the table says of the code."""
    by_words, by_table = V.qualifier(code, {code: words}), V.qualifier(code, family=family)
    if (source, code) == ("qualifiers-florida", "T"):
        pytest.skip("`for information only` below the detection limit: the words alone say not detected")
    assert by_words.consequence is by_table.consequence
