"""Tables without rules drawn at random: columns, alignments, faces, sizes, distances; and their rows as the truth."""

from __future__ import annotations

import io
import random

from reportlab.lib.pagesizes import letter
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas

NAMES = (
    "Iron", "Iron, total", "Manganese", "Nitrate as N", "Nitrate + Nitrite as N", "Total Dissolved Solids (TDS)", "pH",
    "Hardness as CaCO3", "Arsenic, dissolved", "1,2-Dichloroethane", "E. coli", "Bis(2-ethylhexyl)phthalate",
    "Gross alpha", "Specific Conductance at 25 C",
)  # fmt: skip
TEXTS = {
    "Units": ("mg/L", "ug/L", "SU", "NTU", "pCi/L", "per 100 mL", "uS/cm", "mg/L as CaCO3", "MPN/100 mL"),
    "RL": ("0.05", "1", "10", "0.001", ""),
    "Limit": ("0.3", "10", "6.5-8.5", "", "--"),
    "Method": ("EPA 200.7", "SM 9223 B", "EPA 353.2", "SM 4500-H+ B"),
    "Qual": ("", "", "U", "J", "B, J"),
    "DF": ("1", "5", "100"),
    "Analyzed": ("04/14/2026", "04/28/2026 10:20"),
    "Analyst": ("AB", "M. Roe", ""),
}


def _value(rng: random.Random) -> str:
    number = f"{rng.lognormvariate(0, 2):.3g}"
    return rng.choice((number, number, f"<{number}", f"< {number}", "ND", f"{number} J", f"{number} +/- 0.3", "Absent"))


def random_page(seed: int) -> tuple[list[tuple[str, ...]], bytes] | None:
    """Rows (header first) and the pages that print them; None where they do not fit on the paper."""
    rng = random.Random(seed)
    columns = ["Analyte", "Result", *rng.sample(list(TEXTS), rng.randint(1, 6))]
    rows = [tuple(columns)]
    for _ in range(rng.randint(3, 25)):
        rows.append((rng.choice(NAMES), _value(rng), *(rng.choice(TEXTS[name]) for name in columns[2:])))
    size, face = rng.choice((7, 8, 9, 10, 11)), rng.choice(("Helvetica", "Times-Roman", "Courier"))
    widths = [max(stringWidth(row[at], face, size) for row in rows) for at in range(len(columns))]
    # Columns stand further apart than words do, by a third of the type size at least.
    gap = max(rng.choice((0.6, 1.0, 1.5, 2.5)) * size, stringWidth(" ", face, size) + 0.4 * size)
    if sum(widths) + gap * (len(widths) - 1) > 580:
        return None
    aligned = ["l", *rng.choices("lrc", k=len(columns) - 1)]
    pitch = size * rng.choice((1.2, 1.6, 2.2))
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=letter)
    y = 700.0
    for row in rows:
        canvas.setFont(face, size)
        x = 16.0
        for text, width, how in zip(row, widths, aligned, strict=True):
            if how == "l":
                canvas.drawString(x, y, text)
            elif how == "r":
                canvas.drawRightString(x + width, y, text)
            else:
                canvas.drawCentredString(x + width / 2, y, text)
            x += width + gap
        y -= pitch
        if y < 60:
            canvas.showPage()
            y = 720.0
    canvas.save()
    return rows, out.getvalue()
