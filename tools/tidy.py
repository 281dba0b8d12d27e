#!/usr/bin/env python3
"""Runs clang-tidy over the source files of a build folder: tools/tidy.py BUILD_FOLDER [--jobs 2]

A file that passed is not looked at again until it, a header of ours it includes, its compile command or .clang-tidy
changes: BUILD_FOLDER/tidy/ keeps a mark for each. So the first run takes minutes and the next ones seconds.
"""

import argparse
import concurrent.futures
import hashlib
import json
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
INCLUDE = re.compile(rb'^\s*#\s*include\s*"([^"]+)"', re.M)


def own_headers(path, found):
    """All headers of the project that `path` sees, into `found`."""
    for name in INCLUDE.findall(path.read_bytes()):
        for base in (ROOT / "src", path.parent):
            header = (base / name.decode()).resolve()
            if header.exists() and header not in found:
                found.add(header)
                own_headers(header, found)
                break
    return found


def state_of(path, command, tool):
    content = hashlib.sha256()
    for file in [path, *sorted(own_headers(path, set())), ROOT / ".clang-tidy"]:
        content.update(file.read_bytes())
    content.update(command.encode())
    content.update(tool)
    return content.hexdigest()


def main():
    arguments = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    arguments.add_argument("build", type=Path)
    arguments.add_argument("--jobs", type=int, default=2)
    options = arguments.parse_args()

    tool = subprocess.run(["clang-tidy", "--version"], check=True, capture_output=True).stdout
    marks = options.build / "tidy"
    marks.mkdir(parents=True, exist_ok=True)
    pending = []
    total = 0
    for entry in json.loads((options.build / "compile_commands.json").read_text()):
        path = Path(entry["file"]).resolve()
        if options.build.resolve() in path.parents or ROOT not in path.parents:
            continue  # generated
        total += 1
        mark = marks / hashlib.sha256(str(path).encode()).hexdigest()
        state = state_of(path, entry["command"], tool)
        if not mark.exists() or mark.read_text() != state:
            pending.append((path, mark, state))

    def look_at(item):
        path, mark, state = item
        run = subprocess.run(["clang-tidy", "--quiet", "-p", options.build, path], capture_output=True, text=True)
        if run.returncode == 0:
            mark.write_text(state)
        return path, run

    failed = 0
    with concurrent.futures.ThreadPoolExecutor(options.jobs) as pool:
        for number, (path, run) in enumerate(pool.map(look_at, pending), start=1):
            print(f"[{number}/{len(pending)}] {path.relative_to(ROOT)}", flush=True)
            if run.returncode != 0:
                failed += 1
                print(run.stdout or run.stderr, flush=True)
    print(f"Tidy: {total} files, {len(pending)} looked at, {failed or 'none'} with faults.")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
