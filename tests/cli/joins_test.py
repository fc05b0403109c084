#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The recipes of docs/batch.md that join the outputs of many runs: what one run would have written."""

import json
import re
import subprocess

from gdal import DATA, MIXED, GdalCase
from program import main

PAGE = DATA.parent / "docs" / "batch.md"
# The columns that one has are empty in the other, and all decimals of the first are zeros.
LOGS = [
    MIXED,
    "set 0\ndeclination 0.5E\nstation P\n  lineation N50W 35.5\n  sight Peak N17W vertical 7.5\n",
]


def recipe(product):
    """The commands of the page that write `product`."""
    blocks = re.findall(r"(?ms)^```sh\n(.*?)^```$", PAGE.read_text(encoding="utf-8"))
    (found,) = [block for block in blocks if block.rstrip().endswith("> " + product)]
    return found


class Joins(GdalCase):
    def setUp(self):
        super().setUp()
        (self.folder / "out").mkdir()
        names = []
        for number, log in enumerate(LOGS, 1):
            names.append(f"{number}.txt")
            self.put(names[-1], log)
            for extension in ("csv", "json", "geojson"):
                self.assert_status(0, "reduce", "-q", names[-1], "-o", f"out/{number}.{extension}")
        for extension in ("csv", "json", "geojson"):
            self.assert_status(0, "reduce", "-q", *names, "-o", f"one.{extension}")

    def join(self, product):
        done = subprocess.run(["/bin/sh", "-c", recipe(product)], cwd=self.folder, check=False,
                              capture_output=True, text=True)
        self.assertEqual((done.returncode, done.stdout, done.stderr), (0, "", ""))
        return self.read(product)

    def test_tables_and_points_are_joined_to_the_byte(self):
        for extension in ("csv", "geojson"):
            self.assertEqual(self.join(f"season.{extension}"), self.read(f"one.{extension}"))

    def test_documents_are_joined_with_every_decimal(self):
        # Unlike the values, the texts differ where 32.0 has become 32.
        one, season = (json.dumps(json.loads(text))
                       for text in (self.read("one.json"), self.join("season.json")))
        self.assertEqual(one, season)

    def test_columns_that_are_empty_in_one_log_keep_their_types(self):
        self.join("season.geojson")
        fields = self.fields("season.geojson")
        wanted = {"strike": "Real", "dip": "Real", "trend": "Real", "vertical_angle": "Real",
                  "surface": "Integer", "date": "Date", "time": "Time"}
        self.assertEqual({name: fields[name] for name in wanted}, wanted)
        self.assertEqual(fields, self.fields("one.geojson"))


if __name__ == "__main__":
    main()
