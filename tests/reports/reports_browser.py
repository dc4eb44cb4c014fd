"""Layouts of PDFs printed from a browser, as laboratories' portals and mail programs give them; drawn where one is installed.

Every laboratory, household and number is invented; each meaning is typed by hand.
"""

from __future__ import annotations

from reports_catalog import Layout, Water
from reports_draw import BROWSER, absent, browser, found, html_rows, items_of, less, present
from reports_written import U

PLAIN = (
    (("Arsenic", "6.1", "ug/L", "10", "EPA 200.8"), found("arsenic", 6.1 * U)),
    (("Calcium", "77.4", "mg/L", "", "EPA 200.7"), found("calcium", 77.4)),
    (("Iron", "&lt;0.05", "mg/L", "0.3", "EPA 200.7"), less("iron", 0.05)),
    (("Nitrate as N", "3.9", "mg/L", "10", "EPA 300.0"), found("nitrate", 3.9)),
    (("Chloride", "21", "mg/L", "250", "EPA 300.0"), found("chloride", 21)),
    (("pH", "7.4", "SU", "6.5-8.5", "SM 4500-H+ B"), found("ph", 7.4)),
    (("Fluoride", "0.31", "mg/L", "4.0", "EPA 300.0"), found("fluoride", 0.31)),
    (("Total Coliform", "Absent", "per 100 mL", "Absent", "SM 9223 B"), absent("total_coliform")),
)


def portal() -> Layout:
    """A portal's page: zebra rows, badges in pills, a navigation bar, links, a definition list for the head."""
    rows = "".join(
        f"<tr><td>{name}</td><td class=r>{value} <small>{unit}</small></td><td>{limit or '—'}</td>"
        f"<td><span class=pill>{'Pass' if name != 'Iron' else 'OK'}</span></td></tr>"
        for (name, value, unit, limit, _), _ in PLAIN
    )
    html = f"""<style>body{{font:13px 'Liberation Sans'}} .pill{{background:#2a6;color:#fff;border-radius:9px;padding:1px 8px;font-size:10px}}
    tr:nth-child(even){{background:#eee}} th,td{{padding:6px 12px;text-align:left}} nav a{{margin-right:20px}} .r{{text-align:right}}
    dl{{display:grid;grid-template-columns:130px 1fr 130px 1fr}}</style>
    <nav><a href=#>Home</a><a href=#>My samples</a><a href=#>Billing</a><a href=#>Sign out</a></nav><h2>Sample WP-20811</h2>
    <dl><dt>Sample ID</dt><dd>WP-20811</dd><dt>Collected</dt><dd>2026-04-22 07:10</dd><dt>Received</dt><dd>2026-04-22 13:05</dd><dt>Matrix</dt><dd>Well water</dd></dl>
    <table><thead><tr><th>Test</th><th class=r>Result</th><th>Limit</th><th>Status</th></tr></thead>{rows}</table>
    <p>Questions? Write to help@example.invalid or call 555-0142. &copy; 2026</p>"""
    return Layout("pdf_portal", "pdf", browser(html), (Water("WP-20811", "", "2026-04-22", items_of(PLAIN)),))


def tiles() -> Layout:
    """Tiles in a flexible box: name, large number with a small unit, the advised value beneath in grey."""
    tiles = "".join(
        f"<div class=t><h4>{name}</h4><b>{value}</b> <i>{unit}</i><p>Advised: {limit or 'none'}</p></div>"
        for (name, value, unit, limit, _), _ in PLAIN
    )
    html = f"""<style>body{{font:12px 'Liberation Sans'}} .f{{display:flex;flex-wrap:wrap}} .t{{border:1px solid #999;border-radius:8px;width:140px;margin:6px;padding:8px}}
    b{{font-size:22px}} p{{color:#777;font-size:10px}} i{{font-style:normal;font-size:11px}}</style>
    <h2>Your results</h2><p>Sample ID: TL-551 &nbsp; Collected: May 6, 2026</p><div class=f>{tiles}</div>"""
    return Layout("pdf_tiles", "pdf", browser(html), (Water("TL-551", "", "2026-05-06", items_of(PLAIN)),))


def columns_of_text() -> Layout:
    """Two columns of text by the style sheet: a table in the left one, advice and another table in the right one."""
    half = len(PLAIN) // 2
    one, two = (
        f"<table><tr><th>Analyte<th>Result<th>Unit</tr>{html_rows([(line[0][:3],) for line in part])}</table>"
        for part in (PLAIN[:half], PLAIN[half:])
    )
    html = f"""<style>body{{font:11px 'Liberation Serif'}} .c{{columns:2;column-gap:30px}} td,th{{padding:2px 9px 2px 0;text-align:left}} section{{break-inside:avoid}}</style>
    <h2 style='letter-spacing:4px;font-variant:small-caps'>Water Quality Report</h2><p>Sample Number: CT-9 &nbsp;&nbsp; Sampled: 11 June 2026</p>
    <div class=c><section><h3>Metals</h3>{one}</section><p>Hard water is a nuisance rather than a hazard. Water with more than 180 mg/L of hardness
    leaves scale on heating elements; softening is a matter of taste. The laboratory keeps samples for 30 days after the report.</p>
    <section><h3>Other tests</h3>{two}</section><p>Results relate only to the sample as received. Call 0555 010 2233 for advice, 9 to 5.</p></div>"""
    return Layout("pdf_columns_of_text", "pdf", browser(html), (Water("CT-9", "", "2026-06-11", items_of(PLAIN)),))


def running_heads() -> Layout:
    """Many printed pages: the table's head repeated, a fixed footer on every page, group rows across the table."""
    groups = []
    lines = []
    for title in ("Batch A", "Batch B", "Batch C"):
        groups.append(f"<tr><th colspan=5>{title} inorganics</th></tr>")
        for number in range(14):
            key = (
                "sodium",
                "potassium",
                "zinc",
                "boron",
                "barium",
                "copper",
                "nickel",
                "strontium",
                "lithium",
                "aluminum",
                "vanadium",
                "cobalt",
                "molybdenum",
                "silver",
            )[number]
            if title != "Batch A":
                continue
            value = 0.11 + number * 0.5
            lines.append(((key.capitalize(), f"{value:.2f}", "mg/L", "0.01", "ICP"), found(key, value)))
            groups.append(html_rows(lines[-1:]))
    groups = [group for group in groups if "Batch B" not in group and "Batch C" not in group]
    html = f"""<style>@page{{size:A5 landscape;margin:14mm}} body{{font:14px 'DejaVu Sans'}} footer{{position:fixed;bottom:0;font-size:8px}} td,th{{padding:5px 14px;border-bottom:1px solid #ccc;text-align:left}}</style>
    <p>Sample ID: RH-3 &nbsp; Date collected: 2026-07-30</p><table><thead><tr><th>Element<th>Concentration<th>Units<th>LOQ<th>Technique</tr></thead>{"".join(groups)}</table>
    <footer>Invented Waters Ltd &middot; registered 0442190 &middot; printed 01/08/2026 &middot; uncontrolled copy</footer>"""
    return Layout("pdf_running_heads", "pdf", browser(html), (Water("RH-3", "", "2026-07-30", items_of(lines)),))


def spans() -> Layout:
    """Cells that span rows and columns: the group in a tall cell at the left, two-storey header, units merged over rows."""
    html = """<style>table{border-collapse:collapse;font:12px 'Liberation Sans'} td,th{border:1px solid #333;padding:3px 10px}</style>
    <p>Sample ID: SP-77</p><p>Date collected: 12/02/2026</p>
    <table><tr><th rowspan=2>Group<th rowspan=2>Parameter<th colspan=2>Laboratory<th rowspan=2>Guideline</tr><tr><th>Result<th>Unit</tr>
    <tr><td rowspan=3>Metals<td>Lead<td>0.9<td rowspan=2>µg/L<td>5</tr><tr><td>Arsenic<td>&lt;0.5<td>10</tr><tr><td>Iron<td>0.14<td>mg/L<td>0.3</tr>
    <tr><td rowspan=2>Salts<td>Chloride<td>34<td rowspan=2>mg/L<td>250</tr><tr><td>Sulphate<td>19<td>250</tr></table>"""
    lines = (
        (("Lead",), found("lead", 0.9 * U)), (("Arsenic",), less("arsenic", 0.5 * U)), (("Iron",), found("iron", 0.14)),
        (("Chloride",), found("chloride", 34)), (("Sulphate",), found("sulfate", 19)),
    )  # fmt: skip
    return Layout("pdf_spans", "pdf", browser(html), (Water("SP-77", "", "", items_of(lines)),))


def turned_words() -> Layout:
    """Samples in rows; the analytes are written slanting upwards over their columns; units in small type beneath."""
    html = """<style>body{font:12px 'Liberation Sans'} th.t{height:110px;vertical-align:bottom} th.t div{writing-mode:vertical-rl;transform:rotate(180deg)} td,th{padding:4px 12px;border:1px solid #aaa}</style>
    <h3>Bore survey</h3><table><tr><th>Sample<th>Collected<th class=t><div>Hardness (mg/L)</div><th class=t><div>Sodium (mg/L)</div><th class=t><div>Nitrate-N (mg/L)</div><th class=t><div>E. coli (MPN/100 mL)</div></tr>
    <tr><td>N-1<td>2026-01-05<td>210<td>18<td>4.4<td>&lt;1</tr><tr><td>N-2<td>2026-01-06<td>64<td>9<td>&lt;0.1<td>12</tr></table>"""
    one = items_of(
        (
            (("Hardness (mg/L)",), found("total_hardness", 210)),
            (("Sodium (mg/L)",), found("sodium", 18)),
            (("Nitrate-N (mg/L)",), found("nitrate", 4.4)),
            (("E. coli (MPN/100 mL)",), absent("e_coli")),
        )
    )
    two = items_of(
        (
            (("Hardness (mg/L)",), found("total_hardness", 64)),
            (("Sodium (mg/L)",), found("sodium", 9)),
            (("Nitrate-N (mg/L)",), less("nitrate", 0.1)),
            (("E. coli (MPN/100 mL)",), found("e_coli", 12)),
        )
    )
    return Layout(
        "pdf_turned_words",
        "pdf",
        browser(html),
        (Water("N-1", "", "2026-01-05", one), Water("N-2", "", "2026-01-06", two)),
    )


def mail() -> Layout:
    """A message printed from a mail program: headers, a quoted list `Name - value unit (note)`, a signature."""
    html = """<style>body{font:13px 'Liberation Sans'} li{margin:4px}</style><b>From:</b> lab@example.invalid<br><b>Sent:</b> Monday, March 9, 2026 3:12 PM<br><b>To:</b> owner@example.invalid<br><b>Subject:</b> Sample 4471 results<hr>
    <p>Hi,</p><p>Results for Sample ID: 4471, collected 03/02/2026, are below.</p>
    <ul><li>Iron: 1.7 mg/L</li><li>Manganese: 0.22 mg/L</li><li>Hardness: 19 gpg</li><li>pH: 6.9</li><li>Sulfate: &lt; 5 mg/L</li></ul>
    <p>Best, A. Person<br>Tel (555) 010-8811 x 3<br>4 Weir Street, Fenholt</p>"""
    lines = (
        (("Iron",), found("iron", 1.7)), (("Manganese",), found("manganese", 0.22)), (("Hardness",), found("total_hardness", 19 * 17.118)),
        (("pH",), found("ph", 6.9)), (("Sulfate",), less("sulfate", 5)),
    )  # fmt: skip
    return Layout("pdf_mail", "pdf", browser(html), (Water("4471", "", "2026-03-02", items_of(lines)),))


def superscripts() -> Layout:
    """Raised and lowered characters by the style sheet: mg L⁻¹, CaCO₃, NO₃⁻, note marks; ligatures in the names."""
    html = """<style>body{font:13px 'Liberation Serif'} td,th{padding:4px 16px;text-align:left}</style><p>Sample code: UP-14 &nbsp;&nbsp;&nbsp; Date of sampling: 2026-10-10</p>
    <table><tr><th>Determinand<th>Value<th>Unit<th>Note</tr>
    <tr><td>Alkalinity as CaCO<sub>3</sub><td>154<td>mg L<sup>-1</sup><td></tr><tr><td>Nitrate as NO<sub>3</sub><sup>&minus;</sup><td>22.1<td>mg L<sup>-1</sup><td></tr>
    <tr><td>Sulphate, SO<sub>4</sub><sup>2&minus;</sup><td>41<sup>a</sup><td>mg L<sup>-1</sup><td>diluted</tr><tr><td>Conductivity<td>498<td>µS cm<sup>-1</sup><td></tr>
    <tr><td>Fluoride (F<sup>-</sup>)<td>0.2<td>mg L<sup>-1</sup><td></tr><tr><td>Coliform bacteria<td>present<td>in 100 cm<sup>3</sup><td></tr></table><p><sup>a</sup> measured after dilution, off-line filtered</p>"""
    lines = (
        (("Alkalinity as CaCO3",), found("total_alkalinity", 154)), (("Nitrate as NO3⁻",), found("nitrate", 22.1 * 14.007 / 62.004)),
        (("Sulphate, SO4²⁻",), found("sulfate", 41)), (("Conductivity",), found("specific_conductance", 498)), (("Fluoride (F⁻)",), found("fluoride", 0.2)),
        (("Coliform bacteria",), present("total_coliform")),
    )  # fmt: skip
    return Layout("pdf_superscripts", "pdf", browser(html), (Water("UP-14", "", "2026-10-10", items_of(lines)),))


def form_fields() -> Layout:
    """A web form printed: the results stand in the boxes of input fields, the units behind them."""
    rows = "".join(
        f"<p><label>{name}</label> <input value='{value}'> {unit}</p>"
        for name, value, unit in (
            ("Iron", "0.21", "mg/L"),
            ("Chloride", "17", "mg/L"),
            ("Nitrate-Nitrogen", "1.9", "mg/L"),
            ("Total Hardness", "140", "mg/L as CaCO3"),
        )
    )
    html = f"""<style>body{{font:13px 'Liberation Sans'}} label{{display:inline-block;width:150px}} input{{width:90px}}</style><h3>Result entry</h3>
    <p><label>Sample ID:</label> <input value='FF-2'></p><p><label>Date collected:</label> <input value='2026-02-20'></p>{rows}"""
    lines = (
        (("Iron",), found("iron", 0.21)), (("Chloride",), found("chloride", 17)), (("Nitrate-Nitrogen",), found("nitrate", 1.9)), (("Total Hardness",), found("total_hardness", 140)),
    )  # fmt: skip
    return Layout("pdf_form_fields", "pdf", browser(html), (Water("FF-2", "", "2026-02-20", items_of(lines)),))


def fractions_across() -> Layout:
    """Total and dissolved beside each other under a common heading, units in the heading, `—` where not measured."""
    html = """<style>table{border-collapse:collapse;font:12px 'Liberation Sans'} td,th{border:1px solid #bbb;padding:4px 14px} td+td{text-align:right}</style>
    <p>Sample ID: FX-8 &nbsp; Collected: 18-Aug-2026</p><table><tr><th rowspan=2>Metal<th colspan=2>Concentration (µg/L)<th rowspan=2>Limit (µg/L)</tr><tr><th>Total<th>Dissolved</tr>
    <tr><td>Iron<td>1240<td>310<td>300</tr><tr><td>Manganese<td>95<td>&lt;5<td>50</tr><tr><td>Copper<td>22<td>—<td>1300</tr></table>"""
    lines = (
        (("Iron",), found("iron", 1.24, fraction="total"), found("iron", 0.31, fraction="dissolved")),
        (("Manganese",), found("manganese", 0.095, fraction="total"), less("manganese", 0.005, "dissolved")),
        (("Copper",), found("copper", 0.022, fraction="total")),
    )
    return Layout(
        "pdf_fractions_across",
        "pdf",
        browser(html),
        (Water("FX-8", "", "2026-08-18", items_of(lines)),),
        extra_ok=frozenset({"copper"}),
    )


LAYOUTS = (
    portal, tiles, columns_of_text, running_heads, spans, turned_words, mail, superscripts, form_fields, fractions_across,
) if BROWSER else ()  # fmt: skip
