# SPDX-License-Identifier: MIT
"""What the tests of outputs for a GIS share: a file as GDAL sees it."""

import csv
import io
import pathlib
import re
import subprocess

from program import Case

DATA = pathlib.Path(__file__).parents[2] / "data"

FIELD = re.compile(r"(?m)^(\w+): (String|Real|Integer|DateTime|Date|Time|Integer64) \(")

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
