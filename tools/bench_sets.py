#!/usr/bin/env python3
"""Runs sets of project scheduling instances and prints a table, medians of several runs.

  tools/bench_sets.py build/release SETS_FOLDER BEST_KNOWN.csv j60 ubo100 [--seconds 10] [--runs 3] [--every 8]

SETS_FOLDER/SET/INSTANCE are the instances; BEST_KNOWN.csv has the columns set,instance,lb,ub,proved. Each run has its
own seed (1, 2, ...). `--every 8` takes each eighth instance, for a quick look. Figures: instances proved, at the best
known value, mean gap of the schedules to it in %, without schedule or proof, median seconds to the first schedule.
`near` is how many were proved between 8 and 12 s: at a limit of 10 s that many may flip by chance.
"""

import argparse
import csv
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

COLUMNS = ("proved", "at best", "gap %", "without", "first s", "near", "seconds")


def known_values(table, name):
    with open(table, newline="") as file:
        return {row["instance"]: row for row in csv.DictReader(file) if row["set"] == name}


def run_once(program, files, seconds, seed):
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "out.csv"
        done = subprocess.run([program, *files, "--seconds", str(seconds), "--seed", str(seed), "--csv", out])
        if done.returncode != 0:
            sys.exit(f"bench_sets: {program} ended with {done.returncode}")
        with open(out, newline="") as file:
            return list(csv.DictReader(file))


def figures(rows, known):
    """One number a column, in the order of COLUMNS."""
    gaps, at_best = [], 0
    for row in rows:
        best = known.get(row["instance"], {}).get("ub")
        if row["upper"] and best:
            gaps.append(100 * (int(row["upper"]) - int(best)) / int(best))
            at_best += int(row["upper"]) <= int(best)
    proved = [row for row in rows if row["proved"] != "no"]
    firsts = [float(row["first_seconds"]) for row in rows if row["first_seconds"]]
    return (
        len(proved),
        at_best,
        statistics.mean(gaps) if gaps else 0,
        sum(not row["upper"] and row["proved"] != "infeasible" for row in rows),
        statistics.median(firsts) if firsts else 0,
        sum(8 <= float(row["seconds"]) <= 12 for row in proved),
        sum(float(row["seconds"]) for row in rows),
    )


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("build")
    parser.add_argument("folder")
    parser.add_argument("known")
    parser.add_argument("sets", nargs="+")
    parser.add_argument("--seconds", type=float, default=10)
    parser.add_argument("--runs", type=int, default=3)
    parser.add_argument("--every", type=int, default=1)
    arguments = parser.parse_args()
    program = Path(arguments.build) / "bench_programs" / "rcpsp"
    print("| set | instances |", " | ".join(COLUMNS), "|", flush=True)
    print("|---" * (2 + len(COLUMNS)) + "|", flush=True)
    for name in arguments.sets:
        files = sorted((Path(arguments.folder) / name).iterdir())[:: arguments.every]
        known = known_values(arguments.known, name)
        runs = [
            figures(run_once(program, files, arguments.seconds, 1 + run), known) for run in range(arguments.runs)
        ]
        cells = [f"{statistics.median(values):.3g}" for values in zip(*runs)]
        print(f"| {name} | {len(files)} |", " | ".join(cells), "|", flush=True)


if __name__ == "__main__":
    main()
