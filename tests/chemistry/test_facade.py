"""The room's front door: one table of names, no cost but numpy's."""

import ast
import inspect
import subprocess
import sys
from pathlib import Path

import wellchem.chemistry as chemistry


def test_the_type_checker_sees_the_same_names() -> None:
    tree = ast.parse(Path(chemistry.__file__).read_text(encoding="utf-8"))
    imports = {
        (node.module, alias.asname)
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and node.level == 1
        for alias in node.names
    }
    assert imports == {(module, name) for module, names in chemistry._MODULES.items() for name in names}


def test_every_public_name_loads_and_none_is_a_modules_name() -> None:
    modules = {path.stem for path in Path(chemistry.__file__).parent.glob("*.py")}
    for name in chemistry.__all__:
        assert name not in modules
        assert callable(getattr(chemistry, name))
        assert inspect.getdoc(getattr(chemistry, name))


def test_public_names_survive_the_import_of_every_module() -> None:
    code = (
        "import importlib, pkgutil, wellchem.chemistry as c\n"
        "for m in pkgutil.iter_modules(c.__path__): importlib.import_module(f'{c.__name__}.{m.name}')\n"
        "assert all(callable(getattr(c, n)) for n in c.__all__)\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


def test_importing_the_room_loads_no_heavy_library() -> None:
    code = (
        "import sys, wellchem.chemistry as c\n"
        "for n in c.__all__: getattr(c, n)\n"
        "heavy = {'pandas', 'pint', 'pydantic', 'scipy', 'pdfplumber'} & set(sys.modules)\n"
        "assert not heavy, heavy\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True)
