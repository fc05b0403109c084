# SPDX-License-Identifier: MIT
"""What the tests of the program share: running it in a folder of its own."""

import os
import pathlib
import pty
import subprocess
import sys
import tempfile
import unittest

if len(sys.argv) < 2:
    sys.exit(f"{sys.argv[0]} PROGRAM")
PROGRAM = os.path.abspath(sys.argv.pop(1))

GOOD = "set 0\ndeclination 24.6E\nstation Q1\n  bedding N78E 41N\n"
BAD = "set 0\ndeclination 24.6E\nstation Q2\n  bedding N98E 41N\n  bedding N80E 30N\n"
WARNING = "station Q3\n  bedding N78E 41N doubtful\n"


class Case(unittest.TestCase):
    maxDiff = None

    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)

    def put(self, name, content):
        data = content.encode() if isinstance(content, str) else content
        (self.folder / name).write_bytes(data)

    def read(self, name):
        return (self.folder / name).read_bytes()

    def files(self):
        return sorted(path.name for path in self.folder.iterdir())

    def run_program(self, *arguments, stdin=b"", env=None, **rest):
        """Runs it, with captured output unless `rest` says otherwise."""
        streams = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, **rest}
        if isinstance(stdin, (bytes, str)):
            streams["input"] = stdin if isinstance(stdin, bytes) else stdin.encode()
        else:
            streams["stdin"] = stdin
        return subprocess.run(
            [PROGRAM, *arguments],
            cwd=self.folder,
            env={} if env is None else env,
            timeout=60,
            check=False,
            **streams,
        )

    def assert_status(self, status, *arguments, **rest):
        done = self.run_program(*arguments, **rest)
        self.assertEqual(done.returncode, status, (arguments, done.stdout, done.stderr))
        return done


def open_terminal():
    """The two ends of a terminal. A machine that has none cannot run the test, which says so."""
    try:
        return pty.openpty()
    except OSError as error:
        raise unittest.SkipTest(f"no pty ({error})") from None


SKIPPED = 77  # CMake's SKIP_RETURN_CODE


def main():
    """Runs the tests of the script. If the machine lacks what some of them need, and no other
    fails, the script counts as skipped, never as passed."""
    done = unittest.main(exit=False).result
    for test, reason in done.skipped:
        print(f"skipped: {reason}: {test}", file=sys.stderr)
    sys.exit(SKIPPED if done.skipped and done.wasSuccessful() else not done.wasSuccessful())
