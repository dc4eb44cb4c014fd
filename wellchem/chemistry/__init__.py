"""Water chemistry: plain functions on floats and arrays, loaded module by module as they are used."""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .masses import atomic_weight as atomic_weight
    from .masses import atoms as atoms
    from .masses import equivalent_weight as equivalent_weight
    from .masses import molar_mass as molar_mass

# The public functions, by module. The imports above tell the same to a type checker; a test compares them.
_MODULES: dict[str, tuple[str, ...]] = {
    "masses": ("atomic_weight", "atoms", "equivalent_weight", "molar_mass"),
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
