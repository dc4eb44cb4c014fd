"""Treatment of one water, and the water behind it, beside the comparison of the same sample with its limits.

    PYTHONPATH=tests python tests/benchmarks/bench_treatment.py

Prints, for each invented water of the expected trains, the best of fifteen rounds of process time in one run:
`recommend` and `treat` together, `compare_sample`, and their ratio. Target: no more than twice the comparison, so that
one interpretation can stay below five times.
"""

import time

from treatment_waters import EXPECTED, problem, scenario

from wellchem.interpretation.treatment import recommend, treat
from wellchem.limits import compare_sample


def best(action, rounds=15):
    times = []
    for _ in range(rounds):
        start = time.process_time()
        action()
        times.append(time.process_time() - start)
    return 1e3 * min(times)


def main():
    ratios = []
    for name, row in EXPECTED.items():
        water, comparisons, _ = scenario(name)
        problems = [problem(code, kind) for code, kind in row["problems"].items()]
        ours = best(lambda: treat(water, recommend(water, problems, comparisons)))  # noqa: B023
        base = best(lambda: compare_sample(water, tuple(row.get("authorities", ("us-epa",)))))  # noqa: B023
        ratios.append(ours / base)
        print(f"{name:36} treatment {ours:6.2f} ms  comparison {base:6.2f} ms  ratio {ratios[-1]:5.2f}")
    print(f"median {sorted(ratios)[len(ratios) // 2]:.2f}, worst {max(ratios):.2f}")


if __name__ == "__main__":
    main()
