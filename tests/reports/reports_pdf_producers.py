"""Further text PDFs by several producers: a browser, fixed-width printing, a plotting library. All invented; meanings typed by hand."""

from __future__ import annotations

import io
from importlib.util import find_spec

from reportlab.lib.pagesizes import A4, landscape, letter
from reports_catalog import Layout, Water
from reports_draw import BROWSER, absent, browser, fill, found, html_rows, items_of, less
from reports_pdf import Paper
from reports_written import U

CSS = "<style>body{font:11px 'Liberation Sans'} td,th{padding:2px 8px;text-align:left;vertical-align:top} table{border-collapse:collapse}</style>"


def _read(name, data, *waters) -> Layout:
    return Layout(f"pdf_{name}", "pdf", data, waters)


PFAS = (
    (("Perfluorooctanoic acid (PFOA)", "335-67-1", "6.4", "1.8", "0.61", ""), found("pfoa", 6.4e-6)),
    (("Perfluorooctanesulfonic acid (PFOS)", "1763-23-1", "12", "1.8", "0.55", ""), found("pfos", 12e-6)),
    (("Perfluorohexanesulfonic acid (PFHxS)", "355-46-4", "1.1", "1.8", "0.48", "J"), found("pfhxs", 0.48e-6, 1.8e-6)),
    (("Perfluorononanoic acid (PFNA)", "375-95-1", "1.8 U", "1.8", "0.50", ""), less("pfna", 1.8e-6)),
    (
        ("Hexafluoropropylene oxide dimer acid (HFPO-DA / GenX)", "13252-13-6", "1.8 U", "1.8", "0.70", ""),
        less("hfpo_da", 1.8e-6),
    ),
    (("Perfluorobutanesulfonic acid (PFBS)", "375-73-5", "3.3", "1.8", "0.40", ""), found("pfbs", 3.3e-6)),
)


def pfas_recoveries() -> Layout:
    """PFAS with recoveries of labelled analogues in the same table. At first the unit, said among the labels of the sample's
    head, was lost and milligrams supposed; a labelled unit among them now holds for the results."""
    sur = "".join(
        f"<tr><td>{n}</td><td></td><td>{v} %</td><td colspan=2>50 - 150</td><td></td></tr>"
        for n, v in (("13C8-PFOA", 92), ("13C8-PFOS", 88), ("13C3-PFBS", 104))
    )
    h = f"""{CSS}<h3>Per- and polyfluoroalkyl substances, EPA 533</h3><p>Client Sample ID: PFAS-31 | Date Collected: 03/02/2026 09:10 | Units: ng/L</p>
    <table border=1 style='width:420px'><thead><tr><th>Analyte<th>CAS No.<th>Result<th>RL<th>MDL<th>Q</tr></thead>{html_rows(PFAS)}<tr><th colspan=6>Isotope Dilution Analogue &mdash; % Recovery (limits)</th></tr>{sur}</table>"""
    return _read("pfas_recoveries", browser(h), Water("PFAS-31", "", "2026-03-02", items_of(PFAS)))


def lims_mono() -> Layout:
    """Fixed-width printing on two pages. At first "(CONT'D)" behind the sample's number made a second sample; the remark is now
    left out."""
    p = Paper(letter, font="Courier", points=9, lead=11)

    def t(s):
        p.text(s, x=36)

    t("FENHOLT LABORATORY                                  REPORT OF ANALYSIS      PAGE 1")
    t("")
    t("LAB NO:    26-11782            SAMPLE POINT: WELLHEAD")
    t("COLLECTED: 05/19/26 08:40      RECEIVED: 05/19/26 13:10")
    t("")
    hd = (
        "PARAMETER                 RESULT       UNITS     MDL      METHOD        ANALYZED  BY",
        "------------------------- ------------ --------- -------- ------------- --------- ---",
    )
    t(hd[0])
    t(hd[1])

    def r(n, v, u, m, me):
        t(f"{n:<25.25} {v:>12} {u:<9} {m:<8} {me:<13} 05/20/26  JK")

    r("Arsenic", "0.0113", "mg/L", "0.0005", "EPA 200.8")
    r("Barium", "0.118", "mg/L", "0.001", "EPA 200.8")
    r("Nitrogen, Nitrate plus", "4.41", "mg/L", "0.05", "EPA 353.2")
    t("  Nitrite as N")
    r("Iron, Total Recoverable", "<0.05", "mg/L", "0.05", "EPA 200.7")
    r("Solids, Total Dissolved", "1,240", "mg/L", "10", "SM 2540C")
    t("")
    t("                         CONTINUED ON NEXT PAGE")
    p.new()
    t("FENHOLT LABORATORY                                  REPORT OF ANALYSIS      PAGE 2")
    t("")
    t("LAB NO:    26-11782 (CONT'D)")
    t("")
    t(hd[0])
    t(hd[1])
    r("Sodium", "188", "mg/L", "0.5", "EPA 200.7")
    r("Sulfate", "3.1E+02", "mg/L", "1", "EPA 300.0")
    r("Uranium", "ND", "ug/L", "1.0", "EPA 200.8")
    t("")
    t("                         *** END OF REPORT ***")
    L_ = (
        found("arsenic", 0.0113),
        found("barium", 0.118),
        found("nitrate_plus_nitrite", 4.41),
        less("iron", 0.05, "total_recoverable"),
        found("total_dissolved_solids", 1240),
        found("sodium", 188),
        found("sulfate", 310),
        less("uranium", 1e-3),
    )
    return _read("lims_mono", p.done(), Water("26-11782", "", "2026-05-19", items_of([(("",), x) for x in L_])))


def bilingual_canada() -> Layout:
    """Headings and units in two languages. At first the unit of counts was unknown; a unit printed twice around a stroke is
    now one where both are the same."""
    rows = [
        (("Arsenic / Arsenic", "0,0042", "mg/L", "0,010", "CMA / MAC"), found("arsenic", 0.0042)),
        (("Manganese / Manganèse", "0,31", "mg/L", "0,12", "CMA / MAC"), found("manganese", 0.31)),
        (("Nitrate (as N) / Nitrate (en N)", "&lt;0,10", "mg/L", "10", "CMA / MAC"), less("nitrate", 0.10)),
        (("Sodium / Sodium", "41,5", "mg/L", "200", "OE / AO"), found("sodium", 41.5)),
        (("Total hardness (CaCO3) / Dureté totale (CaCO3)", "188", "mg/L", "", ""), found("total_hardness", 188)),
        (
            ("Total coliforms / Coliformes totaux", "3", "CFU/100 mL / UFC/100 mL", "0", "CMA / MAC"),
            found("total_coliform", 3),
        ),
        (("E. coli", "0", "CFU/100 mL / UFC/100 mL", "0", "CMA / MAC"), absent("e_coli")),
    ]
    h = f"""{CSS}<h3>Private Well Water Report<br>Rapport d'analyse d'eau de puits privé</h3><table><tr><td>Sample No.<br>N° d'échantillon</td><td>PW-2026-118</td><td>Date collected<br>Date de prélèvement</td><td>2026-06-02</td></tr></table>
    <table border=1><tr><th>Parameter<br>Paramètre<th>Result<br>Résultat<th>Unit<br>Unité<th>Guideline<br>Recommandation<th>Type</tr>{html_rows(rows)}</table>"""
    return _read("bilingual_canada", browser(h), Water("PW-2026-118", "", "2026-06-02", items_of(rows)))


def wide_landscape() -> Layout:
    """Samples across a turned page, each with a narrow column of marks. At first U was taken for a unit and lost; marks without
    a heading now qualify the number to their left."""
    p = Paper(landscape(letter), points=7, lead=11)
    ids = [f"MW-{i}" for i in range(1, 6)]
    xs = [200 + 100 * i for i in range(5)]
    p.row((40, *xs), ("Sample ID", *ids), bold=True)
    p.row((40, *xs), ("Date Sampled", *(f"04/1{i}/2026" for i in range(5))), bold=True)
    p.row((40, 150), ("Analyte", "Unit"), bold=True)
    W = [[] for _ in ids]
    for r, (n, k) in enumerate(
        (
            ("Arsenic", "arsenic"),
            ("Barium", "barium"),
            ("Cadmium", "cadmium"),
            ("Lead", "lead"),
            ("Selenium", "selenium"),
        )
    ):
        vals = []
        for i in range(5):
            nd = (r + i) % 3 == 0
            v = "5.0" if nd else f"{(r + 2) * (i + 1.5):.1f}"
            vals.append((v, "U" if nd else ""))
            W[i].append(((n,), less(k, 5 * U) if nd else found(k, float(v) * U)))
        p.row((40, 150, *(x for b in xs for x in (b, b + 40))), (n, "ug/L", *(c for v in vals for c in v)))
    p.text("U - not detected at the value shown")
    return _read(
        "wide_landscape",
        p.done(),
        *(Water(i, "", f"2026-04-1{n}", items_of(w)) for n, (i, w) in enumerate(zip(ids, W, strict=True))),
    )


def history() -> Layout:
    """This sample, then earlier ones under one heading over their days. At first the second day was ambiguous and nothing was
    read; days under such a heading are all earlier results."""
    rows = [
        (("Nitrate-N", "mg/L", "8.8", "7.9", "6.1", "▲"), found("nitrate", 8.8)),
        (("Arsenic", "µg/L", "&lt;1", "&lt;1", "2", "="), less("arsenic", 0.001)),
        (("Chloride", "mg/L", "64", "71", "70", "▼"), found("chloride", 64)),
        (("pH", "", "7.1", "7.0", "7.2", "="), found("ph", 7.1)),
    ]
    h = f"""{CSS}<p>Sample no. HI-2026-5 &nbsp; Date sampled: 2026-05-20</p><table border=1><tr><th rowspan=2>Parameter<th rowspan=2>Unit<th rowspan=2>This sample<br>20 May 2026<th colspan=2>Previous results<th rowspan=2>Trend</tr><tr><th>12 May 2025<th>3 Jun 2024</tr>{html_rows(rows)}</table>"""
    return _read("history", browser(h), Water("HI-2026-5", "", "2026-05-20", items_of(rows)))


def field_block() -> Layout:
    """Field readings in running lines over a laboratory's table. At first the title was unknown and no reading was the
    field's; a title's place of measuring now ends where a table follows its lines."""
    p = Paper(A4, points=9, lead=14)
    p.text("Sample: FD-61   Collected: 2026-03-23 10:05")
    p.text("FIELD READINGS", bold=True)
    p.row((48, 200, 350), ("pH: 7.12", "Temp: 10.8 °C", "Conductivity: 455 µS/cm"))
    p.row((48, 200, 350), ("DO: 2.3 mg/L", "ORP: -45 mV", "Free chlorine: <0.02 mg/L"))
    p.y -= 10
    at = (48, 220, 300, 380)
    p.row(at, ("Laboratory analysis", "Result", "Unit", "LOD"), bold=True)
    ls = [
        (("Iron (dissolved)", "1.65", "mg/L", "0.02"), found("iron", 1.65, None, "dissolved")),
        (("Ammonium-N", "0.31", "mg/L", "0.01"), found("ammonia", 0.31)),
        (("DOC", "2.9", "mg/L", "0.3"), found("dissolved_organic_carbon", 2.9)),
    ]
    it = fill(p, at, ls)
    F = (
        found("ph", 7.12, flag="field"),
        found("temperature", 10.8, flag="field"),
        found("specific_conductance", 455, flag="field"),
        found("dissolved_oxygen", 2.3, flag="field"),
        found("oxidation_reduction_potential", -45, flag="field"),
        less("free_chlorine", 0.02, flag="field"),
    )
    return _read("field_block", p.done(), Water("FD-61", "", "2026-03-23", it + items_of([(("",), x) for x in F])))


def mpl_table() -> Layout:
    """A notebook's table over a bar chart, by matplotlib. At first the number went on with "collected" and its day; a
    labelled day behind a name is now the sample's."""
    import matplotlib

    matplotlib.use("pdf")
    import matplotlib.pyplot as plt

    rows = [
        (("Nitrate as N", "11.2", "mg/L", "10", "above"), found("nitrate", 11.2)),
        (("Iron", "<0.02", "mg/L", "0.3", "ok"), less("iron", 0.02)),
        (("Uranium", "41", "µg/L", "30", "above"), found("uranium", 0.041)),
        (("Specific conductance", "912", "µS/cm", "", ""), found("specific_conductance", 912)),
        (("Chloride", "35", "mg/L", "250", "ok"), found("chloride", 35)),
    ]
    fig, (ax, bar) = plt.subplots(2, 1, figsize=(8, 8))
    ax.axis("off")
    ax.set_title("Sample ID: NB-7, collected 2026-06-30")
    ax.table(cellText=[r[0] for r in rows], colLabels=["Analyte", "Result", "Unit", "Limit", "Note"], loc="center")
    bar.barh([r[0][0] for r in rows], [1.12, 0.07, 1.37, 0, 0.14])
    bar.set_xlabel("share of the limit")
    bar.axvline(1)
    b = io.BytesIO()
    fig.savefig(b, format="pdf")
    plt.close(fig)
    return _read("mpl_table", b.getvalue(), Water("NB-7", "", "2026-06-30", items_of(rows)))


def drawn_boxes() -> Layout:
    """A card whose boxes are drawn, not printed: which is crossed is not seen. At first E. coli was read as absent, whatever
    was crossed; words to choose from without a mark are now unread.
    """
    paper = Paper(letter, points=10, lead=20)
    paper.text("Lab Number: B-26-4410          Date Collected: 04/27/2026")
    for name, crossed in (("Total coliform bacteria", 230), ("E. coli", 230), ("Enterococci", 310)):
        for x in (230, 310):
            paper.page.rect(x, paper.y - 1, 8, 8)
        paper.page.line(crossed, paper.y - 1, crossed + 8, paper.y + 7)
        paper.row((48, 242, 322), (name, "Present", "Absent"))
    return Layout("pdf_drawn_boxes", "pdf", paper.done(), (), unread=3)


PRINTED = (pfas_recoveries, bilingual_canada, history)
LAYOUTS = (
    drawn_boxes,
    lims_mono,
    wide_landscape,
    field_block,
    *(PRINTED if BROWSER else ()),
    *((mpl_table,) if find_spec("matplotlib") else ()),
)
