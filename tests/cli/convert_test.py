#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`convert` of arguments and of lines."""

import os
import subprocess

from program import PROGRAM, Case, main


class Convert(Case):
    def test_one_result_an_argument_in_order_and_an_empty_line_for_a_failure(self):
        done = self.assert_status(1, "convert", "N50W", "N98E", "N78E 41N")
        self.assertEqual(done.stdout, b"310\n\n258/41 N\n")
        self.assertTrue(done.stderr.startswith(b"argument 2:1:1: error: "))
        self.assertIn(b"[quadrant-angle]\n", done.stderr)

    def test_negative_numbers_are_readings(self):
        done = self.assert_status(0, "convert", "--as", "line", "-35 > N50W", "--to", "azimuth")
        self.assertEqual(done.stdout, b"130/35\n")
        done = self.assert_status(1, "convert", "-15")
        self.assertIn(b"[azimuth-range]", done.stderr)

    def test_a_reading_cut_up_by_the_shell_is_told_to_be_quoted(self):
        for words, quoted in (
            (["N78E", "41N"], b"'N78E 41N'"),
            (["bedding", "N78E", "41N"], b"'bedding N78E 41N'"),
            (["N78°30'E", "41N"], "'N78°30'\\''E 41N'".encode()),
        ):
            done = self.assert_status(2, "convert", *words)
            self.assertEqual(done.stdout, b"")
            self.assertIn(b"help: quote it: lodebook convert " + quoted + b"\n", done.stderr)

    def test_arguments_that_are_readings_each_are_not_joined(self):
        self.assertEqual(self.assert_status(0, "convert", "N50W", "15").stdout, b"310\n015\n")

    def test_lines_of_standard_input(self):
        done = self.assert_status(1, "convert", stdin="N50W\n\n  \nN78E 41N\r\nN98E\r310")
        self.assertEqual(done.stdout, b"310\n\n\n258/41 N\n\n310\n")
        self.assertTrue(done.stderr.startswith(b"<stdin>:5:1: error: "), done.stderr)
        self.assertIn(b"    5 | N98E\n", done.stderr)

    def test_a_dash_is_standard_input(self):
        self.assertEqual(self.assert_status(0, "convert", "-", stdin="N50W").stdout, b"310\n")

    def test_nothing_in_is_nothing_out(self):
        self.assertEqual(self.assert_status(0, "convert", stdin="").stdout, b"")

    def test_many_lines_keep_their_numbers(self):
        lines = ["N50W"] * 300_000
        for number in (1, 150_000, 300_000):
            lines[number - 1] = "N98E"
        done = self.assert_status(1, "convert", stdin="\n".join(lines) + "\n")
        self.assertEqual(done.stdout.count(b"\n"), 300_000)
        for number in (1, 150_000, 300_000):
            self.assertIn(b"<stdin>:%d:1: error" % number, done.stderr)

    def test_each_line_is_answered_before_the_next_is_typed(self):
        process = subprocess.Popen(
            [PROGRAM, "convert"], env={}, stdin=subprocess.PIPE, stdout=subprocess.PIPE
        )
        for typed, answer in ((b"N50W\n", b"310\n"), (b"S\n", b"180\n")):
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
        done = self.assert_status(1, "convert", "-q", "N50W", "N98E")
        self.assertEqual((done.stdout, done.stderr), (b"310\n\n", b""))

    def test_results_go_to_a_file(self):
        self.assert_status(0, "convert", "N50W", "-o", "out")
        self.assertEqual(self.read("out"), b"310\n")
        self.assert_status(0, "convert", "-o", "out", stdin="S\n")
        self.assertEqual(self.read("out"), b"180\n")

    def test_correction_to_magnetic_north_is_told(self):
        done = self.assert_status(0, "convert", "--set", "10E", "N50W")
        self.assertEqual(done.stdout, b"300\n")
        self.assertIn(b"warning: no declination", done.stderr)
        done = self.assert_status(0, "convert", "--set", "10E", "--north", "magnetic", "N50W")
        self.assertEqual((done.stdout, done.stderr), (b"300\n", b""))

    def test_doubtful_readings_are_told_and_kept(self):
        done = self.assert_status(0, "convert", "bedding N78E 41N doubtful")
        self.assertEqual(done.stdout, b"258/41 N doubtful\n")
        self.assertIn(b"[doubtful]", done.stderr)


if __name__ == "__main__":
    main()
