#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Runs one golden story: the real program, a command line, and the bytes that must come out.

run.py PROGRAM STORY

A story is a folder with
  command         the arguments behind `lodebook`, on one line, quoted as for a shell
  stdin           what is piped in (optional; otherwise nothing is)
  stdout stderr   the expected bytes
  status          the expected exit status
  written/        the files that the command must leave behind, with their bytes (optional)
and the logs that the command reads. It runs in a copy of the folder, with an empty environment.

LODEBOOK_REWRITE_GOLDEN=1 writes what came out as what is expected, for a person to read over before
it is committed; where CI=true this is refused.
"""

import os
import pathlib
import shlex
import shutil
import subprocess
import sys
import tempfile

EXPECTED = ("stdout", "stderr", "status")
OURS = {"command", "stdin", "written", *EXPECTED}


def run(program, story):
    """What comes out of a story: its expected files by name, as bytes."""
    lines = (story / "command").read_text(encoding="utf-8").splitlines()
    if len(lines) != 1:
        sys.exit(f"{story.name}: `command` has {len(lines)} lines instead of one")
    with tempfile.TemporaryDirectory() as folder:
        place = pathlib.Path(folder) / "story"
        shutil.copytree(story, place, ignore=lambda _, names: OURS.intersection(names))
        given = {path.relative_to(place) for path in place.rglob("*")}
        stdin = story / "stdin"
        done = subprocess.run(
            [program, *shlex.split(lines[0])],
            input=stdin.read_bytes() if stdin.exists() else b"",
            capture_output=True,
            cwd=place,
            env={},
            timeout=60,
            check=False,
        )
        came_out = {
            "stdout": done.stdout,
            "stderr": done.stderr,
            "status": f"{done.returncode}\n".encode(),
        }
        for path in sorted(place.rglob("*")):
            name = path.relative_to(place)
            if path.is_dir():
                continue
            if name not in given:
                came_out[f"written/{name}"] = path.read_bytes()
            elif path.read_bytes() != (story / name).read_bytes():
                came_out[f"written/{name}"] = path.read_bytes()
        return came_out


def expected(story):
    """What must come out: name to bytes, and to None where the story lacks the file."""
    wanted = {}
    for name in EXPECTED:
        path = story / name
        wanted[name] = path.read_bytes() if path.is_file() else None
    for path in sorted((story / "written").rglob("*")):
        if path.is_file():
            wanted[str(path.relative_to(story))] = path.read_bytes()
    return wanted


def rewrite(story, came_out):
    if os.environ.get("CI") == "true":
        sys.exit("golden files are not rewritten in CI")
    shutil.rmtree(story / "written", ignore_errors=True)
    for name, data in came_out.items():
        (story / name).parent.mkdir(exist_ok=True)
        (story / name).write_bytes(data)


def show(title, data):
    print(f"---- {title}")
    if data is None:
        print("(there is no such file)")
        return
    sys.stdout.flush()
    sys.stdout.buffer.write(data)
    if not data.endswith(b"\n"):
        print("\n(no newline at the end)" if data else "(nothing)")


def main():
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    program = os.path.abspath(sys.argv[1])
    story = pathlib.Path(sys.argv[2])
    if not (story / "command").is_file():
        sys.exit(f"{story} is no story: it has no `command`")
    came_out = run(program, story)
    if os.environ.get("LODEBOOK_REWRITE_GOLDEN") == "1":
        rewrite(story, came_out)
        return
    wanted = expected(story)
    wrong = [
        name
        for name in sorted(wanted.keys() | came_out.keys())
        if wanted.get(name) is None or wanted[name] != came_out.get(name)
    ]
    for name in wrong:
        show(f"{story.name}: {name} expected", wanted.get(name))
        show(f"{story.name}: {name} came out", came_out.get(name))
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
