#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Puts one slip after the other into a copy of the sources, and looks which test notices it.

usage: drill.py [WORDS ...]

The slips are the rows of mutants.txt, or those in whose description the words occur. The copy and
its build stay in build-mutants/, so that a slip costs no more than what it touches. The tests of
the slip's own room run first, then all others. Status 1 where no test notices a slip, where it does
not compile, or where its text is not found exactly once any more.
"""

import os
import re
import subprocess
import sys
from pathlib import Path

root = Path(__file__).resolve().parents[2]
sources = root / "build-mutants/source"
build = root / "build-mutants/build"
seconds = 900  # for a test; one that a slip keeps from ending fails
# Quick to compile, and quick enough to run.
settings = ["-DCMAKE_BUILD_TYPE=Release", "-DCMAKE_CXX_FLAGS_RELEASE=-O1"]


class Mutant:
    def __init__(self, row):
        self.what, self.room, self.file, self.text, self.instead = row.split(" | ")
        self.text = self.text.replace("\\n", "\n")
        self.instead = self.instead.replace("\\n", "\n")


def mutants():
    rows = (Path(__file__).parent / "mutants.txt").read_text().splitlines()
    return [Mutant(row) for row in rows if not row.startswith("#")]


def copy_sources():
    """Only what differs, so that the build stays up to date."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=root, check=True, capture_output=True)
    names = set(filter(None, listed.stdout.decode().split("\0")))
    for path in sources.rglob("*"):
        if path.is_file() and str(path.relative_to(sources)) not in names:
            path.unlink()
    for name in names:
        content = (root / name).read_bytes()
        copy = sources / name
        if copy.is_file() and copy.read_bytes() == content:
            continue
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_bytes(content)
        copy.chmod((root / name).stat().st_mode)


def compiles(*targets):
    command = ["cmake", "--build", str(build), "-j", str(os.cpu_count())]
    if targets:
        command += ["--target", *targets]
    run = subprocess.run(command, capture_output=True, text=True)
    if run.returncode != 0:
        print(run.stdout[-3000:], file=sys.stderr)
    return run.returncode == 0


def failing_case(room):
    """The first test case of a room that fails."""
    program = build / "tests" / room / f"test_{room}"
    try:
        run = subprocess.run([program, "--abort"], cwd=program.parent,
                             capture_output=True, text=True, errors="replace", timeout=seconds)
    except subprocess.TimeoutExpired:
        return f"{room}: takes too long"
    if run.returncode == 0:
        return None
    case = re.search(r"^-{20,}\n(.+)\n", run.stdout, re.MULTILINE)
    return f"{room}: {case[1] if case else f'status {run.returncode}'}"


def failing_test(*options):
    """The first test of these that fails."""
    command = ["ctest", "--test-dir", str(build), "--stop-on-failure", "--timeout", str(seconds),
               "-j", str(os.cpu_count()), *options]
    run = subprocess.run(command, capture_output=True, text=True, errors="replace")
    if run.returncode == 0:
        return None
    test = re.search(r"Test +#\d+: (\S+) .*\*\*\*", run.stdout)
    return test[1] if test else "ctest"


def drill(mutant):
    """What came of it, and whether a test noticed."""
    path = sources / mutant.file
    good = path.read_text()
    count = good.count(mutant.text)
    if count != 1:
        return f"its text is found {count} times in {mutant.file}", False
    try:
        path.write_text(good.replace(mutant.text, mutant.instead))
        if not compiles(f"test_{mutant.room}"):
            return "does not compile", False
        by = failing_case(mutant.room)
        elsewhere = False
        if not by:
            if not compiles():
                return "does not compile", False
            by = failing_test("-E", f"^{mutant.room}$")
            elsewhere = by is not None
    finally:
        path.write_text(good)
    if not by:
        return "SURVIVED", False
    if elsewhere and not (compiles() and failing_test("-R", f"^{re.escape(by)}$") is None):
        return f"{by} fails without it too", False
    return f"noticed by {by}", True


def main():
    words = " ".join(sys.argv[1:])
    wanted = [mutant for mutant in mutants() if words in mutant.what]
    if not wanted:
        sys.exit(f"no slip is called '{words}'")
    copy_sources()
    configure = ["cmake", "-S", str(sources), "-B", str(build), "-G", "Ninja", *settings]
    subprocess.run(configure, check=True, stdout=subprocess.DEVNULL)
    rooms = sorted({mutant.room for mutant in wanted})
    if not compiles(*(f"test_{room}" for room in rooms)):
        sys.exit("the sources do not compile as they are")
    for room in rooms:
        if case := failing_case(room):
            sys.exit(f"without any slip: {case} fails")
    unnoticed = 0
    for mutant in wanted:
        outcome, noticed = drill(mutant)
        unnoticed += not noticed
        print(f"{mutant.room}: {mutant.what}: {outcome}", flush=True)
    print(f"{len(wanted)} slips, {unnoticed} of them unnoticed")
    sys.exit(1 if unnoticed else 0)


if __name__ == "__main__":
    main()
