#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`convert` of arguments and of lines."""

import os
import subprocess

from program import PROGRAM, Case, main


class Convert(Case):
    def test_one_result_an_argument_in_order_and_an_empty_line_for_a_failure(self):
        done = self.assert_status(1, "convert", "N20W", "N95E", "N85E 32N")
        self.assertEqual(done.stdout, b"340\n\n265/32 N\n")
        self.assertTrue(done.stderr.startswith(b"argument 2:1:1: error: "))
        self.assertIn(b"[quadrant-angle]\n", done.stderr)

    def test_negative_numbers_are_readings(self):
        done = self.assert_status(0, "convert", "--as", "line", "-15 > N20W", "--to", "azimuth")
        self.assertEqual(done.stdout, b"160/15\n")
        done = self.assert_status(1, "convert", "-15")
        self.assertIn(b"[azimuth-range]", done.stderr)

    def test_a_reading_cut_up_by_the_shell_is_told_to_be_quoted(self):
        for words, quoted in (
            (["N85E", "32N"], b"'N85E 32N'"),
            (["bedding", "N85E", "32N"], b"'bedding N85E 32N'"),
            (["N85°30'E", "32N"], "'N85°30'\\''E 32N'".encode()),
        ):
            done = self.assert_status(2, "convert", *words)
            self.assertEqual(done.stdout, b"")
            self.assertIn(b"help: quote it: lodebook convert " + quoted + b"\n", done.stderr)

    def test_arguments_that_are_readings_each_are_not_joined(self):
        self.assertEqual(self.assert_status(0, "convert", "N20W", "15").stdout, b"340\n015\n")

    def test_lines_of_standard_input(self):
        done = self.assert_status(1, "convert", stdin="N20W\n\n  \nN85E 32N\r\nN95E\r340")
        self.assertEqual(done.stdout, b"340\n\n\n265/32 N\n\n340\n")
        self.assertTrue(done.stderr.startswith(b"<stdin>:5:1: error: "), done.stderr)
        self.assertIn(b"    5 | N95E\n", done.stderr)

    def test_a_dash_is_standard_input(self):
        self.assertEqual(self.assert_status(0, "convert", "-", stdin="N20W").stdout, b"340\n")

    def test_nothing_in_is_nothing_out(self):
        self.assertEqual(self.assert_status(0, "convert", stdin="").stdout, b"")

    def test_many_lines_keep_their_numbers(self):
        lines = ["N20W"] * 300_000
        for number in (1, 150_000, 300_000):
            lines[number - 1] = "N95E"
        done = self.assert_status(1, "convert", stdin="\n".join(lines) + "\n")
        self.assertEqual(done.stdout.count(b"\n"), 300_000)
        for number in (1, 150_000, 300_000):
            self.assertIn(b"<stdin>:%d:1: error" % number, done.stderr)

    def test_each_line_is_answered_before_the_next_is_typed(self):
        process = subprocess.Popen(
            [PROGRAM, "convert"], env={}, stdin=subprocess.PIPE, stdout=subprocess.PIPE
        )
        for typed, answer in ((b"N20W\n", b"340\n"), (b"S\n", b"180\n")):
            process.stdin.write(typed)
            process.stdin.flush()
            self.assertEqual(os.read(process.stdout.fileno(), 100), answer)
        process.stdin.close()
        process.stdout.close()
        self.assertEqual(process.wait(timeout=60), 0)

    def test_a_windows_1252_line(self):
        done = self.assert_status(
            0, "convert", "--encoding", "windows-1252", stdin="N68°32'E\n".encode("windows-1252")
        )
        self.assertEqual(done.stdout, b"068.53\n")

    def test_quiet_keeps_results_and_status(self):
        done = self.assert_status(1, "convert", "-q", "N20W", "N95E")
        self.assertEqual((done.stdout, done.stderr), (b"340\n\n", b""))

    def test_results_go_to_a_file(self):
        self.assert_status(0, "convert", "N20W", "-o", "out")
        self.assertEqual(self.read("out"), b"340\n")
        self.assert_status(0, "convert", "-o", "out", stdin="S\n")
        self.assertEqual(self.read("out"), b"180\n")

    def test_correction_to_magnetic_north_is_told(self):
        done = self.assert_status(0, "convert", "--set", "10E", "N20W")
        self.assertEqual(done.stdout, b"330\n")
        self.assertIn(b"warning: no declination", done.stderr)
        done = self.assert_status(0, "convert", "--set", "10E", "--north", "magnetic", "N20W")
        self.assertEqual((done.stdout, done.stderr), (b"330\n", b""))

    def test_doubtful_readings_are_told_and_kept(self):
        done = self.assert_status(0, "convert", "bedding N85E 32N doubtful")
        self.assertEqual(done.stdout, b"265/32 N doubtful\n")
        self.assertIn(b"[doubtful]", done.stderr)


if __name__ == "__main__":
    main()
