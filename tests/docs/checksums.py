#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The checksums that a page gives for the geomagnetic tables are those of the files, each of them.

usage: checksums.py PAGE FOLDER
"""

import hashlib
import pathlib
import re
import sys

page, folder = map(pathlib.Path, sys.argv[1:])
said = dict(re.findall(r"^\| `([\w.]+)` \|.*\| `([0-9a-f]{64})` \|$", page.read_text("utf-8"),
                       re.MULTILINE))
found = {file.name: hashlib.sha256(file.read_bytes()).hexdigest()
         for file in folder.glob("*.txt")}
if not found or said != found:
    sys.exit(f"{page} says {said}, the files have {found}")
print(f"{len(found)} checksums agree")
