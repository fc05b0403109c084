#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The golden runner itself: it must fail where a story does not hold."""

import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

RUNNER = pathlib.Path(__file__).with_name("run.py")
PROGRAM = "/bin/cat"  # any program with input and output serves


class Runner(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        self.story = pathlib.Path(self.folder.name)
        self.write("command", "log.txt\n")
        self.write("log.txt", "station A\n")
        self.write("stdout", "station A\n")
        self.write("stderr", "")
        self.write("status", "0\n")

    def write(self, name, text):
        (self.story / name).write_text(text, encoding="utf-8")

    def run_story(self, **environment):
        clean = {k: v for k, v in os.environ.items() if k not in ("CI", "LODEBOOK_REWRITE_GOLDEN")}
        return subprocess.run(
            [sys.executable, RUNNER, PROGRAM, self.story],
            env={**clean, **environment},
            capture_output=True,
            text=True,
            check=False,
        )

    def test_a_story_that_holds_passes(self):
        self.assertEqual(self.run_story().returncode, 0)

    def test_a_mismatch_fails_and_shows_both(self):
        self.write("stdout", "station B\n")
        done = self.run_story()
        self.assertEqual(done.returncode, 1)
        self.assertIn("station A", done.stdout)
        self.assertIn("station B", done.stdout)

    def test_another_status_fails(self):
        self.write("status", "1\n")
        self.assertEqual(self.run_story().returncode, 1)

    def test_each_missing_file_fails(self):
        for name in ("stdout", "stderr", "status", "command"):
            with self.subTest(name):
                kept = (self.story / name).read_text()
                (self.story / name).unlink()
                self.assertNotEqual(self.run_story().returncode, 0)
                self.write(name, kept)

    def test_a_file_that_was_not_written_fails(self):
        (self.story / "written").mkdir()
        self.write("written/table.csv", "")
        self.assertEqual(self.run_story().returncode, 1)

    def test_rewriting_takes_over_what_came_out(self):
        self.write("stdout", "")
        self.assertEqual(self.run_story(LODEBOOK_REWRITE_GOLDEN="1").returncode, 0)
        self.assertEqual((self.story / "stdout").read_text(), "station A\n")

    def test_ci_refuses_to_rewrite(self):
        self.write("stdout", "")
        done = self.run_story(LODEBOOK_REWRITE_GOLDEN="1", CI="true")
        self.assertNotEqual(done.returncode, 0)
        self.assertEqual((self.story / "stdout").read_text(), "")


if __name__ == "__main__":
    unittest.main()
