#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Output files are written whole or not at all, and never over an input."""

import os
import threading

from program import BAD, GOOD, Case, main


class OutputFiles(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)

    def test_the_table_goes_to_the_file_and_nothing_to_the_screen(self):
        on_screen = self.assert_status(0, "reduce", "good.txt")
        done = self.assert_status(0, "reduce", "good.txt", "-o", "table.csv")
        self.assertEqual(done.stdout, b"")
        self.assertEqual(self.read("table.csv"), on_screen.stdout)
        self.assertEqual(self.files(), ["bad.txt", "good.txt", "table.csv"])

    def test_the_report_goes_to_its_file_also_when_quiet(self):
        on_screen = self.assert_status(0, "reduce", "good.txt")
        for quiet in ([], ["-q"]):
            done = self.assert_status(0, "reduce", "good.txt", "--report", "report.txt", *quiet)
            self.assertEqual(done.stderr, b"")
            self.assertEqual(self.read("report.txt"), on_screen.stderr)

    def test_check_writes_its_report_to_either_option_but_not_to_both(self):
        on_screen = self.assert_status(0, "check", "good.txt")
        for option in ("-o", "--report"):
            done = self.assert_status(0, "check", "good.txt", option, "report.txt")
            self.assertEqual(done.stdout, b"")
            self.assertEqual(self.read("report.txt"), on_screen.stdout)
        self.assert_status(2, "check", "good.txt", "-o", "a", "--report", "b")

    def test_errors_in_a_log_do_not_keep_the_file_from_being_written(self):
        self.assert_status(1, "reduce", "bad.txt", "-o", "table.csv")
        self.assertEqual(self.read("table.csv").count(b"\n"), 3)

    def test_the_extension_names_the_format(self):
        for name, start in (
            ("a.csv", b"station,"),
            ("a.json", b'{"format"'),
            ("a.JSON", b'{"format"'),
            ("a.geojson", b'{"type"'),
            ("a.log", b"set 0"),
            ("a.txt", b"station,"),
            ("a", b"station,"),
        ):
            self.assert_status(0, "reduce", "good.txt", "-o", name)
            self.assertTrue(self.read(name).startswith(start), name)
        self.assert_status(0, "reduce", "good.txt", "-o", "b.csv", "--format", "json")
        self.assertTrue(self.read("b.csv").startswith(b'{"format"'))

    def test_a_full_disk_is_told_and_status_3(self):
        for arguments in (
            ["reduce", "good.txt", "-o", "/dev/full"],
            ["reduce", "good.txt", "--report", "/dev/full"],
            ["check", "good.txt", "-o", "/dev/full"],
            ["convert", "N50W", "-o", "/dev/full"],
        ):
            done = self.assert_status(3, *arguments)
            self.assertIn(
                b"lodebook: cannot write /dev/full: No space left on device\n", done.stderr
            )

    def test_a_full_disk_behind_standard_output_is_told(self):
        for arguments in (
            ["reduce", "good.txt"],
            ["check", "good.txt"],
            ["convert", "N50W"],
            ["explain"],
            ["help"],
            ["--version"],
        ):
            with open("/dev/full", "wb") as full:
                done = self.assert_status(3, *arguments, stdout=full)
            self.assertIn(
                b"lodebook: cannot write standard output: No space left on device\n", done.stderr
            )

    def test_a_full_disk_behind_the_report_leaves_the_table(self):
        with open("/dev/full", "wb") as full:
            self.assert_status(3, "reduce", "good.txt", "-o", "table.csv", stderr=full)
        self.assertTrue(self.read("table.csv").endswith(b"good.txt:4:3\n"))

    def test_no_log_read_leaves_the_old_file_untouched(self):
        self.put("table.csv", "old")
        self.assert_status(3, "reduce", "missing.txt", "-o", "table.csv")
        self.assertEqual(self.read("table.csv"), b"old")
        self.assertEqual(self.files(), ["bad.txt", "good.txt", "table.csv"])

    def test_a_file_in_a_missing_folder_is_told(self):
        done = self.assert_status(3, "reduce", "good.txt", "-o", "none/table.csv")
        self.assertIn(b"cannot write none/table.csv: No such file or directory", done.stderr)

    def test_a_folder_as_output_is_told(self):
        (self.folder / "sub").mkdir()
        done = self.assert_status(3, "reduce", "good.txt", "-o", "sub")
        self.assertIn(b"cannot write sub: Is a directory", done.stderr)

    def test_a_wrong_command_line_leaves_the_old_file_untouched(self):
        self.put("table.csv", "old")
        self.assert_status(2, "reduce", "good.txt", "-o", "table.csv", "--north", "south")
        self.assertEqual(self.read("table.csv"), b"old")

    def test_an_output_is_never_an_input_under_any_name(self):
        os.symlink("good.txt", self.folder / "link.txt")
        os.link(self.folder / "good.txt", self.folder / "hard.txt")
        for name in ("good.txt", "./good.txt", "link.txt", "hard.txt", str(self.folder / "good.txt")):
            for arguments in (
                ["reduce", "good.txt", "-o", name],
                ["reduce", "bad.txt", "good.txt", "--report", name],
                ["check", "good.txt", "-o", name],
                ["convert", "--column", "set", "good.txt", "-o", name],
            ):
                done = self.assert_status(2, *arguments)
                self.assertIn(b"both input and output", done.stderr)
                self.assertEqual(self.read("good.txt"), GOOD.encode())
        self.assertEqual(self.files(), ["bad.txt", "good.txt", "hard.txt", "link.txt"])

    def test_an_output_is_not_the_file_behind_standard_input(self):
        with open(self.folder / "good.txt", "rb") as log:
            self.assert_status(2, "reduce", "-", "-o", "good.txt", stdin=log)
        self.assertEqual(self.read("good.txt"), GOOD.encode())

    def test_standard_output_is_not_appended_to_an_input(self):
        with open(self.folder / "good.txt", "ab") as log:
            self.assert_status(2, "reduce", "good.txt", stdout=log)
        self.assertEqual(self.read("good.txt"), GOOD.encode())

    def test_a_missing_log_is_not_made_as_an_output(self):
        self.assert_status(2, "reduce", "good.txt", "missing.txt", "-o", "missing.txt")
        self.assertEqual(self.files(), ["bad.txt", "good.txt"])

    def test_two_outputs_are_never_one_file(self):
        os.symlink("table.csv", self.folder / "link.csv")
        for report in ("table.csv", "./table.csv", "link.csv"):
            done = self.assert_status(2, "reduce", "good.txt", "-o", "table.csv", "--report", report)
            self.assertIn(b"two outputs would be written to", done.stderr)
        self.assert_status(2, "reduce", "good.txt", "--report", "-")
        self.assertEqual(self.files(), ["bad.txt", "good.txt", "link.csv"])

    def test_two_outputs_may_both_go_to_dev_null(self):
        self.assert_status(0, "reduce", "good.txt", "-o", "/dev/null", "--report", "/dev/null")

    def test_table_and_report_may_share_a_stream_and_do_not_mix(self):
        apart = self.assert_status(1, "reduce", "good.txt", "bad.txt")
        both = self.folder / "both"
        with open(both, "wb") as file:
            self.assert_status(1, "reduce", "good.txt", "bad.txt", stdout=file, stderr=file)
        self.assertEqual(both.read_bytes(), apart.stdout + apart.stderr)

    def test_a_pipe_with_a_name_is_written_directly(self):
        os.mkfifo(self.folder / "pipe")
        got = []
        reader = threading.Thread(target=lambda: got.append(self.read("pipe")))
        reader.start()
        self.assert_status(0, "reduce", "good.txt", "-q", "-o", "pipe")
        reader.join(timeout=30)
        self.assertEqual(got, [self.assert_status(0, "reduce", "good.txt").stdout])

    def test_a_clean_log_is_written_of_one_log_only(self):
        self.assert_status(0, "reduce", "good.txt", "-o", "clean.log")
        self.assert_status(2, "reduce", "good.txt", "bad.txt", "-o", "clean.log")


if __name__ == "__main__":
    main()
