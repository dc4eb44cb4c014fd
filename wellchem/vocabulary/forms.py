"""Chemical forms that concentrations are expressed in ("as N", "as CaCO3"), and the factor between two of them."""

import re
from collections import defaultdict
from functools import cache

from wellchem.chemistry.conversions import basis_factor
from wellchem.chemistry.masses import equivalent_weight, molar_mass
from wellchem.vocabulary.analytes import Analyte
from wellchem.vocabulary.tables import bundled_rows
from wellchem.vocabulary.text import fold


@cache
def _opener() -> re.Pattern[str]:
    """Words that introduce a form in the four languages: "as", "exprimé en", "ber. als"."""
    words = (row["words"] for row in bundled_rows("name_words") if row["kind"] == "opener")
    found = "|".join(word.replace(" ", "[. ]+") for word in sorted(words, key=len, reverse=True))
    return re.compile(rf"^(?:(?:{found})[\s(:]+|as(?=(?:[nps]|[a-z]+\d\w*)$))")


@cache
def _printed_forms() -> dict[str, str]:
    return {row["printed"]: row["form"] for row in bundled_rows("forms")}


@cache
def form_of(text: str) -> str | None:
    """The form that a printed word is, without its opener: "N", "no3-n", "calcium carbonate"; None if it is none."""
    text = fold(text).strip(" ()[].:,;-")
    known = _printed_forms()
    if text in known:
        return known[text]
    # "NO3-N", "NH4 N": the element at the end is what is counted.
    element, _, whole = text.replace("-", " ").partition(" ")
    if element in ("n", "p", "s") and known.get(whole, "").upper().startswith(element.upper()):
        return known[element]  # "N-NO3"
    whole, _, element = text.replace("-", " ").rpartition(" ")
    if element in ("n", "p", "s", "c", "si") and whole in known:
        return known[element]
    return None


def opened_form(text: str) -> str | None:
    """The form behind its opener ("as N", "als CaCO3", "asNO3"); None where there is no opener or no form."""
    folded = fold(text).strip(" ()[].:,;-")
    opener = _opener().match(folded)
    return form_of(folded[opener.end() :]) if opener else None


def printed_form(text: str) -> str | None:
    """The form in a text that says nothing else, with or without an opener."""
    if opened := opened_form(text):
        return opened
    return None if fold(text).strip(" [].:,;-") == "as" else form_of(text)  # "as" cut off behind it; "(As)" is arsenic


def form_apart(text: str) -> tuple[str, str] | None:
    """A value and the form behind it: "12.4 as N", "210 (as CaCO3)", "45 (NO3)"; None where there is none.

    Without an opener a form stands in brackets and has a digit: "12 (N)" and "12 (ND)" are numbers and marks.
    """
    words = text.split()
    for place in range(1, len(words)):
        behind = " ".join(words[place:])
        inside = behind[1:-1] if behind[:1] + behind[-1:] in ("()", "[]") else ""
        if form := opened_form(behind) or (form_of(inside) if any(map(str.isdigit, inside)) else None):
            return " ".join(words[:place]).rstrip(" ,;"), form
    return None


@cache
def usual_forms(analyte: str) -> tuple[str, ...]:
    """Forms in which laboratories usually report the analyte, where there is more than one or it must be known."""
    return {row["analyte"]: tuple(row["forms"].split()) for row in bundled_rows("usual_forms")}.get(analyte, ())


@cache
def _special() -> dict[str, dict[str, tuple[str, int, float]]]:
    made: dict[str, dict[str, tuple[str, int, float]]] = defaultdict(dict)
    for row in bundled_rows("form_equivalents"):
        made[row["analyte"]][row["form"]] = (
            row["grams_per_equivalent_of"],
            int(row["equivalents_per_mole"] or 0),
            float(row["factor"] or 0),
        )
    return dict(made)


@cache
def _equivalent_forms() -> frozenset[str]:
    return frozenset(row["form"] for row in bundled_rows("equivalent_forms"))


def counts_in_hardness(analyte: Analyte) -> bool:
    """Whether the analyte is one of hardness and alkalinity, which are counted in degrees and as CaCO3."""
    return analyte.form in _equivalent_forms()


def _factor(given: str, wanted: str, charge: int | None) -> float | None:
    """Grams of `wanted` for one gram of `given`, or None where nothing links the two."""
    try:
        return basis_factor(given, wanted, charge=charge)
    except ValueError:
        return None


def grams_per_equivalent(analyte: Analyte) -> float | None:
    """Grams of the canonical form in one equivalent of the analyte [g/eq], or None where that has no meaning."""
    if special := _special().get(analyte.key, {}).get(analyte.form):
        return equivalent_weight(special[0], 2) if special[0] else None
    if not analyte.formula or not analyte.charge:
        return None
    factor = _factor(analyte.formula, analyte.form, analyte.charge)
    return None if factor is None else equivalent_weight(analyte.formula, analyte.charge) * factor


def grams_per_mole(analyte: Analyte) -> float | None:
    """Grams of the canonical form in one mole of the analyte [g/mol], or None where that has no meaning."""
    if special := _special().get(analyte.key, {}).get(analyte.form):
        return equivalent_weight(special[0], 2) * special[1] if special[0] else None
    if not analyte.formula:
        return None
    factor = _factor(analyte.formula, analyte.form, analyte.charge)
    try:
        return None if factor is None else molar_mass(analyte.formula) * factor
    except ValueError:
        return None


@cache
def form_factor(analyte: Analyte, form: str) -> float | None:
    """Canonical mass for one unit mass in the given form, or None where the analyte cannot be expressed in it.

    Forms that share an element convert by molar masses (NO3 and N, SiO2 and Si); CaCO3, CaO and MgO, and the ions of
    alkalinity among themselves, by equivalents (`wellchem.chemistry.basis_factor`). Hardness and alkalinity are
    expressed in the forms of `equivalent_forms.csv` alone: no one counts them as chloride.

    References
    ----------
    .. [1] CIAAW standard atomic weights 2024 through wellchem.chemistry.masses; equivalents of alkalinity and hardness
       as DIN 38409-6 and -7 (see form_equivalents.csv).
    """
    canonical = analyte.form
    if form in (canonical, analyte.basis):
        return 1.0
    if (special := _special().get(analyte.key, {}).get(form)) and special[2]:
        return special[2]
    if not canonical or (canonical == "CaCO3" and form not in _equivalent_forms()):
        return None
    return _factor(form, canonical, analyte.charge or None)
