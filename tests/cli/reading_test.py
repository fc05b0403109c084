#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Logs that can and cannot be read, and the exit status they lead to."""

import json
import os

from program import BAD, GOOD, WARNING, Case, main


class Reading(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)
        self.put("warning.txt", WARNING)
        (self.folder / "folder").mkdir()

    def test_exit_status_of_each_kind_and_of_several_at_once(self):
        for status, arguments in (
            (0, ["good.txt"]),
            (0, ["warning.txt"]),
            (0, ["--strict", "good.txt"]),
            (1, ["--strict", "warning.txt"]),
            (1, ["bad.txt"]),
            (1, ["good.txt", "bad.txt", "good.txt"]),
            (3, ["missing.txt"]),
            (3, ["folder"]),
            (3, ["bad.txt", "missing.txt"]),
            (3, ["missing.txt", "bad.txt"]),
            (2, ["missing.txt", "bad.txt", "--north"]),
            (2, []),
        ):
            for command in ("reduce", "check"):
                with self.subTest(command=command, arguments=arguments):
                    self.assert_status(status, command, *arguments)

    def test_quiet_keeps_the_exit_status(self):
        for status, log in ((0, "good.txt"), (1, "bad.txt")):
            done = self.assert_status(status, "reduce", "-q", log)
            self.assertEqual(done.stderr, b"")
            self.assertTrue(done.stdout.startswith(b"station,"))
            done = self.assert_status(status, "check", "-q", log)
            self.assertEqual((done.stdout, done.stderr), (b"", b""))

    def test_an_unreadable_log_is_told_and_the_others_are_reduced(self):
        done = self.assert_status(3, "reduce", "missing.txt", "good.txt", "folder", "bad.txt")
        self.assertIn(b"lodebook: cannot read missing.txt: No such file or directory\n", done.stderr)
        self.assertIn(b"lodebook: cannot read folder: Is a directory\n", done.stderr)
        alone = self.assert_status(1, "reduce", "good.txt", "bad.txt")
        self.assertEqual(done.stdout, alone.stdout)

    def test_a_byte_without_a_character_in_windows_1252(self):
        self.put("old.txt", b"station A\n  note caf\x81\n")
        done = self.assert_status(1, "check", "--encoding", "windows-1252", "old.txt")
        self.assertIn(b"byte 0x81 is no character of windows-1252 [encoding]", done.stdout)

    def test_a_closed_standard_input_is_told(self):
        done = self.run_program("reduce", "-", stdin=None, preexec_fn=lambda: os.close(0))
        self.assertEqual(done.returncode, 3)
        self.assertIn(b"cannot read <stdin>", done.stderr)

    def test_a_log_from_standard_input(self):
        piped = self.assert_status(0, "reduce", "-", stdin=GOOD)
        named = self.assert_status(0, "reduce", "good.txt")
        self.assertEqual(piped.stdout.replace(b"<stdin>", b"good.txt"), named.stdout)
        self.assertIn(b"<stdin>:4:3", piped.stdout)

    def test_standard_input_is_read_once(self):
        done = self.assert_status(2, "reduce", "-", "good.txt", "-", stdin=GOOD)
        self.assertIn(b"is given twice", done.stderr)

    def test_many_logs_keep_their_own_settings(self):
        self.put("magnetic.txt", "station M\n  bedding N78E 41N\n")
        done = self.assert_status(0, "reduce", "good.txt", "magnetic.txt")
        rows = [line.split(b",") for line in done.stdout.splitlines()[1:]]
        self.assertEqual([row[15] for row in rows], [b"true", b"magnetic"])
        self.assertEqual([row[3] for row in rows], [b"282.6", b"258.0"])

    def test_every_format_of_many_logs_is_one_document(self):
        for form in ("json", "geojson"):
            done = self.assert_status(1, "reduce", "good.txt", "bad.txt", "--format", form)
            document = json.loads(done.stdout)
            parts = document["logs"] if form == "json" else document["features"]
            self.assertEqual(len(parts), {"json": 2, "geojson": 3}[form])
        done = self.assert_status(1, "check", "good.txt", "bad.txt", "--report-format", "json")
        json.loads(done.stdout)

    def test_a_windows_1252_log_reads_as_if_it_were_utf_8(self):
        text = "set 0\ndeclination 24.6E ±0.4\nstation Q1\n  unit gris é € – œ\n  bedding N78°E 41°N\n"
        self.put("utf8.txt", text)
        self.put("1252.txt", text.encode("windows-1252"))
        self.assert_status(1, "reduce", "1252.txt")
        old = self.assert_status(0, "reduce", "--encoding", "windows-1252", "1252.txt")
        new = self.assert_status(0, "reduce", "utf8.txt")
        self.assertEqual(old.stdout.replace(b"1252.txt", b"utf8.txt"), new.stdout)

    def test_options_stand_in_for_what_a_log_does_not_say(self):
        self.put("bare.txt", "station Q1\n  bedding N78E 41\n")
        self.assert_status(1, "reduce", "bare.txt")
        done = self.assert_status(
            0, "reduce", "bare.txt", "--rule", "left", "--declination", "24.6E", "--set", "0"
        )
        self.assertIn(b"Q1,bedding,plane,282.6,41.0,12.6,", done.stdout)

    def test_no_output_names_an_absolute_path(self):
        for arguments in (
            ["reduce"],
            ["reduce", "--format", "json"],
            ["reduce", "--format", "geojson"],
            ["check"],
            ["check", "--report-format", "json"],
        ):
            done = self.assert_status(1, *arguments, str(self.folder / "bad.txt"))
            self.assertNotIn(str(self.folder).encode(), done.stdout)
            self.assertNotIn(str(self.folder).encode(), done.stderr)

    def test_the_blank_heading_is_a_good_log_once_a_station_is_added(self):
        blank = self.assert_status(0, "help", "log", "--blank").stdout
        self.assert_status(0, "check", "-", stdin=blank)
        self.assert_status(0, "check", "-", stdin=blank + b"station Q1\n  bedding N78E 41N\n")

    def test_the_blank_heading_without_its_comment_marks_reports_clean(self):
        blank = self.assert_status(0, "help", "log", "--blank").stdout.decode()
        first, rest = blank.split("\n", 1)
        self.assertTrue(first.startswith("# "))
        filled = "\n".join(line.removeprefix("# ").removeprefix("# ") for line in rest.split("\n"))
        filled = "\n".join(line[1:] if line.startswith("#") else line for line in filled.split("\n"))
        done = self.assert_status(0, "check", "--strict", "-", stdin=filled)
        self.assertIn(b"3 readings: 3 ok", done.stdout)


if __name__ == "__main__":
    main()
