#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`lodebook fix` as a program: where its documents go, in which format, and how it ends."""

import csv
import io
import json
import os

from program import BAD, WARNING, Case, main

PLACED = "set 0\ndeclination 24.6E\nstation Q1 at 44.6891S 169.0144E ±8\n  bedding N78E 41N\n"
CAUTION = b"no substitute for navigation"


class Fix(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", PLACED)
        self.put("bad.txt", BAD)
        self.put("odd.txt", WARNING)

    def test_the_report_goes_to_the_screen_or_to_the_file(self):
        on_screen = self.assert_status(0, "fix", "good.txt")
        self.assertIn(b"\nQ1: 44.68910S 169.01440E, 59G ", on_screen.stdout)
        self.assertIn(CAUTION, on_screen.stdout)
        self.assertEqual(on_screen.stderr, b"")
        done = self.assert_status(0, "fix", "good.txt", "-o", "fix.txt")
        self.assertEqual((done.stdout, done.stderr), (b"", b""))
        self.assertEqual(self.read("fix.txt"), on_screen.stdout)

    def test_the_extension_names_the_format(self):
        for name, start in (
            ("a.csv", b"station,latitude,"),
            ("a.json", b'{"format":"lodebook-fix"'),
            ("a.JSON", b'{"format":"lodebook-fix"'),
            ("a.geojson", b'{"type":"FeatureCollection"'),
            ("a.txt", b"good.txt\n"),
            ("a", b"good.txt\n"),
        ):
            self.assert_status(0, "fix", "good.txt", "-o", name)
            self.assertTrue(self.read(name).startswith(start), name)
        self.assert_status(0, "fix", "good.txt", "-o", "b.csv", "--format", "text")
        self.assertTrue(self.read("b.csv").startswith(b"good.txt\n"))

    def test_what_is_wrong_is_told_under_the_name_of_its_log(self):
        for name in ("a.txt", "b.txt"):
            self.put(name, "set 0\ndeclination 24.6E\nstation Q1\n  lineation N50W -31\n")
        told = self.assert_status(0, "fix", "a.txt", "good.txt", "b.txt", "--format", "csv").stderr
        self.assertEqual(
            told, b"a.txt\n  notes: line 4 other-end\nb.txt\n  notes: line 4 other-end\n"
        )

    def test_formats_are_those_of_the_command(self):
        done = self.assert_status(2, "fix", "good.txt", "--format", "log")
        self.assertIn(b"help: --format text|json|csv|geojson\n", done.stderr)
        self.assert_status(2, "fix", "good.txt", "--report", "r.txt")
        self.assert_status(2, "reduce", "good.txt", "--rays", "r.geojson")
        self.assert_status(2, "fix")

    def test_several_logs_make_one_document(self):
        done = self.assert_status(1, "fix", "good.txt", "bad.txt", "--format", "json")
        logs = json.loads(done.stdout)["logs"]
        self.assertEqual([log["file"] for log in logs], ["good.txt", "bad.txt"])
        self.assertEqual([log["stations"][0]["name"] for log in logs], ["Q1", "Q2"])
        done = self.assert_status(1, "fix", "good.txt", "bad.txt", "--format", "csv", "-q")
        rows = list(csv.DictReader(io.StringIO(done.stdout.decode())))
        self.assertEqual([row["source"] for row in rows], ["good.txt:3", "bad.txt:3"])
        report = self.assert_status(1, "fix", "good.txt", "bad.txt").stdout
        self.assertEqual(report.count(CAUTION), 1)

    def test_rays_are_a_second_output(self):
        alone = self.assert_status(0, "fix", "good.txt")
        done = self.assert_status(0, "fix", "good.txt", "--rays", "rays.geojson")
        self.assertEqual(done.stdout, alone.stdout)
        features = json.loads(self.read("rays.geojson"))["features"]
        self.assertEqual([f["properties"]["what"] for f in features], ["ellipse"])
        done = self.assert_status(0, "fix", "good.txt", "-q", "--rays", "-")
        self.assertEqual(done.stdout, self.read("rays.geojson"))

    def test_outputs_are_never_inputs_nor_each_other(self):
        os.link(self.folder / "good.txt", self.folder / "hard.txt")
        for option in ("-o", "--rays"):
            for name in ("good.txt", "./good.txt", "hard.txt"):
                done = self.assert_status(2, "fix", "good.txt", option, name)
                self.assertIn(b"both input and output", done.stderr)
        for name in ("one.json", "./one.json"):
            done = self.assert_status(2, "fix", "good.txt", "-o", "one.json", "--rays", name)
            self.assertIn(b"two outputs would be written to", done.stderr)
        self.assert_status(2, "fix", "good.txt", "--rays", "-")
        self.assert_status(2, "fix", "-", "-")
        self.assertEqual(self.read("good.txt"), PLACED.encode())
        self.assertEqual(self.files(), ["bad.txt", "good.txt", "hard.txt", "odd.txt"])

    def test_errors_and_strict_warnings_count_as_in_check(self):
        self.assert_status(1, "fix", "bad.txt")
        self.assert_status(0, "fix", "odd.txt")
        self.assert_status(1, "fix", "odd.txt", "--strict")
        self.assert_status(3, "fix", "missing.txt", "bad.txt")
        self.assert_status(3, "fix", "good.txt", "-o", "/dev/full")
        self.assert_status(3, "fix", "good.txt", "--rays", "/dev/full")

    def test_faults_are_told_in_the_report_or_beside_a_table(self):
        fault = b"bad.txt:4:11: error: quadrant angle 98 is over 90"
        done = self.assert_status(1, "fix", "bad.txt")
        self.assertIn(fault, done.stdout)
        self.assertEqual(done.stderr, b"")
        for form in ("csv", "geojson"):
            done = self.assert_status(1, "fix", "bad.txt", "--format", form)
            self.assertIn(fault, done.stderr)
            self.assertNotIn(fault, done.stdout)
            self.assertEqual(self.assert_status(1, "fix", "bad.txt", "--format", form, "-q").stderr,
                             b"")
        done = self.assert_status(1, "fix", "bad.txt", "--format", "json")
        codes = [one["code"] for one in json.loads(done.stdout)["logs"][0]["diagnostics"]]
        self.assertIn("quadrant-angle", codes)
        self.assertEqual(done.stderr, b"")

    def test_quiet_leaves_the_status_and_the_data(self):
        done = self.assert_status(1, "fix", "bad.txt", "--quiet")
        self.assertEqual((done.stdout, done.stderr), (b"", b""))
        done = self.assert_status(0, "fix", "good.txt", "--quiet", "--format", "csv")
        self.assertTrue(done.stdout.startswith(b"station,"))

    def test_a_log_may_be_piped_in_and_have_another_encoding(self):
        done = self.assert_status(0, "fix", "-", "--format", "csv", stdin=PLACED)
        self.assertIn(b",<stdin>:3\n", done.stdout)
        self.put("old.txt", PLACED.replace("Q1", "Bühl").encode("cp1252"))
        done = self.assert_status(0, "fix", "old.txt", "--encoding", "windows-1252")
        self.assertIn("\nBühl: 44.68910S".encode(), done.stdout)

    def test_colour_is_for_the_report(self):
        done = self.assert_status(0, "fix", "good.txt", "--color", "always")
        self.assertIn(b"\x1b[1mQ1\x1b[0m: ", done.stdout)
        done = self.assert_status(0, "fix", "good.txt", "--color", "always", "--format", "csv")
        self.assertNotIn(b"\x1b", done.stdout)


if __name__ == "__main__":
    main()
