#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""How many lines of each core room the tests of these rooms run.

usage: coverage.py BUILD [--lines]

BUILD was made by .cmake/coverage.cmake, and its tests have run. A line counts where it holds code,
in src/ROOM or include/lodebook/ROOM. With --lines, names those that no test runs. Status 1 where a
room has fewer than 95 % of its lines run.
"""

import pathlib
import subprocess
import sys

ROOMS = ("orientation", "earth", "notebook", "reduction")
FLOOR = 95  # percent

root = pathlib.Path(__file__).resolve().parents[1]


def merged_counts(build):
    """What the tests of all core rooms have run: a fault's wording is asked for by rooms above."""
    counts = [build / "tests" / room / f"{room}.profraw" for room in ROOMS]
    merged = build / "core.profdata"
    subprocess.run(["llvm-profdata", "merge", *counts, "-o", merged], check=True)
    return merged


def runs_of_lines(build, merged, room):
    """How often each line of the room was run, by file and number."""
    programs = [build / "tests" / tested / f"test_{tested}" for tested in ROOMS]
    listing = subprocess.run(
        ["llvm-cov", "export", "-format=lcov", "-instr-profile", merged, programs[0],
         *[f"-object={program}" for program in programs[1:]],
         root / "src" / room, root / "include/lodebook" / room],
        check=True, capture_output=True, text=True).stdout
    runs = {}
    for row in listing.splitlines():
        kind, _, rest = row.partition(":")
        if kind == "SF":
            file = pathlib.Path(rest).relative_to(root)
        elif kind == "DA":
            line, count = rest.split(",")[:2]
            runs[file, int(line)] = max(int(count), runs.get((file, int(line)), 0))
    if not runs:
        sys.exit(f"no line of {room} is counted")
    return runs


def main():
    build = pathlib.Path(sys.argv[1])
    merged = merged_counts(build)
    low = False
    for room in ROOMS:
        runs = runs_of_lines(build, merged, room)
        unrun = sorted(place for place, count in runs.items() if count == 0)
        percent = 100 * (1 - len(unrun) / len(runs))
        low = low or percent < FLOOR
        print(f"{room}: {percent:.1f} % of {len(runs)} lines"
              f"{f', under {FLOOR} %' if percent < FLOOR else ''}")
        if "--lines" in sys.argv[2:]:
            for file, line in unrun:
                print(f"  {file}:{line}")
    sys.exit(low)


if __name__ == "__main__":
    main()
