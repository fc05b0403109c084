#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The CSV with its sidecars: a layer of points for GDAL, and files as careful as the others."""

import json
import os

from gdal import DATA, MIXED, MIXED_SEEN, TIME_AS_TEXT, GdalCase
from program import GOOD, Case, main

# Texts that need quotes, a station without a position, and all four quarters of the earth.
PLACES = """set 0
declination 1E
station F
  bedding N78E 41N  ; red, with "flutes"
station G at 10.25S 20.5E
  bedding N78E 30N  ; =1+1
station H at 10.25N 20.5W
  bedding N78E 40N
station I at 10.25N 120.5E
  bedding N78E 40N, N77E 40N
station J at 10.25S 120.5W
  sight Red-Bluff S51E
"""


class SeenByGdal(GdalCase):
    def test_rows_are_points_with_nothing_set(self):
        self.put("day.log", (DATA / "night-typing.log").read_bytes())
        done = self.assert_status(1, "reduce", "day.log", "-q", "-o", "day.csv", "--sidecar")
        self.assertEqual((done.stdout, done.stderr), (b"", b""))
        self.assertEqual(self.files(), ["day.csv", "day.csvt", "day.log", "day.prj"])
        rows = self.rows("day.log")
        self.assert_is_a_layer_of_points("day.csv", rows, {"date": "Date", "time": "Time"})
        readings = self.features("day.csv", "station = 'H7'")
        self.assertEqual(len(readings), sum(row["station"] == "H7" for row in rows))
        for reading in readings:
            self.assertIn("POINT (169.2524 -44.82905)", reading)

    def test_the_sidecars_are_what_makes_points(self):
        self.put("day.txt", PLACES)
        self.assert_status(0, "reduce", "day.txt", "-q", "-o", "day.csv")
        self.assertEqual(self.files(), ["day.csv", "day.txt"])
        self.assertRegex(self.layer("day.csv"), r"(?m)^Geometry: None$")

    def test_a_geopackage_has_the_same_layer(self):
        self.put("day.txt", PLACES)
        self.assert_status(0, "reduce", "day.txt", "-q", "-o", "day.csv", "--sidecar")
        self.gdal("ogr2ogr", "-f", "GPKG", *TIME_AS_TEXT, "day.gpkg", "day.csv")
        for file in ("day.csv", "day.gpkg"):
            self.assert_is_a_layer_of_points(file, self.rows("day.txt"))
            (reading,) = self.features(file, "station = 'J'")
            self.assertIn("POINT (-120.5 -10.25)", reading)
            (reading,) = self.features(file, "station = 'F'")
            self.assertNotIn("POINT", reading)

    def test_no_midnight_is_invented_and_no_time_is_lost(self):
        self.put("day.txt", MIXED)
        self.assert_status(0, "reduce", "day.txt", "-q", "-o", "day.csv", "--sidecar")
        self.assertEqual(self.values("day.csv", "date", "time"), MIXED_SEEN)

    def test_the_columns_of_the_grid_have_their_types_too(self):
        self.put("day.txt", PLACES)
        self.assert_status(0, "reduce", "day.txt", "-q", "--grid", "-o", "day.csv", "--sidecar")
        self.assert_is_a_layer_of_points(
            "day.csv", self.rows("day.txt", "--grid"),
            {"easting": "Real", "northing": "Real", "zone": "String"})
        (reading,) = self.features("day.csv", "station = 'G'")
        self.assertIn("zone (String) = 34L", reading)

    def test_points_and_figures_are_those_of_our_geojson(self):
        self.put("day.txt", PLACES)
        self.assert_status(0, "reduce", "day.txt", "-q", "-o", "day.csv", "--sidecar")
        self.assert_status(0, "reduce", "day.txt", "-q", "-o", "ours.geojson")
        self.assertEqual(self.gdal("ogr2ogr", "-f", "GeoJSON", "gdal.geojson", "day.csv"), "")
        ours = json.loads(self.read("ours.geojson"))["features"]
        theirs = json.loads(self.read("gdal.geojson"))["features"]
        self.assertEqual(len(ours), 6)
        for one, other in zip(ours, theirs, strict=True):
            self.assertEqual(one["geometry"], other["geometry"])
            for name, value in one["properties"].items():
                if name == "remark" and value == "=1+1":
                    value = "'" + value  # the CSV's guard against formulas
                # A CSV has no text other than empty text for what is missing.
                self.assertEqual(value or None, other["properties"].get(name) or None, name)

    def test_a_table_without_rows_is_an_empty_layer_of_points(self):
        self.put("empty.txt", "set 0\n")
        self.assert_status(0, "reduce", "empty.txt", "-q", "-o", "empty.csv", "--sidecar")
        layer = self.layer("empty.csv")
        self.assertRegex(layer, r"(?m)^Geometry: Point$")
        self.assertRegex(layer, r"(?m)^Feature Count: 0$")

    def test_the_extension_may_be_in_capitals(self):
        self.put("day.txt", PLACES)
        self.assert_status(0, "reduce", "day.txt", "-q", "-o", "DAY.CSV", "--sidecar")
        self.assertEqual(self.files(), ["DAY.CSV", "DAY.csvt", "DAY.prj", "day.txt"])
        self.assert_is_a_layer_of_points("DAY.CSV", self.rows("day.txt"))


class Files(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)

    def assert_refused(self, words, *arguments):
        before = {name: self.read(name) for name in self.files()}
        done = self.assert_status(2, "reduce", *arguments, "--sidecar")
        self.assertEqual(done.stdout, b"")
        self.assertIn(words, done.stderr.decode())
        self.assertIn(b"\nhelp: ", done.stderr)
        self.assertEqual({name: self.read(name) for name in self.files()}, before)

    def test_the_table_is_the_same_with_and_without(self):
        self.assert_status(0, "reduce", "good.txt", "-o", "a.csv")
        self.assert_status(0, "reduce", "good.txt", "-o", "b.csv", "--sidecar", "--format", "csv")
        self.assertEqual(self.read("a.csv"), self.read("b.csv"))
        self.assertEqual(self.files(), ["a.csv", "b.csv", "b.csvt", "b.prj", "good.txt"])

    def test_needs_a_file_to_stand_beside(self):
        self.assert_refused("--sidecar needs an output file", "good.txt")
        self.assert_refused("--sidecar needs an output file", "good.txt", "-o", "-")

    def test_goes_with_csv_only(self):
        for output in (
            ["-o", "a.json"],
            ["-o", "a.geojson"],
            ["-o", "a.log"],
            ["-o", "a.csv", "--format", "geojson"],
            ["--format", "json"],
        ):
            self.assert_refused("--sidecar is for CSV only", "good.txt", *output)

    def test_needs_the_extension_that_a_gis_goes_by(self):
        os.mkdir(self.folder / "my.logs")
        for name, better in (
            ("day.txt", "day.csv"),
            ("day", "day.csv"),
            ("my.logs/day", "my.logs/day.csv"),
            ("my day.txt", "'my day.csv'"),
            ("csv", "csv.csv"),
        ):
            done = self.assert_status(2, "reduce", "good.txt", "-o", name, "--sidecar")
            self.assertEqual(
                done.stderr.decode(),
                f"lodebook: --sidecar needs an output that ends in .csv, and {name} does not\n"
                f"help: -o {better}: a GIS looks at the extension\n",
            )
        self.assert_status(2, "reduce", "good.txt", "--format", "csv", "-o", "a.json", "--sidecar")
        self.assertEqual(self.files(), ["good.txt", "my.logs"])

    def test_is_never_an_input_under_any_name(self):
        for name in ("day.csvt", "day.prj"):
            self.put(name, GOOD)
            self.assert_refused("both input and output", name, "-o", "day.csv")
            self.assert_refused("both input and output", "good.txt", f"./{name}", "-o", "day.csv")
            os.remove(self.folder / name)
            os.symlink("good.txt", self.folder / name)
            self.assert_refused("both input and output", "good.txt", "-o", "day.csv")
            os.remove(self.folder / name)
            self.assert_refused("both input and output", "good.txt", name, "-o", "day.csv")

    def test_is_never_another_output(self):
        for name in ("day.csvt", "day.prj", "./day.prj"):
            self.assert_refused(
                "two outputs would be written to", "good.txt", "-o", "day.csv", "--report", name
            )
        os.symlink("day.csv", self.folder / "day.prj")
        done = self.assert_status(2, "reduce", "good.txt", "-o", "day.csv", "--sidecar")
        self.assertIn(b"two outputs would be written to day.prj", done.stderr)
        self.assertEqual(self.files(), ["day.prj", "good.txt"])

    def test_is_written_only_with_the_table(self):
        self.put("day.csvt", "old")
        self.assert_status(3, "reduce", "missing.txt", "-o", "day.csv", "--sidecar")
        self.assertEqual((self.files(), self.read("day.csvt")), (["day.csvt", "good.txt"], b"old"))
        os.mkdir(self.folder / "day.csv")
        self.assert_status(3, "reduce", "good.txt", "-o", "day.csv", "--sidecar")
        self.assertEqual(self.files(), ["day.csv", "day.csvt", "good.txt"])
        self.assertEqual(self.read("day.csvt"), b"old")

    def test_is_written_also_where_another_log_cannot_be_read(self):
        self.assert_status(3, "reduce", "missing.txt", "good.txt", "-o", "day.csv", "--sidecar")
        self.assertEqual(self.files(), ["day.csv", "day.csvt", "day.prj", "good.txt"])

    def test_a_sidecar_that_cannot_be_written_is_told_and_leaves_the_others(self):
        os.mkdir(self.folder / "day.csvt")
        done = self.assert_status(3, "reduce", "good.txt", "-q", "-o", "day.csv", "--sidecar")
        self.assertEqual(done.stderr, b"lodebook: cannot write day.csvt: Is a directory\n")
        self.assertEqual(self.files(), ["day.csv", "day.csvt", "day.prj", "good.txt"])


if __name__ == "__main__":
    main()
