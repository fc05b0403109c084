#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Fails where a source lets fmt round a figure: fmt rounds halves to even, the table rounds them up,
so that one figure would have two values. orientation/decimal.hpp has what rounds.

one_rounder.py SOURCES
"""

import pathlib
import re
import sys

# A replacement field with a precision, or the presentation of a floating-point number.
ROUNDS = re.compile(r"\{\w*:[^{}\s\"]*(?:\.\d+|[aefgAEFG])\}")
# Style sheets have braces of their own.
STYLE = {"style.cpp"}

found = []
for path in sorted(pathlib.Path(sys.argv[1]).rglob("*.[ch]pp")):
    if path.name in STYLE:
        continue
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        if '"' in line and ROUNDS.search(line):
            found.append(f"{path}:{number}: {line.strip()}")
if found:
    sys.exit("rounded by fmt:\n" + "\n".join(found))
