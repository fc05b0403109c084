#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""How time and memory grow with a log that does one thing very often: a drill.

usage: growth.py LODEBOOK [SCALE [CASE...]]

Each case is run at once, twice and four times its size, and what a doubling costs is printed: 2 is
linear, 4 would be quadratic. SCALE multiplies all sizes (usually 1; 8 has a log of 1 GB and a million
diagnostics in one). A case that grows by more than 3 at its last doubling fails.
"""

import os
import pathlib
import sys
import tempfile

HEAD = "set 0\ndeclination 1E\n"


def repeated(number, line):
    return "".join(line.format(i=i, quarter=i % 90, place=i % 9000) for i in range(number))


def line_of(number, word):
    """As many as asked for, on lines just short of the longest that is read."""
    a_line = 65_000 // len(word)
    lines = [word * min(a_line, number - start) for start in range(0, number, a_line)]
    return "".join(f"  bedding N10E 20E{words}\n" for words in lines)


CASES = {
    # name: (size, makes the log)
    "good readings": (800_000, lambda n: HEAD + "station Q\n  bedding N10E 20E, N12E 21E\n" * n),
    "diagnostics": (31_250, lambda n: HEAD + "station Q\n" + "  bedding N95E 20E\n" * n),
    "diagnostics of stations": (31_250, lambda n: HEAD + repeated(n, "station Q{i}\n  bedding N95E 20E\n")),
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
        lambda n: repeated(n, "kind kin{i:06} plane\n") + "station Q\n" + repeated(n, "kinx{i:06} N10E 20E\n"),
    ),
    "lines on a kind never read": (
        8_000,
        lambda n: HEAD + "station Q\n" + "  bedding N10E 20E\n" * n + "  lineation N10E 5 on cleavage\n" * n,
    ),
    "commas": (16_000, lambda n: "station Q\n" + line_of(n, ",")),
    "repeats": (32_000, lambda n: HEAD + "station Q\n" + line_of(n, ", N10E 20E")),
    "stations of one name": (20_000, lambda n: HEAD + "station Q\n  bedding N10E 20E\n" * n),
    "one name for landmarks": (8_000, lambda n: HEAD + "landmark P 44.5S 169.5E\n" * n),
}


def measure(program, log):
    """Seconds of the processor, and the most memory, KiB."""
    child = os.fork()
    if child == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.dup2(null, 2)
        os.execv(program, [program, "reduce", "--jobs", "1", log])
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
            size, make = CASES[name]
            found = []
            for factor in (1, 2, 4):
                log.write_text(make(int(size * scale) * factor))
                found.append((*measure(program, str(log)), log.stat().st_size))
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
