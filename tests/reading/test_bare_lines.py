"""Bare lines: a name, a value and a unit with nothing around them, in text and on pages without a table."""

import io

import pytest
from reportlab.pdfgen.canvas import Canvas

import wellchem
from wellchem.errors import NothingFound


def page(lines):
    """A PDF page of running lines."""
    stream = io.BytesIO()
    canvas = Canvas(stream, pagesize=(595, 842))
    canvas.setFont("Helvetica", 10)
    for place, line in enumerate(lines):
        canvas.drawString(60, 780 - 16 * place, line)
    canvas.save()
    return stream.getvalue()


def read(lines, kind):
    data, name = (page(lines), "a.pdf") if kind == "pdf" else ("\n".join(lines).encode(), "a.txt")
    try:
        report = wellchem.read(data, name=name)
    except NothingFound as nothing:
        return {}, nothing.unread
    assert report.explanation.balanced
    return {one.analyte: one for sample in report.samples for one in sample.results}, report.unread


HEAD = ["Harbor Hill Laboratory", "Sample: W-1", "Collected: 2026-05-03", ""]
kinds = pytest.mark.parametrize("kind", ["txt", "pdf"])


@kinds
def test_names_values_and_units_alone(kind):
    lines = ["Iron 0.42 mg/L", "Manganese <0.05 mg/L", "Nitrate as N 4.2 mg/L", "pH 7.1", "Total coliform absent",
             "Conductivity 512 µS/cm", "E. coli 0 CFU/100 mL", "Lead (ug/L) 3"]  # fmt: skip
    found, unread = read(HEAD + lines, kind)
    assert {key: one.high for key, one in found.items()} == pytest.approx(
        {"iron": 0.42, "manganese": 0.05, "nitrate": 4.2, "ph": 7.1, "total_coliform": 0.0,
         "specific_conductance": 512.0, "e_coli": 0.0, "lead": 0.003}
    )  # fmt: skip
    assert found["nitrate"].basis == "N"
    assert not unread


@kinds
@pytest.mark.parametrize(
    "line",
    [
        "Iron 0.42 mg/L, manganese 0.05 mg/L, pH 7.1",
        "Iron 0.42 mg/L; manganese 0.05 mg/L; pH 7.1",
        "Iron 0.42 mg/L and manganese 0.05 mg/L, pH 7.1.",
        "Iron: 0.42 mg/L, manganese: 0.05 mg/L, pH: 7.1",
        "Iron = 0.42 mg/L, manganese = 0.05 mg/L, pH = 7.1",
    ],
)
def test_several_results_in_one_line(line, kind):
    found, unread = read([*HEAD, line], kind)
    assert {key: one.value for key, one in found.items()} == {"iron": 0.42, "manganese": 0.05, "ph": 7.1}
    assert not unread


@kinds
@pytest.mark.parametrize(
    "limit", ["(limit 0.3)", "max 0.3", "max. 0.3 mg/L", "limit 0.3 mg/L", "(MCL: 0.3)", "[guideline 0.3 mg/L]"]
)
def test_a_limit_with_its_word_is_no_result(limit, kind):
    found, unread = read([*HEAD, f"Iron 0.42 mg/L {limit}", f"Manganese <0.05 mg/L {limit}"], kind)
    assert (found["iron"].value, found["iron"].reporting_limit) == (0.42, None)
    assert (found["manganese"].high, found["manganese"].reporting_limit) == (0.05, None)
    assert not unread


@kinds
def test_a_reporting_limit_with_its_word_is_the_result_s(kind):
    found, _ = read([*HEAD, "Lead ND (RL 0.001 mg/L)", "Iron 0.42 mg/L reporting limit 0.05 mg/L"], kind)
    assert (found["lead"].high, found["iron"].reporting_limit) == (0.001, 0.05)


@kinds
@pytest.mark.parametrize(
    "line",
    [
        "Iron 0.42 0.3 mg/L",
        "Iron 0.42 mg/L 0.3 mg/L",
        "Iron <0.05 mg/L 0.3 mg/L",
        "pH 7.1 6.5-8.5",
        "Lead 0.005 0.012 mg/L",
        "Iron 0.42 mg/L < 0.3",
        "Iron 0.42",
        "Lead 2",
        "Iron 0.42 mg/L, manganese 0.05",
        "Iron 0.42 µS/cm",
        "pH 71",
    ],
)
def test_what_words_do_not_decide_is_unread(line, kind):
    found, unread = read([*HEAD, line, "Zinc 0.2 mg/L"], kind)
    assert set(found) == {"zinc"}
    assert any("Iron" in one.text or "pH" in one.text or "Lead" in one.text for one in unread)


@kinds
@pytest.mark.parametrize(
    "heading",
    [
        "Drinking water limits",
        "Guideline values of the authority:",
        "Maximum contaminant levels",
        "Previous results",
        "Reporting limits of this laboratory",
        "The household may wish to know that in many towns of this county the water holds",
    ],
)
def test_lines_under_a_heading_of_limits_are_nobody_s_result(heading, kind):
    found, unread = read([*HEAD, "Zinc: 0.2 mg/L", "", heading, "Iron 0.3 mg/L", "Manganese 0.05 mg/L"], kind)
    assert set(found) == {"zinc"}
    assert len(unread) == 2


@pytest.mark.parametrize(
    "head",
    [["Rapport d'analyse"], ["Rapport d'analyse", "Laboratoire du Lac, 12 rue des Tilleuls, Rives"], []],
)
def test_decimal_commas_part_no_running_lines(head):
    lines = ["Fer : 0,3 mg/l", "Nitrates (N) : 2,4 mg/l, manganèse : 0,05 mg/l", "pH : 7,1", "Turbidité 0,4 NFU"]
    found, unread = read([*head, *lines], "txt")
    assert {key: one.value for key, one in found.items()} == {
        "iron": 0.3, "nitrate": 2.4, "manganese": 0.05, "ph": 7.1, "turbidity": 0.4,
    }  # fmt: skip
    assert not unread


@pytest.mark.parametrize(
    "text",
    [
        "Well,Iron,pH\nW-1,2,7\nW-2,3,7\n",
        "Sample, Iron, pH\nW-1, 2, 7\nW-2, 3, 7\n",
        "Iron,0.2,mg/L\npH,7,\nSodium,20,mg/L\n",
    ],
)
def test_commas_between_figures_still_part_the_cells_of_tables(text):
    report = wellchem.read(text.encode(), name="a.txt")
    assert {one.value for sample in report.samples for one in sample.results} >= {7.0}
