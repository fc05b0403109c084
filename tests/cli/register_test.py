#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Samples, photos and notes as the program writes them, and as GDAL sees them."""

import csv
import io
import json

from gdal import DATA, TIME_AS_TEXT, GdalCase
from program import main

LOG = """date 2026-02-14
; a note before the first station
station A at 10.25S 20.5E
  time 09:40
  sample A1 fresh
  bedding 242/37 NW ; beside a reading
station B
  photo 3-5
  ; =1+1
"""


class Register(GdalCase):
    def setUp(self):
        super().setUp()
        self.put("day.txt", LOG)

    def table(self, *arguments):
        text = self.run_program("register", "-q", *arguments).stdout.decode()
        return list(csv.DictReader(io.StringIO(text, newline="")))

    def test_all_that_stands_beside_readings_is_there_once(self):
        rows = [(row["station"], row["kind"], row["text"]) for row in self.table("day.txt")]
        self.assertEqual(rows, [("", "note", "a note before the first station"),
                                ("A", "sample", "fresh"), ("B", "photo", "3-5"), ("B", "note", "'=1+1")])

    def test_three_formats_say_the_same_and_the_extension_chooses(self):
        rows = self.table("day.txt", "day.txt")
        for name in ("r.csv", "r.json", "r.geojson"):
            self.assert_status(0, "register", "day.txt", "day.txt", "-q", "-o", name)
        self.assertEqual(self.read("r.csv").count(b"\n"), 9)
        document = json.loads(self.read("r.json"))
        self.assertEqual(document["format"], "lodebook-register")
        items = [item for log in document["logs"] for item in log["items"]]
        features = [one["properties"] for one in json.loads(self.read("r.geojson"))["features"]]
        self.assertEqual(items, features)
        self.assertEqual(document["counts"], {"samples": 2, "photos": 2, "notes": 4})
        for row, item in zip(rows, items, strict=True):
            self.assertEqual(list(row), list(item))
            for name, value in item.items():
                cell = row[name].removeprefix("'")
                self.assertEqual(cell, "" if value is None else cell if value == float_of(cell) else value)

    def test_faults_are_counted_and_the_status_is_theirs(self):
        self.put("bad.txt", "station A\n  bedding N98E 37N\n  note x\n")
        done = self.assert_status(1, "register", "bad.txt", "day.txt")
        self.assertEqual(done.stderr, b"bad.txt: 1 error; lodebook check says which\n"
                         b"day.txt: 1 warning; lodebook check says which\n")
        self.assertEqual(done.stdout.count(b"\n"), 6)
        self.assert_status(3, "register", "missing.txt", "day.txt")
        self.assert_status(2, "register")

    def test_gdal_sees_points_with_dates_and_times(self):
        self.assert_status(0, "register", "day.txt", "-q", "-o", "r.geojson")
        fields = self.fields("r.geojson")
        wanted = {"kind": "String", "date": "Date", "time": "Time", "latitude": "Real"}
        self.assertEqual({name: fields[name] for name in wanted}, wanted)
        (sample,) = self.features("r.geojson", "kind = 'sample'")
        self.assertIn("POINT (20.5 -10.25)", sample)
        self.gdal("ogr2ogr", "-f", "GPKG", *TIME_AS_TEXT, "r.gpkg", "r.geojson")

    def test_the_demonstration_log_is_listed_whole(self):
        text = (DATA / "labrador-1978.log").read_text(encoding="utf-8")
        self.put("old.log", text)
        words = [line.split()[0] for line in text.splitlines() if line.split()]
        kinds = [row["kind"] for row in self.table("old.log")]
        for kind in ("sample", "photo", "note"):
            self.assertGreater(words.count(kind), 0)
            self.assertEqual(kinds.count(kind), words.count(kind))


def float_of(cell):
    try:
        return float(cell)
    except ValueError:
        return None


if __name__ == "__main__":
    main()
