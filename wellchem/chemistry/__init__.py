"""Water chemistry: plain functions on floats and arrays, loaded module by module as they are used."""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .activity import debye_huckel_parameters as debye_huckel_parameters
    from .activity import relative_permittivity as relative_permittivity
    from .activity import water_density as water_density
    from .alkalinity import alkalinity_forms as alkalinity_forms
    from .alkalinity import handbook_alkalinity_forms as handbook_alkalinity_forms
    from .alkalinity import handbook_carbon_dioxide as handbook_carbon_dioxide
    from .alkalinity import total_alkalinity as total_alkalinity
    from .carbonate import AlkalinityParts as AlkalinityParts
    from .carbonate import CarbonateSystem as CarbonateSystem
    from .carbonate import alkalinity_parts as alkalinity_parts
    from .carbonate import carbonate_system as carbonate_system
    from .classes import classify as classify
    from .closed_system import change_temperature as change_temperature
    from .conductance import speciated_conductance as speciated_conductance
    from .conversions import activity_from_mass as activity_from_mass
    from .conversions import basis_factor as basis_factor
    from .conversions import equivalents_per_mole as equivalents_per_mole
    from .conversions import in_basis as in_basis
    from .conversions import mass_from_activity as mass_from_activity
    from .conversions import milliequivalents as milliequivalents
    from .conversions import milligrams as milligrams
    from .conversions import milligrams_from_milliequivalents as milligrams_from_milliequivalents
    from .conversions import millimoles as millimoles
    from .conversions import specific_activity as specific_activity
    from .conversions import uv_absorbance as uv_absorbance
    from .conversions import uv_transmittance as uv_transmittance
    from .correctness import acceptance as acceptance
    from .correctness import charge_balance as charge_balance
    from .correctness import charge_balance_of_mean as charge_balance_of_mean
    from .correctness import charge_imbalance as charge_imbalance
    from .correctness import dissolved_solids_conductance_ratio as dissolved_solids_conductance_ratio
    from .correctness import dissolved_solids_ratio as dissolved_solids_ratio
    from .correctness import ion_conductance_ratio as ion_conductance_ratio
    from .correctness import permitted_charge_difference as permitted_charge_difference
    from .correctness import relative_percent_difference as relative_percent_difference
    from .corrosion import buffer_capacity as buffer_capacity
    from .corrosion import chloride_sulfate_mass_ratio as chloride_sulfate_mass_ratio
    from .corrosion import copper_pipe_range as copper_pipe_range
    from .corrosion import galvanic_corrosion_potential as galvanic_corrosion_potential
    from .corrosion import larson_skold_ratio as larson_skold_ratio
    from .counts import most_probable_number as most_probable_number
    from .counts import tabulated_mpn as tabulated_mpn
    from .dissociation import ammonia_pka as ammonia_pka
    from .dissociation import electron_activity as electron_activity
    from .dissociation import hydrogen_sulfide_fraction as hydrogen_sulfide_fraction
    from .dissociation import hydrogen_sulfide_pk1 as hydrogen_sulfide_pk1
    from .dissociation import unionized_ammonia as unionized_ammonia
    from .dissociation import unionized_ammonia_fraction as unionized_ammonia_fraction
    from .equilibria import log_equilibrium_constant as log_equilibrium_constant
    from .handbook import activity_exponent as activity_exponent
    from .hardness import calcium_hardness as calcium_hardness
    from .hardness import carbonate_hardness as carbonate_hardness
    from .hardness import convert_hardness as convert_hardness
    from .hardness import hardness_factor as hardness_factor
    from .hardness import magnesium_hardness as magnesium_hardness
    from .hardness import noncarbonate_hardness as noncarbonate_hardness
    from .hardness import total_hardness as total_hardness
    from .indices import aggressive_index as aggressive_index
    from .indices import langelier_index as langelier_index
    from .indices import langelier_index_short_form as langelier_index_short_form
    from .indices import marble_test_potential as marble_test_potential
    from .indices import puckorius_index as puckorius_index
    from .indices import ryznar_index as ryznar_index
    from .indices import saturation_ph as saturation_ph
    from .indices import saturation_ph_short_form as saturation_ph_short_form
    from .intervals import Behaviour as Behaviour
    from .intervals import Bounds as Bounds
    from .intervals import behaves as behaves
    from .intervals import bounds as bounds
    from .ion_ratios import calcium_magnesium_ratio as calcium_magnesium_ratio
    from .ion_ratios import chloride_bromide_ratio as chloride_bromide_ratio
    from .ion_ratios import sodium_chloride_ratio as sodium_chloride_ratio
    from .ion_ratios import sulfate_chloride_ratio as sulfate_chloride_ratio
    from .ions import anion_sum as anion_sum
    from .ions import cation_sum as cation_sum
    from .ions import ion_milliequivalents as ion_milliequivalents
    from .ions import missing_ions as missing_ions
    from .ions import sodium_by_difference as sodium_by_difference
    from .ions import water_type as water_type
    from .masses import atomic_weight as atomic_weight
    from .masses import atoms as atoms
    from .masses import equivalent_weight as equivalent_weight
    from .masses import molar_mass as molar_mass
    from .oxidants import alkalinity_consumed as alkalinity_consumed
    from .oxidants import oxidant_demand as oxidant_demand
    from .precipitation import CalciumCarbonatePotential as CalciumCarbonatePotential
    from .precipitation import calcium_carbonate_potential as calcium_carbonate_potential
    from .salinity import conductance_at_25 as conductance_at_25
    from .salinity import dissolved_solids_residue as dissolved_solids_residue
    from .salinity import dissolved_solids_sum as dissolved_solids_sum
    from .salinity import handbook_conductance as handbook_conductance
    from .salinity import residual_sodium_carbonate as residual_sodium_carbonate
    from .salinity import sodium_adsorption_ratio as sodium_adsorption_ratio
    from .saturation import SaturationIndices as SaturationIndices
    from .saturation import saturation_index as saturation_index
    from .saturation import saturation_indices as saturation_indices
    from .scaling import calcite_saturation_index as calcite_saturation_index
    from .scaling import calcium_carbonate_precipitated as calcium_carbonate_precipitated
    from .scaling import log_carbon_dioxide_pressure as log_carbon_dioxide_pressure
    from .softening import compensated_hardness as compensated_hardness
    from .softening import hardness_load as hardness_load
    from .softening import potassium_added as potassium_added
    from .softening import sodium_added as sodium_added
    from .speciation import speciate as speciate
    from .state import Reason as Reason
    from .state import Speciation as Speciation

# The public functions, by module. The imports above tell the same to a type checker; a test compares them.
_MODULES: dict[str, tuple[str, ...]] = {
    "activity": (
        "debye_huckel_parameters",
        "relative_permittivity",
        "water_density",
    ),
    "alkalinity": (
        "alkalinity_forms",
        "handbook_alkalinity_forms",
        "handbook_carbon_dioxide",
        "total_alkalinity",
    ),
    "carbonate": (
        "AlkalinityParts",
        "CarbonateSystem",
        "alkalinity_parts",
        "carbonate_system",
    ),
    "classes": ("classify",),
    "closed_system": ("change_temperature",),
    "conductance": ("speciated_conductance",),
    "conversions": (
        "activity_from_mass",
        "basis_factor",
        "equivalents_per_mole",
        "in_basis",
        "mass_from_activity",
        "milliequivalents",
        "milligrams",
        "milligrams_from_milliequivalents",
        "millimoles",
        "specific_activity",
        "uv_absorbance",
        "uv_transmittance",
    ),
    "correctness": (
        "acceptance",
        "charge_balance",
        "charge_balance_of_mean",
        "charge_imbalance",
        "dissolved_solids_conductance_ratio",
        "dissolved_solids_ratio",
        "ion_conductance_ratio",
        "permitted_charge_difference",
        "relative_percent_difference",
    ),
    "corrosion": (
        "buffer_capacity",
        "chloride_sulfate_mass_ratio",
        "copper_pipe_range",
        "galvanic_corrosion_potential",
        "larson_skold_ratio",
    ),
    "counts": (
        "most_probable_number",
        "tabulated_mpn",
    ),
    "dissociation": (
        "ammonia_pka",
        "electron_activity",
        "hydrogen_sulfide_fraction",
        "hydrogen_sulfide_pk1",
        "unionized_ammonia",
        "unionized_ammonia_fraction",
    ),
    "equilibria": ("log_equilibrium_constant",),
    "handbook": ("activity_exponent",),
    "hardness": (
        "calcium_hardness",
        "carbonate_hardness",
        "convert_hardness",
        "hardness_factor",
        "magnesium_hardness",
        "noncarbonate_hardness",
        "total_hardness",
    ),
    "indices": (
        "aggressive_index",
        "langelier_index",
        "langelier_index_short_form",
        "marble_test_potential",
        "puckorius_index",
        "ryznar_index",
        "saturation_ph",
        "saturation_ph_short_form",
    ),
    "intervals": (
        "Behaviour",
        "Bounds",
        "behaves",
        "bounds",
    ),
    "ion_ratios": (
        "calcium_magnesium_ratio",
        "chloride_bromide_ratio",
        "sodium_chloride_ratio",
        "sulfate_chloride_ratio",
    ),
    "ions": (
        "anion_sum",
        "cation_sum",
        "ion_milliequivalents",
        "missing_ions",
        "sodium_by_difference",
        "water_type",
    ),
    "masses": (
        "atomic_weight",
        "atoms",
        "equivalent_weight",
        "molar_mass",
    ),
    "oxidants": (
        "alkalinity_consumed",
        "oxidant_demand",
    ),
    "precipitation": (
        "CalciumCarbonatePotential",
        "calcium_carbonate_potential",
    ),
    "salinity": (
        "conductance_at_25",
        "dissolved_solids_residue",
        "dissolved_solids_sum",
        "handbook_conductance",
        "residual_sodium_carbonate",
        "sodium_adsorption_ratio",
    ),
    "saturation": (
        "SaturationIndices",
        "saturation_index",
        "saturation_indices",
    ),
    "scaling": (
        "calcite_saturation_index",
        "calcium_carbonate_precipitated",
        "log_carbon_dioxide_pressure",
    ),
    "softening": (
        "compensated_hardness",
        "hardness_load",
        "potassium_added",
        "sodium_added",
    ),
    "speciation": ("speciate",),
    "state": (
        "Reason",
        "Speciation",
    ),
}
_HOME = {name: module for module, names in _MODULES.items() for name in names}
__all__ = sorted(_HOME)


def __getattr__(name: str) -> Any:
    if name not in _HOME:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    value = getattr(import_module(f"{__name__}.{_HOME[name]}"), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    return sorted({*globals(), *_HOME})
