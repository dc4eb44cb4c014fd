"""`import wellchem` against `import pandas`, each in fresh interpreters; run as a program.

Prints the ratio of the medians, with versions. Target: at most 1.3.
"""

import statistics
import subprocess
import sys
import time
from importlib.metadata import version

ROUNDS = 9


def seconds(module: str) -> float:
    """Median wall time of an interpreter that imports the module and ends, less that of an empty one."""
    times = []
    for _ in range(ROUNDS):
        spent = {}
        for name, code in (("empty", ""), ("module", f"import {module}")):
            start = time.perf_counter()
            subprocess.run([sys.executable, "-c", code], check=True)
            spent[name] = time.perf_counter() - start
        times.append(spent["module"] - spent["empty"])
    return statistics.median(times)


if __name__ == "__main__":
    ours, pandas = seconds("wellchem"), seconds("pandas")
    print(f"python {sys.version.split()[0]}, pandas {version('pandas')}")
    print(f"import wellchem {ours * 1000:.1f} ms, import pandas {pandas * 1000:.1f} ms, ratio {ours / pandas:.3f}")
