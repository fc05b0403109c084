#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""How time and memory grow with a log that does one thing very often: a drill.

usage: growth.py LODEBOOK [SCALE [CASE...]]

Each case is run at once, twice and four times its size, and what a doubling costs is printed: 2 is
linear, 4 would be quadratic. SCALE multiplies all sizes (usually 1; 8 has a log of 1 GB and a million
diagnostics in one). A case that grows by more than 3 at its last doubling fails.
"""

import math
import os
import pathlib
import random
import sys
import tempfile

HEAD = "set 0\ndeclination 1E\n"


def repeated(number, line):
    return "".join(line.format(i=i, quarter=i % 90, place=i % 9000) for i in range(number))


def line_of(number, word):
    """As many as asked for, on lines just short of the longest that is read."""
    a_line = 65_000 // len(word)
    lines = [word * min(a_line, number - start) for start in range(0, number, a_line)]
    return "".join(f"  bedding N14E 20E{words}\n" for words in lines)


def chain(number):
    """Stations one behind the other, each leg read from both ends."""
    return HEAD + "station S0 at 44.5S 169.0E\n" + "".join(
        f"  leg N{20 + i % 60}E 20m back S{20 + i % 60}W to S{i + 1}\nstation S{i + 1}\n" for i in range(number)
    )


def mesh(number, known):
    """A square mesh of so many stations, known at a corner or nowhere."""
    side = round(number**0.5)
    lines = [HEAD]
    for north in range(side):
        for east in range(side):
            at = " at 44.5S 169.0E" if known and north == east == 0 else ""
            lines.append(f"station M{east}x{north}{at}\n")
            if east + 1 < side:
                lines.append(f"  leg N89E 20m to M{east + 1}x{north}\n")
            if north + 1 < side:
                lines.append(f"  leg N1E 20m to M{east}x{north + 1}\n")
    return "".join(lines)


def squares(number):
    """So many squares of legs, each hung on the one before by a leg."""
    lines = [HEAD, "station A0 at 44.5S 169.0E\n"]
    for i in range(number):
        lines.append(f"  leg 045 20m to B{i}\n  leg 135 20m to C{i}\nstation B{i}\n  leg 135 20m to D{i}\n")
        lines.append(f"station C{i}\n  leg 045 20m to D{i}\nstation D{i}\n  leg 090 20m to A{i + 1}\n")
        lines.append(f"station A{i + 1}\n")
    return "".join(lines)


def wheel(number):
    """A hub that nothing places, with so many spokes, and the rim between them."""
    spokes = "".join(f"  leg {i % 360:03} 200m to R{i}\n" for i in range(number))
    rim = "".join(f"station R{i}\n  leg 090 2m to R{(i + 1) % number}\n" for i in range(number))
    return HEAD + "station Hub\n" + spokes + rim


def bad_sights(number):
    """As many landmarks as stations, and at each of these one sight of four off by half a turn."""
    draw = random.Random(1)
    peaks = [(44.5 + draw.uniform(0, 0.2), 169 + draw.uniform(0, 0.2)) for _ in range(number)]
    lines = [HEAD] + [f"landmark P{i} {south:.5f}S {east:.5f}E\n" for i, (south, east) in enumerate(peaks)]
    for i in range(number):
        south, east = 44.6 + draw.uniform(-0.02, 0.02), 169.1 + draw.uniform(-0.02, 0.02)
        lines.append(f"station Q{i}\n")
        for turn in (0, 0, 0, 180):
            peak = draw.randrange(number)
            aside = (peaks[peak][1] - east) * math.cos(math.radians(south))
            azimuth = math.degrees(math.atan2(aside, south - peaks[peak][0])) - 1 + turn
            lines.append(f"  sight P{peak} {azimuth % 360:06.2f}\n")
    return "".join(lines)


def sights_from_one(number):
    """As many landmarks, all sighted from one station that none of them fits."""
    peaks = "".join(f"landmark P{i} {44.5 + i % 977 / 5000:.5f}S {169 + i % 983 / 5000:.5f}E\n" for i in range(number))
    return HEAD + peaks + "station Q\n" + "".join(f"  sight P{i} {i * 7 % 360:03}\n" for i in range(number))


def scattered(number):
    """As many repeats in one line, few of which agree."""
    draw = random.Random(1)
    planes = (f"{draw.gauss(60, 20) % 360:03.0f}/{min(85, max(5, draw.gauss(40, 20))):02.0f} SE" for _ in range(number))
    return HEAD + "station Q\n  bedding " + ", ".join(planes) + "\n"


def kinds(number, readings):
    """As many kinds of planes, and something read of each."""
    return HEAD + repeated(number, "kind kind{i:05} plane\n") + readings


CASES = {
    # name: (size, makes the log), or with a command other than reduce
    "good readings": (800_000, lambda n: HEAD + "station Q\n  bedding N14E 20E, N16E 21E\n" * n),
    "diagnostics": (31_250, lambda n: HEAD + "station Q\n" + "  bedding N98E 20E\n" * n),
    "diagnostics of stations": (31_250, lambda n: HEAD + repeated(n, "station Q{i}\n  bedding N98E 20E\n")),
    "unknown sights, few names": (20_000, lambda n: HEAD + "station Q\n" + repeated(n, "  sight P{i}x N{quarter}E\n")),
    "unknown sights, as many names": (
        4_000,
        lambda n: HEAD + repeated(n, "landmark Peak-{i:06} 44.{place:04}S 169.5E\n")
        + "station Q at 44.5S 169.5E\n" + repeated(n, "  sight Pick-{i:06} N{quarter}E\n"),
    ),
    "unknown ends of legs": (
        4_000,
        lambda n: HEAD + repeated(n, "station Q{i}\n") + repeated(n, "  leg N{quarter}E 20m to X{i}y\n"),
    ),
    "unknown words beside kinds": (
        4_000,
        lambda n: repeated(n, "kind kin{i:06} plane\n") + "station Q\n" + repeated(n, "kinx{i:06} N14E 20E\n"),
    ),
    "lines on a kind never read": (
        8_000,
        lambda n: HEAD + "station Q\n" + "  bedding N14E 20E\n" * n + "  lineation N14E 5 on cleavage\n" * n,
    ),
    "commas": (16_000, lambda n: "station Q\n" + line_of(n, ",")),
    "repeats": (32_000, lambda n: HEAD + "station Q\n" + line_of(n, ", N14E 20E")),
    "stations of one name": (20_000, lambda n: HEAD + "station Q\n  bedding N14E 20E\n" * n),
    "one name for landmarks": (8_000, lambda n: HEAD + "landmark P 44.5S 169.5E\n" * n),
    "a chain of legs and back": (8_000, chain, "fix"),
    "a mesh of legs": (2_500, lambda n: mesh(n, True), "fix"),
    "a mesh known nowhere": (2_500, lambda n: mesh(n, False), "fix"),
    "squares of legs in a row": (1_500, squares, "fix"),
    "a wheel of legs": (3_000, wheel, "fix"),
    "bad sights": (250, bad_sights, "fix"),
    "bad sights from one station": (500, sights_from_one, "fix"),
    "repeats of one line that scatter": (1_200, scattered),
    "rakes on as many kinds": (
        4_000,
        lambda n: kinds(n, "station Q\n" + repeated(n, "  kind{i:05} N14E 20E\n")
                        + repeated(n, "  lineation rake 30 from N14E on kind{i:05}\n")),
    ),
    "kinds summed up": (4_000, lambda n: kinds(n, repeated(n, "station Q{i}\n  kind{i:05} N14E 20E\n")), "summary"),
}


def measure(program, command, log):
    """Seconds of the processor, and the most memory, KiB."""
    child = os.fork()
    if child == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.dup2(null, 2)
        os.execv(program, [program, command, *(["--jobs", "1"] if command == "reduce" else []), log])
    _, status, usage = os.wait4(child, 0)
    if os.waitstatus_to_exitcode(status) not in (0, 1):
        sys.exit(f"status {os.waitstatus_to_exitcode(status)}")
    return usage.ru_utime + usage.ru_stime, usage.ru_maxrss


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    program = os.path.abspath(sys.argv[1])
    scale = float(sys.argv[2]) if len(sys.argv) > 2 else 1
    wanted = sys.argv[3:] or CASES
    bad = 0
    with tempfile.TemporaryDirectory() as folder:
        log = pathlib.Path(folder) / "log.txt"
        for name in wanted:
            size, make, *other = CASES[name]
            command = other[0] if other else "reduce"
            found = []
            for factor in (1, 2, 4):
                log.write_text(make(int(size * scale) * factor))
                found.append((*measure(program, command, str(log)), log.stat().st_size))
            times = [b[0] / a[0] for a, b in zip(found, found[1:])]
            memories = [b[1] / a[1] for a, b in zip(found, found[1:])]
            verdict = "" if times[-1] < 3 else "  NOT LINEAR"
            bad += times[-1] >= 3
            print(
                f"{name}: time x {times[0]:.1f} x {times[1]:.1f}, memory x {memories[0]:.1f} "
                f"x {memories[1]:.1f}; at the end {found[-1][2] / 1e6:.1f} MB, {found[-1][0]:.2f} s, "
                f"{found[-1][1] * 1024 / found[-1][2]:.1f} bytes a byte{verdict}",
                flush=True,
            )
    sys.exit(bad != 0)


if __name__ == "__main__":
    main()
