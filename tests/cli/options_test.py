#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Options on the real command line: where they stand, and what a wrong one leads to."""

from program import BAD, GOOD, Case, main


class Options(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)

    def test_options_stand_before_or_after_the_command(self):
        wanted = self.assert_status(0, "reduce", "good.txt", "--north", "magnetic", "-q")
        for arguments in (
            ["--north", "magnetic", "-q", "reduce", "good.txt"],
            ["-q", "reduce", "--north=magnetic", "good.txt"],
            ["--north=magnetic", "reduce", "good.txt", "-q"],
            ["reduce", "-q", "--north", "magnetic", "--", "good.txt"],
        ):
            done = self.assert_status(0, *arguments)
            self.assertEqual((done.stdout, done.stderr), (wanted.stdout, b""))

    def test_a_file_may_be_called_like_an_option(self):
        self.put("-q", GOOD)
        self.put("--north", GOOD)
        done = self.assert_status(0, "reduce", "--", "-q", "--north")
        self.assertEqual(done.stdout.count(b"\n"), 3)
        done = self.assert_status(0, "reduce", "./-q")
        self.assertIn(b"./-q:4:3", done.stdout)

    def test_a_wrong_command_line_is_status_2_with_advice_and_no_output(self):
        for arguments in (
            [],
            ["-q"],
            ["redcue", "good.txt"],
            ["good.txt"],
            ["reduce"],
            ["check"],
            ["reduce", "good.txt", "--nroth", "true"],
            ["reduce", "good.txt", "--north", "east"],
            ["reduce", "good.txt", "--north"],
            ["reduce", "good.txt", "--north", "true", "--north", "true"],
            ["reduce", "good.txt", "--column", "strike"],
            ["reduce", "good.txt", "--strict=yes"],
            ["reduce", "good.txt", "--declination", "24.6"],
            ["reduce", "good.txt", "--declination", "modle"],
            ["convert", "N50W", "--declination", "model"],
            ["convert", "N50W", "--north", "grid", "--declination", "24E"],
            ["reduce", "good.txt", "--set", "as-set"],
            ["reduce", "good.txt", "-5"],
            ["reduce", "good.txt", "--sidecar"],
            ["check", "good.txt", "-o", "a.csv", "--sidecar"],
            ["check", "good.txt", "--format", "json"],
            ["convert", "N50W", "--north", "true"],
            ["convert", "--column", "strike"],
            ["convert", "--column", "strike", "a.csv", "b.csv"],
            ["explain", "quadrant-angel"],
            ["explain", "quadrant-angle", "tally"],
            ["help", "lgo"],
            ["help", "reduce", "check"],
            ["help", "--blank"],
            ["--bogus"],
        ):
            with self.subTest(arguments):
                done = self.assert_status(2, *arguments)
                self.assertEqual(done.stdout, b"")
                self.assertRegex(done.stderr, b"(?m)^(help: |Usage: )")

    def test_a_file_without_a_command_is_told_what_to_type(self):
        done = self.assert_status(2, "good.txt")
        self.assertEqual(
            done.stderr, b"lodebook: 'good.txt' is not a command\nhelp: lodebook reduce good.txt\n"
        )

    def test_usage_goes_before_files_and_files_before_errors(self):
        self.assert_status(2, "reduce", "missing.txt", "bad.txt", "--bogus")
        self.assert_status(3, "reduce", "missing.txt", "bad.txt")
        self.assert_status(3, "reduce", "bad.txt", "-o", "/dev/full")
        self.assert_status(1, "reduce", "bad.txt")

    def test_a_warning_about_an_option_counts_where_warnings_do(self):
        arguments = ["check", "good.txt", "--declination", "75W"]
        done = self.assert_status(0, *arguments)
        self.assertIn(b"--declination:1:1: warning: ", done.stderr)
        self.assert_status(1, *arguments, "--strict")


if __name__ == "__main__":
    main()
