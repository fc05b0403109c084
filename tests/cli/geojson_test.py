#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""GeoJSON as GDAL sees it: a point a reading, the table's columns, a GeoPackage without a word."""

import csv
import io
import pathlib
import re
import subprocess

from program import Case, main

LOG = pathlib.Path(__file__).parents[2] / "data" / "night-typing.log"


class GeoJson(Case):
    def gdal(self, *command):
        done = subprocess.run(command, cwd=self.folder, capture_output=True, text=True, check=False)
        self.assertEqual((done.returncode, done.stderr), (0, ""), command)
        return done.stdout

    def setUp(self):
        super().setUp()
        self.put("day.log", LOG.read_bytes())
        self.assert_status(1, "reduce", "day.log", "-q", "-o", "points.geojson")

    def test_is_a_layer_of_points_with_the_columns_of_the_table(self):
        table = self.assert_status(1, "reduce", "day.log", "-q").stdout.decode()
        rows = list(csv.DictReader(io.StringIO(table)))
        layer = self.gdal("ogrinfo", "-al", "-so", "points.geojson")
        self.assertRegex(layer, r"(?m)^Geometry: Point$")
        self.assertIn(f"Feature Count: {len(rows)}\n", layer)
        fields = dict(re.findall(r"(?m)^(\w+): (String|Real|Integer|DateTime) \(", layer))
        self.assertEqual(list(fields), list(rows[0]))
        kinds = {name: fields[name] for name in ("kind", "strike", "surface", "observed")}
        self.assertEqual(
            kinds, {"kind": "String", "strike": "Real", "surface": "Integer", "observed": "DateTime"}
        )

    def test_becomes_a_geopackage_with_no_option_and_no_warning(self):
        self.assertEqual(self.gdal("ogr2ogr", "-f", "GPKG", "points.gpkg", "points.geojson"), "")
        station = self.gdal("ogrinfo", "-al", "-q", "points.gpkg", "-where", "station = 'H7'")
        self.assertIn("POINT (169.2524 -44.82905)", station)


if __name__ == "__main__":
    main()
