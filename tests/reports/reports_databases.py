"""Downloads of state and provincial groundwater databases: the columns are theirs, every site and number is invented.

The column names are those of the public documentation of New Mexico's surface water bureau, Ohio's groundwater
programme, Texas' groundwater database, the Kansas wells' samples, California's groundwater programme, British
Columbia's environmental monitoring, India's yearly groundwater tables and a Kenyan laboratory's sheet. Each failed when
first read, but for the Indian table: headings put together of words that no row listed, a prefix on every heading, a
kind of sample in a second column, units without a slash.
"""

from __future__ import annotations

from reports_catalog import INF, Layout, Water
from reports_written import N_OF_NO3, NAN, PCI, lines, means


def layout(name: str, rows, *waters: Water, delimiter: str = ",", **more) -> Layout:
    return Layout(name, "csv", lines(rows, delimiter).encode(), waters, strict=True, **more)


def surface_water() -> Layout:
    """Y and N for less than, the number twice, quality control told by the activity and not by the sample's type."""
    head = (
        "WATER_ID", "STATION", "STATION_NAME", "DATE", "TIME", "ACTIVITY_TYPE", "SAMPLE_TYPE", "SAMPLE_FRACTION", "CHR_UID",
        "CHARACTERISTIC_NAME", "MEASUREMENT", "MEASUREMENT_num", "UNITS", "LESS_THAN_YN", "ASSESSABILITY_QUALIFIER_CODE", "ACT_END_DATE",
    )  # fmt: skip
    station = ("F-1", "29Fern01", "Fern Brook at the lane")
    first, second = ("2023-04-20", "10:44"), ("2023-06-22", "12:05")
    routine, field = ("Sample-Routine", "Surface Water"), ("Field Msr/Obs", "Baseflow")
    rows = [
        head,
        (*station, *first, *routine, "Dissolved", "1215", "Lead", "1E-3", "0.001", "mgL", "Y", "", ""),
        (*station, *first, *routine, "Total", "1416", "Total Kjeldahl nitrogen (Organic N & NH3)", "0.55000000000000004", "0.55", "mgL", "N", "", ""),
        (*station, *first, *routine, "Total", "1418", "Nitrogen, Nitrite (NO2) + Nitrate (NO3) as N", "0.09", "0.09", "mgL", "N", "", ""),
        (*station, *first, *field, "", "1648", "pH", "7.9900000000000002", "7.99", "none", "N", "", ""),
        (*station, *first, *field, "", "1815", "Specific conductance", "199", "199", "uScm", "N", "", ""),
        (*station, *first, *routine, "Total", "2287", "Escherichia coli", "980.39", "980.39", "MPN100mL", "N", "", ""),
        (*station, *second, *routine, "Dissolved", "570", "Antimony", "1E-3", "0.001", "mgL", "Y", "", ""),
        (*station, *second, *routine, "Total", "1674", "Phosphorus as P", "0.112", "0.112", "mgL", "N", "", ""),
        (*station, *second, "Sample-Field Blank", "Surface Water", "Total", "549002", "Aluminum", "0.22", "0.22", "mgL", "N", "", ""),
    ]  # fmt: skip
    one = (
        means("lead", 0, 0.001, "dissolved"), means("kjeldahl_nitrogen", 0.55, fraction="total"),
        means("nitrate_plus_nitrite", 0.09, fraction="total"), means("ph", 7.99, flag="field"),
        means("specific_conductance", 199, flag="field"), means("e_coli", 980.39),
    )  # fmt: skip
    two = (means("antimony", 0, 0.001, "dissolved"), means("phosphorus", 0.112, fraction="total"))
    waters = (Water("29Fern01", "29Fern01", first[0], one), Water("29Fern01", "29Fern01", second[0], two))
    return layout("csv_surface_water", rows, *waters, quality_control=1)


def is_filtered() -> Layout:
    """Snake case throughout, a timestamp, Y and N for filtered, the field's quality control in a column of its own."""
    head = (
        "well_id", "result_value", "analyte_group", "analyte_id", "casing_length", "collection_timestamp", "detect_limit_unit",
        "detect_limit_value", "field_qc_type", "is_filtered", "matrix_type", "method", "parameter", "remark_code", "result_unit",
        "sample_id", "sample_type", "well_depth", "well_number",
    )  # fmt: skip
    rows = [
        head,
        ("FC01", "2", "Inorganic", "12", "40", "2021-05-03 10:20:00", "ug/L", "2", "", "N", "GW", "200.8", "Arsenic", "<", "ug/L", "9001", "RAW", "80", "1"),
        ("FC01", "21.3", "Inorganic", "15", "40", "2021-05-03 10:20:00", "mg/L", "2", "", "N", "GW", "200.7", "Calcium", "", "mg/L", "9001", "RAW", "80", "1"),
        ("FC01", "5", "Inorganic", "19", "40", "2021-05-03 10:20:00", "mg/L", "5", "", "Y", "GW", "300.0", "Iron", "<", "mg/L", "9001", "RAW", "80", "1"),
        ("FC01", "4", "Inorganic", "22", "40", "2021-05-03 10:20:00", "mg/L", "5", "FIELD BLANK", "N", "GW", "300.0", "Sulfate", "", "mg/L", "9002", "RAW", "80", "1"),
    ]  # fmt: skip
    items = (means("arsenic", 0, 0.002), means("calcium", 21.3), means("iron", 0, 5, "dissolved"))
    return layout("csv_is_filtered", rows, Water("9001", "FC01", "2021-05-03", items), quality_control=1)


def camel_case() -> Layout:
    """Headings in camel case, a sign in a column `Flag`, PC/L for picocuries, and a form that name and unit contradict."""
    head = (
        "StateWellNumber", "Aquifer", "SampleDate", "SampleNumber", "ParameterCode", "ParameterDescription", "Flag", "ParameterValue",
        "ParameterUnitOfMeasure", "PlusMinus", "Reliability", "CollectionEntity", "CollectionRemarks", "LastUpdateDate",
    )  # fmt: skip
    well = ("5802301", "Fern Sands", "3/14/2019", "1")
    rows = [
        head,
        (*well, "00940", "CHLORIDE, DISSOLVED", "", "23.1", "MG/L AS CL", "", "01", "FWD", "", "1/1/2020"),
        (*well, "01000", "ARSENIC, DISSOLVED", "<", "2", "UG/L AS AS", "", "01", "FWD", "", "1/1/2020"),
        (*well, "01503", "ALPHA, DISSOLVED", "", "5.1", "PC/L", "2.2", "01", "FWD", "", "1/1/2020"),
        (*well, "71851", "NITRATE NITROGEN, DISSOLVED, CALCULATED", "", "8.9", "MG/L AS NO3", "", "01", "FWD", "", "1/1/2020"),
    ]  # fmt: skip
    items = (
        means("chloride", 23.1, fraction="dissolved"),
        means("arsenic", 0, 0.002, "dissolved"),
        means("gross_alpha", 2.9 * PCI, 7.3 * PCI),
    )
    return layout("csv_camel_case", rows, Water("1", "5802301", "2019-03-14", items), unread=1)


def one_prefix() -> Layout:
    """Every heading begins with the agency's two letters; `=` where the number is the number."""
    head = (
        "GM_DATASET_NAME", "GM_WELL_CATEGORY", "GM_DATA_SOURCE", "GM_WELL_ID", "GM_CHEMICAL_VVL", "GM_CHEMICAL_NAME",
        "GM_RESULT_MODIFIER", "GM_RESULT", "GM_CHEMICAL_UNITS", "GM_REPORTING_LIMIT", "GM_SAMP_COLLECTION_DATE", "GM_WELL_DEPTH_FT",
    )  # fmt: skip
    rows = [
        head,
        ("D", "DOMESTIC", "D", "W1", "AS", "Arsenic", "=", "4.2", "UG/L", "2", "2020-01-02", "200"),
        ("D", "DOMESTIC", "D", "W1", "NO3N", "Nitrate as N", "<", "0.4", "MG/L", "0.4", "2020-01-02", "200"),
        ("D", "DOMESTIC", "D", "W2", "TCPR123", "1,2,3-Trichloropropane (1,2,3 TCP)", "<", "0.005", "UG/L", "0.005", "2020-01-02", ""),
    ]  # fmt: skip
    one = (means("arsenic", 0.0042), means("nitrate", 0, 0.4))
    waters = (
        Water("W1", "W1", "2020-01-02", one),
        Water("W2", "W2", "2020-01-02", (means("1_2_3_trichloropropane", 0, 5e-6),)),
    )
    return layout("csv_one_prefix", rows, *waters)


def low_lines() -> Layout:
    """A wide table of a province: symbols with their fraction behind a low line, full names with low lines for blanks."""
    head = (
        "Sample_Date", "SampleID", "StationID", "Watertype", "Well_Depth", "Ag_diss", "As_tot", "Fe_II_diss", "Cond_field", "pH_lab",
        "Nitrate(NO3)_+_Nitrite(NO2)_Dissolved", "Nitrogen_Kjel_Tot(N)", "Phosphorus_Total_Dissolved", "Alkalinity;_Phenolphthalein_(as_CaCO3)",
    )  # fmt: skip
    units = ("", "", "", "", "", "ug/L", "ug/L", "mg/L", "uS/cm", "pH units", "mg/L", "mg/L", "mg/L", "mg/L")
    rows = [
        head,
        units,
        ("2021-09-01", "S-77", "E1", "Ca-HCO3", "31", "<0.01", "2.4", "0.3", "410", "7.8", "0.12", "0.4", "0.02", "<1"),
    ]
    items = (
        means("silver", 0, 1e-5, "dissolved"), means("arsenic", 0.0024, fraction="total"), means("iron_ii", 0.3, fraction="dissolved"),
        means("specific_conductance", 410, flag="field"), means("ph", 7.8, flag="laboratory"),
        means("nitrate_plus_nitrite", 0.12, fraction="dissolved"), means("kjeldahl_nitrogen", 0.4),
        means("phosphorus", 0.02, fraction="dissolved"), means("phenolphthalein_alkalinity", 0, 1),
    )  # fmt: skip
    return layout("csv_low_lines", rows, Water("S-77", "E1", "2021-09-01", items))


def yearly_table() -> Layout:
    """A wide table of villages: units in brackets, BDL without a number, a dash for not measured, a column of years."""
    head = (
        "S. No.", "State", "District", "Location", "Year", "pH", "EC (µS/cm at 25 °C)", "CO3 (mg/L)", "HCO3 (mg/L)", "Cl (mg/L)",
        "NO3 (mg/L)", "Total Hardness (mg/L)", "Fe (ppm)", "As (ppb)", "U (ppb)",
    )  # fmt: skip
    rows = [
        head,
        ("1", "Fernland", "North", "Lane 1", "2023", "7.2", "350", "BDL", "200", "150", "45", "300", "0.3", "5", "-"),
        ("2", "Fernland", "North", "Lane 2", "2023", "7.4", "1350", "0", "210", "150", "12", "300", "0.3", "BDL", "2"),
    ]
    each = (means("chloride", 150), means("total_hardness", 300), means("iron", 0.3))
    one = (
        means("ph", 7.2), means("specific_conductance", 350), means("carbonate", 0, NAN), means("bicarbonate", 200),
        means("nitrate", 45 * N_OF_NO3), means("arsenic", 0.005), *each,
    )  # fmt: skip
    two = (
        means("ph", 7.4), means("specific_conductance", 1350), means("carbonate", 0), means("bicarbonate", 210),
        means("nitrate", 12 * N_OF_NO3), means("arsenic", 0, NAN), means("uranium", 0.002), *each,
    )  # fmt: skip
    return layout("csv_yearly_table", rows, Water("", "Lane 1", "", one), Water("", "Lane 2", "", two), unread=1)


def two_guidelines() -> Layout:
    """Typed text: methods that are numbers, two columns of guidelines under words nobody lists, Nil for no organisms."""
    text = """\
Client: R. Invented          Source: Shallow well
Reference No: 03/25/XX/0012   Date received: 20/03/2025
Sampling date: 19/03/2025

PARAMETERS            METHOD   UNITS        RESULTS   WHO GUIDELINES   FBS MAX
pH                    8156     pH Units     7.04      6.5-8.5          6.5-8.5
Conductivity          8160     uS/cm        812       -                2500
Total Hardness        8213     mg CaCO3/l   300       500              600
Iron                  8008     mg/l         0.04      0.3              0.3
Nitrates              8039     mg NO3/l     12.1      50               45
Total Coliforms       9221     MPN/100ml    Nil       Nil              Nil
E.coli                9221     MPN/100ml    >2400     Nil              Nil
"""
    items = (
        means("ph", 7.04), means("specific_conductance", 812), means("total_hardness", 300), means("iron", 0.04),
        means("nitrate", 12.1 * N_OF_NO3), means("total_coliform", 0), means("e_coli", 2400, INF),
    )  # fmt: skip
    water = Water("", "", "2025-03-19", items)
    return Layout("txt_two_guidelines", "txt", text.encode(), (water,), strict=True)


LAYOUTS = (surface_water, is_filtered, camel_case, one_prefix, low_lines, yearly_table, two_guidelines)
