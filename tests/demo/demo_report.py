"""Draws the bundled demo report: an invented laboratory, an invented household, an invented well.

Run as a program to write `wellchem/demo/report.pdf` again. `RESULTS` is what the page says, for the test that reads it.
"""

from __future__ import annotations

import sys
from pathlib import Path

LABORATORY = "Quillmere Water Laboratory"
SAMPLE = "QW-26-0417"

# printed name, printed result, unit, reporting limit, guideline printed beside, method, then analyte, low, high
SECTIONS = {
    "Microbiology": [
        ("Total Coliform", "Present", "per 100 mL", "1", "Absent", "SM 9223 B", "total_coliform", 1.0, float("inf")),
        ("E. coli", "Absent", "per 100 mL", "1", "Absent", "SM 9223 B", "e_coli", 0.0, 0.0),
    ],
    "Physical and general": [
        ("pH (laboratory)", "7.42 H", "SU", "", "6.5-8.5", "SM 4500-H+ B", "ph", 7.42, 7.42),
        ("Conductivity @25C", "655", "µS/cm", "2", "", "SM 2510 B", "specific_conductance", 655.0, 655.0),
        ("Turbidity", "6.8", "NTU", "0.1", "", "EPA 180.1", "turbidity", 6.8, 6.8),
        ("Apparent Color", "25", "Pt-Co", "5", "15", "SM 2120 B", "apparent_color", 25.0, 25.0),
        (
            "Alkalinity, Total (as CaCO3)",
            "315",
            "mg/L",
            "5",
            "",
            "SM 2320 B",
            "total_alkalinity",
            315.0,
            315.0,
        ),
        ("Hardness as CaCO3", "19.2", "gpg", "", "", "SM 2340 B", "total_hardness", 328.6, 328.6),
        ("Total Dissolved Solids", "384", "mg/L", "10", "500", "SM 2540 C", "total_dissolved_solids", 384.0, 384.0),
    ],
    "Anions and nutrients": [
        ("Chloride", "16.1", "mg/L", "0.5", "250", "EPA 300.0", "chloride", 16.1, 16.1),
        ("Fluoride", "0.31", "mg/L", "0.1", "4.0", "EPA 300.0", "fluoride", 0.31, 0.31),
        ("Nitrate-N", "<0.05", "mg/L", "0.05", "10", "EPA 300.0", "nitrate", 0.0, 0.05),
        ("Nitrite-N", "ND", "mg/L", "0.05", "1", "EPA 300.0", "nitrite", 0.0, 0.05),
        ("Sulfate", "30.8", "mg/L", "0.5", "250", "EPA 300.0", "sulfate", 30.8, 30.8),
    ],
    "Metals, total": [
        ("Arsenic", "12.4", "µg/L", "1.0", "10", "EPA 200.8", "arsenic", 0.0124, 0.0124),
        ("Calcium", "92.0", "mg/L", "0.2", "", "EPA 200.7", "calcium", 92.0, 92.0),
        ("Copper", "0.021", "mg/L", "0.005", "1.3", "EPA 200.8", "copper", 0.021, 0.021),
        ("Iron", "2.41", "mg/L", "0.05", "0.3", "EPA 200.7", "iron", 2.41, 2.41),
        ("Lead", "1.6", "µg/L", "0.5", "15", "EPA 200.8", "lead", 0.0016, 0.0016),
        ("Magnesium", "24.1", "mg/L", "0.2", "", "EPA 200.7", "magnesium", 24.1, 24.1),
        ("Manganese", "0.318", "mg/L", "0.002", "0.05", "EPA 200.8", "manganese", 0.318, 0.318),
        ("Potassium", "2.1", "mg/L", "0.5", "", "EPA 200.7", "potassium", 2.1, 2.1),
        ("Sodium", "18.2", "mg/L", "0.5", "", "EPA 200.7", "sodium", 18.2, 18.2),
        ("Uranium", "0.8 J", "µg/L", "1.0", "30", "EPA 200.8", "uranium", 0.0, 0.001),
    ],
}
QUALITY_CONTROL = [
    ("Method Blank: Iron", "<0.05", "mg/L", "0.05", "", "EPA 200.7"),
    ("Laboratory Control Sample: Iron", "1.98", "mg/L", "0.05", "", "EPA 200.7"),
]
HEADER = ("Analyte", "Result", "Units", "RL", "MCL/SMCL", "Method")
HEAD = [
    ("Client:", "The household at Tarn Edge Cottage", "Sample ID:", SAMPLE),
    ("Site:", "Tarn Edge well", "Matrix:", "Drinking water"),
    ("Sampling point:", "Kitchen tap, flushed, before any treatment", "Collected:", "2026-10-12 08:40"),
    ("Sampled by:", "The household", "Received:", "2026-10-12 13:15"),
]
LEGEND = [
    "ND = not detected at the reporting limit (RL).  J = estimated, between the detection limit and RL.",
    "H = holding time passed: pH is read on arrival.  MCL/SMCL: values of the US EPA for public systems.",
]


def draw(path: Path) -> None:
    """Write the report: two pages, one unruled table in sections, quality control apart."""
    from reportlab.lib.pagesizes import A4
    from reportlab.pdfgen import canvas

    page = canvas.Canvas(str(path), pagesize=A4, invariant=True)
    page.setTitle(f"Report {SAMPLE}")
    width, height = A4
    at = (48, 205, 268, 335, 385, 450)
    state = {"y": height - 50, "page": 1}

    def head() -> None:
        page.setFont("Helvetica-Bold", 13)
        page.drawString(48, height - 50, LABORATORY)
        page.setFont("Helvetica", 8)
        page.drawString(48, height - 62, "3 Invention Row, Quillmere (an invented laboratory)")
        page.drawRightString(width - 48, height - 50, f"Report of analysis, page {state['page']} of 2")
        page.line(48, height - 68, width - 48, height - 68)
        state["y"] = height - 86

    def header() -> None:
        page.setFont("Helvetica-Bold", 9)
        for x, word in zip(at, HEADER, strict=True):
            page.drawString(x, state["y"], word)
        page.line(48, state["y"] - 3, width - 48, state["y"] - 3)
        state["y"] -= 15

    def line(cells: tuple[str, ...]) -> None:
        page.setFont("Helvetica", 9)
        for x, word in zip(at, cells, strict=True):
            page.drawString(x, state["y"], word)
        state["y"] -= 13

    def section(title: str) -> None:
        state["y"] -= 4
        page.setFont("Helvetica-Bold", 9)
        page.drawString(48, state["y"], title)
        state["y"] -= 14

    head()
    for left, value, right, other in HEAD:
        page.setFont("Helvetica-Bold", 9)
        page.drawString(48, state["y"], left)
        page.drawString(350, state["y"], right)
        page.setFont("Helvetica", 9)
        page.drawString(130, state["y"], value)
        page.drawString(420, state["y"], other)
        state["y"] -= 14
    state["y"] -= 10
    header()
    for title, rows in SECTIONS.items():
        if title == "Metals, total":
            page.showPage()
            state["page"] = 2
            head()
            header()
        section(title)
        for row in rows:
            line(row[:6])
    section("Quality control")
    for row in QUALITY_CONTROL:
        line(row)
    state["y"] -= 12
    page.setFont("Helvetica-Oblique", 8)
    for text in LEGEND:
        page.drawString(48, state["y"], text)
        state["y"] -= 11
    page.save()


if __name__ == "__main__":
    draw(Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parents[2] / "wellchem" / "demo" / "report.pdf")
