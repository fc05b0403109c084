#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Extensions that we do not write are refused, and the advice works when it is typed."""

import os
import shutil
import subprocess

from gdal import MIXED
from program import Case, main

COMMANDS = {
    "reduce": "gpkg shp kml kmz fgb gml gpx dxf xlsx ods",
    "register": "gpkg shp kml kmz fgb gml gpx dxf xlsx ods",
    "fix": "gpkg shp kml kmz fgb gml gpx dxf xlsx ods",
    "summary": "xlsx ods",
    "net": "png pdf ps eps",
    "rose": "png pdf ps eps",
    "map": "png pdf ps eps",
    "sheet": "pdf",
}
# How the first bytes tell that it is what it is called.
MAGIC = {
    "gpkg": b"SQLite format 3", "shp": b"\0\0\x27\x0a", "kml": b"<?xml", "kmz": b"PK", "fgb": b"fgb",
    "gml": b"<?xml", "gpx": b"<?xml", "dxf": b"  0\nSECTION", "xlsx": b"PK", "ods": b"PK",
    "png": b"\x89PNG", "pdf": b"%PDF", "ps": b"%!PS", "eps": b"%!PS",
}
LOG = MIXED.replace("  bedding", "  sample S1 fresh\n  bedding") + "station D\n  bedding 242/37 NW ; no position\n  note no position\n"


class Names(Case):
    def setUp(self):
        super().setUp()
        self.put("day.txt", LOG)

    def refusal(self, *arguments):
        """What is said, nothing having been written or read."""
        before = self.files()
        done = self.assert_status(2, *arguments)
        self.assertEqual((done.stdout, self.files()), (b"", before), arguments)
        return done.stderr.decode()

    def shell(self, command):
        # A browser that root starts wants to be told so.
        browser = shutil.which("chromium")
        self.put("chromium", f'#!/bin/sh\nexec {browser} --no-sandbox "$@"\n')
        os.chmod(self.folder / "chromium", 0o755)
        environment = {**os.environ, "PATH": f"{self.folder}:{os.environ['PATH']}"}
        return subprocess.run(command, shell=True, cwd=self.folder, env=environment,
                              capture_output=True, text=True, timeout=120, check=False)

    def test_every_advice_makes_the_file_that_was_wanted(self):
        for command, extensions in COMMANDS.items():
            for extension in extensions.split():
                said = self.refusal(command, "day.txt", "-o", f"my {command}.{extension}")
                self.assertIn(f"lodebook: {command} does not write .{extension}\n", said)
                options, advice = said.rstrip("\n").split("; first ")[1].split(", then: ")
                self.assertTrue(options.startswith("-o 'my "), said)
                self.assert_status(0, command, "day.txt", "-q", "-o", options[4:-1])
                done = self.shell(advice)
                self.assertEqual(done.returncode, 0, (advice, done.stderr))
                if extension not in ("shp", "pdf"):  # names are cut; a browser talks
                    self.assertEqual(done.stderr, "", advice)
                made = self.read(f"my {command}.{extension}")
                self.assertTrue(made.startswith(MAGIC[extension]), (advice, made[:20]))

    def test_rays_have_their_own(self):
        said = self.refusal("fix", "day.txt", "--rays", "r.kml")
        self.assert_status(0, "fix", "day.txt", "-q", "--rays", "r.geojson")
        done = self.shell(said.rstrip("\n").split("; first --rays r.geojson, then: ")[1])
        self.assertEqual((done.returncode, done.stderr), (0, ""))

    def test_what_another_command_writes_is_named(self):
        self.assertIn("net, rose and map write .svg", self.refusal("reduce", "day.txt", "-o", "a.svg"))
        self.assertIn("sheet writes .html", self.refusal("net", "day.txt", "-o", "a.html"))
        self.assertIn("reduce, fix and register write .geojson",
                      self.refusal("summary", "day.txt", "-o", "a.geojson"))

    def test_every_command_refuses_and_writes_nothing(self):
        for command in ("reduce", "check", "fix", "summary", "net", "rose", "map", "sheet",
                        "register"):
            for name in ("a.XLSX", "a.docx" if command != "check" else "a.pdf", "b/c.KML"):
                self.refusal(command, "day.txt", "-o", name)
        for name in ("a.json", "a.kml"):
            self.refusal("convert", "N62E", "-o", name)
        self.refusal("reduce", "day.txt", "--report", "a.xlsx")
        self.refusal("reduce", "missing.txt", "-o", "a.kml")

    def test_a_stated_format_may_have_a_name_of_its_own_but_no_wrong_one(self):
        self.assert_status(0, "reduce", "day.txt", "-q", "--format", "csv", "-o", "day.tab")
        self.refusal("reduce", "day.txt", "--format", "csv", "-o", "day.xlsx")

    def test_what_says_nothing_of_a_format_is_as_ever(self):
        for name in ("table", "table.", "table.txt", "-", "/dev/null", "/dev/stdout"):
            self.assert_status(0, "reduce", "day.txt", "-q", "-o", name)

    def test_capitals_count_as_small_letters(self):
        for name in ("a.GEOJSON", "b.geojson"):
            self.assert_status(0, "reduce", "day.txt", "-q", "-o", name)
        self.assertEqual(self.read("a.GEOJSON"), self.read("b.geojson"))


if __name__ == "__main__":
    main()
