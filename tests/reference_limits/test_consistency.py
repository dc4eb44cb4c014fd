"""Every row of the limits' tables is well formed, known, dated in order and convertible."""

import math
import tomllib
from collections import defaultdict
from datetime import date
from itertools import pairwise

import pytest
from limit_tables import AUTHORITIES, FOLDER, UNITS, analytes, canonical, members, predicates, rows, sources

from wellchem import convert

COLUMNS = (
    "analyte,limit_term,kind,minimum,maximum,unit,basis,fraction,combine,members,applies_when,compliance,"
    "in_force_from,in_force_to,source,locator,checked,note"
)
NOT_IN_FORCE = ("(postponed)", "(proposed)", "(promulgated, compliance not yet due)")
BASES = {"", "N", "NO3", "NO2", "NH4", "NH3", "CaCO3", "SiO2", "SO4", "H2S", "Cl2", "ClO2", "CN", "O2"}


def place(row):
    return f"{row['authority']} {row['analyte']} {row['limit_term']} {row['maximum'] or row['minimum']}"


def wrong(test):
    """Places of the rows for which the test does not hold."""
    return [place(row) for row in rows() if not test(row)]


def number(text):
    return float(text) if text else None


@pytest.mark.parametrize("authority", AUTHORITIES)
def test_file_form(authority):
    data = (FOLDER / f"{authority}.csv").read_bytes()
    assert b"\r" not in data
    assert data.endswith(b"\n")
    text = data.decode("utf-8")
    assert text.split("\n", 1)[0] == COLUMNS


def test_required_cells():
    assert not wrong(lambda row: all(row[name] for name in ("analyte", "limit_term", "kind", "source", "locator")))
    assert not wrong(lambda row: None not in row.values() and None not in row)
    assert not wrong(lambda row: all(value == value.strip() for value in row.values()))


def test_closed_sets():
    assert not wrong(lambda row: row["kind"] in {"health", "aesthetic", "operational", "goal"})
    assert not wrong(lambda row: row["checked"] in {"page", "transposition", "memory"})
    assert not wrong(lambda row: row["combine"] in {"", "sum", "difference", "sum_of_ratios"})
    assert not wrong(lambda row: row["fraction"] in {"", "total", "dissolved", "free"})
    assert not wrong(lambda row: row["basis"] in BASES)


def test_known_analytes_and_sources():
    assert not wrong(lambda row: row["analyte"] in analytes())
    assert not wrong(lambda row: row["source"] in sources())
    assert set(sources()) == {row["source"] for row in rows()}, "a document is listed that no row cites"


def test_sources_say_what_a_citation_needs():
    for key, source in sources().items():
        assert source["title"], key
        assert source["publisher"], key
        assert source["date"], key
        assert source["status"] in {"law", "guideline", "advisory"}, key
        assert source["url"] == "" or source["url"].startswith("http"), key


def test_numbers():
    """Numbers are finite and not negative; a row without one says what is printed instead."""
    for row in rows():
        low, high = number(row["minimum"]), number(row["maximum"])
        assert all(value is None or (math.isfinite(value) and value >= 0) for value in (low, high)), place(row)
        assert low is None or high is None or low < high, place(row)
        if low is None and high is None:
            assert "no number" in row["note"] or "printed only as" in row["note"], place(row)


def test_units_convert_to_the_canonical_unit():
    for row in rows():
        if not row["minimum"] and not row["maximum"]:
            continue
        canonical_unit = analytes()[row["analyte"]]["canonical_unit"]
        if row["combine"] == "sum_of_ratios":
            assert canonical_unit == row["unit"] == "1", place(row)
        assert UNITS[row["unit"]][0] == UNITS[canonical_unit][0], place(row)


def test_nitrogen_has_a_form():
    """Nitrate, nitrite and ammonia without a form would be wrong by a factor of up to 4.4."""
    nitrogen = {"nitrate", "nitrite", "nitrate_plus_nitrite", "ammonia"}
    assert not wrong(lambda row: row["analyte"] not in nitrogen or row["basis"])


def test_members():
    for row in rows():
        found = members(row)
        keys = [key for key, *_ in found]
        assert len(keys) == len(set(keys)), place(row)
        assert set(keys) <= set(analytes()), place(row)
        if row["combine"]:
            assert len(found) >= 2, place(row)
        for key, denominator, unit, basis in found:
            assert (denominator is not None) == (row["combine"] == "sum_of_ratios"), place(row)
            if denominator is not None:
                assert float(denominator) > 0, place(row)
                assert UNITS[unit][0] == UNITS[analytes()[key]["canonical_unit"]][0], place(row)
                assert key not in {"nitrate", "nitrite"} or basis, place(row)
            elif row["unit"] != "1":
                assert UNITS[analytes()[key]["canonical_unit"]][0] == UNITS[row["unit"]][0], place(row)
        if row["combine"] == "difference":
            assert keys[0] == row["analyte"], place(row)


def test_class_limits_leave_out_what_has_its_own_row():
    """A pesticide with a value of its own is not in the class list, so no order of precedence is needed."""
    for row in rows():
        if row["members"] and not row["combine"]:
            own = {
                other["analyte"]
                for other in rows()
                if other["authority"] == row["authority"]
                and other["kind"] == row["kind"]
                and other["limit_term"] == row["limit_term"]
                and other["in_force_from"] == row["in_force_from"]
            }
            assert not own & {key for key, *_ in members(row)}, place(row)


def test_predicates_are_known():
    for row in rows():
        for text in filter(None, row["applies_when"].split(";")):
            code, _, argument = text.removeprefix("!").partition(":")
            predicate = predicates()[code]
            assert bool(argument) == bool(predicate["argument"]), place(row)
            if predicate["argument"] == "date":
                date.fromisoformat(argument)
            elif predicate["argument"].startswith("number"):
                float(argument)
            elif argument:
                assert argument in predicate["argument"].split(", "), place(row)


def test_predicates_say_what_settles_them():
    for code, predicate in predicates().items():
        assert predicate["meaning"], code
        assert set(predicate["settled_by"].split(";")) <= {"report", "sample", "household", "authority"}, code


def test_dates():
    """Dates are ISO dates in order, and rows of the same limit never hold on the same day."""
    spans = defaultdict(list)
    for row in rows():
        start = date.fromisoformat(row["in_force_from"]) if row["in_force_from"] else date.min
        end = date.fromisoformat(row["in_force_to"]) if row["in_force_to"] else date.max
        assert start <= end, place(row)
        key = [row[name] for name in ("authority", "analyte", "limit_term", "kind", "fraction", "applies_when")]
        spans[tuple(key)].append((start, end))
    for key, found in spans.items():
        found.sort()
        for (_, end), (start, _) in pairwise(found):
            assert end < start, key


def test_undated_rows_end_after_their_document_stands():
    """`stands_from` of a document, where given, lies before the end of every undated row that cites it."""
    for row in rows():
        stands = sources()[row["source"]].get("stands_from")
        if stands is not None and not row["in_force_from"] and row["in_force_to"]:
            assert stands <= date.fromisoformat(row["in_force_to"]), place(row)


def test_terms_not_in_force_are_marked_by_a_parenthesis_and_nothing_else_is():
    for row in rows():
        term = row["limit_term"]
        if term.endswith(")") and not term.endswith("chromium(VI)"):
            assert term.endswith(NOT_IN_FORCE), place(row)


def test_absence_limits_have_no_condition():
    """E. coli in a well is above a limit whatever else is known."""
    for authority in AUTHORITIES:
        assert any(
            row["authority"] == authority
            and row["analyte"] == "e_coli"
            and row["kind"] == "health"
            and row["maximum"] == "0"
            and not row["applies_when"]
            and not row["in_force_to"]
            for row in rows()
        ), authority


def test_lead_limits_have_no_condition():
    """How a public system is judged (90th percentile, first draw) never withholds the verdict on one sample."""
    lead = [row for row in rows() if row["analyte"] == "lead"]
    assert lead
    assert not [place(row) for row in lead if row["applies_when"]]
    assert all(row["compliance"] for row in lead if row["limit_term"] == "action level")


def test_metals_are_of_the_unfiltered_water():
    """Drinking-water limits are for the water as it is drunk: total, but for acid-soluble aluminium (ADWG)."""
    for row in rows():
        if analytes()[row["analyte"]]["group"] == "metal":
            acid_soluble = row["authority"] == "australia" and row["analyte"] == "aluminum"
            assert row["fraction"] == ("" if acid_soluble else "total"), place(row)


def test_readme_counts_the_rows():
    """The README's table says per authority how many rows were seen in a document, in a transposition, or not."""
    text = (FOLDER / "README.md").read_text(encoding="utf-8")
    for authority in AUTHORITIES:
        checked = [row["checked"] for row in rows() if row["authority"] == authority]
        counts = [str(len(checked)), *(str(checked.count(mark)) for mark in ("page", "transposition", "memory"))]
        assert f"| {authority} | {' | '.join(counts)} |" in text, authority


def test_units_convert_with_the_package():
    """The package's own conversion agrees with the one of these tests for every printed unit and form."""
    for unit, basis, analyte in sorted(
        {(row["unit"], row["basis"], row["analyte"]) for row in rows() if row["maximum"]}
    ):
        target = analytes()[analyte]["canonical_unit"]
        got = convert(1.0, f"{unit} as {basis}" if basis else unit, target, analyte=analyte)
        form = 32.06 / 34.076 if (analyte, basis) == ("sulfide", "H2S") else 1.0
        expected = canonical(1.0, unit, basis, analyte) / UNITS[target][1] * form
        assert got == pytest.approx(expected, rel=1e-3), (unit, basis, analyte)


def test_every_authority_has_its_standing():
    """Binding, advice or benchmark for a private well, for whom made, what was not checked, and where that stands."""
    standing = tomllib.loads((FOLDER / "standing.toml").read_text(encoding="utf-8"))
    assert tuple(standing) == AUTHORITIES
    for authority, entry in standing.items():
        assert entry["standing"] in {"binding", "conditional", "advice", "benchmark"}, authority
        assert entry["text"], authority
        assert "not checked" in entry["not_checked"], authority
        assert entry["made_for"], authority
        assert entry["source"], authority
