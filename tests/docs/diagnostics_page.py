#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Compares docs/diagnostics.md with what `lodebook explain` says, or writes it anew.

usage: diagnostics_page.py LODEBOOK PAGE [--write]
"""

import difflib
import pathlib
import re
import subprocess
import sys

HEAD = """\
# Diagnostics

Every diagnostic ends with its code in brackets. This page is what `lodebook explain CODE` says of each; it is written by `tests/docs/diagnostics_page.py`, and a test compares it with the program.

An **error** rejects the reading, or makes the statement void; the exit status is 1. A **warning** is kept, and on a reading's own value makes its row suspect. A **note** is kept.
"""
ROW = re.compile(r"(\S+) +(error|warning|note) +(\S.*)")


def explain(program, *code):
    done = subprocess.run([program, "explain", *code], capture_output=True, check=True,
                          stdin=subprocess.DEVNULL, timeout=60)
    return done.stdout.decode("utf-8")


def paragraphs(text):
    return "\n\n".join(" ".join(part.split()) for part in text.strip().split("\n\n"))


def page(program):
    rows = [ROW.fullmatch(line) for line in explain(program).splitlines()]
    if not rows or not all(rows):
        sys.exit("the list of `lodebook explain` is not understood")
    out = [HEAD, "| code | usually | fault |\n| --- | --- | --- |"]
    out += [f"| [`{row[1]}`](#{row[1]}) | {row[2]} | {row[3]} |" for row in rows]
    for code, severity, title in (row.groups() for row in rows):
        text = explain(program, code)
        first, rest = text.split("\n\n", 1)
        if paragraphs(first) != f"{code} ({severity}): {title}":
            sys.exit(f"{code}: the page and the list differ: {first}")
        meaning, rest = rest.split("\nExample:\n", 1)
        example, remedy = rest.split("\nRemedy: ", 1)
        lines = [line.removeprefix("    ") for line in example.strip("\n").split("\n")]
        out += [f"\n## {code}\n", f"*{severity}*: {title}.\n", paragraphs(meaning),
                "\n```text", *lines, "```\n", paragraphs(remedy)]
    return "\n".join(out) + "\n"


def main():
    if len(sys.argv) not in (3, 4) or sys.argv[3:] not in ([], ["--write"]):
        sys.exit(__doc__)
    program, path = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2])
    wanted = page(program)
    if sys.argv[3:]:
        path.write_text(wanted, encoding="utf-8")
        return
    found = path.read_text(encoding="utf-8")
    if found != wanted:
        sys.stdout.writelines(difflib.unified_diff(
            found.splitlines(True), wanted.splitlines(True), str(path), "lodebook explain"))
        sys.exit(f"{path} is not what `lodebook explain` says; write it with --write")


if __name__ == "__main__":
    main()
