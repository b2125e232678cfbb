"""Sheets and time beside rectpack's best over all its modes, both in one run: `cargo xtask bench` starts this.

Prints a table to read and, for xtask, one JSON object a line.
"""

import json
import os
import time

import rectangles

# Jobs compared; rectpack takes some seconds for each.
COUNT = 16
# Steps ours may take for each.
STEPS = 200_000


def main():
    program = os.environ["PANELWRIGHT_BIN"]
    rows = {}
    times = {"ours": [], "rectpack, all modes": []}
    for seed in range(COUNT):
        job = rectangles.random_job(1000 + seed)
        start = time.perf_counter()
        other = rectangles.best(job)
        times["rectpack, all modes"].append((time.perf_counter() - start) * 1e3)
        [plan] = rectangles.plans(program, [dict(job, steps=STEPS)])
        times["ours"].append(plan["milliseconds"])
        row = rows.setdefault(job["rules"]["method"], [0, 0, 0])
        if other is not None:
            row[0] += len(plan["sheets"])
            row[1] += other
            row[2] += plan["bound"]
    print(f"{'sheets for random jobs':<24} {'ours':>6} {'rectpack':>9} {'bound':>6} {'ours/rectpack':>14}")
    for method, (ours, other, bound) in sorted(rows.items()):
        print(f"{method:<24} {ours:>6} {other:>9} {bound:>6} {ours / other:>14.3f}")
    for name, spent in times.items():
        spent.sort()
        middle, late = spent[len(spent) // 2], spent[(len(spent) - 1) * 95 // 100]
        print(json.dumps({"bench": f"a random job on sheets, {name}", "p50_ms": middle, "p95_ms": late}))


if __name__ == "__main__":
    main()
