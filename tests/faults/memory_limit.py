#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Memory that ends, as `ulimit -v` has it: a drill. The program must not be a sanitized build.

usage: memory_limit.py LODEBOOK

A huge line, a line of very many faults, and logs beside each other are read with more and more
memory, until there is enough. Until then each run must end with status 3 and say that memory is out,
and leave the old output untouched.
"""

import os
import pathlib
import resource
import subprocess
import sys
import tempfile

MIB = 1 << 20


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    program = os.path.abspath(sys.argv[1])

    def limited(mib, *arguments):
        return subprocess.run(
            [program, *arguments], capture_output=True, cwd=folder,
            preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_AS, (mib * MIB, mib * MIB)),
        )  # fmt: skip

    with tempfile.TemporaryDirectory() as folder:
        put = lambda name, text: (pathlib.Path(folder) / name).write_text(text)
        put("line.txt", "station Q1\n  bedding N78E 41N " + "x" * (50 * MIB) + "\n")
        put("faults.txt", "station Q1\n" + ("  bedding " + ", " * 30_000 + "\n") * 10)
        put("many.txt", "set 0\n" + "station Q at 44.5S 169.5E\n  bedding N78E 41N\n" * 50_000)
        least = next(mib for mib in range(4, 200) if limited(mib, "--version").returncode == 0)
        runs = 0
        for jobs in ("1", "4"):
            for logs in (["line.txt"], ["faults.txt"], ["many.txt"] * 4, ["many.txt", "line.txt"]):
                for output in ("out.csv", "out.json"):
                    mib, status = least, 3
                    while status == 3:
                        put(output, "old")
                        done = limited(mib, "reduce", "-q", "--jobs", jobs, *logs, "-o", output)
                        status = done.returncode
                        runs += 1
                        case = f"{mib} MiB, {jobs} jobs, {' '.join(logs)}, {output}: status {status}"
                        if status not in (0, 1, 3):
                            sys.exit(f"{case}: {done.stderr}")
                        kept = (pathlib.Path(folder) / output).read_bytes()
                        out = b"lodebook: out of memory\n"
                        # The system may also refuse to read a file for want of memory.
                        cannot = b"Cannot allocate memory\n"
                        if status == 3 and not done.stderr.endswith((out, cannot)):
                            sys.exit(f"{case}: {done.stderr}")
                        if (status == 3) != (kept == b"old"):
                            sys.exit(f"{case}: {kept[:40]}")
                        mib += 1 + mib // 4
                    if any(path.name.startswith(".lodebook") for path in pathlib.Path(folder).iterdir()):
                        sys.exit(f"{case}: a temporary file remains")
    print(f"{runs} runs: from {least} MiB on, all ended well or said that memory is out")


if __name__ == "__main__":
    main()
