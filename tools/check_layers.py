#!/usr/bin/env python3
"""Fails when the code does not keep the house's order: docs/architecture.md has the picture.

1. A folder of src/ includes only folders below it.
2. The verifier includes nothing of the planner or the engine but the plan itself; the proof checker nothing at all.
3. No include cycle, neither between files nor between folders.
4. Headers that are slow to compile stay out of most files.
5. Asio stays in serve/http, and nothing there is made of braces or as a lambda inside a co_await expression: g++ 12
   destroys it twice.
6. The pure middle reads no clock of the wall, no environment, no files; and nothing uses what clang 14 cannot read.
"""

import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
SRC = ROOT / "src"

# What a folder may include besides itself.
MAY_INCLUDE = {
    "base": set(),
    "optimise": {"base"},
    "kitchen": {"base"},
    "scheduler": {"base"},
    "proof_check": set(),  # judges the engine's proofs, so it shares nothing with it
    "timeplan": {"base", "kitchen", "scheduler"},
    "larder": {"base", "optimise", "kitchen"},
    "nutrition": {"base", "optimise", "kitchen"},
    "safety": {"base", "kitchen"},
    "store": {"base"},
    "print": {"base", "kitchen", "timeplan", "larder", "nutrition", "safety"},
    "desk": {"base", "kitchen", "safety", "timeplan"},
    "shipped": {"base", "kitchen", "nutrition", "safety"},  # tables and dishes inside the program
    "serve": {"base", "kitchen", "timeplan", "larder", "nutrition", "safety", "print", "shipped", "desk", "store"},
    "app": {"base", "kitchen", "timeplan", "larder", "nutrition", "safety", "print", "shipped", "desk", "serve", "store"},
}

# Narrower than the folder they lie in: the only project headers these may see, by prefix.
ONLY = {
    "serve/http/": ("base/", "serve/http/"),  # knows no kitchen and no database
    "timeplan/verify/": ("base/", "kitchen/", "timeplan/plan.h", "timeplan/verify/"),
    "timeplan/chance/": ("base/", "kitchen/", "timeplan/plan.h", "timeplan/network", "timeplan/chance/"),
}

# Header -> the most source files that may see it, directly or through a header of ours.
HEAVY = {"CLI/CLI.hpp": 2, "nlohmann/json.hpp": 12, "cairo-pdf.h": 1, "pango/pangocairo.h": 1, "zip.h": 2}

# Outside headers by prefix -> the only folder that may see them.
AT_HOME = {"boost/asio": "serve/http/", "boost/beast": "serve/http/"}
BROKEN_AWAIT = re.compile(r"\bco_await\b[^;{[]*[{[]")

PURE = ("scheduler", "timeplan")
IMPURE = re.compile(
    r"\b(getenv|random_device|system_clock|time\s*\(\s*(nullptr|NULL|0)\s*\))|#include <(fstream|iostream|cstdio|filesystem)>"
)
CLANG_14_CANNOT = re.compile(r"\bstd::(ranges::)?views::")
INCLUDE = re.compile(r'^\s*#\s*include\s*(?:"([^"]+)"|<([^>]+)>)', re.M)


def without_comments(text):
    return re.sub(r"//[^\n]*", "", re.sub(r"/\*.*?\*/", "", text, flags=re.S))


def tracked_sources():
    """Sources as git sees them, new files included, so that build folders never count."""
    listing = subprocess.run(
        ["git", "-C", ROOT, "ls-files", "-z", "--cached", "--others", "--exclude-standard", "--", "src", "tests", "bench"],
        check=True, capture_output=True, text=True).stdout
    return sorted(ROOT / p for p in listing.split("\0") if p.endswith((".h", ".cpp")) and (ROOT / p).exists())


def find_cycle(graph):
    """One cycle of a graph {node: set of nodes} as a list, or nothing."""
    state, path = {}, []

    def visit(node):
        state[node] = "open"
        path.append(node)
        for following in sorted(graph.get(node, ())):
            if state.get(following) == "open":
                return path[path.index(following):] + [following]
            if following not in state:
                cycle = visit(following)
                if cycle:
                    return cycle
        path.pop()
        state[node] = "done"
        return None

    for node in sorted(graph):
        if node not in state:
            cycle = visit(node)
            if cycle:
                return cycle
    return None


def main():
    faults = []
    quoted, angled = {}, {}  # file below src/ -> project headers, outside headers
    for path in tracked_sources():
        text = without_comments(path.read_text(encoding="utf-8"))
        if CLANG_14_CANNOT.search(text):
            faults.append(f"{path.relative_to(ROOT)}: std::views pipelines do not compile with clang 14")
        if SRC not in path.parents:
            continue
        name = path.relative_to(SRC).as_posix()
        folder = name.split("/")[0]
        if folder not in MAY_INCLUDE:
            faults.append(f"src/{name}: the folder {folder} has no place in the order; give it one in {Path(__file__).name}")
            continue
        quoted[name], angled[name] = set(), set()
        for ours, outside in INCLUDE.findall(text):
            if ours and (SRC / ours).exists():
                quoted[name].add(ours)
            elif ours and (path.parent / ours).exists():
                faults.append(f'src/{name}: write "{ours}" with its folder')
            else:
                angled[name].add(ours or outside)
        for header in sorted(quoted[name]):
            target = header.split("/")[0]
            if target != folder and target not in MAY_INCLUDE[folder]:
                faults.append(f"src/{name}: includes {header}, but {folder} may not see {target}")
            for prefix, allowed in ONLY.items():
                if name.startswith(prefix) and not header.startswith(allowed):
                    faults.append(f"src/{name}: includes {header}, which {prefix} must do without")
        for header in sorted(angled[name]):
            for prefix, home in AT_HOME.items():
                if header.startswith(prefix) and not name.startswith(home):
                    faults.append(f"src/{name}: includes {header}, which belongs to {home}")
        for broken in BROKEN_AWAIT.findall(text):
            faults.append(f"src/{name}: name it before the co_await: {' '.join(broken.split())}")
        if folder in PURE and IMPURE.search(text):
            found = IMPURE.search(text).group(0)
            faults.append(f"src/{name}: {found}: {folder} takes values and gives values, nothing else")

    cycle = find_cycle(quoted)
    if cycle:
        faults.append("files include each other in a circle: " + " -> ".join(cycle))
    folders = {}
    for name, headers in quoted.items():
        folder = name.split("/")[0]
        folders.setdefault(folder, set()).update(h.split("/")[0] for h in headers if h.split("/")[0] != folder)
    cycle = find_cycle(folders)
    if cycle:
        faults.append("folders include each other in a circle: " + " -> ".join(cycle))

    def sees(name, header, seen):
        seen.add(name)
        return header in angled.get(name, ()) or any(
            sees(h, header, seen) for h in quoted.get(name, ()) if h not in seen)

    for header, most in HEAVY.items():
        users = [n for n in sorted(quoted) if n.endswith(".cpp") and sees(n, header, set())]
        if len(users) > most:
            faults.append(f"{header} is compiled in {len(users)} files, at most {most} are allowed: {', '.join(users)}")

    for fault in faults:
        print(fault)
    print(f"Layers: {len(quoted)} files, {'no fault' if not faults else f'{len(faults)} faults'}.")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
