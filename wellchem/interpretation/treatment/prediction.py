"""The water behind each stage, by mass and charge, as bounds.

A stage first takes out what its table says; what goes in for it, and what pH and dissolved solids come to, follows
from that by equivalents.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import cache
from math import inf, log10, sqrt

from wellchem import chemistry
from wellchem.chemistry.ions import equivalent_weights
from wellchem.chemistry.tables import rows as chemistry_rows
from wellchem.interpretation.treatment import acidity
from wellchem.interpretation.treatment.tables import ENTRY, Ends, constant, plumbing_metals, removal, share, stages
from wellchem.interpretation.treatment.water import (
    UNKNOWN,
    Organisms,
    Water,
    arsenic_is_oxidised,
    hardness_factors,
    organism,
)

_METALS = ("iron", "manganese")
_OXIDISING = ("oxidise", "oxidise_with_feed", "chlorinate")
_ANIONS = ("sulfate", "nitrate", "nitrite", "total_alkalinity")
_CATIONS_OF_BALANCE = ("calcium", "magnesium", "sodium", "potassium")
_ANIONS_OF_BALANCE = ("total_alkalinity", "chloride", "sulfate", "nitrate")
_ARSENIC = ("arsenic", "arsenic_v", "arsenic_iii")
BALANCED = frozenset(("total_hardness", *_CATIONS_OF_BALANCE, *_ANIONS_OF_BALANCE))


@cache
def weights() -> Mapping[str, float]:
    """Mass of an equivalent by analyte [mg/meq]."""
    found = dict(equivalent_weights())
    found["total_alkalinity"] = found["total_hardness"] = found["alkalinity"]
    return found


@cache
def conductance_of(analyte: str) -> float:
    """Conductance of an equivalent at infinite dilution [µS/cm per meq/L]."""
    ion = {"total_alkalinity": "HCO3"}.get(analyte) or next(
        row["ion"] for row in chemistry_rows("ions") if row["analyte"] == analyte
    )
    return next(
        float(row["equivalent_conductance"]) for row in chemistry_rows("equivalent_conductances") if row["ion"] == ion
    )


def predict(stage: str, water: Water) -> Water:
    """The water behind a stage. Raises KeyError for a stage that the tables do not have."""
    kind = stages()[stage]
    passing = plumbing_metals() if kind.place == ENTRY else frozenset[str]()
    changed: dict[str, Ends] = {}
    for analyte, amount in water.amounts.items():
        if organism(analyte):
            if kind.disinfects and amount[1] > 0.0:
                changed[analyte] = (0.0, amount[1])  # no count is predicted behind a barrier
            continue
        row = removal(stage, analyte) if analyte not in passing else None
        if row is None:
            continue
        left = row.left(amount)
        if analyte in _ARSENIC and not arsenic_is_oxidised(water):
            left = (left[0], amount[1])  # arsenic III passes
        if analyte in _METALS and kind.process in _OXIDISING and _bound_by_tannin(water):
            left = (left[0], amount[1])
        if kind.process == "soften" and analyte in _METALS:
            left = _dissolved_left(water, analyte, left)
        changed[analyte] = left
    _PROCESSES[kind.process](water, changed)
    disinfected = kind.disinfects and water.organisms in (Organisms.FOUND, Organisms.UNTOLD)
    return Water(
        amounts={**water.amounts, **changed},
        organisms=Organisms.DISINFECTED if disinfected else water.organisms,
        dissolved=water.dissolved,
        oxidised=water.oxidised or kind.oxidant,
        passed=(*water.passed, stage),
        grit=water.grit,
    )


def _bound_by_tannin(water: Water) -> bool:
    """Whether tannin may hold iron and manganese in solution, so that oxidation misses them."""
    tannin = water.get("tannin")
    return tannin is not None and tannin[1] > constant("tannin_binds").low


def _dissolved_left(water: Water, metal: str, left: Ends) -> Ends:
    """Resin takes what is dissolved; particles of rust pass."""
    (low, high), (least, most) = water.amounts[metal], water.dissolved[metal]
    return low * (1.0 - most) + left[0] * most, share(high, 1.0 - least) + share(left[1], least)


def _taken(water: Water, changed: Mapping[str, Ends], analytes: Iterable[str]) -> Ends:
    """Equivalents taken out, least and most [meq/L]."""
    least = most = 0.0
    for analyte in analytes:
        if analyte in changed:
            (low, high), (left_low, left_high) = water.amounts[analyte], changed[analyte]
            # Of a feed at its low end the least share is taken, of one at its high end the most.
            part = (1.0 - left_high / high) if 0.0 < high < inf else 0.0
            whole = (1.0 - left_low / low) if low > 0.0 else _most_share(changed, water, analyte)
            least += low * part / weights()[analyte]
            most += share(high, whole) / weights()[analyte]
    return least, most


def _most_share(changed: Mapping[str, Ends], water: Water, analyte: str) -> float:
    """The most that can be taken of a feed whose low end is nought."""
    return 1.0 if water.amounts[analyte][1] > 0.0 and changed[analyte] != water.amounts[analyte] else 0.0


def _shift(water: Water, changed: dict[str, Ends], analyte: str, low: float, high: float) -> None:
    """Move an amount by a range; where it was not measured only its least is known."""
    known = changed.get(analyte) or water.get(analyte)
    if known is None:
        if analyte in ("sodium", "chloride") and low > 0.0:
            changed[analyte] = (low, inf)
        return
    changed[analyte] = (max(known[0] + low, 0.0), max(known[1] + high, 0.0))


def _removes(water: Water, changed: dict[str, Ends]) -> None:
    """Nothing goes in for what comes out."""


def _softens(water: Water, changed: dict[str, Ends]) -> None:
    """Sodium goes in, equivalent for equivalent of hardness and of dissolved metals."""
    parts = [name for name in ("calcium", "magnesium") if name in changed]
    hardness = _taken(water, changed, parts if len(parts) == 2 else ["total_hardness"])
    metals = _taken(water, changed, [*_METALS, "barium", "strontium"])
    low, high = hardness[0] + metals[0], hardness[1] + metals[1]
    _shift(water, changed, "sodium", low * weights()["sodium"], high * weights()["sodium"])
    lightest = weights()["sodium"] - weights()["calcium"], weights()["sodium"] - weights()["magnesium"]
    _shift(water, changed, "total_dissolved_solids", hardness[0] * lightest[0], hardness[1] * lightest[1])
    _shift(
        water,
        changed,
        "specific_conductance",
        hardness[1] * (conductance_of("sodium") - conductance_of("calcium")),
        hardness[0] * (conductance_of("sodium") - conductance_of("magnesium")),
    )


def _exchanges(water: Water, changed: dict[str, Ends]) -> None:
    """Chloride goes in, equivalent for equivalent of sulfate, nitrate and alkalinity; with alkalinity the pH falls."""
    low, high = _taken(water, changed, _ANIONS)
    _shift(water, changed, "chloride", low * weights()["chloride"], high * weights()["chloride"])
    sulfate = _taken(water, changed, ["sulfate"])
    rest = _taken(water, changed, [name for name in _ANIONS if name != "sulfate"])
    gain = weights()["chloride"] - weights()["sulfate"]
    # Nitrate as an ion and alkalinity as what it leaves when dried weigh 62.0 and 30.0 mg/meq.
    heavier = (
        weights()["chloride"] - chemistry.molar_mass("NO3"),
        weights()["chloride"] - chemistry.molar_mass("CO3") / 2,
    )
    _shift(
        water,
        changed,
        "total_dissolved_solids",
        sulfate[1] * gain + rest[1] * heavier[0],
        rest[1] * heavier[1],
    )
    conducts = conductance_of("chloride")
    less, more = conducts - conductance_of("sulfate"), conducts - conductance_of("total_alkalinity")
    _shift(water, changed, "specific_conductance", high * less, high * more)
    _ph_with_alkalinity(water, changed)


def _ph_with_alkalinity(water: Water, changed: dict[str, Ends]) -> None:
    """Carbon dioxide stays while alkalinity goes, and the pH falls; of unknown alkalinity all may go."""
    ph = water.get("ph")
    if ph is None:
        return
    low, high = water.get("total_alkalinity") or UNKNOWN
    left_low, left_high = changed.get("total_alkalinity") or (0.0, high)
    lowest = _ph_at(ph[0], low, left_low) if low > 0.0 else _ph_at(ph[0], min(high, _MUCH_ALKALINITY), 0.0)
    changed["ph"] = (lowest, _ph_at(ph[1], high, left_high) if 0.0 < high < inf else ph[1])


_MUCH_ALKALINITY = 500.0  # mg/L as CaCO3, where none was measured: more than all but few wells hold


def _ph_at(ph: float, alkalinity: float, left: float) -> float:
    """pH at the same carbonic acid with less alkalinity: hydrogen times bicarbonate is kept, and bicarbonate is
    alkalinity and hydrogen. Carbonate is left out, so it holds below pH 8.5 or so.
    """
    hydrogen = 10.0 ** (3.0 - ph)  # meq/L
    before, after = (amount / weights()["total_alkalinity"] for amount in (alkalinity, left))
    kept = hydrogen * (before + hydrogen)
    return min(3.0 - log10((sqrt(after**2 + 4.0 * kept) - after) / 2.0), ph)


def _oxidises(water: Water, changed: dict[str, Ends], ammonia: float = 0.0) -> None:
    """What oxidation does to the salts of a water, charge for charge.

    Metals fall out as oxides and take alkalinity, two equivalents a mole where they were dissolved. Sulfide becomes
    sulfur or, at most, sulfate (HS- + 2 O2 = SO4-- + H+), which takes the place of as much alkalinity; nitrite becomes
    nitrate. `ammonia` [meq/L] is what chlorine turns into nitrogen and acid.
    """
    _, metals = _taken(water, changed, _METALS)
    sulfide = (water.get("sulfide") or (0.0, 0.0))[1]
    sulfate = share(sulfide, 1.0 / chemistry.molar_mass("S"))  # mmol/L
    _shift(water, changed, "sulfate", 0.0, share(sulfate, chemistry.molar_mass("SO4")))
    if "nitrite" in changed:
        (low, high), (left_low, left_high) = water.amounts["nitrite"], changed["nitrite"]
        _shift(water, changed, "nitrate", max(low - left_high, 0.0), high - left_low if high < inf else inf)
    lost = (metals + 2.0 * sulfate + ammonia) * weights()["total_alkalinity"]
    alkalinity = water.get("total_alkalinity")
    if alkalinity is not None and lost > 0.0:
        changed["total_alkalinity"] = (max(alkalinity[0] - lost, 0.0), alkalinity[1])
        _ph_with_alkalinity(water, changed)
    dry = chemistry.molar_mass("CO3") / 2.0 / weights()["total_alkalinity"]
    _shift(water, changed, "total_dissolved_solids", -share(lost, dry), share(sulfate, chemistry.molar_mass("SO4")))
    ends = conductance_of("total_alkalinity") / weights()["total_alkalinity"], 2.0 * conductance_of("sulfate")
    _shift(water, changed, "specific_conductance", -share(lost, ends[0]), share(sulfate, ends[1]))


def _oxidises_with_feed(water: Water, changed: dict[str, Ends]) -> None:
    """As oxidation; the feed is chlorine, whose salts are added, or permanganate, whose potassium is."""
    _oxidises(water, changed)
    _, most = _hypochlorite(chlorine_demand(water))
    _add_salt(water, changed, (0.0, most))
    _, permanganate = chlorine_demand(water, "permanganate")
    potassium = chemistry.molar_mass("K") / chemistry.molar_mass("KMnO4")
    _shift(water, changed, "potassium", 0.0, share(permanganate, potassium))


def _chlorinates(water: Water, changed: dict[str, Ends]) -> None:
    """As oxidation, and the chlorine solution leaves its sodium and chloride."""
    ammonia = (water.get("ammonia") or (0.0, 0.0))[1]
    _oxidises(water, changed, share(ammonia, 1.0 / chemistry.molar_mass("N")))
    demand, residual = chlorine_demand(water), constant("residual")
    _add_salt(water, changed, _hypochlorite((demand[0] + residual.low, demand[1] + residual.high)))
    chlorine = water.get("free_chlorine")
    changed["free_chlorine"] = (0.0, 0.1 if chlorine is None else max(0.1, chlorine[1] * 0.1))


def _hypochlorite(chlorine: Ends) -> Ends:
    """Sodium chloride [mmol/L] that a dose of chlorine [mg/L] leaves: one for each molecule by what oxidises (NaOCl),
    and one more where the solution holds the salt of its making (Cl2 + 2 NaOH = NaOCl + NaCl + H2O)."""
    each = 1.0 / chemistry.molar_mass("Cl2")
    return chlorine[0] * each, share(chlorine[1], 2.0 * each)


def _add_salt(water: Water, changed: dict[str, Ends], moles: Ends) -> None:
    """Sodium and chloride go in, mole for mole."""
    for ion, formula in (("sodium", "Na"), ("chloride", "Cl")):
        mass = chemistry.molar_mass(formula)
        _shift(water, changed, ion, moles[0] * mass, share(moles[1], mass))
    _shift(water, changed, "total_dissolved_solids", 0.0, share(moles[1], chemistry.molar_mass("NaCl")))
    more = conductance_of("sodium") + conductance_of("chloride")
    _shift(water, changed, "specific_conductance", 0.0, share(moles[1], more))


def chlorine_demand(water: Water, oxidant: str = "chlorine") -> Ends:
    """Oxidant that iron, manganese, sulfide, nitrite, arsenic and ammonia take [mg/L]; organic matter takes more."""
    low = high = 0.0
    for analyte, (least, most) in DEMANDS.items():
        amount = water.get(analyte)
        if amount is None or (analyte == "ammonia" and oxidant != "chlorine"):
            continue
        part = water.dissolved.get(analyte, (0.0, 1.0) if analyte == "arsenic" else (1.0, 1.0))
        low += amount[0] * part[0] * _demand(least, oxidant)
        high += share(amount[1], part[1]) * _demand(most, oxidant)
    return low, high


DEMANDS = {
    "iron": ("iron to ferric hydroxide",) * 2,
    "manganese": ("manganese to dioxide",) * 2,
    "sulfide": ("sulfide to sulfur", "sulfide to sulfate"),
    "nitrite": ("nitrite to nitrate",) * 2,
    "arsenic": ("arsenite to arsenate",) * 2,
    "ammonia": ("ammonia to nitrogen",) * 2,
}


@cache
def _demand(oxidation: str, oxidant: str) -> float:
    """Oxidant for a milligram, on the analyte's canonical basis."""
    return chemistry.oxidant_demand(1.0, oxidation, oxidant)


def _neutralises(water: Water, changed: dict[str, Ends]) -> None:
    """Between the raw water and equilibrium with calcite: beds are limited by their rate."""
    ph = water.get("ph")
    highest, gain = acidity.beside_calcite(water)
    if ph is not None:
        changed["ph"] = (ph[0], max(ph[1], highest))
    factors = hardness_factors()
    for analyte, part in (("total_alkalinity", 1.0), ("total_hardness", 1.0), ("calcium", 1.0 / factors["calcium"])):
        _shift(water, changed, analyte, 0.0, gain * part)
    _shift(water, changed, "total_dissolved_solids", 0.0, gain)
    more = conductance_of("calcium") + conductance_of("total_alkalinity")
    _shift(water, changed, "specific_conductance", 0.0, gain / weights()["total_alkalinity"] * more)


def _neutralises_with_magnesia(water: Water, changed: dict[str, Ends]) -> None:
    """As calcite, part of the calcium being magnesium; water that stands in the bed overshoots."""
    _neutralises(water, changed)
    _, gain = acidity.beside_calcite(water)
    _shift(water, changed, "magnesium", 0.0, gain / hardness_factors()["magnesium"])
    if "ph" in changed:
        changed["ph"] = (changed["ph"][0], max(changed["ph"][1], constant("magnesia_ph").high))


def _feeds_soda_ash(water: Water, changed: dict[str, Ends]) -> None:
    """Sodium carbonate turns carbonic acid into bicarbonate: two sodium ions and two equivalents for each molecule."""
    ph = water.get("ph")
    if ph is not None:
        changed["ph"] = (ph[0], max(ph[1], constant("soda_ash_target").high))
    gain = 2.0 * acidity.soda_ash(water)[1]
    _shift(water, changed, "sodium", 0.0, gain * weights()["sodium"])
    _shift(water, changed, "total_alkalinity", 0.0, gain * weights()["total_alkalinity"])
    dry = weights()["sodium"] + chemistry.molar_mass("CO3") / 2
    _shift(water, changed, "total_dissolved_solids", 0.0, gain * dry)
    more = conductance_of("sodium") + conductance_of("total_alkalinity")
    _shift(water, changed, "specific_conductance", 0.0, gain * more)


def _aerates(water: Water, changed: dict[str, Ends]) -> None:
    """Carbon dioxide leaves as well, and the pH rises, at most to that of water in open air; mineral acid stays. Of the
    sulfide some is oxidised rather than stripped."""
    _oxidises(water, changed)
    ph = water.get("ph")
    if ph is not None and ph[1] > constant("carbonate_ph").low:
        changed["ph"] = (ph[0], max(ph[1], acidity.in_air(water)))


def _through_membrane(water: Water, changed: dict[str, Ends]) -> None:
    """Ions pass by their rejection, charge for charge; dissolved gases pass, and the pH falls with alkalinity."""
    _conserve_charge(water, changed)
    _ph_with_alkalinity(water, changed)


def _conserve_charge(water: Water, changed: dict[str, Ends]) -> None:
    """Where the rejections of the table leave more of one charge than the other can match, more of the other passes.

    The ranges are those of single salts; in a mixture the ions that are held back more are drawn through by the rest.
    """
    needed = (*_CATIONS_OF_BALANCE[:3], *_ANIONS_OF_BALANCE[:3])
    if any(name not in changed or changed[name][1] == inf for name in needed):
        return

    def total(names: Iterable[str], end: int) -> float:
        return sum(changed[name][end] / weights()[name] for name in names if name in changed)

    for wanting, other in (
        (_CATIONS_OF_BALANCE, _ANIONS_OF_BALANCE),
        (_ANIONS_OF_BALANCE, _CATIONS_OF_BALANCE),
    ):
        short, least = total(wanting, 1), total(other, 0)
        if 0.0 < short < least:
            for name in wanting:
                if name in changed:
                    low, high = changed[name]
                    changed[name] = (low, min(high * least / short, water.amounts[name][1]))


def _distils(water: Water, changed: dict[str, Ends]) -> None:
    """What condenses takes up carbon dioxide of the air."""
    if water.get("ph") is not None:
        changed["ph"] = (constant("distillate_ph").low, constant("distillate_ph").high)


_PROCESSES: Mapping[str, Callable[[Water, dict[str, Ends]], None]] = {
    "removal": _removes,
    "ultraviolet": _removes,
    "soften": _softens,
    "exchange": _exchanges,
    "oxidise": _oxidises,
    "oxidise_with_feed": _oxidises_with_feed,
    "chlorinate": _chlorinates,
    "neutralise": _neutralises,
    "neutralise_blend": _neutralises_with_magnesia,
    "soda_ash": _feeds_soda_ash,
    "aerate": _aerates,
    "membrane": _through_membrane,
    "distil": _distils,
}
