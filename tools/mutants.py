#!/usr/bin/env python3
"""Runs the tests on engines that are wrong on purpose and says how many of them are caught.

tools/mutants.py BUILD_FOLDER [SITE ...]   BUILD_FOLDER is made by the preset `mutants`.

A mutant is a place (src/scheduler/mutant.h) at which explanations or clauses lose one literal. It is caught when a test
fails, breaks off or never ends. Fails when fewer than 95 in a hundred are caught.
"""

import os
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
LEAST_SHARE = 0.95
SECONDS = 120  # a stage takes less than a third of it without a mutant

# From the front and from the back: own literals of the pruned use come last, those of others first.
PLACES = (0, 1, 2, 3, 4, 5, -1, -2, -3)

# Cheapest and sharpest first.
STAGES = (
    ("scheduler_test", "shapes/*:linear.*:arcs.*:pairs.*:clauses.*"),
    ("scheduler_test", "explanations.*:same_optimum.*:no_worse_optimum.*:solve.*:small/*"),
    ("proof_check_test", "proof.*"),
    ("scheduler_reference_test", "gecode.*"),
)


def sites():
    text = (ROOT / "src/scheduler/mutant.h").read_text(encoding="utf-8")
    body = re.search(r"enum class Site[^{]*\{(.*?)\};", text, re.S).group(1)
    return re.findall(r"^\s*(k\w+),", body, re.M)


def run_stage(folder, program, tests, mutant):
    """(fine, times applied): fine when all tests passed."""
    environment = dict(os.environ, BENCHBELL_MUTANT=mutant, BENCHBELL_GECODE="60", GTEST_FAIL_FAST="1", GTEST_BRIEF="1")
    command = [folder / "bin" / program, f"--gtest_filter={tests}"]
    try:
        run = subprocess.run(command, env=environment, capture_output=True, text=True, timeout=SECONDS, errors="replace")
    except subprocess.TimeoutExpired:
        return False, 1
    applied = re.search(r"mutant applied (\d+) times", run.stderr)
    return run.returncode == 0, int(applied.group(1)) if applied else 1


def judge(folder, mutant):
    """'caught by PROGRAM FILTER', 'survived', or 'void' when there never was such a literal."""
    applied = 0
    for program, tests in STAGES:
        fine, times = run_stage(folder, program, tests, mutant)
        applied += times
        if not fine:
            return f"caught by {program} {tests}"
    return "survived" if applied else "void"


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    folder = Path(sys.argv[1]).resolve()
    names = sites()
    for program, tests in STAGES:
        if not run_stage(folder, program, tests, "-1 0")[0]:
            sys.exit(f"{program} {tests} fails without any mutant; nothing can be learnt from it")
    caught, survived, void = [], [], []
    for number, name in enumerate(names):
        if len(sys.argv) > 2 and name not in sys.argv[2:]:
            continue
        for place in PLACES:
            verdict = judge(folder, f"{number} {place}")
            print(f"{name} {place}: {verdict}", flush=True)
            (void if verdict == "void" else survived if verdict == "survived" else caught).append(f"{name} {place}")
    total = len(caught) + len(survived)
    print(f"Mutants: {len(caught)} of {total} caught; {len(void)} places never had a literal to lose.")
    for name in survived:
        print(f"  survived: {name}")
    return 0 if total and len(caught) >= LEAST_SHARE * total else 1


if __name__ == "__main__":
    sys.exit(main())
