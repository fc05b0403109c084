#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""GeoJSON as GDAL sees it: a point a reading, the table's columns, a GeoPackage without a word."""

from gdal import DATA, GdalCase
from program import main

# GDAL takes a column for times where all of its values are.
TYPES = {"observed": "DateTime"}


class GeoJson(GdalCase):
    def setUp(self):
        super().setUp()
        self.put("day.log", (DATA / "night-typing.log").read_bytes())
        self.assert_status(1, "reduce", "day.log", "-q", "-o", "points.geojson")

    def test_is_a_layer_of_points_with_the_columns_of_the_table(self):
        self.assert_is_a_layer_of_points("points.geojson", self.rows("day.log"), TYPES)

    def test_becomes_a_geopackage_with_no_option_and_no_warning(self):
        self.assertEqual(self.gdal("ogr2ogr", "-f", "GPKG", "points.gpkg", "points.geojson"), "")
        rows = self.rows("day.log")
        self.assert_is_a_layer_of_points("points.gpkg", rows, TYPES)
        readings = self.features("points.gpkg", "station = 'H7'")
        self.assertEqual(len(readings), sum(row["station"] == "H7" for row in rows))
        for reading in readings:
            self.assertIn("POINT (169.2524 -44.82905)", reading)


if __name__ == "__main__":
    main()
