"""The package's front door: cheap to import, and whole after every submodule has been imported."""

import importlib
import pkgutil
import subprocess
import sys

import pytest

import wellchem
from wellchem import demo

HEAVY = ("pint", "pdfplumber", "openpyxl", "pydantic", "pandas", "numpy")


def _loaded_after(code):
    listing = subprocess.run(
        [sys.executable, "-c", f"{code}\nimport sys\nprint('\\n'.join(sys.modules))"],
        capture_output=True,
        text=True,
        check=True,
    )
    return set(listing.stdout.split())


def test_importing_the_package_loads_nothing_heavy():
    assert not _loaded_after("import wellchem").intersection(HEAVY)


@pytest.mark.parametrize("name", ["read", "interpret", "compare", "schema", "limits"])
def test_a_first_use_does_not_load_what_it_does_not_need(name):
    assert not _loaded_after(f"import wellchem; wellchem.{name}").intersection(("pint", "pdfplumber", "openpyxl"))


def test_every_public_name_is_there_after_every_submodule_has_been_imported():
    code = """
import importlib, pkgutil, types, wellchem
for module in pkgutil.walk_packages(wellchem.__path__, "wellchem."):
    if not module.name.endswith("__main__"):
        importlib.import_module(module.name)
rooms = {"chemistry", "errors", "limits", "schema", "vocabulary"}
for name in wellchem.__all__:
    value = getattr(wellchem, name)
    if name in rooms:
        assert isinstance(value, types.ModuleType), name
    elif name != "__version__":
        assert callable(value), (name, value)
for room in rooms:
    module = getattr(wellchem, room)
    for name in getattr(module, "__all__", ()):
        assert not isinstance(getattr(module, name), types.ModuleType), (room, name)
"""
    subprocess.run([sys.executable, "-c", code], check=True)


def test_an_unknown_name_is_an_attribute_error():
    with pytest.raises(AttributeError):
        wellchem.no_such_name  # noqa: B018


def test_modules_are_short():
    for module in pkgutil.walk_packages(wellchem.__path__, "wellchem."):
        path = importlib.util.find_spec(module.name).origin
        with open(path, encoding="utf-8") as text:
            assert sum(1 for _ in text) <= 420, f"{module.name} is more than one idea"


@pytest.mark.parametrize(
    ("call", "error"),
    [
        (lambda report: wellchem.interpret(report), wellchem.errors.NotASample),
        (lambda report: wellchem.compare(report), wellchem.errors.FrameError),
        (lambda report: wellchem.checks(report.samples[0]), wellchem.errors.FrameError),
        (lambda report: wellchem.problems(report.samples[0]), wellchem.errors.FrameError),
    ],
)
def test_what_is_no_sample_or_frame_is_refused_with_what_to_give(call, error):
    with pytest.raises(error, match=r"samples|to_frame"):
        call(wellchem.read(demo.REPORT))
