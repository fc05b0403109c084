#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""How long summaries and pictures of 10,000 readings take, and the sheet of 100 stations, whole
process, output to /dev/null: medians of paired runs as multiples of what reducing the same log to a
table takes, and in seconds, which belong to the machine.

usage: pictures.py LODEBOOK [PAIRS]
"""

import pathlib
import random
import sys
import tempfile

import paired

COMMANDS = (
    ("summary",), ("net",), ("net", "--circles"), ("net", "--contours"), ("rose",), ("map",),
)


def log(stations):
    """Five readings a station, over a few kilometres, of a fold, joints, cleavage and currents."""
    source = random.Random(5)
    lines = ["dial azimuth", "set 0", "declination 5E", "rule right"]
    for i in range(stations):
        lines += [
            f"station S{i} at {45 + source.random() / 20:.5f}N {7 + source.random() / 20:.5f}E ±5",
            f"  unit {source.choice(('slate', 'grit', 'marl'))}",
            f"  bedding {source.randrange(360):03}/{source.randrange(5, 90):02}",
            f"  joint {source.gauss(30, 8) % 360:05.1f}/{source.randrange(75, 90)}",
            f"  cleavage {source.gauss(120, 5) % 360:05.1f}/{source.randrange(60, 80)}",
            f"  lineation {source.gauss(290, 10) % 360:05.1f}/{source.randrange(5, 30):02}",
            f"  current {source.gauss(40, 30) % 360:05.1f}/05",
        ]
    return "\n".join(lines) + "\n"


def compare(lodebook, words, file, pairs):
    measured = paired.pairs(lambda: paired.run([lodebook, *words, "--quiet", file]),
                            lambda: paired.run([lodebook, "reduce", "--quiet", file]), pairs)
    print(f"{' '.join(words):<16} {paired.ratio(measured).median:6.1f} times reduce "
          f"({paired.median([one for one, _ in measured]):.3f} s)")


def main(lodebook, pairs="11"):
    with tempfile.TemporaryDirectory() as folder:
        season, day = pathlib.Path(folder) / "season.txt", pathlib.Path(folder) / "day.txt"
        season.write_text(log(2000), encoding="utf-8")
        day.write_text(log(100), encoding="utf-8")
        print("10,000 readings at 2000 stations:")
        for words in COMMANDS:
            compare(lodebook, words, str(season), int(pairs))
        print("500 readings at 100 stations:")
        compare(lodebook, ("sheet",), str(day), int(pairs))


if __name__ == "__main__":
    main(*sys.argv[1:])
