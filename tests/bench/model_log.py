#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""How much the geomagnetic model costs: a log of many stations, reduced with the declination by the
model, and with the same declination stated. Prints the median ratio of paired runs, whole process,
output to /dev/null.

usage: model_log.py LODEBOOK [STATIONS [PAIRS]]
"""

import functools
import pathlib
import sys
import tempfile

import paired


def log(stations, declination):
    """Stations over ten degrees of latitude and longitude, three readings each."""
    lines = ["date 2026-02-14", "set 0", f"declination {declination}"]
    for i in range(stations):
        latitude, longitude = 40 + i % 1000 / 100, 165 + i // 1000 % 1000 / 100
        lines += [f"station S{i} at {latitude:.4f}S {longitude:.4f}E",
                  f"  bedding N{i % 90}E {10 + i % 70}SE",
                  f"  lineation N{i % 80}W {i % 60}",
                  f"  joint {20 + i % 60} > {(i + 90) % 360:03}"]
    return "\n".join(lines) + "\n"


def main(lodebook, stations="100000", pairs="11"):
    with tempfile.TemporaryDirectory() as folder:
        runs = []
        for declination in ("model", "24E ±4"):
            file = pathlib.Path(folder) / f"{declination.split()[0]}.txt"
            file.write_text(log(int(stations), declination), encoding="utf-8")
            runs.append(functools.partial(paired.run, [lodebook, "reduce", "--quiet", file]))
        measured = paired.pairs(*runs, int(pairs))
    print(f"{stations} stations, {pairs} pairs: by the model / stated = {paired.ratio(measured)}")


if __name__ == "__main__":
    main(*sys.argv[1:])
