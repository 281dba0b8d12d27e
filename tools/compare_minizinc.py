#!/usr/bin/env python3
"""Gives the problem behind a plan to MiniZinc with Gecode, a general-purpose solver, and prints both goal vectors.

  tools/compare_minizinc.py build/release/bin/benchbell demo/lessons/*.json [--seconds 2] [--limit 60]

For each lesson: `benchbell plan --seconds S --export-minizinc`, then the model, level by level from nothing: level 1 is
minimised, then level 2 with level 1 at most at what was found, and so on; our values are not told. Each level gets an
equal share of what is left of the limit (seconds of wall clock a lesson, flattening included). Ours are the values before
checkpoints were set, since the model has none. Of a lesson that does not fit the least late plan is compared.

Exit code: 0 never worse, 1 worse somewhere, 2 something could not be run. Needs the Debian package minizinc.
"""

import argparse
import json
import re
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

HEAD = re.compile(r"^int: level = \d+;\narray\[int\] of int: at_most = \[[^\]]*\];\n", re.M)
LEVEL = re.compile(r"^% level \d+ (.*)$", re.M)
FOUND = re.compile(r"^levels = \[([^\]]*)\]$", re.M)


def stop(text):
    print(f"compare_minizinc: {text}", file=sys.stderr)
    sys.exit(2)


def planned(program, lesson, seconds, folder):
    """The model's text, the names of its levels and our values before checkpoints (None: not of the same problem)."""
    model = Path(folder) / "model.mzn"
    done = subprocess.run(
        [program, "plan", lesson, "--seconds", str(seconds), "--json", "--export-minizinc", model],
        capture_output=True, text=True)
    if done.returncode not in (0, 1):
        stop(f"{lesson}: the plan ended with {done.returncode}: {done.stderr.strip()}")
    answer = json.loads(done.stdout)
    plan, text = answer.get("plan"), model.read_text()
    names = LEVEL.findall(text)
    fits = done.returncode == 0
    if not plan:
        return text, names, None
    left_out = ("G1", "Gw") if fits else ("Gw",)
    goals = [g for g in plan["goals"] if not g["name"].startswith(left_out)]
    if len(goals) != len(names):
        stop(f"{lesson}: {len(goals)} goals in the answer, {len(names)} levels in the model")
    return text, names, [g.get("value_before_checkpoints", g["value"]) for g in goals]


def ask(text, seconds, folder):
    """The levels of the last schedule found (None without one), and how the search ended."""
    model = Path(folder) / "asked.mzn"
    model.write_text(text)
    done = subprocess.run(
        ["minizinc", "--solver", "gecode", "--time-limit", str(int(seconds * 1000)), model],
        capture_output=True, text=True)
    found = FOUND.findall(done.stdout)
    if done.returncode != 0 or (not found and "=====" not in done.stdout):
        stop(f"minizinc ended with {done.returncode}: {(done.stderr + done.stdout).strip()[-500:]}")
    end = "open"
    if "==========" in done.stdout:
        end = "proved"
    elif "=====UNSATISFIABLE=====" in done.stdout:
        end = "refuted"
    return [int(v) for v in found[-1].split(",")] if found else None, end


def level_by_level(text, count, limit, folder):
    """Best levels found, and how many of them, from the first, were proved; or None and how it ended."""
    end_by = time.monotonic() + limit
    best, proved, all_so_far = None, 0, True
    for level in range(1, count + 1):
        share = (end_by - time.monotonic()) / (count - level + 1)
        if share < 0.5:
            break
        at_most = ", ".join(map(str, best[:level - 1])) if best else ""
        head = f"int: level = {level};\narray[int] of int: at_most = [{at_most}];\n"
        # Without a schedule all that is left goes into finding one.
        if best is None:
            share = end_by - time.monotonic() if level > 1 else share
            head = "int: level = 1;\narray[int] of int: at_most = [];\n"
        found, end = ask(HEAD.sub(head, text, count=1), share, folder)
        if end == "refuted" and best is None:
            return None, "refuted"
        if end == "refuted":
            stop(f"level {level} has no schedule as good as the one found before it")
        all_so_far = all_so_far and end == "proved"
        proved += all_so_far
        if found and (best is None or found[:level] <= best[:level]):
            best = found
    return best, proved


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program")
    parser.add_argument("lessons", nargs="+")
    parser.add_argument("--seconds", type=float, default=2, help="for us")
    parser.add_argument("--limit", type=float, default=60, help="for MiniZinc, a lesson")
    asked = parser.parse_args()
    if not shutil.which("minizinc"):
        stop("minizinc is not installed (Debian package minizinc)")
    worse, compared = 0, 0
    for lesson in asked.lessons:
        with tempfile.TemporaryDirectory() as folder:
            text, names, ours = planned(asked.program, lesson, asked.seconds, folder)
            if not HEAD.search(text):
                stop(f"{lesson}: the model does not begin as this program expects")
            theirs, proved = level_by_level(text, len(names), asked.limit, folder)
        print(f"{Path(lesson).stem}\n  levels   {', '.join(names)}")
        print(f"  ours     {ours if ours else 'none of the same problem'}")
        if theirs:
            print(f"  minizinc {theirs}, the first {proved} proved")
        else:
            print(f"  minizinc {'proved that there is none' if proved == 'refuted' else 'nothing found'}")
        if ours:
            compared += 1
            said = "equal" if ours == theirs else "worse" if theirs and ours > theirs else "better"
            worse += said == "worse"
            print(f"  ours is {said}")
        if ours and proved == "refuted":
            stop(f"{lesson}: we have a plan where minizinc proves that there is none")
        sys.stdout.flush()
    print(f"{compared} lessons compared, ours worse in {worse}.")
    return 1 if worse else 0


if __name__ == "__main__":
    sys.exit(main())
