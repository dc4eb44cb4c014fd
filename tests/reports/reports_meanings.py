"""Tables whose difficulty is meaning: forms, bases, isotopes, species, symbols that are words, three languages' phrases.

Every laboratory, site and number is invented; each meaning is typed here by hand.
"""

from __future__ import annotations

from reports_catalog import INF, Layout, Water
from reports_exports import one
from reports_written import N_OF_NH4, N_OF_NO3, PCI, lines, means

SIO2_OF_SI = 60.083 / 28.085
P_OF_PO4 = 30.974 / 94.970
S_OF_H2S = 32.06 / 34.076


def nitrogen_twice() -> Layout:
    """The same nitrate as N and as NO3 side by side, wide; ammonia in three forms; nitrite both ways."""
    head = (
        "Well",
        "NO3-N (mg/L)",
        "NO3 (mg/L)",
        "NO2-N (mg/L)",
        "NO2 (mg/L)",
        "NH3-N (mg/L)",
        "NH4+ (mg/L)",
        "NO3+NO2 as N (mg/L)",
        "TKN (mg/L)",
    )
    rows = [
        head,
        ("N-1", "9.1", "40.3", "0.01", "0.033", "0.2", "0.26", "9.11", "0.6"),
        ("N-2", "<0.1", "<0.44", "<0.01", "<0.033", "1.4", "1.8", "<0.1", "1.9"),
    ]
    return one("csv_nitrogen_twice", lines(rows), (
        Water("N-1", "", "", (means("nitrate", 9.1, name="NO3-N (mg/L)"), means("nitrate", 40.3 * N_OF_NO3), means("nitrite", 0.01), means("nitrite", 0.033 * 14.007 / 46.005), means("ammonia", 0.2), means("ammonia", 0.26 * N_OF_NH4), means("nitrate_plus_nitrite", 9.11), means("kjeldahl_nitrogen", 0.6))),
        Water("N-2", "", "", (means("nitrate", 0, 0.1), means("nitrate", 0, 0.44 * N_OF_NO3), means("nitrite", 0, 0.01), means("nitrite", 0, 0.033 * 14.007 / 46.005), means("ammonia", 1.4), means("ammonia", 1.8 * N_OF_NH4), means("nitrate_plus_nitrite", 0, 0.1), means("kjeldahl_nitrogen", 1.9))),
    ))  # fmt: skip


def alkalinities() -> Layout:
    """Alkalinity, bicarbonate, carbonate and hydroxide as CaCO3 or as themselves; phenolphthalein; acidity; hardnesses."""
    table = (
        ("Alkalinity, Total as CaCO3", "188", "mg/L", "total_alkalinity", 188), ("Bicarbonate Alkalinity as CaCO3", "180", "mg/L", "bicarbonate", 180 * 61.016 / 50.043), ("Bicarbonate as HCO3", "219", "mg/L", "bicarbonate", 219),
        ("Carbonate Alkalinity as CaCO3", "8", "mg/L", "carbonate", 8 * 60.008 / 100.086), ("Hydroxide (as CaCO3)", "<2", "mg/L", "hydroxide", (0, 2 * 17.007 / 50.043)), ("Phenolphthalein Alkalinity", "4", "mg/L CaCO3", "phenolphthalein_alkalinity", 4),
        ("Hardness, Calcium as CaCO3", "141", "mg/L", "calcium_hardness", 141), ("Hardness, Magnesium as CaCO3", "52", "mg/L", "magnesium_hardness", 52), ("Hardness, Total", "11.3", "grains/gal", "total_hardness", 11.3 * 17.118),
        ("Acidity as CaCO3", "12", "mg/L", "acidity", 12), ("Non-carbonate hardness", "5", "mg/L as CaCO3", "noncarbonate_hardness", 5), ("Alkalinity", "3.76", "meq/L", "total_alkalinity", 3.76 * 50.043),
    )  # fmt: skip
    rows = [("Sample", "Test name", "Result", "Unit"), *(("AK-1", *row[:3]) for row in table)]
    items = tuple(
        means(key, *(value if isinstance(value, tuple) else (value,)), name=name) for name, _, _, key, value in table
    )
    return one("csv_alkalinities", lines(rows), Water("AK-1", "", "", items))


def element_or_form() -> Layout:
    """Silica as Si and as SiO2, silicon; phosphorus in three ways; sulfide as S and H2S; un-ionised parts are no totals."""
    table = (
        ("Silica (as Si)", "6.2", "mg/L", "silica", 6.2 * SIO2_OF_SI), ("Silica, reactive (SiO2)", "13.3", "mg/L", "silica", 13.3), ("Silicon", "6.3", "mg/L", "silicon", 6.3), ("Orthophosphate as PO4", "0.31", "mg/L", "orthophosphate", 0.31 * P_OF_PO4),
        ("Phosphorus, Total (as P)", "0.14", "mg/L", "phosphorus", 0.14), ("Sulfide", "0.8", "mg/L as S", "sulfide", 0.8), ("Sulfide as H2S", "0.85", "mg/L", "sulfide", 0.85 * S_OF_H2S), ("Hydrogen Sulfide", "0.3", "mg/L", "hydrogen_sulfide", 0.3),
        ("Un-ionized Ammonia (NH3)", "0.004", "mg/L", None, 0), ("Ammonium (NH4)", "0.9", "mg/L", "ammonia", 0.9 * N_OF_NH4), ("Chromium, Hexavalent", "0.6", "ug/L", "chromium_vi", 0.0006), ("Chromium, Total", "1.9", "ug/L", "chromium", 0.0019),
        ("Iron, Ferrous", "0.7", "mg/L", "iron_ii", 0.7), ("Iron", "1.1", "mg/L", "iron", 1.1), ("Sulfur as SO4", "21", "mg/L", "sulfur", 21 * 32.06 / 96.06), ("Arsenic (III)", "4", "ug/L", "arsenic_iii", 0.004), ("Cyanide, Free", "<2", "ug/L", "free_cyanide", (0, 0.002)),
    )  # fmt: skip
    rows = [("Analyte", "Result", "Units"), *(row[:3] for row in table)]
    fractions = {"Chromium, Total": "total", "Phosphorus, Total (as P)": "total"}
    items = tuple(
        means(key, *(value if isinstance(value, tuple) else (value,)), fraction=fractions.get(name), name=name)
        for name, _, _, key, value in table
        if key
    )
    return one("csv_element_or_form", lines(rows), Water("", "", "", items), unread=1)


def isotopes() -> Layout:
    """Uranium as mass and activity, lead and lead-210, combined radium, adjusted alpha; uncertainty and MDC columns."""
    head = ("Radionuclide", "Activity", "Uncertainty (2 sigma)", "MDC", "Units", "Qualifier", "MCL")
    table = (
        ("Gross Alpha", "11.2", "2.4", "1.9", "pCi/L", "", "15"), ("Gross Beta", "4.4", "1.2", "2.1", "pCi/L", "", "50"), ("Radium-226", "0.81", "0.2", "0.3", "pCi/L", "", "5"), ("Radium-228", "0.4", "0.5", "0.9", "pCi/L", "U", "5"),
        ("Lead-210", "0.9", "0.4", "0.8", "pCi/L", "", ""), ("Uranium (mass)", "14.1", "", "0.1", "ug/L", "", "30"), ("Uranium (activity)", "9.4", "1", "0.1", "pCi/L", "", ""), ("Radon", "2250", "90", "30", "pCi/L", "", ""), ("Tritium", "3.1", "0.9", "1.2", "Bq/L", "", ""),
    )  # fmt: skip

    def activity(key, value, spread, factor=PCI):
        return means(key, (value - spread) * factor, (value + spread) * factor)

    items = (
        activity("gross_alpha", 11.2, 2.4), activity("gross_beta", 4.4, 1.2), activity("radium_226", 0.81, 0.2), means("radium_228", (0.4 - 0.5) * PCI, 0.9 * PCI, flag="U"), activity("lead_210", 0.9, 0.4),
        means("uranium", 0.0141), activity("uranium_activity", 9.4, 1), activity("radon_222", 2250, 90), activity("tritium", 3.1, 0.9, 1),
    )  # fmt: skip
    return one("csv_isotopes", lines([head, *table]), Water("", "", "", items))


def words_or_symbols() -> Layout:
    """Symbols in the name column (I, B, U, K, In, As, Co, No is a column), marks U, B, J beside; initials like symbols."""
    head = ("No", "Symbol", "Conc", "Mark", "Unit", "By", "Checked")
    table = (
        ("1", "B", "120", "", "µg/L", "CO", "NI"),
        ("2", "U", "4.2", "B", "µg/L", "CO", "NI"),
        ("3", "K", "3.3", "", "mg/L", "AS", "PB"),
        ("4", "As", "1", "U", "µg/L", "AS", "PB"),
        ("5", "Mn", "0.18", "", "mg/L", "MN", "PB"),
        ("6", "Mg", "18", "", "mg/L", "MG", "PB"),
        ("7", "V", "0.7", "J", "µg/L", "CD", "PB"),
    )
    return one("csv_words_or_symbols", lines([head, *table]), Water("", "", "", (
        means("boron", 0.12), means("uranium", 0, 0.0042, flag="B"), means("potassium", 3.3), means("arsenic", 0, 0.001, flag="U"), means("manganese", 0.18), means("magnesium", 18), means("vanadium", 0.0007, flag="J"))))  # fmt: skip


def units_of_one_thing() -> Layout:
    """Hardness and conductivity in many units, each well in its own; turbidity units; degrees of temperature."""
    table = (
        ("H-1", "Hardness", "12.5", "°dH", "total_hardness", 12.5 * 17.848), ("H-1", "Conductivity", "0.71", "mS/cm", "specific_conductance", 710), ("H-1", "Temperature", "52", "°F", "temperature", 11.111),
        ("H-2", "Hardness", "31", "°fH", "total_hardness", 310), ("H-2", "Conductivity", "0.62", "dS/m", "specific_conductance", 620), ("H-2", "Turbidity", "1.1", "FNU", "turbidity", 1.1),
        ("H-3", "Hardness", "2.9", "mmol/L", "total_hardness", 290.25), ("H-3", "Conductivity", "54", "mS/m", "specific_conductance", 540), ("H-3", "Turbidity", "0.4", "FTU", "turbidity", 0.4),
        ("H-4", "Hardness", "15", "°e", "total_hardness", 15 * 14.254), ("H-4", "Conductivity", "488", "µmho/cm", "specific_conductance", 488), ("H-5", "Hardness", "5.1", "meq/L", "total_hardness", 5.1 * 50.043), ("H-5", "Conductivity", "0.0551", "S/m", "specific_conductance", 551),
    )  # fmt: skip
    waters = [
        Water(id, "", "", tuple(means(key, value) for own, _, _, _, key, value in table if own == id))
        for id in dict.fromkeys(row[0] for row in table)
    ]
    return one(
        "csv_units_of_one_thing", lines([("Sample", "Test", "Result", "Unit"), *(row[:4] for row in table)]), waters
    )


def germs() -> Layout:
    """Counts, presence, most probable numbers, overgrown plates; a plate count at two temperatures."""
    table = (
        ("Total Coliforms", "TNTC", "CFU/100mL"), ("E. coli", "<1.0", "MPN/100 mL"), ("Enterococci", ">200.5", "MPN/100mL"), ("Fecal Coliform", "<2", "MPN/100mL"), ("Heterotrophic Plate Count", "310", "CFU/mL"),
        ("Pseudomonas aeruginosa", "0", "CFU/100 mL"), ("Clostridium perfringens", "Not detected in 100 mL", ""), ("Iron bacteria", "Positive", ""),
    )  # fmt: skip
    return one("csv_germs", lines([("Organism", "Count", "Unit"), *table]), Water("", "", "", (
        means("total_coliform", 1, INF), means("e_coli", 0, 0), means("enterococci", 200.5, INF), means("fecal_coliform", 0, 2), means("heterotrophic_plate_count", 310), means("pseudomonas_aeruginosa", 0), means("clostridium_perfringens", 0, 0), means("iron_bacteria", 1, INF))))  # fmt: skip


def german_ordinance() -> Layout:
    """German: limit column, `n. n.`, `< BG`, `u. d. B.`, `n. b.`, counts as `0/100 ml`, acid capacity, degrees."""
    table = (
        ("Escherichia coli", "KBE/100 ml", "0", "0", ""), ("Coliforme Bakterien", "KBE/100 ml", "2", "0", ""), ("Koloniezahl bei 22 °C", "KBE/ml", "14", "100", ""), ("Nitrat", "mg/l", "38,4", "50", "1,0"), ("Nitrit", "mg/l", "< BG", "0,50", "0,02"), ("Ammonium", "mg/l", "n. n.", "0,50", "0,02"),
        ("Eisen", "mg/l", "u. d. B.", "0,200", "0,010"), ("Mangan", "mg/l", "0,062", "0,050", "0,005"), ("Arsen", "mg/l", "n. b.", "0,010", "0,001"), ("Blei", "µg/l", "nicht nachweisbar", "10", "1"), ("Säurekapazität bis pH 4,3", "mmol/l", "4,12", "", ""), ("Gesamthärte", "°dH", "16,8", "", ""),
        ("Härtebereich", "", "hart", "", ""), ("Natrium", "mg/l", "1.024", "200", ""), ("Trübung", "NTU", "0,31", "1,0", ""), ("Färbung (SAK 436 nm)", "1/m", "<0,10", "0,5", ""), ("Leitfähigkeit bei 25 °C", "µS/cm", "694", "2790", ""), ("Uran", "mg/l", "0,0031", "0,010", "0,0001"),
    )  # fmt: skip
    rows = [
        ("Prüfbericht Nr. 88-17",),
        ("Entnahmestelle", "Hausbrunnen Lohe"),
        ("Probenahme am", "17.03.2026"),
        (),
        ("Parameter", "Einheit", "Messwert", "Grenzwert", "BG"),
        *table,
        ("n. n. = nicht nachweisbar; n. b. = nicht bestimmt",),
    ]
    return one("csv_german_ordinance", lines(rows, ";"), Water("", "Hausbrunnen Lohe", "2026-03-17", (
        means("e_coli", 0), means("total_coliform", 2), means("colony_count_22", 14), means("nitrate", 38.4 * N_OF_NO3), means("nitrite", 0, 0.02 * 14.007 / 46.005), means("ammonia", 0, 0.02 * N_OF_NH4), means("iron", 0, 0.01), means("manganese", 0.062), means("lead", 0, 0.001),
        means("total_alkalinity", 4.12 * 50.043), means("total_hardness", 16.8 * 17.848), means("sodium", 1024), means("turbidity", 0.31), means("spectral_absorption_436", 0, 0.1), means("specific_conductance", 694), means("uranium", 0.0031))), encoding="cp1252", extra_ok=frozenset({"arsenic"}))  # fmt: skip


def spanish_form() -> Layout:
    """Spanish: parametric value, quantification limit, `Ausencia`, `<LC`, `no detectado`, French degrees, 20 °C."""
    table = (
        ("Escherichia coli", "Ausencia", "ufc/100 mL", "0", ""), ("Bacterias coliformes", "3", "ufc/100 mL", "0", ""), ("Nitratos", "34,5", "mg/L NO3", "50", "1"), ("Nitritos", "<LC", "mg/L NO2", "0,5", "0,02"), ("Amonio", "No detectado", "mg/L NH4", "0,5", "0,05"), ("Hierro", "185", "µg/L", "200", "20"),
        ("Manganeso", "< 5", "µg/L", "50", "5"), ("Dureza total", "29", "°f", "", ""), ("Cloruros", "61", "mg/L", "250", "1"), ("Conductividad a 20 °C", "640", "µS/cm", "2500", ""), ("Turbidez", "0,4", "UNF", "4", ""), ("Arsénico", "2,1", "µg/L", "10", "1"), ("Plomo", "n.d.", "µg/L", "10", "1"), ("Carbono orgánico total", "1,2", "mg/L", "5", "0,3"),
    )  # fmt: skip
    rows = [
        ("Laboratorio Vado Claro",),
        ("Muestra:", "VC-118"),
        ("Fecha de muestreo:", "09/02/2026"),
        ("Fecha de recepción:", "23/02/2026"),
        (),
        ("Parámetro", "Resultado", "Unidades", "Valor paramétrico", "Límite de cuantificación"),
        *table,
    ]
    return one("csv_spanish_form", lines(rows, ";"), Water("VC-118", "", "2026-02-09", (
        means("e_coli", 0, 0), means("total_coliform", 3), means("nitrate", 34.5 * N_OF_NO3), means("nitrite", 0, 0.02 * 14.007 / 46.005), means("ammonia", 0, 0.05 * N_OF_NH4), means("iron", 0.185), means("manganese", 0, 0.005), means("total_hardness", 290), means("chloride", 61), means("specific_conductance", 640 * 1.116), means("turbidity", 0.4), means("arsenic", 0.0021), means("lead", 0, 0.001), means("total_organic_carbon", 1.2))), encoding="latin-1")  # fmt: skip


def french_bulletin() -> Layout:
    """French: absence per 100 mL, `< LQ`, `<seuil`, `non mesuré`, limit and reference of quality, degrees, NFU."""
    table = (
        ("Escherichia coli", "absence/100 mL", "", "0", "", ""), ("Entérocoques intestinaux", "Absence", "/100 mL", "0", "", ""), ("Bactéries coliformes", "présence", "/100 mL", "", "0", ""), ("Germes revivifiables à 22°C", "45", "UFC/mL", "", "", ""), ("Nitrates (en NO3)", "27,0", "mg/L", "50", "", "0,5"), ("Nitrites (en NO2)", "< LQ", "mg/L", "0,50", "", "0,02"),
        ("Titre alcalimétrique complet (TAC)", "18,2", "°f", "", "", ""), ("Titre hydrotimétrique (TH)", "22,6", "°f", "", "", ""), ("Turbidité", "<0,10", "NFU", "1", "0,5", "0,1"), ("Fer total", "n.d.", "µg/L", "", "200", "10"), ("Manganèse total", "13,5", "µg/L", "", "50", "2"), ("Sulfates", "1 210", "mg/L", "", "250", "1"), ("Arsenic", "non mesuré", "µg/L", "10", "", ""),
        ("Température de l'eau", "12,4", "°C", "", "25", ""), ("Carbone organique total", "0,8", "mg(C)/L", "", "2", "0,2"), ("Bore", "0,11", "mg/L", "1,5", "", "0,01"),
    )  # fmt: skip
    rows = [
        ("Rapport d'essai n° 26-0042",),
        ("Lieu de prélèvement", "Puits des Aulnes"),
        ("Prélevé le", "12/05/2026"),
        (),
        ("Paramètre", "Résultat", "Unité", "Limite de qualité", "Référence de qualité", "LQ"),
        *table,
    ]
    return one("csv_french_bulletin", lines(rows, ";"), Water("", "Puits des Aulnes", "2026-05-12", (
        means("e_coli", 0, 0), means("enterococci", 0, 0), means("total_coliform", 1, INF), means("colony_count_22", 45), means("nitrate", 27 * N_OF_NO3), means("nitrite", 0, 0.02 * 14.007 / 46.005), means("total_alkalinity", 182), means("total_hardness", 226), means("turbidity", 0, 0.1), means("iron", 0, 0.01, "total"), means("manganese", 0.0135, None, "total"), means("sulfate", 1210), means("temperature", 12.4), means("total_organic_carbon", 0.8), means("boron", 0.11))), extra_ok=frozenset({"arsenic"}))  # fmt: skip


def german_wide() -> Layout:
    """German, wide: names with unit in brackets, units per litre, decimal commas, statistics and limit beneath."""
    rows = [("Messstelle", "Probenahmedatum", "pH-Wert", "el. Leitf. [µS/cm]", "Ca [mg/l]", "Mg [mg/l]", "Na [mg/l]", "Cl [mg/l]", "NO3 [mg/l]", "NH4 [mg/l]", "Fe ges. [mg/l]", "Bemerkung"),
            ("GWM 3", "05.11.2025", "7,1", "612", "88,2", "12,1", "11", "24", "31,0", "<0,05", "0,13", ""), ("GWM 4", "05.11.2025", "6,4", "1.310", "141", "31,4", "102", "212", "<0,5", "1,20", "8,7", "trüb"),
            ("Mittelwert", "", "6,75", "961", "114,6", "21,8", "56,5", "118", "15,6", "0,61", "4,4", ""), ("Minimum", "", "6,4", "612", "88,2", "12,1", "11", "24", "<0,5", "<0,05", "0,13", ""), ("Grenzwert TrinkwV", "", "6,5-9,5", "2790", "", "", "200", "250", "50", "0,5", "0,2", "")]  # fmt: skip
    return one("csv_german_wide", lines(rows, ";"), (
        Water("GWM 3", "GWM 3", "2025-11-05", (means("ph", 7.1), means("specific_conductance", 612), means("calcium", 88.2), means("magnesium", 12.1), means("sodium", 11), means("chloride", 24), means("nitrate", 31 * N_OF_NO3), means("ammonia", 0, 0.05 * N_OF_NH4), means("iron", 0.13, None, "total"))),
        Water("GWM 4", "GWM 4", "2025-11-05", (means("ph", 6.4), means("specific_conductance", 1310), means("calcium", 141), means("magnesium", 31.4), means("sodium", 102), means("chloride", 212), means("nitrate", 0, 0.5 * N_OF_NO3), means("ammonia", 1.2 * N_OF_NH4), means("iron", 8.7, None, "total"))),
    ))  # fmt: skip


def basis_column() -> Layout:
    """Bare names; the form stands in a column of its own, the fraction as F/UF, the sign in a third."""
    head = ("station", "date", "constituent", "expressed_as", "filtered", "sign", "value", "unit", "loq")
    table = (("Nitrate", "NO3", "F", "", "22.4", "mg/L", "0.2"), ("Nitrite", "N", "F", "<", "0.002", "mg/L", "0.002"), ("Ammonium", "NH4", "F", "", "0.11", "mg/L", "0.02"), ("Phosphate", "P", "F", "", "0.05", "mg/L", "0.01"),
             ("Alkalinity", "CaCO3", "UF", "", "144", "mg/L", "5"), ("Iron", "Fe", "UF", "", "950", "µg/L", "10"), ("Iron", "Fe", "F", "<", "10", "µg/L", "10"), ("Silica", "SiO2", "F", "", "17.7", "mg/L", "0.5"))  # fmt: skip
    rows = [head, *(("B-77", "2026-02-03", *row) for row in table)]
    return one("tsv_basis_column", lines(rows, "\t"), Water("", "B-77", "2026-02-03", (
        means("nitrate", 22.4 * N_OF_NO3, None, "dissolved"), means("nitrite", 0, 0.002, "dissolved"), means("ammonia", 0.11 * N_OF_NH4, None, "dissolved"), means("orthophosphate", 0.05, None, "dissolved"), means("total_alkalinity", 144, None, "total"), means("iron", 0.95, None, "total"), means("iron", 0, 0.01, "dissolved"), means("silica", 17.7, None, "dissolved"))), suffix="tsv")  # fmt: skip


def wide_pairs() -> Layout:
    """Wide; each analyte has a value column and a limit of quantification column; averages and guideline beneath."""
    rows = [("Site", "Day", "Lead (ug/L)", "Lead LOQ", "Cadmium (ug/L)", "Cadmium LOQ", "Nickel (ug/L)", "Nickel LOQ"), ("WP-1", "2026-02-21", "ND", "0.5", "0.21", "0.1", "ND", "2"), ("WP-2", "2026-02-22", "4.4", "0.5", "ND", "0.1", "7", "2"),
            ("Average", "", "2.3", "", "0.13", "", "4", ""), ("WHO guideline", "", "10", "", "3", "", "70", "")]  # fmt: skip
    return one("csv_wide_pairs", lines(rows), (
        Water("WP-1", "WP-1", "2026-02-21", (means("lead", 0, 0.0005), means("cadmium", 0.00021), means("nickel", 0, 0.002))), Water("WP-2", "WP-2", "2026-02-22", (means("lead", 0.0044), means("cadmium", 0, 0.0001), means("nickel", 0.007))),
    ))  # fmt: skip


LAYOUTS = (
    nitrogen_twice, alkalinities, element_or_form, isotopes, words_or_symbols, units_of_one_thing, germs, german_ordinance, spanish_form,
    french_bulletin, german_wide, basis_column, wide_pairs,
)  # fmt: skip
