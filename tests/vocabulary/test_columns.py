"""Column headers of reports in four languages and of data standards."""

import csv
import gzip
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from vocabulary_places import real

from wellchem.vocabulary import ColumnRole, bundled

V = bundled()

# Headers as laboratories print them (common practice, no source; French, German and Spanish from memory).
HEADERS = {
    "Analyte": "name",
    "PARAMETER": "name",
    "Constituent": "name",
    "Result": "value",
    "Your Result:": "value",
    "Units": "unit",
    "RL": "reporting_limit",
    "Reporting Limit": "reporting_limit",
    "PQL": "reporting_limit",
    "MDL": "detection_limit",
    "LOD": "detection_limit",
    "Qual.": "qualifier",
    "MCL": "limit",
    "EPA Limit": "limit",
    "Limit*": "limit",
    "Previous Result": "previous",
    "Average": "statistic",
    "% Recovery": "percent_recovery",
    "RPD": "rpd",
    "DF": "dilution",
    "Method": "method",
    "Analyst": "administrative",
    "Date Analyzed": "date_analysed",
    "Date/Time Collected": "date_collected",
    "CAS No.": "code_cas",
    "Fraction": "fraction",
    "+/-": "uncertainty",
    "Pass/Fail": "rating",
    "Paramètre": "name",
    "Résultat": "value",
    "Unité": "unit",
    "Limite de quantification": "reporting_limit",
    "Limite de qualité": "limit",
    "Prélevé le": "date_collected",
    "Ergebnis": "value",
    "Einheit": "unit",
    "Grenzwert TrinkwV": "limit",
    "Bestimmungsgrenze": "reporting_limit",
    "Messunsicherheit": "uncertainty",
    "Probenahmedatum": "date_collected",
    "Entnahmestelle": "point",
    "Parámetro": "name",
    "Valor paramétrico": "limit",
    "Unidades": "unit",
    "Fecha de muestreo": "date_collected",
}

# What a standard's column holds (WQX 2 and 3 exports, NWIS qwdata; English, Canadian and state exports).
STANDARD = {
    "ResultMeasure/MeasureUnitCode": ("unit", "wqx"),
    "ResultMeasure.MeasureUnitCode": ("unit", "wqx"),
    "ResultDetectionConditionText": ("detection_condition", "wqx"),
    "DetectionQuantitationLimitMeasure/MeasureValue": ("limit_value", "wqx"),
    "USGSPCode": ("code_nwis", "wqx"),
    "Result_Measure": ("value", "wqx3"),
    "DetectionLimit_MeasureUnitB": ("limit_unit", "wqx3"),
    "Result_MethodSpeciation": ("basis", "wqx3"),
    "parm_cd": ("code_nwis", "nwis"),
    "rpt_lev_va": ("reporting_limit", "nwis"),
    "sys_sample_code": ("sample_id", "edd"),
    "lab_anl_method_name": ("method", "edd"),
    "determinand.label": ("name", "england"),
    "resultQualifier.notation": ("remark", "england"),
    "VALUE_VALEUR": ("value", "canada"),
    "UNIT_UNITÉ": ("unit", "canada"),
}


@pytest.mark.parametrize(("header", "role"), HEADERS.items(), ids=HEADERS)
def test_header(header, role):
    assert V.column(header).role == role
    assert V.column(header.upper()).role == role
    assert V.column(f" {header} ").role == role


@pytest.mark.parametrize(("header", "expected"), STANDARD.items(), ids=STANDARD)
def test_header_of_a_standard(header, expected):
    found = V.column(header)
    assert (found.role, found.standard) == expected
    assert V.column(header, expected[1]) == found


@pytest.mark.parametrize(
    ("header", "role", "unit", "fraction"),
    [
        ("Result (mg/L)", "value", "mg/L", None),
        ("Results in mg/L", "value", "mg/L", None),
        ("RL, µg/L", "reporting_limit", "µg/L", None),
        ("DL (mg/l)", "detection_limit", "mg/l", None),
        ("dl_mg_l", "detection_limit", "mg/l", None),
        ("MCL (mg/L)", "limit", "mg/L", None),
        ("Dissolved (mg/L)", "value", "mg/L", "dissolved"),
        ("Total µg/L", "value", "µg/L", "total"),
        ("Well Depth (ft)", "well_depth", "ft", None),
    ],
)
def test_unit_and_fraction_in_a_header(header, role, unit, fraction):
    found = V.column(header)
    assert (found.role, found.unit_text, found.fraction) == (role, unit, fraction)


@pytest.mark.parametrize(
    "header", ["Iron", "Iron (mg/L)", "Nitrate as N", "W-3", "REF2", "2024", "0.5", "Kitchen", "xyz"]
)
def test_not_a_header(header):
    assert V.column(header) is None


@pytest.mark.parametrize(
    ("file", "standard"),
    [
        ("wqp/ugs_sample_chemistry.csv", "wqx"),
        ("wqp/dr_phosData_legacy_84k.csv.gz", "wqx"),
        ("wqp/dr_wqpData_wqx3narrow.csv", "wqx3"),
        ("nwis/dr_nwisData_qw.csv", "nwis"),
        ("lab/canada_testdata.csv", "canada"),
        ("lab/ca_waterboards_chem_sub.csv", "california"),
        ("lab/wi_LDES_csls_2020_01_28.csv", "wisconsin"),
        ("lab/wi_SWIMS_csls_2020_06_01.csv", "wisconsin"),
    ],
)
def test_every_column_of_public_exports(file, standard):
    path = real() / file
    if not path.exists():
        pytest.skip("the public data are absent")
    text = gzip.decompress(path.read_bytes()) if file.endswith("gz") else path.read_bytes()
    headers = next(csv.reader(io.StringIO(text.decode("utf-8-sig"))))
    assert V.standard(headers) == standard
    assert [header for header in headers if V.column(header, standard) is None] == []
    roles = {V.column(header, standard).role for header in headers}
    assert {ColumnRole.VALUE, ColumnRole.DATE_COLLECTED, ColumnRole.SITE} <= roles


def test_a_laboratory_s_own_headers_are_of_no_standard():
    assert V.standard(["Analyte", "Result", "Units", "RL", "Method"]) == ""
    assert V.standard(["Sample ID", "Iron", "pH", "Nitrate as N"]) == ""


@given(st.text(max_size=40))
def test_any_text_has_an_answer(text):
    found = V.column(text)
    assert found is None or isinstance(found.role, ColumnRole)


# Columns of public downloads (New Mexico, Ohio, Texas, California: see tests/reports/reports_databases.py) and of the
# usual words in other orders (common practice, no source).
PUT_TOGETHER = {
    "ParameterValue": "value",
    "ParameterUnitOfMeasure": "unit",
    "PlusMinus": "uncertainty",
    "LESS_THAN_YN": "detect_flag",
    "MEASUREMENT_num": "value_number",
    "collection_timestamp": "date_collected",
    "detect_limit_value": "detection_limit",
    "detect_limit_unit": "limit_unit",
    "quantitationLimitNumeric": "reporting_limit",
    "field_qc_type": "sample_type",
    "is_filtered": "fraction",
    "ASSESSABILITY_QUALIFIER_CODE": "qualifier",
    "StateWellNumber": "site",
    "WELL_DEPTH_FT": "well_depth",
    "lab_method_description": "method",
    "station.uid": "administrative",
}


@pytest.mark.parametrize(("heading", "role"), PUT_TOGETHER.items())
def test_a_heading_put_together_of_known_words(heading, role):
    assert V.column(heading).role == role


@pytest.mark.parametrize(
    "heading",
    ["QC_RESULT", "MAX_RESULT", "MCL_VALUE", "Sample ID: SV0155", "Iron result", "Water quality results", "Well Lane"],
)
def test_a_word_left_over_says_no_role(heading):
    found = V.column(heading)
    assert found is None or found.role not in ("value", "sample_id", "site", "administrative")
