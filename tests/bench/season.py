#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What a season's log costs, whole process: ten readings a station, the declination stated.

Prints how much longer than a bare script of mawk a table and a report take, and than mlr, which
only turns the table into JSON, the document in JSON; memory as a multiple of the log; instructions
a reading of logs of several sizes; and what the small commands of every day take. Ratios are of
paired runs: their median, and the least and most.

usage: season.py LODEBOOK [--readings N] [--pairs N] [--large]
"""

import argparse
import csv
import pathlib
import random
import re
import shutil
import subprocess
import tempfile

import paired

HERE = pathlib.Path(__file__).parent
EVERY_DAY = HERE.parent.parent / "data" / "night-typing.log"


def write_log(file, readings):
    source = random.Random(4)
    with open(file, "w", encoding="utf-8") as log:
        log.write("area B\ndate 2026-02-14\nobserver MK\ndial quadrant\nset 0\n"
                  "declination 24.6E ±0.4\nrule right\n")
        for station in range(readings // 10):
            log.write(f"\nstation S{station:06} at {44 + source.random():.5f}S "
                      f"{169 + source.random():.5f}E\n")
            for _ in range(10):
                log.write(f"  bedding {source.choice('NS')}{source.randrange(91)}"
                          f"{source.choice('EW')} {source.randrange(1, 90)}\n")


def require_agreement(ours, bare):
    """The script has the same strike for every reading, or there is nothing to compare."""
    with open(ours, encoding="utf-8") as one, open(bare, encoding="utf-8") as other:
        count = 0
        for row, expected in zip(csv.DictReader(one), csv.DictReader(other), strict=True):
            count += 1
            for name in ("station", "kind", "strike"):
                if row[name] != expected[name]:
                    raise RuntimeError(f"{row['source']}: {row[name]}, bare {expected[name]}")
    if count == 0:
        raise RuntimeError("no readings to compare")


def instructions(command):
    """By the processor's counter, or where there is none by valgrind, some fifty times slower."""
    if shutil.which("perf"):
        counted = subprocess.run(["perf", "stat", "-x,", "-e", "instructions:u", *command],
                                 stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
        figure = re.search(r"^(\d+),,instructions", counted.stderr, re.MULTILINE)
        if figure:
            return int(figure[1])
    counted = subprocess.run(
        ["valgrind", "--tool=callgrind", "--callgrind-out-file=/dev/null", *command],
        stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True, check=True)
    return int(re.search(r"Collected : (\d+)", counted.stderr)[1])


def remove(*files):
    """To replace a long file costs a file system more than to write one, and that is its affair."""
    for file in files:
        file.unlink(missing_ok=True)


def compare(lodebook, folder, readings, count):
    log, table, report = folder / "season.log", folder / "x.csv", folder / "x.txt"
    bare, document, converted = folder / "y.csv", folder / "x.json", folder / "y.json"
    write_log(log, readings)

    def ours():
        remove(table, report)
        return paired.run([lodebook, "reduce", log, "-o", table, "--report", report])

    def script():
        remove(bare)
        return paired.run(["mawk", "-f", HERE / "bare.awk", log], bare)

    measured = paired.pairs(ours, script, count)
    require_agreement(table, bare)
    print(f"table and report / bare script: wall {paired.ratio(measured)}, "
          f"CPU {paired.ratio(measured, 'cpu')}; "
          f"{paired.median([one for one, _ in measured]):.2f} s")
    peak = max(one.peak for one, _ in measured)
    print(f"peak memory / log: {peak / log.stat().st_size:.2f} ({peak / 2**20:.0f} MiB)")

    measured = paired.pairs(
        lambda: paired.run([lodebook, "reduce", "--quiet", log, "--format", "json",
                            "-o", document]),
        lambda: paired.run(["mlr", "--icsv", "--ojson", "cat", table], converted), count)
    print(f"JSON / mlr's JSON of the table: wall {paired.ratio(measured)}, "
          f"CPU {paired.ratio(measured, 'cpu')}")


def linearity(lodebook, folder, large):
    log, table, report = folder / "size.log", folder / "size.csv", folder / "size.txt"
    command = [lodebook, "reduce", str(log), "-o", str(table), "--report", str(report)]
    for readings in (10_000, 100_000):
        write_log(log, readings)
        print(f"{readings:>10,} readings: {instructions(command) / readings:,.0f} "
              "instructions a reading")
    for readings in (100_000, 1_000_000, 10_000_000) if large else ():
        write_log(log, readings)
        print(f"{readings:>10,} readings: {paired.run(command).cpu / readings * 1e6:.2f} "
              "microseconds of CPU a reading")


def every_day(lodebook, count=50):
    for words in (["convert", "N50W"], ["--version"], ["check", EVERY_DAY]):
        measured = paired.pairs(lambda: paired.run([lodebook, *words], statuses=(0, 1)),
                                lambda: paired.run(["true"]), count)
        shown = " ".join(word if isinstance(word, str) else word.name for word in words)
        print(f"{shown}: {paired.median([one for one, _ in measured]) * 1000:.1f} ms, "
              f"{paired.ratio(measured)} times 'true'")


def main():
    parser = argparse.ArgumentParser(description=__doc__,
                                     formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("lodebook")
    parser.add_argument("--readings", type=int, default=1_000_000)
    parser.add_argument("--pairs", type=int, default=11)
    parser.add_argument("--large", action="store_true", help="also CPU time up to ten million")
    words = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        print(f"{words.readings:,} readings, {words.pairs} pairs")
        compare(words.lodebook, pathlib.Path(folder), words.readings, words.pairs)
        linearity(words.lodebook, pathlib.Path(folder), words.large)
    every_day(words.lodebook)


if __name__ == "__main__":
    main()
