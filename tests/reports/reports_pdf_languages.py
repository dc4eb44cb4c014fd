"""Layouts of text PDFs in French, German and Spanish. All invented."""

from __future__ import annotations

import random
from dataclasses import replace

import reports_catalog as catalog
from reports_catalog import Item, Layout, Water
from reports_pdf import Paper


def _foreign(name, seed, laboratory, heads, header, words):
    rng = random.Random(seed)
    items = []
    paper = Paper()
    paper.text(laboratory, bold=True, size=13)
    id, day, shown = f"P{seed}", "2026-03-14", "14.03.2026"
    paper.row((48, 170), (heads[0], id))
    paper.row((48, 170), (heads[1], shown))
    paper.y -= 8
    at = (48, 250, 330, 420)
    paper.row(at, header, bold=True)
    for printed, unit, analyte, factor, span, limit in words:
        low, high = span
        bound = catalog.figures(low)
        if isinstance(printed, tuple):
            text, printed, bounds = printed[1], printed[0], (0.0, 0.0)
        elif rng.random() < 0.25:
            text, bounds = f"< {bound}", (0.0, float(bound) * factor)
        else:
            value = catalog.figures(low * (high / low) ** rng.random())
            text, bounds = value, (float(value) * factor,) * 2
        items.append(Item(analyte, None, printed, text, unit, *bounds))
        paper.row(at, (printed, text.replace(".", ","), unit, limit))
    return Layout(name, "pdf", paper.done(), (Water(id, "", day, tuple(items)),))


def french() -> Layout:
    """A French report: decimal comma, nitrates as NO3, absence per 100 mL."""
    n = 14.007 / 62.004
    words = (
        (("Escherichia coli", "Absence"), "/100 mL", "e_coli", 1, (1, 2), "0"),
        ("Calcium", "mg/L", "calcium", 1, (20, 140), ""),
        ("Magnésium", "mg/L", "magnesium", 1, (3, 40), ""),
        ("Sodium", "mg/L", "sodium", 1, (5, 180), "200"),
        ("Potassium", "mg/L", "potassium", 1, (0.5, 9), ""),
        ("Fer total", "µg/L", "iron", 0.001, (20, 3000), "200"),
        ("Manganèse", "µg/L", "manganese", 0.001, (5, 400), "50"),
        ("Plomb", "µg/L", "lead", 0.001, (0.5, 22), "10"),
        ("Chlorures", "mg/L", "chloride", 1, (4, 300), "250"),
        ("Sulfates", "mg/L", "sulfate", 1, (4, 300), "250"),
        ("Nitrates (en NO3)", "mg/L", "nitrate", n, (1, 90), "50"),
        ("Titre hydrotimétrique (TH)", "°f", "total_hardness", 10, (4, 45), ""),
        ("Conductivité à 25 °C", "µS/cm", "specific_conductance", 1, (100, 1100), ""),
        ("Turbidité", "NFU", "turbidity", 1, (0.2, 9), "1"),
    )
    made = _foreign(
        "pdf_french",
        210,
        "Laboratoire du Val d'Orée",
        ("Échantillon :", "Date de prélèvement :"),
        ("Paramètre", "Résultat", "Unité", "Limite de qualité"),
        words,
    )
    items = tuple(i._replace(fraction="total") if i.name == "Fer total" else i for i in made.waters[0].items)
    return replace(made, waters=(replace(made.waters[0], items=items),))


def german() -> Layout:
    """A German report: decimal comma, Gesamthärte in °dH, Nitrat as NO3."""
    n = 14.007 / 62.004
    words = (
        (("Escherichia coli", "0"), "KBE/100 ml", "e_coli", 1, (1, 2), "0"),
        (("Coliforme Bakterien", "0"), "KBE/100 ml", "total_coliform", 1, (1, 2), "0"),
        ("Calcium", "mg/l", "calcium", 1, (20, 140), ""),
        ("Magnesium", "mg/l", "magnesium", 1, (3, 40), ""),
        ("Natrium", "mg/l", "sodium", 1, (5, 180), "200"),
        ("Kalium", "mg/l", "potassium", 1, (0.5, 9), ""),
        ("Eisen", "mg/l", "iron", 1, (0.02, 3), "0,2"),
        ("Mangan", "mg/l", "manganese", 1, (0.005, 0.4), "0,05"),
        ("Blei", "mg/l", "lead", 1, (0.0005, 0.02), "0,01"),
        ("Chlorid", "mg/l", "chloride", 1, (4, 300), "250"),
        ("Sulfat", "mg/l", "sulfate", 1, (4, 300), "250"),
        ("Nitrat (NO3)", "mg/l", "nitrate", n, (1, 90), "50"),
        ("Gesamthärte", "°dH", "total_hardness", 17.848, (2, 25), ""),
        ("Leitfähigkeit (25 °C)", "µS/cm", "specific_conductance", 1, (100, 1100), "2790"),
        ("Trübung", "NTU", "turbidity", 1, (0.2, 9), "1,0"),
    )
    return _foreign(
        "pdf_german",
        220,
        "Labor Erlengrund",
        ("Probe-Nr.:", "Probenahmedatum:"),
        ("Parameter", "Messwert", "Einheit", "Grenzwert"),
        words,
    )


def spanish() -> Layout:
    """A Spanish report: decimal comma, ausencia per 100 mL."""
    n = 14.007 / 62.004
    words = (
        (("Escherichia coli", "Ausencia"), "UFC/100 mL", "e_coli", 1, (1, 2), "0"),
        ("Calcio", "mg/L", "calcium", 1, (20, 140), ""),
        ("Magnesio", "mg/L", "magnesium", 1, (3, 40), ""),
        ("Sodio", "mg/L", "sodium", 1, (5, 180), "200"),
        ("Potasio", "mg/L", "potassium", 1, (0.5, 9), ""),
        ("Hierro", "µg/L", "iron", 0.001, (20, 3000), "200"),
        ("Manganeso", "µg/L", "manganese", 0.001, (5, 400), "50"),
        ("Plomo", "µg/L", "lead", 0.001, (0.5, 22), "10"),
        ("Arsénico", "µg/L", "arsenic", 0.001, (0.5, 40), "10"),
        ("Cloruros", "mg/L", "chloride", 1, (4, 300), "250"),
        ("Sulfatos", "mg/L", "sulfate", 1, (4, 300), "250"),
        ("Nitratos (NO3)", "mg/L", "nitrate", n, (1, 90), "50"),
        ("Conductividad a 25 °C", "µS/cm", "specific_conductance", 1, (100, 1100), "2500"),
        ("Turbidez", "UNF", "turbidity", 1, (0.2, 9), "4"),
    )
    return _foreign(
        "pdf_spanish",
        230,
        "Laboratorio Peñaclara",
        ("Muestra:", "Fecha de toma:"),
        ("Parámetro", "Resultado", "Unidad", "Valor paramétrico"),
        words,
    )


LAYOUTS = (
    french,
    german,
    spanish,
)
