#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""A disk that is full, at every write: a drill, for root, since it mounts a small file system.

usage: full_disk.py LODEBOOK

Every output is written onto disks of 16 KiB to 2 MiB, from far too small to large enough. Each must
be there whole, with status 0, or the old one must be untouched, with status 3 and a message, and no
other file may remain.
"""

import os
import pathlib
import subprocess
import sys
import tempfile

LOG = "set 0\ndeclination 24.6E\n" + "".join(
    f"station L{i} at 44.5S 169.25E\n  bedding N{30 + i % 50}E 32N\n" for i in range(1500)
)
RUNS = (
    ["reduce", "-q", "-o", "{}.csv"],
    ["reduce", "-q", "-o", "{}.json"],
    ["reduce", "-q", "-o", "{}.geojson"],
    ["reduce", "-q", "-o", "{}.log"],
    ["reduce", "-o", "/dev/null", "--report", "{}.txt"],
    ["check", "-o", "{}.txt"],
    ["fix", "-o", "{}.json"],
    ["summary", "-q", "--by", "station", "-o", "{}.txt"],
    ["net", "-q", "-o", "{}.svg"],
    ["sheet", "-q", "-o", "{}.html"],
)


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    if os.geteuid() != 0:
        sys.exit("full_disk.py mounts a file system, and needs root for it")
    program = os.path.abspath(sys.argv[1])
    whole = refused = 0
    with tempfile.TemporaryDirectory() as folder:
        log = pathlib.Path(folder) / "log.txt"
        log.write_text(LOG)
        disk = pathlib.Path(folder) / "disk"
        disk.mkdir()
        for size in (16, 32, 64, 128, 256, 512, 1024, 2048):
            for run in RUNS:
                arguments = [word.format(disk / "out") for word in run]
                output = pathlib.Path(next(word for word in arguments if "out." in word))
                subprocess.run(
                    ["mount", "-t", "tmpfs", "-o", f"size={size}k", "tmpfs", disk], check=True
                )
                try:
                    output.write_text("old")
                    done = subprocess.run([program, *arguments, log], capture_output=True)
                    left = sorted(path.name for path in disk.iterdir())
                    kept = output.read_bytes()
                finally:
                    subprocess.run(["umount", disk], check=True)
                case = f"{size} KiB, {' '.join(run)}: status {done.returncode}"
                if left != [output.name]:
                    sys.exit(f"{case}: {left} remain")
                if done.returncode == 3:
                    refused += 1
                    if kept != b"old" or b"No space left on device" not in done.stderr:
                        sys.exit(f"{case}: {kept[:40]}, {done.stderr}")
                elif done.returncode == 0:
                    whole += 1
                    if kept == b"old" or done.stderr:
                        sys.exit(f"{case}: {kept[:40]}, {done.stderr}")
                else:
                    sys.exit(f"{case}: {done.stderr}")
    print(f"{whole} outputs whole, {refused} refused with the old one untouched")
    if not whole or not refused:
        sys.exit("the sizes of the disks show only one of the two")


if __name__ == "__main__":
    main()
