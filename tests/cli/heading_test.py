#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Files of headings: which of them a log may have opened, and what comes out of them."""

import json
import os

from program import Case, main

DIAL = "set 0\ndeclination 24.6E\nrule right\n"
LOG = "heading dial.txt\nstation Q1\n  bedding 062/37\n"


class Heading(Case):
    def faults(self, log, *options, **rest):
        done = self.run_program("check", "--report-format", "json", log, *options, **rest)
        document = json.loads(done.stdout)
        return [fault for place in (document["logs"][0], *document["logs"][0]["stations"])
                for fault in place["diagnostics"]]

    def table(self, *arguments, **rest):
        return self.assert_status(0, "reduce", "-q", *arguments, **rest).stdout.decode()

    def test_lies_in_the_folder_of_the_log_not_in_the_current_one(self):
        os.makedirs(self.folder / "day" / "ours")
        self.put("dial.txt", "rule left\n")
        self.put("day/ours/dial.txt", DIAL)
        self.put("day/log.txt", LOG.replace("dial.txt", "ours/dial.txt"))
        self.assertIn(",true,", self.table("day/log.txt"))
        self.assertIn(",86.6,37.0,", self.table("day/log.txt"))

    def test_of_the_command_line_is_any_file(self):
        os.makedirs(self.folder / "day")
        self.put("dial.txt", DIAL)
        self.put("day/log.txt", "station Q1\n  bedding 062/37\n")
        self.assertIn(",86.6,37.0,", self.table("--heading", "dial.txt", "day/log.txt"))
        self.assertIn(",86.6,37.0,",
                      self.table("--heading", str(self.folder / "dial.txt"), "-",
                                 stdin="station Q1\n  bedding 062/37\n"))
        done = self.assert_status(3, "reduce", "--heading", "none.txt", "day/log.txt")
        self.assertIn(b"cannot read none.txt", done.stderr)
        done = self.assert_status(2, "reduce", "--heading", "dial.txt", "day/log.txt", "-o",
                                  "dial.txt")
        self.assertEqual(self.read("dial.txt"), DIAL.encode())

    def test_never_leads_out_of_the_folder(self):
        os.makedirs(self.folder / "day")
        self.put("dial.txt", DIAL)
        os.symlink("../dial.txt", self.folder / "day" / "link.txt")
        os.symlink("..", self.folder / "day" / "up")
        os.mkfifo(self.folder / "day" / "pipe")
        self.put("day/large.txt", "# x\n" * (1 << 18) + "#")
        for name, why in (("../dial.txt", ".."), (str(self.folder / "dial.txt"), "/"),
                          ("a/../../dial.txt", ".."), ("link.txt", "link"),
                          ("up/dial.txt", ""), ("pipe", "regular"), (".", "regular"),
                          ("/dev/null", "/"), ("large.txt", "1 MiB"), ("none.txt", "No such")):
            self.put("day/log.txt", f'heading "{name}"\nstation Q1\n')
            faults = self.faults("day/log.txt")
            self.assertEqual([fault["code"] for fault in faults], ["heading"], name)
            self.assertIn(why, faults[0]["message"])

    def test_is_never_an_output(self):
        os.makedirs(self.folder / "ours")
        self.put("ours/dial.txt", DIAL)
        for kind in ("csv", "json", "svg", "html"):
            os.link(self.folder / "ours" / "dial.txt", self.folder / f"dial.{kind}")
        self.put("log.txt", LOG.replace("dial.txt", "ours/dial.txt"))
        self.put("good.txt", DIAL + "station Q2\n  bedding 062/37\n")
        files = self.files()
        for arguments in (["check", "-o", "ours/dial.txt"], ["check", "--report", "ours/dial.txt"],
                          ["reduce", "-q", "-o", "dial.csv"], ["reduce", "--report", "dial.json"],
                          ["reduce", "-q", "--jobs", "1", "good.txt", "-o", "dial.csv"],
                          ["reduce", "-q", "--jobs", "4", "good.txt", "-o", "dial.csv"],
                          ["fix", "--rays", "dial.json"], ["summary", "good.txt", "-o", "dial.csv"],
                          ["net", "-o", "dial.svg"], ["map", "-o", "dial.svg"],
                          ["sheet", "-o", "dial.html"], ["register", "-o", "dial.csv"],
                          ["fair-copy", "-o", "ours/dial.txt"]):
            done = self.assert_status(2, *arguments, "log.txt")
            self.assertEqual(done.stdout, b"", arguments)
            self.assertRegex(done.stderr.decode(), r"^lodebook: ours/dial.txt (and dial.[a-z]+ are "
                             r"one file, both|is both) input and output\nhelp: write to another "
                             r"file\n$")
            self.assertEqual(self.read("ours/dial.txt"), DIAL.encode(), arguments)
        self.assertEqual(self.files(), files)

    def test_is_not_opened_for_a_log_from_standard_input(self):
        self.put("dial.txt", DIAL)
        faults = self.faults("-", stdin=LOG)
        self.assertIn("standard input", faults[0]["message"])

    def test_faults_carry_their_file(self):
        self.put("dial.txt", "set 0\ndeclination 24.6\nstation Q9\n")
        self.put("log.txt", LOG)
        faults = self.faults("log.txt")
        self.assertEqual([(fault["file"], fault["line"], fault["code"]) for fault in faults],
                         [("dial.txt", 2, "declination-side"), ("dial.txt", 3, "heading"),
                          ("log.txt", 3, "dip-side-missing")])
        lines = self.run_program("check", "--report-format", "lines", "log.txt").stdout.decode()
        self.assertTrue(lines.startswith("dial.txt:2:13: error: "), lines)

    def test_clean_log_holds_the_lines_of_its_headings(self):
        self.put("dial.txt", "# the dial\n" + DIAL + "landmark Mast 44.7S 169E\nstation Q9\n")
        self.put("log.txt", "# a day\n" + LOG + "  sight Mast N17W\n")
        done = self.run_program("reduce", "-q", "--format", "log", "log.txt")
        clean = done.stdout.decode()
        self.assertEqual(clean, "# a day\n# the dial\nset 0\ndeclination 24.6E\nrule right\n"
                                "landmark Mast 44.7S 169E\n# station Q9\n\nstation Q1\n"
                                "  bedding 062/37\n  sight Mast N17W\n")
        self.put("clean.txt", clean)
        before = self.run_program("reduce", "-q", "log.txt").stdout.decode().splitlines()
        after = self.table("clean.txt").splitlines()
        self.assertEqual([line.rsplit(",", 1)[0] for line in before],
                         [line.rsplit(",", 1)[0] for line in after])
        self.put("ours.txt", "# ours\ndial azimuth\n")
        done = self.assert_status(0, "reduce", "-q", "--format", "log", "--heading", "ours.txt",
                                  "clean.txt")
        self.assertEqual(done.stdout.decode(), "# ours\ndial azimuth\n" + clean)


main()
