#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""GeoJSON as GDAL sees it: a point a reading, the table's columns, a GeoPackage without a word."""

from gdal import DATA, MIXED, MIXED_SEEN, TIME_AS_TEXT, GdalCase
from program import main

TYPES = {"date": "Date", "time": "Time"}


class GeoJson(GdalCase):
    def setUp(self):
        super().setUp()
        self.put("day.log", (DATA / "night-typing.log").read_bytes())
        self.assert_status(1, "reduce", "day.log", "-q", "-o", "points.geojson")

    def test_is_a_layer_of_points_with_the_columns_of_the_table(self):
        self.assert_is_a_layer_of_points("points.geojson", self.rows("day.log"), TYPES)

    def test_becomes_a_geopackage_without_a_warning(self):
        self.gdal("ogr2ogr", "-f", "GPKG", *TIME_AS_TEXT, "points.gpkg", "points.geojson")
        rows = self.rows("day.log")
        self.assert_is_a_layer_of_points("points.gpkg", rows, {"date": "Date", "time": "String"})
        readings = self.features("points.gpkg", "station = 'H7'")
        self.assertEqual(len(readings), sum(row["station"] == "H7" for row in rows))
        for reading in readings:
            self.assertIn("POINT (169.2524 -44.82905)", reading)

    def test_a_log_without_times_needs_no_option_for_a_geopackage(self):
        self.put("day.log", MIXED.replace("  time", "  # time"))
        self.assert_status(0, "reduce", "day.log", "-q", "-o", "points.geojson")
        self.gdal("ogr2ogr", "-f", "GPKG", "points.gpkg", "points.geojson")
        self.assertEqual(self.fields("points.gpkg")["date"], "Date")

    def test_no_midnight_is_invented_and_no_time_is_lost(self):
        self.put("day.log", MIXED)
        self.assert_status(0, "reduce", "day.log", "-q", "-o", "points.geojson")
        self.assertEqual(self.values("points.geojson", "date", "time"), MIXED_SEEN)
        for driver, file in (("GPKG", "points.gpkg"), ("ESRI Shapefile", "points.shp")):
            self.gdal("ogr2ogr", "-f", driver, *TIME_AS_TEXT, "-select", "station,date,time", file,
                      "points.geojson")
            self.assertEqual(self.values(file, "date", "time"), MIXED_SEEN)


if __name__ == "__main__":
    main()
