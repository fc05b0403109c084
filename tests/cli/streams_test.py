#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Closed pipes, terminals, colours, locales and time."""

import os
import subprocess
import tempfile
import time

from program import BAD, GOOD, PROGRAM, Case, main, open_terminal

ESCAPE = b"\x1b["


class Streams(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)

    def on_terminal(self, *arguments, env=None):
        """What comes out where standard output and error are a terminal."""
        leader, follower = open_terminal()
        process = subprocess.Popen(
            [PROGRAM, *arguments],
            cwd=self.folder,
            env={"TERM": "xterm"} if env is None else env,
            stdin=subprocess.DEVNULL,
            stdout=follower,
            stderr=follower,
        )
        os.close(follower)
        text = b""
        while True:
            try:
                some = os.read(leader, 65536)
            except OSError:  # Linux: the other side is closed
                break
            if not some:
                break
            text += some
        os.close(leader)
        process.wait(timeout=60)
        return text

    def test_a_closed_pipe_ends_quietly(self):
        self.put("long.txt", GOOD + "  bedding N78E 41N\n" * 100_000)
        for arguments in (["reduce", "-q"], ["reduce", "--report", "r.txt"], ["check"]):
            process = subprocess.Popen(
                [PROGRAM, *arguments, "long.txt"],
                cwd=self.folder,
                env={},
                stdout=subprocess.PIPE,
                stderr=subprocess.PIPE,
            )
            process.stdout.readline()
            process.stdout.close()
            self.assertEqual(process.stderr.read(), b"", arguments)
            process.stderr.close()
            self.assertEqual(process.wait(timeout=60), -13, arguments)
        self.assertEqual(self.files(), ["bad.txt", "good.txt", "long.txt"])

    def test_a_closed_pipe_is_quiet_where_the_signal_is_ignored(self):
        read_end, write_end = os.pipe()
        os.close(read_end)
        done = self.run_program("help", stdout=write_end, restore_signals=False)
        os.close(write_end)
        self.assertEqual((done.returncode, done.stderr), (3, b""))

    def test_a_closed_standard_output_is_told(self):
        done = self.run_program("help", preexec_fn=lambda: os.close(1))
        self.assertEqual(done.returncode, 3)
        self.assertIn(b"cannot write standard output", done.stderr)

    def test_a_file_is_not_taken_for_a_closed_stream(self):
        self.run_program(
            "reduce", "good.txt", "missing.txt", "-o", "t.csv", preexec_fn=lambda: os.close(2)
        )
        self.assertNotIn(b"lodebook:", self.read("t.csv"))

    def test_colour_only_on_a_terminal(self):
        self.assertNotIn(ESCAPE, self.run_program("check", "bad.txt").stdout)
        self.assertIn(ESCAPE, self.on_terminal("check", "bad.txt"))
        self.assertIn(ESCAPE, self.on_terminal("convert", "N98E"))

    def test_no_colour_where_the_environment_says_so(self):
        for env in ({"TERM": "xterm", "NO_COLOR": "1"}, {"TERM": "dumb"}):
            self.assertNotIn(ESCAPE, self.on_terminal("check", "bad.txt", env=env))
        self.assertIn(ESCAPE, self.on_terminal("check", "bad.txt", env={"NO_COLOR": ""}))

    def test_the_option_wins(self):
        self.assertNotIn(ESCAPE, self.on_terminal("check", "bad.txt", "--color", "never"))
        for command in ("check", "reduce"):
            done = self.run_program(command, "bad.txt", "--color", "always", env={"NO_COLOR": "1"})
            self.assertIn(ESCAPE, done.stdout if command == "check" else done.stderr)

    def test_table_and_report_do_not_mix_on_a_terminal(self):
        apart = self.run_program("reduce", "good.txt", "good.txt")
        mixed = self.on_terminal("reduce", "good.txt", "good.txt", "--color", "never")
        self.assertEqual(mixed.replace(b"\r\n", b"\n"), apart.stdout + apart.stderr)

    def test_the_locale_makes_no_difference(self):
        self.put("log.txt", "declination 24.6E ±0.4\nstation Ä1 at 44.5S 169.25E\n  bedding N85.5E 32N\n")
        with tempfile.TemporaryDirectory() as locales:
            name = "de_DE.UTF-8"
            made = subprocess.run(
                ["localedef", "-i", "de_DE", "-f", "UTF-8", os.path.join(locales, name)],
                capture_output=True,
                check=False,
            )
            env = {"LOCPATH": locales, "LC_ALL": name, "LANG": name}
            # Not a silent skip: without the locale the test would show nothing.
            comma = subprocess.run(
                ["locale", "decimal_point"], env={**env, "PATH": "/usr/bin:/bin"}, capture_output=True,
                check=True,
            )
            self.assertEqual(comma.stdout, b",\n", made.stderr)
            for arguments in (
                ["reduce", "log.txt"],
                ["reduce", "log.txt", "--format", "json"],
                ["reduce", "log.txt", "--format", "geojson"],
                ["reduce", "log.txt", "--format", "log"],
                ["check", "log.txt"],
                ["convert", "N68.5E", "N98E", "N78E 62%N"],
                ["convert", "N68.5E", "--declination", "24.6E"],
                ["reduce", "missing.txt"],
                ["help", "reduce"],
            ):
                plain = self.run_program(*arguments)
                german = self.run_program(*arguments, env=env)
                self.assertEqual(
                    (german.returncode, german.stdout, german.stderr),
                    (plain.returncode, plain.stdout, plain.stderr),
                    arguments,
                )

    def test_one_reading_is_converted_at_once(self):
        # Beyond a mere start, which takes a fifth of a second with sanitizers. A guard against
        # seconds, no benchmark.
        start = min(self.timed("--version") for _ in range(20))
        best = min(self.timed("convert", "N50W") for _ in range(20))
        self.assertLess(best - start, 0.05)

    def timed(self, *arguments):
        start = time.perf_counter()
        self.run_program(*arguments)
        return time.perf_counter() - start


if __name__ == "__main__":
    main()
