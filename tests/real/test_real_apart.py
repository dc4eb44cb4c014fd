"""Public files that hold no analysis of one water: leaflets of water systems, lists of names, flows, sums of equivalents."""

import pytest
from real_counts import LISTS, files, read, results
from real_truth import FOLDER
from real_wide import ELEMENTS, METALS
from test_real_printed import sheets

pytestmark = pytest.mark.skipif(not FOLDER.is_dir(), reason="the public data folder is not there")

# What the leaflets' tables print beside a range, an average, a percentile or a highest month, by eye: page and constituents.
LEAFLETS = {
    "pdf/ccr_sacramento_suburban_2018.pdf": {
        3: [
            "Aluminium",
            "Arsenic",
            "Barium",
            "Fluoride",
            "Hexavalent Chromium {B}",
            "Nitrate (as Nitrogen)",
            "Tetrachloroethylene (PCE)",
            "Gross Alpha",
            "Combined Radium (Ra226 + Ra228)",
            "Uranium",
        ],
        4: [
            "Copper (at tap)",
            "Total Coliform Bacteria {C}",
            "E. coli {C}",
            "Chlorine Residual",
            "Fluoride {D}",
            "Trihalomethanes",
            "Haloacetic Acids",
            "Aluminium",
            "Chloride",
            "Color",
            "Copper",
            "Iron",
            "Manganese",
            "Odor",
            "Specific Conductance",
            "Sulfate",
            "Total Dissolved Solids",
            "Turbidity",
        ],
        5: [
            "1,4-Dioxane",
            "Chlorate",
            "Chromium (total)",
            "Hexavalent Chromium",
            "Molybdenum",
            "Strontium",
            "Vanadium",
            "Germanium",
            "Manganese",
            "HAA5",
            "HAA9",
            "Alkalinity",
            "Calcium",
            "Hardness",
            "Magnesium",
            "pH",
            "Sodium",
        ],
    },
    "pdf/ccr_sanjuan_wholesale_2018.pdf": {
        2: ["Vanadium", "Molybdenum", "Strontium", "Hexavalent Chromium", "Chlorate", "Manganese", "HAA5", "Bromide"],
        3: [
            "Arsenic",
            "Barium",
            "Fluoride",
            "Nitrate (as N)",
            "Uranium",
            "Lead (c)",
            "Copper",
            "Total Coliform Bacteria",
            "Total Dissolved Solids",
            "Specific Conductance",
            "Sulfate",
            "Chloride",
            "Turbidity",
            "Bicarbonate Alkalinity",
            "Hardness",
            "Sodium",
            "Calcium",
            "Magnesium",
        ],
    },
}


@pytest.mark.parametrize("file", sorted(LEAFLETS))
def test_ranges_and_averages_of_a_system_are_no_household_s_results(file):
    """Not one number of them is a result; every constituent is unread where it stands, most with what the numbers are."""
    report, unread = read(file)
    samples = [*report.samples, *report.quality_control] if report else []
    assert not [result for sample in samples for result in sample.results if result.value is not None]
    lines = {(one.origin.page, one.text.split(" | ")[0]): one.reason.value for one in unread}
    wanted = [(page, name) for page, names in LEAFLETS[file].items() for name in names]
    assert not [one for one in wanted if one not in lines]
    told = [lines[one] for one in wanted]
    assert told.count("statistic") > 0.9 * len(told)


@pytest.mark.parametrize("file", [file for file in files() if file.endswith(".rdb")] if FOLDER.is_dir() else [])
def test_flows_and_tests_of_a_format_hold_no_result(file):
    """Each row has a number of no analyte, and is unread for it."""
    report, unread = read(file)
    assert report is None
    lines = (FOLDER / file).read_text().splitlines()
    rows = [line for line in lines if line and not line.startswith("#")][2:]
    assert len(unread) == len(rows)
    for row, one in zip(rows, unread, strict=True):
        assert set(one.text.split(" | ")) <= set(row.split("\t"))


@pytest.mark.parametrize("file", LISTS)
def test_a_list_of_names_holds_no_result(file):
    report, unread = read(file)
    assert report is None
    assert {one.reason.value for one in unread} <= {"no_value", "not_a_table", "statistic"}


@pytest.mark.parametrize("file", ["wide/kwale_water_samples.csv", "wide/kwale_water_samples.xlsx"])
def test_elements_that_would_outweigh_the_salts_have_no_unit_to_suppose(file):
    """Every number of an element of the cleaned file, where the raw one says mg/L for four and ppb for the others."""
    head, *rows = sheets(file)["Sheet 1" if file.endswith("xlsx") else ""]
    elements = [name for name in head if name in ELEMENTS or name in METALS]
    at = {head.index(name) for name in elements}
    expected = {
        (number, column + 1)
        for number, row in enumerate(rows, 2)
        for column in at
        if column < len(row) and row[column] not in ("", "NA")
    }
    assert len(elements) == 53
    unread = [one for one in read(file)[1] if one.reason.value == "unknown_unit"]
    assert {(one.origin.row, one.origin.column) for one in unread} == expected


def test_a_sum_of_two_among_equivalents_has_no_unit_to_suppose():
    unread = read("nwis/smwr_IonBalance.csv")[1]
    assert {(one.text.split()[0], one.reason.value) for one in unread} == {("NO2NO3", "unknown_unit")}
    assert len(unread) == 22


UNITLESS = [
    "nwis/smwr_IonBalance.csv",
    "nwis/smwr_MenomineeMajorIons.csv",
    "nwis/smwr_PugetNitrate.csv",
    "nwis/smwr_EasternIowaNO3.csv",
    "wide/condamine_peeters_s02.csv",
    "wide/kwale_water_samples.csv",
    "wide/smwr_MiscGW.csv",
]


@pytest.mark.parametrize("file", UNITLESS)
def test_a_unit_that_is_not_printed_is_said_to_be_supposed(file):
    frame = results(file)
    with_unit = frame[frame["unit"].astype(str) != "1"]
    assert len(with_unit) > 20
    assert with_unit["assumptions"].astype(str).str.contains("unit=").all()
