# SPDX-License-Identifier: MIT
"""What the tests of outputs for a GIS share: a file as GDAL sees it."""

import csv
import io
import pathlib
import re
import subprocess

from program import Case

DATA = pathlib.Path(__file__).parents[2] / "data"

FIELD = re.compile(r"(?m)^(\w+): (String|Real|Integer|DateTime|Date|Time|Integer64)(?: \(|$)")

# GeoPackage and shapefile have no type for a time of day: without this, GDAL warns of the first, and
# leaves the column out of the second.
TIME_AS_TEXT = ("-mapFieldType", "Time=String")

# What a GIS must make of some columns of the table, one of each kind.
TYPES = {
    "station": "String",
    "kind": "String",
    "strike": "Real",
    "surface": "Integer",
    "codes": "String",
    "latitude": "Real",
    "longitude": "Real",
    "elevation_m": "Real",
    "written": "String",
}

# Dates and times, each of them missing somewhere.
MIXED = """set 0
declination 1E
station A at 10.25S 20.5E
  time 09:40
  bedding 242/37 NW
date 2026-02-14
station B at 10.25S 20.6E
  bedding 242/37 NW
station C at 10.25S 20.7E
  time 00:05
  bedding 242/37 NW
"""
# As GDAL shows them.
MIXED_SEEN = {
    "A": ("(null)", "09:40:00"),
    "B": ("2026/02/14", "(null)"),
    "C": ("2026/02/14", "00:05:00"),
}


class GdalCase(Case):
    def gdal(self, *command):
        """Its standard output; it must say nothing else, so that a warning fails the test."""
        done = subprocess.run(command, cwd=self.folder, capture_output=True, text=True, check=False)
        self.assertEqual((done.returncode, done.stderr), (0, ""), command)
        return done.stdout

    def layer(self, file):
        return self.gdal("ogrinfo", "-al", "-so", file)

    def fields(self, file):
        """The types of the columns, by name and in order."""
        return dict(FIELD.findall(self.layer(file)))

    def features(self, file, where):
        """The features that meet the condition, as text."""
        text = self.gdal("ogrinfo", "-al", "-q", file, "-where", where)
        return text.split("OGRFeature(")[1:]

    def values(self, file, *names):
        """What the named columns of each station hold, as GDAL shows it."""
        text = self.gdal("ogrinfo", "-al", "-q", file)
        found = {}
        for feature in text.split("OGRFeature(")[1:]:
            cells = dict(re.findall(r"(?m)^  (\w+) \(\w+\) = (.*)$", feature))
            found[cells["station"]] = tuple(cells.get(name, "(null)") for name in names)
        return found

    def rows(self, *arguments):
        """The table, by the names of its columns."""
        table = self.run_program("reduce", *arguments, "-q").stdout.decode()
        return list(csv.DictReader(io.StringIO(table, newline="")))

    def assert_is_a_layer_of_points(self, file, rows, types=None):
        layer = self.layer(file)
        self.assertRegex(layer, r"(?m)^Geometry: Point$")
        self.assertIn(f"\nFeature Count: {len(rows)}\n", layer)
        self.assertRegex(layer, r'(?m)^GEOGCRS\["WGS 84",$')
        self.assertRegex(layer, r'(?m)^    ID\["EPSG",4326\]\]$')
        fields = self.fields(file)
        self.assertEqual(list(fields), list(rows[0]))
        wanted = {**TYPES, **(types or {})}
        self.assertEqual({name: fields[name] for name in wanted}, wanted)
