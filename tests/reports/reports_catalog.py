"""What the invented laboratories of these layouts can print, and what it means.

Every meaning is stated here independently of the library: the factor from a printed unit to the canonical one is typed
from definitions (1 gpg = 17.118 mg/L, 1 °dH = 17.848 mg/L, 1 °fH = 10 mg/L as CaCO3; NO3 to N 14.007/62.004; HCO3 to
CaCO3 50.043/61.016; 1 pCi = 0.037 Bq).
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import NamedTuple

INF = float("inf")


class Item(NamedTuple):
    """One printed result and its meaning."""

    analyte: str
    fraction: str | None
    name: str
    value: str
    unit: str
    low: float
    high: float
    rl: str = ""
    mdl: str = ""
    limit: str = ""
    method: str = ""
    flag: str = ""


@dataclass(frozen=True)
class Water:
    """One sample as printed."""

    id: str
    site: str
    day: str
    items: tuple[Item, ...]
    laboratory: str = ""


@dataclass(frozen=True)
class Layout:
    """A file in memory with its truth."""

    name: str
    suffix: str
    data: bytes
    waters: tuple[Water, ...]
    quality_control: int = 0
    notes: str = ""
    extra_ok: frozenset[str] = field(default_factory=frozenset)
    strict: bool = False  # also the days, the marks, the exact count of quality control and of what must be unread
    unread: int = 0  # at least so many things must be said to be unread


@dataclass(frozen=True)
class Entry:
    """One analyte of the catalogue: printed names with their fraction, printed units with their factor."""

    analyte: str
    names: tuple[tuple[str, str | None], ...]
    units: tuple[tuple[str, float], ...]
    span: tuple[float, float]
    limit: str
    method: str
    group: str


def _e(analyte, names, units, span, limit, method, group):
    named = tuple(name if isinstance(name, tuple) else (name, None) for name in names)
    return Entry(analyte, named, units, span, limit, method, group)


MG = (("mg/L", 1.0), ("ppm", 1.0), ("mg/l", 1.0))
UG = (("µg/L", 0.001), ("ug/L", 0.001), ("ppb", 0.001), ("μg/l", 0.001), ("mg/L", 1.0))
ENTRIES = (
    _e(
        "calcium",
        ["Calcium", ("Calcium, Total", "total"), "Ca", "Calcium (Ca)"],
        MG,
        (8, 160),
        "",
        "EPA 200.7",
        "metals",
    ),
    _e("magnesium", ["Magnesium", ("Magnesium, Total", "total"), "Mg"], MG, (2, 60), "", "EPA 200.7", "metals"),
    _e("sodium", ["Sodium", ("Total Sodium", "total"), "Na", "Sodium (Na)"], MG, (3, 220), "", "EPA 200.7", "metals"),
    _e("potassium", ["Potassium", "K", "Potassium (K)"], MG, (0.5, 9), "", "EPA 200.7", "metals"),
    _e(
        "iron",
        ["Iron", ("Iron, Total (as Fe)", "total"), ("Iron, Dissolved", "dissolved"), ("Total Iron", "total"), "Fe"],
        MG,
        (0.02, 6),
        "0.3",
        "EPA 200.7",
        "metals",
    ),
    _e(
        "manganese", ["Manganese", ("Manganese, Total", "total"), "Mn"], MG, (0.003, 0.9), "0.05", "EPA 200.8", "metals"
    ),
    _e(
        "arsenic",
        ["Arsenic", ("Arsenic, Total", "total"), "As", "Arsenic (As)"],
        UG,
        (0.0006, 0.06),
        "10",
        "EPA 200.8",
        "metals",
    ),
    _e("lead", ["Lead", ("Lead, Total", "total"), "Pb"], UG, (0.0004, 0.05), "15", "EPA 200.8", "metals"),
    _e("copper", ["Copper", ("Copper, Total", "total"), "Cu"], MG, (0.004, 2), "1.3", "EPA 200.8", "metals"),
    _e("zinc", ["Zinc", ("Zinc, Total", "total"), "Zn"], MG, (0.005, 1.5), "5", "EPA 200.7", "metals"),
    _e("barium", ["Barium", ("Barium, Total", "total"), "Ba"], MG, (0.01, 0.8), "2", "EPA 200.8", "metals"),
    _e(
        "uranium",
        ["Uranium", ("Uranium, Total", "total")],
        (("µg/L", 0.001), ("ug/L", 0.001)),
        (0.0003, 0.05),
        "30",
        "EPA 200.8",
        "metals",
    ),
    _e("boron", ["Boron", ("Boron, Total", "total")], MG, (0.02, 1.2), "", "EPA 200.7", "metals"),
    _e("selenium", ["Selenium", ("Selenium, Total", "total"), "Se"], UG, (0.0006, 0.03), "50", "EPA 200.8", "metals"),
    _e("chloride", ["Chloride", "Chloride (Cl)", "Cl-"], MG, (2, 400), "250", "EPA 300.0", "anions"),
    _e(
        "sulfate",
        ["Sulfate", "Sulphate", "Sulfate (SO4)", "Sulfate as SO4"],
        MG,
        (3, 420),
        "250",
        "EPA 300.0",
        "anions",
    ),
    _e("fluoride", ["Fluoride", "Fluoride (F)"], MG, (0.05, 4.4), "4.0", "EPA 300.0", "anions"),
    _e(
        "nitrate",
        ["Nitrate as N", "Nitrate-N", "Nitrate-Nitrogen", "NO3-N", "Nitrate (as N)", "Nitrate Nitrogen"],
        MG,
        (0.05, 24),
        "10",
        "EPA 300.0",
        "anions",
    ),
    _e(
        "nitrite", ["Nitrite as N", "Nitrite-N", "NO2-N", "Nitrite (as N)"], MG, (0.01, 0.9), "1", "EPA 300.0", "anions"
    ),
    _e("ammonia", ["Ammonia as N", "Ammonia-N", "Ammonia Nitrogen"], MG, (0.03, 2), "", "EPA 350.1", "anions"),
    _e(
        "total_alkalinity",
        ["Alkalinity, Total (as CaCO3)", "Total Alkalinity as CaCO3", "Alkalinity (as CaCO3)"],
        MG,
        (12, 380),
        "",
        "SM 2320 B",
        "general",
    ),
    _e(
        "total_hardness",
        ["Hardness as CaCO3", "Total Hardness", "Hardness, Total (as CaCO3)"],
        (("mg/L", 1.0), ("mg/L as CaCO3", 1.0), ("mg/L CaCO3", 1.0)),
        (10, 500),
        "",
        "SM 2340 B",
        "general",
    ),
    _e(
        "total_dissolved_solids",
        ["Total Dissolved Solids", "TDS", "Solids, Total Dissolved"],
        MG,
        (40, 900),
        "500",
        "SM 2540 C",
        "general",
    ),
    _e(
        "specific_conductance",
        ["Specific Conductance", "Conductivity", "Conductivity @25C", "Electrical Conductivity"],
        (("µS/cm", 1.0), ("umhos/cm", 1.0), ("uS/cm", 1.0), ("mS/m", 10.0)),
        (60, 1500),
        "",
        "SM 2510 B",
        "general",
    ),
    _e(
        "ph",
        ["pH", "pH (laboratory)", "pH, Lab"],
        (("SU", 1.0), ("pH units", 1.0), ("s.u.", 1.0), ("", 1.0)),
        (5.6, 8.8),
        "6.5-8.5",
        "SM 4500-H+ B",
        "general",
    ),
    _e("turbidity", ["Turbidity"], (("NTU", 1.0), ("FNU", 1.0)), (0.1, 20), "", "EPA 180.1", "general"),
    _e("silica", ["Silica (SiO2)", "Silica as SiO2", "Silica, SiO2"], MG, (5, 45), "", "SM 4500-SiO2", "general"),
    _e("total_organic_carbon", ["Total Organic Carbon", "TOC"], MG, (0.3, 8), "", "SM 5310 B", "general"),
)
BY_KEY = {entry.analyte: entry for entry in ENTRIES}


def figures(value: float) -> str:
    """Three significant digits, as laboratories print them."""
    if value >= 100:
        return f"{value:.0f}"
    if value >= 10:
        return f"{value:.1f}"
    if value >= 1:
        return f"{value:.2f}"
    return f"{value:.3g}"


def pick(rng: random.Random, entry: Entry, *, censored: float = 0.2, nd: str = "<", name=None, unit=None) -> Item:
    """One item of the catalogue with random printing."""
    printed_name, fraction = name or rng.choice(entry.names)
    unit_text, factor = unit or rng.choice(entry.units)
    if entry.analyte == "ph":
        text = f"{rng.uniform(*entry.span):.2f}"
        return Item(
            "ph", fraction, printed_name, text, unit_text, float(text), float(text), "", "", entry.limit, entry.method
        )
    low, high = entry.span
    value = low * (high / low) ** rng.random()
    text = figures(value / factor)
    rl = figures(low / factor)
    if entry.group in ("metals", "anions") and rng.random() < censored:
        bound = float(rl) * factor
        shown = {"<": f"<{rl}", "< ": f"< {rl}", "ND": "ND", "U": f"{rl} U", "BDL": "BDL"}[nd]
        return Item(
            entry.analyte, fraction, printed_name, shown, unit_text, 0.0, bound, rl, "", entry.limit, entry.method
        )
    number = float(text) * factor
    return Item(
        entry.analyte, fraction, printed_name, text, unit_text, number, number, rl, "", entry.limit, entry.method
    )


def bacteria(rng: random.Random, style: str = "words") -> tuple[Item, Item]:
    """Total coliform and E. coli in one of the ways that laboratories print them."""
    found = rng.random() < 0.5
    if style == "words":
        total = ("Present", 1.0, INF) if found else ("Absent", 0.0, 0.0)
        ecoli = ("Absent", 0.0, 0.0)
        unit = "per 100 mL"
    else:
        total = ("14.2", 14.2, 14.2) if found else ("<1", 0.0, 0.0)
        ecoli = ("<1", 0.0, 0.0)
        unit = "MPN/100 mL"
    return (
        Item(
            "total_coliform", None, "Total Coliform", total[0], unit, total[1], total[2], "1", "", "Absent", "SM 9223 B"
        ),
        Item("e_coli", None, "E. coli", ecoli[0], unit, ecoli[1], ecoli[2], "1", "", "Absent", "SM 9223 B"),
    )


def water(
    seed: int,
    analytes: Iterable[str] | None = None,
    *,
    id: str = "",
    nd: str = "<",
    censored: float = 0.2,
    germs: str = "",
) -> Water:
    """An invented sample: the same seed gives the same page."""
    rng = random.Random(seed)
    entries = [BY_KEY[key] for key in analytes] if analytes is not None else list(ENTRIES)
    items = [pick(rng, entry, censored=censored, nd=nd) for entry in entries]
    if germs:
        items = [*bacteria(rng, germs), *items]
    day = f"2026-{rng.randint(1, 9):02d}-{rng.randint(10, 28)}"
    return Water(id or f"SV{seed:04d}", f"{rng.choice(SITES)} well", day, tuple(items))


SITES = ("Larkspur Lane", "Old Kiln", "Fallow Acre", "Two Ash", "Grebe Mere", "Cold Spur")
LABORATORIES = ("Osprey Brook Analytical", "Marlpit Water Testing", "Fenholt Laboratory", "Saddler's Ford Laboratory")


def undated(*waters: Water) -> tuple[Water, ...]:
    """The waters where the file prints no day of sampling."""
    return tuple(replace(water, day="") for water in waters)


def same_printing(waters: Sequence[Water]) -> tuple[Water, ...]:
    """The waters with the names, units and analytes of the first, for tables that share one header."""
    first = waters[0]
    out = [first]
    for other in waters[1:]:
        rng = random.Random(other.id)
        items = []
        for item in first.items:
            entry = BY_KEY[item.analyte]
            unit = next(pair for pair in entry.units if pair[0] == item.unit)
            items.append(pick(rng, entry, name=(item.name, item.fraction), unit=unit))
        out.append(replace(other, items=tuple(items)))
    return tuple(out)
