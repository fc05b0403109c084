#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The report for editors: one line a diagnostic, as the page on editors has them read."""

import json
import pathlib
import re

from program import BAD, GOOD, Case, main

ROOT = pathlib.Path(__file__).resolve().parents[2]
DATA = ROOT / "data"
LINES = ["--report-format", "lines"]


def documented_pattern():
    """The problem pattern of the VS Code task in the documentation."""
    page = (ROOT / "docs" / "editors.md").read_text(encoding="utf-8")
    (block,) = re.findall(r"^```json\n(.*?)^```$", page, re.DOTALL | re.MULTILINE)
    (task,) = json.loads(block)["tasks"]
    assert task["command"] == "lodebook" and task["args"][:3] == ["check", *LINES]
    return task["problemMatcher"]["pattern"]


def matched(pattern, output):
    """What an editor makes of the output; every line must be understood."""
    found = []
    for line in output.decode("utf-8").splitlines():
        match = re.search(pattern["regexp"], line)
        assert match, line
        found.append(tuple(match[pattern[part]] for part in
                           ("file", "line", "column", "severity", "message", "code")))
    return found


def reported(document):
    """The same from the JSON report."""
    found = []
    for log in document["logs"]:
        for page in (log, *log["stations"]):
            for one in page["diagnostics"]:
                found.append((log["file"], str(one["line"]), str(one["column"]), one["severity"],
                              one["message"], one["code"]))
    return found


class Lines(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)
        self.pattern = documented_pattern()

    def test_they_are_the_diagnostics_of_the_json_report(self):
        logs = sorted(str(path.name) for path in DATA.glob("*.log"))
        for name in logs:
            self.put(name, (DATA / name).read_bytes())
        for more in ([], ["--declination", "model"]):
            report = self.assert_status(1, "check", "--report-format", "json", *more, *logs)
            lines = self.assert_status(1, "check", *LINES, *more, *logs)
            wanted = reported(json.loads(report.stdout))
            self.assertGreater(len(wanted), 20)
            self.assertEqual({one[3] for one in wanted}, {"error", "warning", "note"})
            self.assertEqual(matched(self.pattern, lines.stdout), wanted)
            self.assertEqual(lines.stderr, b"")

    def test_a_good_log_gives_nothing_and_empties_an_older_list(self):
        self.assertEqual(self.assert_status(0, "check", *LINES, "good.txt").stdout, b"")
        self.put("faults.txt", "good.txt:1:1: error: one of yesterday [name]\n")
        done = self.assert_status(0, "check", *LINES, "good.txt", "-o", "faults.txt")
        self.assertEqual((done.stdout, self.read("faults.txt")), (b"", b""))

    def test_a_file_has_the_name_by_which_an_editor_finds_it(self):
        names = ["a b.txt", "9:41.txt", "±.txt", "sub/../bad.txt", str(self.folder / "bad.txt")]
        (self.folder / "sub").mkdir()
        for name in names:
            self.put(name, BAD)
            (found,) = matched(self.pattern, self.assert_status(1, "check", *LINES, name).stdout)
            self.assertEqual(found[:4], (name, "4", "11", "error"))
        piped = self.assert_status(1, "check", *LINES, "-", stdin=BAD)
        self.assertTrue(piped.stdout.startswith(b"<stdin>:4:11: error: "))

    def test_nothing_in_a_name_ends_the_line_or_reaches_a_terminal(self):
        for name in ("a\nb.txt", "a\x1b[2Jb.txt", "a\rb.txt"):
            self.put(name, BAD)
            done = self.assert_status(1, "check", *LINES, "--color", "always", name)
            self.assertEqual(done.stdout.count(b"\n"), 1)
            self.assertNotRegex(done.stdout.rstrip(b"\n"), rb"[\x00-\x1f\x7f]")
        self.put("names.txt", "set 0\ndeclination 0\nstation A\x1b[31m at 1N 1E\n  bedding N9\x07E\n")
        done = self.assert_status(1, "check", *LINES, "names.txt")
        self.assertNotRegex(done.stdout.replace(b"\n", b""), rb"[\x00-\x1f\x7f]")
        self.assertGreaterEqual(len(matched(self.pattern, done.stdout)), 2)

    def test_a_column_counts_characters(self):
        self.put("marks.txt", "set 0\ndeclination 24.6E ±0.4\nstation Q1\n\tbedding N78°E 41°N, N95°E 3\n")
        (found,) = matched(self.pattern, self.assert_status(1, "check", *LINES, "marks.txt").stdout)
        line = self.read("marks.txt").decode().splitlines()[int(found[1]) - 1]
        self.assertTrue(line[int(found[2]) - 1:].startswith("N95°E"))

    def test_reduce_sends_them_where_its_report_goes(self):
        checked = self.assert_status(1, "check", *LINES, "bad.txt").stdout
        table = self.assert_status(1, "reduce", "bad.txt", "-q").stdout
        done = self.assert_status(1, "reduce", *LINES, "bad.txt")
        self.assertEqual((done.stdout, done.stderr), (table, checked))
        done = self.assert_status(1, "reduce", *LINES, "bad.txt", "--report", "faults.txt")
        self.assertEqual((done.stderr, self.read("faults.txt")), (b"", checked))
        absolute = self.assert_status(1, "reduce", *LINES, str(self.folder / "bad.txt"))
        self.assertEqual(absolute.stdout, table)


if __name__ == "__main__":
    main()
