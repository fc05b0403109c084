#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Runs the examples of the documentation with the real program.

A `console` block holds commands, each a line `$ lodebook ...` (continued with a backslash), and
behind it what is printed, standard output and error together. A line `...` stands for any lines,
and `[status N]` as the last line for an exit status other than 0. Commands run in one copy of the
demonstration data a page, so that what one writes the next can read.

A `log` block is a station log that must be free of errors.

A picture of the page, `![...](pictures/NAME)`, must be what one of its commands has written as NAME.
With LODEBOOK_REWRITE_GOLDEN=1, which CI refuses, it is written again instead.

usage: run_examples.py LODEBOOK REPOSITORY PAGE...
"""

import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

STATUS = re.compile(r"\[status (\d+)\]")
PICTURE = re.compile(r"!\[[^\]]+\]\(((?:docs/)?pictures/[^)]+)\)")


def blocks(page, kind):
    """The fenced blocks of that kind: (line number, lines)."""
    found, inside, start = [], None, 0
    for number, line in enumerate(page.read_text(encoding="utf-8").splitlines(), 1):
        if inside is None:
            if line.startswith("```"):
                inside, start, marked = [], number, line[3:].strip() == kind
        elif line.strip() == "```":
            if marked:
                found.append((start, inside))
            inside = None
        else:
            inside.append(line)
    if inside is not None:
        sys.exit(f"{page}:{start}: the block never ends")
    return found


def commands(start, lines):
    """The commands of a console block: (line number, command, expected lines)."""
    found, continued = [], False
    for number, line in enumerate(lines, start + 1):
        if continued:
            found[-1][1] += "\n" + line
        elif line.startswith("$ "):
            found.append([number, line[2:], []])
        elif found:
            found[-1][2].append(line)
        else:
            sys.exit(f"line {number}: output before the first command: {line}")
        continued = line.endswith("\\") and (continued or line.startswith("$ "))
    return found


def matches(expected, actual):
    """Whether the lines agree, `...` standing for any number of lines."""
    if not expected:
        return not actual
    if expected[0] == "...":
        return any(matches(expected[1:], actual[skip:]) for skip in range(len(actual) + 1))
    return bool(actual) and expected[0] == actual[0] and matches(expected[1:], actual[1:])


def run(command, folder, environment, text=None):
    done = subprocess.run(["/bin/sh", "-c", command], cwd=folder, env=environment,
                          input=text, stdin=None if text is not None else subprocess.DEVNULL,
                          stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=60)
    return done.returncode, done.stdout.decode("utf-8")


def compare_pictures(page, folder):
    """How many pictures of the page there are, and how many are not those that were just made."""
    pictures = PICTURE.findall(page.read_text(encoding="utf-8"))
    wrong = 0
    for name in pictures:
        made, kept = folder / pathlib.Path(name).name, page.parent / name
        if not made.is_file():
            wrong += 1
            print(f"{page}: no command makes {name}")
        elif os.environ.get("LODEBOOK_REWRITE_GOLDEN") == "1" and os.environ.get("CI") != "true":
            kept.parent.mkdir(exist_ok=True)
            shutil.copyfile(made, kept)
        elif not kept.is_file() or made.read_bytes() != kept.read_bytes():
            wrong += 1
            print(f"{page}: {name} is not what the program draws now")
    return len(pictures), wrong


def main():
    if len(sys.argv) < 4:
        sys.exit(__doc__)
    program, repository = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2])
    pages = [pathlib.Path(page) for page in sys.argv[3:]]
    environment = {"PATH": f"{program.parent}:{os.environ['PATH']}", "LC_ALL": "C.UTF-8"}
    examples = pictures = logs = failures = 0
    for page in pages:
        with tempfile.TemporaryDirectory() as folder:
            shutil.copytree(repository / "data", pathlib.Path(folder) / "data")
            for start, lines in blocks(page, "console"):
                for number, command, expected in commands(start, lines):
                    examples += 1
                    wanted = 0
                    if expected and STATUS.fullmatch(expected[-1]):
                        wanted = int(STATUS.fullmatch(expected.pop())[1])
                    status, output = run(command, folder, environment)
                    actual = [line.rstrip() for line in output.splitlines()]
                    expected = [line.rstrip() for line in expected]
                    if status != wanted or not matches(expected, actual):
                        failures += 1
                        print(f"{page}:{number}: $ {command}\n--- status {wanted} and:",
                              *expected, f"--- but status {status} and:", *actual, sep="\n")
            count, wrong = compare_pictures(page, pathlib.Path(folder))
            pictures += count
            failures += wrong
            for start, lines in blocks(page, "log"):
                logs += 1
                text = ("\n".join(lines) + "\n").encode("utf-8")
                status, output = run("lodebook check -", folder, environment, text)
                if status != 0:
                    failures += 1
                    print(f"{page}:{start}: the log has errors, status {status}:\n{output}")
    print(f"{examples} commands and {logs} logs run, {pictures} pictures compared, {failures} wrong")
    if examples == 0 or logs == 0:
        sys.exit("no examples were found")
    sys.exit(failures != 0)


if __name__ == "__main__":
    main()
