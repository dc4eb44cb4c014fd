"""What a stage does to the checks of the water behind it: sodium for diets and infants, corrosion, chloride."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from math import inf

from wellchem import chemistry
from wellchem.interpretation import practice
from wellchem.interpretation.treatment.prediction import weights
from wellchem.interpretation.treatment.tables import Ends, conditions, constant, stages
from wellchem.interpretation.treatment.water import Water
from wellchem.models.household import Household

_SODIUM = "sodium"
_CARBON = (
    "Carbon gathers lead-210 from the radon of this water and gives off gamma radiation; used carbon may be regulated "
    "waste."
)
_FORMED = (
    "chlorine forms trihalomethanes and the like with it. Disinfection is not given up for that; have them tested, and "
    "ask the health authority."
)
_MEDIUM = (
    "The medium gathers radium or uranium of this water: brine and used medium are regulated waste; ask the radiation "
    "authority."
)


@cache
def _diet() -> float:
    """Sodium that counts in a diet of 500 mg a day [mg/L]."""
    return next(float(row["above"]) for row in practice.rows("rules") if row["problem"] == "sodium_diet")


def _range(ends: Ends, unit: str = "mg/L") -> str:
    if ends[1] == inf:
        return f"at least {ends[0]:.3g} {unit}"
    return f"{ends[0]:.3g} {unit}" if ends[0] == ends[1] else f"{ends[0]:.3g} to {ends[1]:.3g} {unit}"


def effects(code: str, raw: Water, ahead: Water, behind: Water, home: Household) -> Iterable[str]:
    """Sentences on what came into the water, or what it became, behind a stage."""
    yield from _sodium(code, ahead, behind, home)
    chloride, before = behind.get("chloride"), ahead.get("chloride")
    if chloride is not None and chloride != before and before is not None and chloride[1] > before[1]:
        yield f"Chloride behind it: {_range(chloride)}; chloride speeds the corrosion of metals."
    yield from _corrosion(code, ahead, behind)
    yield from _by_products(code, ahead)
    yield from _breakthrough(code, ahead)
    yield from _collects(code, raw)


def _sodium(code: str, ahead: Water, behind: Water, home: Household) -> Iterable[str]:
    sodium, before = behind.get(_SODIUM), ahead.get(_SODIUM)
    if sodium is None or sodium == before or (before is not None and sodium[1] <= before[1]):
        return
    said = "" if before is not None else " (the raw water's own sodium was not measured)"
    yield f"Sodium behind it: {_range(sodium)}{said}."
    softened = stages()[code].process == "soften"
    if sodium[1] > _diet() and home.sodium_restricted is not False:
        other = (
            "drink from an unsoftened tap or a membrane, and" if softened else "take another water or a membrane, and"
        )
        yield f"Above {_diet():g} mg/L sodium counts in a diet restricted by a physician: {other} tell the physician."
    if home.infants is not False and sodium[1] > _diet():
        tap = "the unsoftened cold tap or " if softened else ""
        yield f"For infant formula take {tap}another water, and ask a physician."


def _corrosion(code: str, ahead: Water, behind: Water) -> Iterable[str]:
    """Less hardness, less alkalinity or a lower pH: the water takes up metals more readily."""
    softer = any(_falls(name, ahead, behind) for name in ("total_hardness", "calcium", "total_alkalinity"))
    ph, before = behind.get("ph"), ahead.get("ph")
    if softer or (ph is not None and before is not None and ph[0] < before[0] - constant("corrosive_ph").low):
        index = langelier(behind)
        parts = [f"pH {_range(ph, '').strip()}"] if ph is not None and ph != before else []
        parts += [f"Langelier index {index[0]:.1f} to {index[1]:.1f}"] if index else []
        told = f" ({', '.join(parts)})" if parts else ""
        place = "at that tap" if stages()[code].place == "tap" else "in the plumbing"
        yield (
            f"The water behind it is more corrosive{told}: check corrosion again, and test lead and copper {place}, "
            "first draw and flushed."
        )


def langelier(water: Water) -> Ends | None:
    """Langelier index at the corners of a water, least and most; None where an input was not measured."""
    names = ("ph", "calcium", "total_alkalinity")
    known = [water.get(name) for name in names]
    if any(ends is None or ends[0] <= 0.0 or ends[1] == inf for ends in known):
        return None
    ph, calcium, alkalinity = (ends for ends in known if ends is not None)
    supposed, solids = constant("neutralised_temperature"), constant("neutralised_solids")
    temperature = water.get("temperature") or (supposed.low, supposed.high)
    residue = water.get("total_dissolved_solids") or (solids.low, solids.high)
    low, high = (
        chemistry.langelier_index(
            ph=ph[end],
            calcium=calcium[end],
            alkalinity=alkalinity[end],
            temperature=temperature[end],
            dissolved_solids=min(residue[1 - end], constant("carbonate_solids").high),
        )
        for end in (0, 1)
    )
    return low, high


def _falls(name: str, ahead: Water, behind: Water) -> bool:
    """Whether an amount falls by a share that counts, at its low end."""
    before, after = ahead.get(name), behind.get(name)
    share = 1.0 - constant("corrosive_share").low / 100.0
    return before is not None and after is not None and after[0] < before[0] * share


def _by_products(code: str, ahead: Water) -> Iterable[str]:
    """What chlorine forms with the organic matter of a water that it has to disinfect."""
    if stages()[code].process != "chlorinate":
        return
    for name, label in (("tannin", "tannin"), ("total_organic_carbon", "organic carbon")):
        amount = ahead.get(name)
        if amount is not None and amount[1] > next(one.maximum for one in conditions(code) if one.amounts == (name,)):
            yield f"This water holds {label} of {_range(amount)}: {_FORMED}"


def _breakthrough(code: str, ahead: Water) -> Iterable[str]:
    """What a used-up nitrate resin lets go: at most the nitrate and, by equivalents, what sulfate drives out."""
    nitrate, sulfate = ahead.get("nitrate"), ahead.get("sulfate")
    if code != "nitrate_exchange" or nitrate is None:
        return
    if sulfate is None:
        yield "Sulfate was not measured: it decides how much nitrate a used-up common resin gives out. Have it tested."
        return
    low, high = (
        end + other / weights()["sulfate"] * weights()["nitrate"] for end, other in zip(nitrate, sulfate, strict=True)
    )
    if sulfate[1] > 0.0:
        yield (
            f"A used-up common resin may give out nitrate of up to {_range((low, high))} as N for a while, as sulfate "
            "drives out what was gathered; a nitrate-selective resin does not."
        )


def _collects(code: str, raw: Water) -> Iterable[str]:
    """Nuclides that gather on a medium."""
    found = any((raw.get(name) or (0.0, 0.0))[0] > 0.0 for name in stages()[code].gathers)
    if found:
        yield _CARBON if "radon_222" in stages()[code].gathers else _MEDIUM
