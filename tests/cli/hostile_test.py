#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Logs, names and arguments that want to be more than text: whatever they hold, no output runs
where it is opened, and no name is followed."""

import csv
import html.parser
import io
import json
import os
import re
import xml.etree.ElementTree

from program import Case, main

# Each wants to be run, obeyed or followed by something that opens an output.
FORMULAS = ["=1+1", "+1+1", "-1+1", "@SUM(A1)", '=HYPERLINK("http://evil.example")', "=cmd|'/c'!A0"]
MARKUP = [
    "<script>alert(1)</script>",
    "</title><script>alert(1)</script>",
    '"onload="alert(1)',
    "' onmouseover='alert(1)",
    "]]>",
    "-->",
    "<!--",
    "<![CDATA[",
    "<?php",
    "&lt;&#60;&",
    "javascript:alert(1)",
    "url(http://evil.example/a.png)",
    "</style><img src=http://evil.example/a.png>",
    "{{7*7}}${7*7}",
]
COMMANDS = ["../../canary", "/etc/passwd", "canary", "|sh", "$(touch canary2)", "`touch canary2`",
            "--output=canary2", "-o", "..", "%s%n", "canary\\n"]
# Marks that turn the direction of writing or have no width: allowed in a log, but not shown.
TURNING = ["a\u202eb", "a\u061cb", "a\u2066b\u2069", "\u202abc", "a\u200fb", "a\u200bb\u2060", "a\ufeffb"]
CONTROL = ["a\x1b[31mb", "a\x1b]0;title\x07b", "a\x9b31mb", "a\x08b", "a\x7fb", "a\x00b", "a\x0cb"]
TEXTS = FORMULAS + MARKUP + COMMANDS + TURNING
HARMLESS = [f"word{number}" for number in range(len(TEXTS))]

HEADING = "set 0\ndeclination 24.6E\nrule right\n"
# What a spreadsheet takes for a number and not for a formula.
NUMBER = re.compile(r"-?\d+(\.\d+)?")
# C0 but for the ends of lines and the tabs of lines as typed, DEL, C1.
OBEYED = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f]")
TURNS = re.compile("[\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]")


def name_of(text):
    """What of a text a name may hold."""
    return re.sub(r"[\s,;>]", "_", text).lstrip("#")


def log_of(texts):
    """Each text at each place that a log has for text; the stations stand on a line."""
    lines = [HEADING]
    lines += [f"landmark {name_of(text)}{i} {44.7 + i / 1000:.4f}S 169.1000E"
              for i, text in enumerate(texts)]
    for i, text in enumerate(texts):
        name = name_of(text)
        lines += [
            f"area {text}", f"observer {text}", f"instrument {text}",
            f"kind {name}k plane", f"short {name}s bedding",
            f"station {name} at {44.7 + i / 1000:.4f}S 169.0000E",
            f"  unit {text}", f"  sample {name} {text}", f"  photo {text}", f"  note {text}",
            f"  bedding N78E 41N ; {text}", f"  {name}k N80E 30N ; {text} # {text}",
            f"  joint {text}", f"  bedding N98E {text}", f"  {text}", f"  datum {text}",
            f"  sight {name}{i} N82E", f"  sight {name} N20E", f"  leg S38E 120m to {name}",
            f"  lineation N50W 35 on {name}", f"  elevation {text}", f"  at {text}",
            f"  time {text}", f"  set {text}", f"  # {text}", f"  ; {text}",
        ]
    return "\n".join(lines) + "\n"


def lines_with(texts):
    """Lines that are not text at all, where a log may have them."""
    lines = [HEADING]
    for text in texts:
        lines += [f"area {text}", "station Q1", f"  bedding {text}", f"  bedding N78E 41N ; {text}",
                  f"  sight {text} N20E", f"  note {text}", f"  {text}", f"  photo {text}",
                  f"station {text}", f"  bedding N78E 41N {text}"]
    return "\n".join(lines) + "\n"


TABLES = [("reduce", "-q"), ("reduce", "-q", "--repeats", "mean", "--grid"),
          ("fix", "-q", "--format", "csv"),
          ("summary", "-q", "--format", "csv", "--by", "unit,station"), ("register", "-q")]
DOCUMENTS = [("reduce", "-q", "--format", "json"), ("reduce", "-q", "--format", "geojson"),
             ("check", "--report-format", "json"), ("fix", "-q", "--format", "json"),
             ("fix", "-q", "--format", "geojson"), ("fix", "-q", "--rays", "-", "-o", "/dev/null"),
             ("summary", "-q", "--format", "json", "--by", "unit,station"),
             ("register", "-q", "--format", "json"), ("register", "-q", "--format", "geojson")]
TEXT_REPORTS = [("check",), ("check", "--report-format", "lines"), ("reduce", "-o", "/dev/null"), ("fix",), ("fix", "--format", "csv"),
                ("summary", "--by", "unit,station"), ("map", "-o", "/dev/null"),
                ("net", "--contours", "-o", "/dev/null"), ("sheet", "-o", "/dev/null")]
PICTURES = [("net", "-q", "--by", "unit,station"), ("net", "-q", "--circles", "--contours"),
            ("rose", "-q", "--by", "unit"), ("map", "-q"), ("sheet", "-q")]
OURS = re.compile("\x1b\\[(0|1|1;3[1-6])m")


class Elements(html.parser.HTMLParser):
    """The elements of a page as a browser finds them: tags and attributes."""

    def __init__(self, text):
        super().__init__()
        self.found = set()
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attributes):
        self.found.add((tag, tuple(sorted(name for name, _ in attributes))))

    handle_startendtag = handle_starttag

    def unknown_decl(self, data):
        raise AssertionError(f"a declaration: {data}")

    def handle_pi(self, data):
        if data != 'xml version="1.0" encoding="UTF-8"?':
            raise AssertionError(f"an instruction: {data}")

    def handle_comment(self, data):
        raise AssertionError(f"a comment: {data}")


class Hostile(Case):
    def setUp(self):
        super().setUp()
        self.put("hostile.log", log_of(TEXTS))
        self.put("harmless.log", log_of(HARMLESS))
        self.put("control.log", lines_with(CONTROL + TURNING))
        # Whoever opens this file waits until the test fails.
        os.mkfifo(self.folder / "canary")
        self.given = self.files()

    def tearDown(self):
        self.assertEqual(self.files(), self.given)

    def out(self, *arguments):
        """What comes out of a command that has faults in a log to tell of, and not of itself."""
        done = self.run_program(*arguments)
        self.assertIn(done.returncode, (0, 1), (arguments, done.stderr))
        return done.stdout.decode()

    def assert_obeyed_by_nothing(self, text, what):
        for found in (OBEYED.search(text), TURNS.search(text)):
            self.assertIsNone(found, (what, text[max(0, found.start() - 40):][:80] if found else ""))


class Spreadsheets(Hostile):
    def test_no_cell_is_a_formula(self):
        for log in ("hostile.log", "control.log"):
            for command in TABLES:
                rows = list(csv.reader(io.StringIO(self.out(*command, log), newline="")))
                self.assertGreater(len(rows), 1, command)
                for row in rows:
                    self.assertEqual(len(row), len(rows[0]), command)
                    for cell in row:
                        if cell[:1] in ("=", "+", "-", "@", "\t", "\r", "\n", "|", "%"):
                            self.assertRegex(cell, rf"\A({NUMBER.pattern}|[|%].*)\Z", command)

    def test_a_guarded_cell_is_still_all_there(self):
        rows = list(csv.DictReader(io.StringIO(self.out("reduce", "-q", "hostile.log"))))
        remarks = {row["remark"] for row in rows}
        for text in FORMULAS:
            self.assertIn("'" + text, remarks)
        for text in MARKUP:
            self.assertIn("'" + text if text[0] in "=+-@" else text, remarks)

    def test_a_file_may_be_called_like_a_formula(self):
        self.put("=1+1.log", HEADING + "station Q1\n  bedding N78E 41N\n")
        self.given = self.files()
        (row,) = csv.DictReader(io.StringIO(self.out("reduce", "-q", "=1+1.log")))
        self.assertEqual(row["source"], "'=1+1.log:5:3")
        (row,) = csv.DictReader(
            io.StringIO(self.out("summary", "--by", "station", "--format", "csv", "=1+1.log"))
        )
        self.assertEqual(row["file"], "'=1+1.log")

    def test_converted_columns_leave_other_cells_as_they_are(self):
        table = "strike,=1+1\nN78E,=cmd|'/c'!A0\n\x1b[31m,+1\n"
        self.put("table.csv", table)
        self.given = self.files()
        done = self.assert_status(1, "convert", "--column", "strike", "table.csv")
        self.assertEqual(done.stdout.decode(), table.replace("N78E", "078"))
        self.assert_obeyed_by_nothing(done.stderr.decode(), "convert --column")


class Pages(Hostile):
    def test_no_text_becomes_an_element_or_an_attribute(self):
        for command in PICTURES:
            expected = Elements(self.out(*command, "harmless.log")).found
            for log in ("hostile.log", "control.log"):
                page = self.out(*command, log)
                self.assertLessEqual(Elements(page).found, expected, (command, log))
                root = xml.etree.ElementTree.fromstring(page)
                for element in root.iter():
                    for name, value in element.attrib.items():
                        self.assertFalse(name.lower().startswith("on"), (command, name))
                        if name.endswith(("href", "src", "action")):
                            self.assertTrue(value.startswith("#"), (command, value))
                self.assert_obeyed_by_nothing(page, command)

    def test_all_of_it_is_there_as_text(self):
        page = xml.etree.ElementTree.fromstring(self.out("sheet", "-q", "hostile.log"))
        words = " ".join("".join(page.itertext()).split())
        for text in FORMULAS + MARKUP + COMMANDS:
            self.assertIn(" ".join(text.split()), words)

    def test_the_sheet_asks_for_nothing_and_says_so(self):
        page = self.out("sheet", "-q", "hostile.log")
        self.assertRegex(page, r"<meta http-equiv=\"Content-Security-Policy\""
                               r" content=\"default-src 'none'; [^\"]*script-src 'sha256-")
        self.assertEqual(page.count("<script>"), 1)
        self.assertNotIn("<img", page)
        self.assertNotIn("<a href=\"h", page)

    def test_a_file_may_be_called_like_markup(self):
        name = '<img src=x onerror="alert(1)">&.log'
        self.put(name, HEADING + "station Q1 at 44.7S 169E\n  bedding N78E 41N\n  joint N98E 3N\n")
        self.given = self.files()
        for command in PICTURES:
            page = self.out(*command, name)
            self.assertNotIn("<img", page)
            self.assertIn("&lt;img src=x onerror=&quot;alert(1)&quot;&gt;&amp;.log", page)
            xml.etree.ElementTree.fromstring(page)


class Terminals(Hostile):
    def test_no_report_sends_a_terminal_what_it_obeys(self):
        for log in ("hostile.log", "control.log"):
            for command in TEXT_REPORTS:
                for color in ("never", "always"):
                    done = self.run_program(*command, log, "--color", color)
                    for stream in (done.stdout, done.stderr):
                        text = stream.decode()
                        text = OURS.sub("", text) if color == "always" else text
                        if command[:3] == ("fix", "--format", "csv") and stream is done.stdout:
                            text = TURNS.sub("", text)
                        self.assert_obeyed_by_nothing(text, (command, log))

    def test_no_document_does_either_and_json_keeps_every_byte(self):
        for log in ("hostile.log", "control.log"):
            for command in DOCUMENTS:
                text = self.out(*command, log)
                self.assert_obeyed_by_nothing(text, (command, log))
                json.loads(text)
        document = json.loads(self.out("reduce", "-q", "--format", "json", "control.log"))
        written = {reading["written"] for station in document["logs"][0]["stations"]
                   for reading in station["readings"]}
        for text in CONTROL:
            self.assertIn(text, written)

    def test_no_table_does_either(self):
        for log in ("hostile.log", "control.log"):
            for command in TABLES:
                text = self.out(*command, log)
                self.assertIsNone(OBEYED.search(text), (command, log))

    def test_what_was_typed_on_the_command_line_is_not_obeyed_either(self):
        self.put("table.csv", "a\x1b[31m,b\u202e\n1,2\n")
        self.given = self.files()
        for bad in ("\x1b[31mred", "\x9b31m", "a\u202eb", "a\nb\x07"):
            for arguments in (
                (bad,), ("reduce", bad), ("reduce", "--" + bad, "x"), ("reduce", "-o", bad + "/x", "hostile.log"),
                ("reduce", "--format", bad, "x"), ("reduce", "--declination", bad, "x"),
                ("reduce", "--set", bad, "x"), ("reduce", "hostile.log", "--report", bad + "/x"),
                ("convert", bad), ("convert", "N50W" + bad), ("convert", "N50W", bad, "15"),
                ("convert", "--column", bad, "table.csv"), ("convert", "--column", "a", bad),
                ("convert", "--column", bad), ("declination", "44S 169E " + bad),
                ("declination", bad), ("declination", "44S", "169E", bad),
                ("declination", "44S 169E", "--elevation", bad),
                ("explain", bad), ("help", bad), ("summary", "--kind", bad, "harmless.log"),
                ("summary", "--by", bad, "harmless.log"), ("rose", "--bin", bad, "harmless.log"),
                ("fix", bad), ("net", bad), ("map", bad), ("sheet", bad), ("sheet", "hostile.log", bad),
            ):
                done = self.run_program(*arguments)
                self.assertNotEqual(done.returncode, 0, arguments)
                self.assertNotEqual(done.stderr, b"", arguments)
                for stream in (done.stderr, b"" if "-o" in arguments else done.stdout):
                    if arguments[:2] == ("reduce", "hostile.log"):
                        continue
                    self.assert_obeyed_by_nothing(stream.decode(), arguments)

    def test_a_file_may_be_called_anything(self):
        name = "a\x1b[31m\x9b\u202e\n.log"
        self.put(name, HEADING + "station Q1\n  bedding N78E 41N\n  joint N98E 3N\n")
        self.given = self.files()
        # The last is what `lodebook *` becomes.
        for command in TEXT_REPORTS + DOCUMENTS + [()]:
            done = self.run_program(*command, name)
            text = done.stderr.decode() + done.stdout.decode()
            if command[:3] == ("fix", "--format", "csv"):
                text = TURNS.sub("", text)
            self.assert_obeyed_by_nothing(text, command)


class Names(Hostile):
    def test_no_name_in_a_log_is_opened(self):
        # `canary` stands in the log as photo, sample, unit and all else; it would block who opens it.
        for command in TABLES + DOCUMENTS + TEXT_REPORTS + PICTURES:
            self.out(*command, "hostile.log")
        self.out("reduce", "-q", "--format", "log", "hostile.log")

    def test_the_clean_log_keeps_the_bytes_of_what_it_could_not_read(self):
        clean = self.out("reduce", "-q", "--format", "log", "control.log")
        for text in CONTROL + TURNING:
            self.assertIn(f"bedding {text}\n", clean)


if __name__ == "__main__":
    main()
