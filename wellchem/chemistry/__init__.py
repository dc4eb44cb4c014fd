"""Water chemistry: plain functions on floats and arrays, loaded module by module as they are used."""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .alkalinity import alkalinity_forms as alkalinity_forms
    from .alkalinity import handbook_alkalinity_forms as handbook_alkalinity_forms
    from .alkalinity import handbook_carbon_dioxide as handbook_carbon_dioxide
    from .alkalinity import total_alkalinity as total_alkalinity
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
    from .hardness import calcium_hardness as calcium_hardness
    from .hardness import carbonate_hardness as carbonate_hardness
    from .hardness import convert_hardness as convert_hardness
    from .hardness import hardness_factor as hardness_factor
    from .hardness import magnesium_hardness as magnesium_hardness
    from .hardness import noncarbonate_hardness as noncarbonate_hardness
    from .hardness import total_hardness as total_hardness
    from .masses import atomic_weight as atomic_weight
    from .masses import atoms as atoms
    from .masses import equivalent_weight as equivalent_weight
    from .masses import molar_mass as molar_mass

# The public functions, by module. The imports above tell the same to a type checker; a test compares them.
_MODULES: dict[str, tuple[str, ...]] = {
    "alkalinity": (
        "alkalinity_forms",
        "handbook_alkalinity_forms",
        "handbook_carbon_dioxide",
        "total_alkalinity",
    ),
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
    "hardness": (
        "calcium_hardness",
        "carbonate_hardness",
        "convert_hardness",
        "hardness_factor",
        "magnesium_hardness",
        "noncarbonate_hardness",
        "total_hardness",
    ),
    "masses": (
        "atomic_weight",
        "atoms",
        "equivalent_weight",
        "molar_mass",
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
