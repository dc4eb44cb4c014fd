"""One amount said in another way: mass, moles and equivalents, the chemical basis, activity, absorbance."""

from functools import cache

import numpy as np

from .intervals import Behaviour, behaves
from .masses import atoms, equivalent_weight, molar_mass
from .tables import V, arrays, restored, rows

_AVOGADRO = 6.02214076e23  # 1/mol, exact since 2019 (BIPM, SI Brochure, 9th ed.)
_SECONDS = {"a": 365.2422 * 86400.0, "d": 86400.0}  # tropical year, as in NUBASE

# Bases of alkalinity: between them the trade counts equivalents, never carbon atoms.
_ALKALINITY = {"HCO3", "CO3", "OH"}
# Bases of hardness, alkalinity and acidity as a whole: anything is expressed in them by equivalents.
_EQUIVALENT_BASES = {"CaCO3", "CaO", "MgO", "MgCO3", "Na2CO3", "H2SO4"}


@cache
def _equivalents() -> dict[str, int]:
    return {row["formula"]: int(row["equivalents"]) for row in rows("equivalents")}


def equivalents_per_mole(formula: str) -> int:
    """Equivalents that the trade counts in a mole of an ion or of a basis such as CaCO3 [eq/mol].

    Raises
    ------
    ValueError
        Where the table has none: iron, for one, has two charges in water, which the caller must choose between.

    References
    ----------
    .. [1] `reference_limits/chemistry/equivalents.csv`, source per row.
    """
    try:
        return _equivalents()[formula]
    except KeyError:
        raise ValueError(f"no usual number of equivalents for {formula!r}: give the charge") from None


@cache
def basis_factor(source: str, target: str, *, charge: int | None = None) -> float:
    """Factor from a concentration in one chemical basis to the same concentration in another [mg/mg].

    `basis_factor("NO3", "N")` makes nitrate as NO3 into nitrate as N, `basis_factor("HCO3", "CaCO3")` bicarbonate
    alkalinity as HCO3 into alkalinity as CaCO3, `basis_factor("Ca", "CaCO3")` calcium into calcium hardness.

    Parameters
    ----------
    source, target : str
        Chemical formulas of the two bases.
    charge : int, optional
        Charge of the ion, for one that has several (`basis_factor("Fe", "CaCO3", charge=2)`) [eq/mol].

    Raises
    ------
    ValueError
        Where a formula cannot be read, or nothing links the two: no usual equivalents and no one element in common.

    Notes
    -----
    - Where either basis is CaCO3, CaO, MgO, MgCO3, Na2CO3 or H2SO4, or both are bicarbonate, carbonate or hydroxide,
      equivalents are conserved: 1 mg/L as HCO3 is 0.820 mg/L as CaCO3, not the 1.640 that carbon atoms give.
    - Elsewhere atoms are conserved, of the one element other than hydrogen and oxygen that both formulas have.

    References
    ----------
    .. [1] Standard Methods for the Examination of Water and Wastewater, 24th ed., 2320 B.5 and 2340 B.
    .. [2] Hem, USGS WSP 2254, 1985, Table 9 (equivalents).
    """
    if source == target:
        return 1.0
    if {source, target} & _EQUIVALENT_BASES or {source, target} <= _ALKALINITY:
        return _charged_weight(target, charge) / _charged_weight(source, charge)
    shared = (set(atoms(source)) & set(atoms(target))) - {"H", "O"}
    if len(shared) != 1:
        raise ValueError(f"nothing links the bases {source!r} and {target!r}")
    element = shared.pop()
    return (molar_mass(target) / atoms(target)[element]) / (molar_mass(source) / atoms(source)[element])


def _charged_weight(formula: str, charge: int | None) -> float:
    """Equivalent weight with the table's equivalents, or the given charge where the table has none."""
    known = _equivalents().get(formula, charge)
    return equivalent_weight(formula, known if known is not None else equivalents_per_mole(formula))


@behaves(Behaviour(rising=("value",)))
def in_basis(value: V | float, source: str, target: str, *, charge: int | None = None) -> V:
    """A concentration said in another chemical basis.

    Parameters
    ----------
    value : float or array
        Concentration in the basis `source` [mg/L].
    source, target, charge
        As in `basis_factor`.

    Returns
    -------
    float or array
        Concentration in the basis `target` [mg/L].
    """
    (given,) = arrays(value)
    return restored(given * basis_factor(source, target, charge=charge))


@behaves(Behaviour(rising=("value",)))
def millimoles(value: V | float, formula: str) -> V:
    """Molar concentration of what is given by mass.

    Parameters
    ----------
    value : float or array
        Mass concentration in the basis `formula` [mg/L].
    formula : str
        Chemical formula of the basis.

    Returns
    -------
    float or array
        Molar concentration [mmol/L].
    """
    (given,) = arrays(value)
    return restored(given / molar_mass(formula))


@behaves(Behaviour(rising=("value",)))
def milligrams(value: V | float, formula: str) -> V:
    """Mass concentration of what is given in moles; the inverse of `millimoles`.

    Parameters
    ----------
    value : float or array
        Molar concentration [mmol/L].
    formula : str
        Chemical formula of the basis.

    Returns
    -------
    float or array
        Mass concentration [mg/L].
    """
    (given,) = arrays(value)
    return restored(given * molar_mass(formula))


@behaves(Behaviour(rising=("value",)))
def milliequivalents(value: V | float, formula: str, *, charge: int | None = None) -> V:
    """Equivalent concentration of what is given by mass.

    Parameters
    ----------
    value : float or array
        Mass concentration in the basis `formula` [mg/L].
    formula : str
        Chemical formula of the ion or of the basis.
    charge : int, optional
        Charge, where the usual equivalents are not meant or there are none [eq/mol].

    Returns
    -------
    float or array
        Equivalent concentration, without sign [meq/L].

    References
    ----------
    .. [1] Hem, USGS WSP 2254, 1985, Table 9.
    """
    (given,) = arrays(value)
    return restored(given / equivalent_weight(formula, charge or equivalents_per_mole(formula)))


@behaves(Behaviour(rising=("value",)))
def milligrams_from_milliequivalents(value: V | float, formula: str, *, charge: int | None = None) -> V:
    """Mass concentration of what is given in equivalents; the inverse of `milliequivalents`.

    Parameters
    ----------
    value : float or array
        Equivalent concentration [meq/L].
    formula, charge
        As in `milliequivalents`.

    Returns
    -------
    float or array
        Mass concentration in the basis `formula` [mg/L].
    """
    (given,) = arrays(value)
    return restored(given * equivalent_weight(formula, charge or equivalents_per_mole(formula)))


@cache
def specific_activity(nuclide: str) -> float:
    """Activity of a milligram of a radionuclide [Bq/mg].

    Parameters
    ----------
    nuclide : str
        `Ra-226` and the like; `U-nat`, uranium with the isotopes of the earth's crust; `U-EPA`, the factor of the
        United States' rule for uranium measured by mass (0.67 pCi/µg).

    Raises
    ------
    ValueError
        Where the tables do not have it.

    Notes
    -----
    Ground water often carries more uranium-234 than the crust, and then more activity per mass than either factor:
    an activity calculated from mass is an estimate.

    References
    ----------
    .. [1] NUBASE2020, Chinese Physics C 45, 030001 (half-lives); AME2020 (masses).
    .. [2] 40 CFR 141.25, footnote (0.67 pCi/µg).
    """
    conventions = {row["convention"]: float(row["becquerel_per_milligram"]) for row in rows("activity_conventions")}
    if nuclide in conventions:
        return conventions[nuclide]
    if nuclide == "U-nat":
        parts = [row for row in rows("radionuclides") if row["natural_atom_fraction"]]
        fractions = [float(row["natural_atom_fraction"]) for row in parts]
        decays = sum(x * _decay_constant(row) for x, row in zip(fractions, parts, strict=True))
        return decays * _AVOGADRO / (molar_mass("U") * 1e3)
    for row in rows("radionuclides"):
        if row["nuclide"] == nuclide:
            return _decay_constant(row) * _AVOGADRO / (float(row["atomic_mass"]) * 1e3)
    raise ValueError(f"no half-life known for {nuclide!r}")


def _decay_constant(row: dict[str, str]) -> float:
    """Decays per second of one atom."""
    return float(np.log(2.0)) / (float(row["half_life"]) * _SECONDS[row["half_life_unit"]])


@behaves(Behaviour(rising=("value",)))
def activity_from_mass(value: V | float, nuclide: str) -> V:
    """Activity concentration of what was measured by mass.

    Parameters
    ----------
    value : float or array
        Mass concentration [mg/L].
    nuclide : str
        As in `specific_activity`.

    Returns
    -------
    float or array
        Activity concentration [Bq/L].
    """
    (given,) = arrays(value)
    return restored(given * specific_activity(nuclide))


@behaves(Behaviour(rising=("value",)))
def mass_from_activity(value: V | float, nuclide: str) -> V:
    """Mass concentration of what was measured by activity; the inverse of `activity_from_mass`.

    Parameters
    ----------
    value : float or array
        Activity concentration [Bq/L].
    nuclide : str
        As in `specific_activity`.

    Returns
    -------
    float or array
        Mass concentration [mg/L].
    """
    (given,) = arrays(value)
    return restored(given / specific_activity(nuclide))


@behaves(Behaviour(falling=("absorbance",), least=0.0))
def uv_transmittance(absorbance: V | float, *, path: float = 1.0) -> V:
    """Ultraviolet transmittance per centimetre from absorbance.

    Parameters
    ----------
    absorbance : float or array
        Decadic absorbance over the whole path [1].
    path : float
        Length of the path [cm].

    Returns
    -------
    float or array
        Transmittance of 1 cm of the water [%].

    References
    ----------
    .. [1] UNH Water Treatment Technology Assistance Center, Water Tech Guide vol. 2, UV light, 2005, equations.
    """
    (given,) = arrays(absorbance)
    return restored(100.0 * 10.0 ** (-given / path))


@behaves(Behaviour(falling=("transmittance",)))
@np.errstate(divide="ignore", invalid="ignore")
def uv_absorbance(transmittance: V | float, *, path: float = 1.0) -> V:
    """Ultraviolet absorbance per centimetre from transmittance.

    Parameters
    ----------
    transmittance : float or array
        Transmittance of the whole path [%].
    path : float
        Length of the path [cm].

    Returns
    -------
    float or array
        Decadic absorbance of 1 cm of the water [1/cm]; infinite where nothing passes.

    References
    ----------
    .. [1] As `uv_transmittance`.
    """
    (given,) = arrays(transmittance)
    return restored((2.0 - np.log10(given)) / path)
