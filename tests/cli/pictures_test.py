#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`lodebook net` and `lodebook rose` as programs: their pictures read back and measured.

What is drawn is held against the table that `lodebook reduce` prints and against formulas written
here, not against the program's own. A figure of the table is off by up to half of its last digit,
and a coordinate of a picture by half a thousandth of a millimetre.
"""

import csv
import io
import math
import os
import pathlib
import shutil
import subprocess
import unicodedata
import xml.etree.ElementTree as ElementTree

from program import BAD, Case, main

DATA = pathlib.Path(__file__).resolve().parents[2] / "data"
LOGS = ["night-typing.log", "labrador-1978.log", "lost-in-fog.log"]
SVG = "{http://www.w3.org/2000/svg}"
HEADING = "set 0\ndeclination 0\nrule right\n"


# ---- directions: north, east, down

def direction(trend, plunge):
    trend, plunge = math.radians(trend), math.radians(plunge)
    return (math.cos(trend) * math.cos(plunge), math.sin(trend) * math.cos(plunge),
            math.sin(plunge))


def pole(strike, dip):
    """Of a plane with its dip to the right of its strike: downwards, away from the dip."""
    return direction(strike - 90, 90 - dip)


def between(a, b):
    """The angle between two axes, degrees."""
    cross = (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
    return math.degrees(math.atan2(math.hypot(*cross), abs(dot(a, b))))


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


# ---- pictures

def has_class(element, name):
    return name in element.get("class", "").split()


def parts_of(path):
    """The parts of a path of straight lines: a list of lists of points."""
    parts = []
    for part in path.get("d").split("M")[1:]:
        points = part.rstrip("Z").split("L")
        parts.append([tuple(float(figure) for figure in point.split()) for point in points])
    return parts


def middle(points):
    return tuple(sum(axis) / len(points) for axis in zip(*points))


def area(ring):
    return abs(sum(a[0] * b[1] - b[0] * a[1]
                   for a, b in zip(ring, ring[1:] + ring[:1]))) / 2


def is_inside(parts, point):
    """By the even-odd rule."""
    inside = False
    for ring in parts:
        for a, b in zip(ring, ring[1:] + ring[:1]):
            if (a[1] > point[1]) != (b[1] > point[1]) and \
                    point[0] < a[0] + (point[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]):
                inside = not inside
    return inside


class Panel:
    """One of the discs of a picture, with what is drawn on it."""

    def __init__(self, rim):
        self.x, self.y, self.radius = (float(rim.get(name)) for name in ("cx", "cy", "r"))
        self.readings = []
        self.shapes = []

    def holds(self, point, reach=1.4):
        return math.hypot(point[0] - self.x, point[1] - self.y) < reach * self.radius

    def place(self, trend, plunge):
        """Where the projection puts a line."""
        share = math.sqrt(2) * math.sin(math.radians(45 - plunge / 2))
        return (self.x + self.radius * share * math.sin(math.radians(trend)),
                self.y - self.radius * share * math.cos(math.radians(trend)))

    def direction_at(self, point):
        """The line that is drawn at a point."""
        east, north = (point[0] - self.x) / self.radius, (self.y - point[1]) / self.radius
        distance = min(1, math.hypot(east, north))
        plunge = 90 - 2 * math.degrees(math.asin(distance / math.sqrt(2)))
        return direction(math.degrees(math.atan2(east, north)), plunge)

    def azimuth_of(self, point):
        return math.degrees(math.atan2(point[0] - self.x, self.y - point[1])) % 360

    def of_class(self, name):
        return [shape for shape in self.shapes if has_class(shape, name)]


class Drawing:
    def __init__(self, svg):
        self.root = ElementTree.fromstring(svg)
        self.width, self.height = (float(x) for x in self.root.get("viewBox").split()[2:])
        self.texts = [(element, element.text or "") for element in self.root.iter(SVG + "text")]
        self.words = " ".join(text for _, text in self.texts)
        self.panels = [Panel(circle) for circle in self.root.iter(SVG + "circle")
                       if has_class(circle, "frame")]
        for group in self.root.iter(SVG + "g"):
            if has_class(group, "reading"):
                self.panel_of(group[1]).readings.append(group)
        for path in self.root.iter(SVG + "path"):
            points = parts_of(path)
            if points and self.panel_of(path) is not None:
                self.panel_of(path).shapes.append(path)

    def panel_of(self, path):
        """The panel that a shape lies on; shapes of legends lie on none."""
        at = parts_of(path)[0][0]
        nearest = min(self.panels, key=lambda p: math.hypot(at[0] - p.x, at[1] - p.y), default=None)
        return nearest if nearest is not None and nearest.holds(at) else None


def difference(a, b, turn=360):
    return abs((a - b + turn / 2) % turn - turn / 2)


class Pictures(Case):
    def setUp(self):
        super().setUp()
        for log in LOGS:
            shutil.copy(DATA / log, self.folder / log)

    def svg(self, *arguments, status=None, **rest):
        done = self.run_program(*arguments, "-q", **rest)
        self.assertIn(done.returncode, (0, 1) if status is None else (status,), done.stderr)
        self.assertEqual(done.stderr, b"")
        return done.stdout

    def drawing(self, *arguments, **rest):
        return Drawing(self.svg(*arguments, **rest))

    def table(self, *logs, options=()):
        """The rows of planes and lines that were not rejected, by their place."""
        done = self.run_program("reduce", "-q", "--format", "csv", *logs, *options)
        rows = csv.DictReader(io.StringIO(done.stdout.decode()))
        return {row["source"]: row for row in rows
                if row["type"] in ("plane", "line") and row["status"] != "rejected"}

    def axis(self, row):
        """What the table says of a pole or line, as trend and plunge."""
        if row["type"] == "plane":
            return (float(row["strike"] or 0) - 90) % 360, 90 - float(row["dip"])
        return float(row["trend"] or 0), float(row["plunge"])

    def render(self, svg, name="picture"):
        """It renders, or the test fails; so it does where there is nothing to render with."""
        self.put(name + ".svg", svg)
        tool = shutil.which("rsvg-convert")
        self.assertIsNotNone(tool, "rsvg-convert (package librsvg2-bin) is missing")
        done = subprocess.run([tool, name + ".svg", "-o", name + ".png"], cwd=self.folder,
                              capture_output=True, timeout=60, check=False)
        self.assertEqual((done.returncode, done.stderr), (0, b""))
        self.assertTrue(self.read(name + ".png").startswith(b"\x89PNG"))

    # ---- nets

    def assert_on_their_places(self, logs, options=(), net_options=()):
        rows = self.table(*logs, options=options)
        drawing = self.drawing("net", *logs, *options, *net_options)
        seen = set()
        for panel in drawing.panels:
            for group in panel.readings:
                source = group.get("data-source")
                self.assertNotIn(source, seen)
                seen.add(source)
                row = rows[source]
                trend, plunge = self.axis(row)
                marks = [path for path in group if has_class(path, "mark")]
                curves = [path for path in group if has_class(path, "curve")]
                self.assertTrue(marks or curves)
                for mark in marks:
                    at = middle(parts_of(mark)[0])
                    # A symbol's middle is the mean of its corners but for their last digit.
                    off = between(panel.direction_at(at), direction(trend, plunge))
                    slack = 0.05 * math.sqrt(2) + 0.05
                    self.assertLess(off, slack, (source, at))
                if curves:
                    self.assert_circle(panel, curves, pole(float(row["strike"] or 0),
                                                           float(row["dip"])), source)
        self.assertEqual(seen, set(rows))
        return drawing

    def assert_circle(self, panel, curves, wanted, source):
        ends = []
        lowest = 0
        for curve in curves:
            for part in parts_of(curve):
                ends += [part[0], part[-1]]
                for point in part:
                    found = panel.direction_at(point)
                    self.assertLess(abs(between(found, wanted) - 90), 0.13, (source, point))
                    lowest = max(lowest, found[2])
        for end in ends:
            self.assertAlmostEqual(math.hypot(end[0] - panel.x, end[1] - panel.y), panel.radius,
                                   delta=0.003)
        # It is the whole lower half: it reaches down to its dip.
        self.assertAlmostEqual(lowest, math.sqrt(1 - wanted[2] ** 2), delta=0.003)

    def test_every_mark_lies_where_the_table_says(self):
        for log in LOGS:
            self.assert_on_their_places([log])
        self.assert_on_their_places(LOGS)
        self.assert_on_their_places(LOGS, net_options=["--by", "unit,station"])
        self.assert_on_their_places(LOGS, net_options=["--contours"])
        self.assert_on_their_places(["labrador-1978.log"], ["--declination", "model"])
        self.assert_on_their_places(["night-typing.log"], ["--north", "magnetic"])
        self.assert_on_their_places(["night-typing.log"], ["--north", "grid"])
        self.assert_on_their_places(["night-typing.log"], ["--repeats", "mean"])

    def test_every_great_circle_lies_at_right_angles_to_its_pole(self):
        for log in LOGS:
            self.assert_on_their_places([log], net_options=["--circles"])
            self.assert_on_their_places([log], net_options=["--circles", "--poles"])

    def test_marks_of_awkward_attitudes(self):
        self.put("odd.txt", HEADING + "station A\n bedding horizontal\n lineation vertical\n"
                 " bedding 000 90\n bedding 360 45\n lineation 360/0\n lineation 180/00\n"
                 " bedding 179.9 0.1\n bedding 090 89.9\n bedding 045 1\n")
        for options in ([], ["--circles"], ["--circles", "--poles"]):
            self.assert_on_their_places(["odd.txt"], net_options=options)

    def test_without_suspect_they_are_not_drawn(self):
        rows = self.table("night-typing.log")
        drawing = self.drawing("net", "night-typing.log", "--without-suspect")
        drawn = {group.get("data-source") for group in drawing.panels[0].readings}
        self.assertEqual(drawn, {s for s, row in rows.items() if row["status"] == "ok"})
        self.assertLess(len(drawn), len(rows))
        self.assertIn("suspect.", drawing.words)

    def test_kinds_are_chosen(self):
        rows = self.table("night-typing.log")
        drawing = self.drawing("net", "night-typing.log", "--kind", "Bedding,cleavage")
        drawn = {group.get("data-source") for group in drawing.panels[0].readings}
        self.assertEqual(drawn, {s for s, row in rows.items()
                                 if row["kind"] in ("bedding", "cleavage")})

    def test_cones_lie_at_their_angle_from_the_mean(self):
        log = HEADING + "station A\n" + "".join(
            f" lineation {trend:03}/{plunge}\n"
            for trend, plunge in ((30, 4), (36, 1), (41, 9), (24, 6), (33, 0), (214, 3)))
        self.put("lines.txt", log)
        # The mean of the table's figures: axes turned to one side, summed.
        sum_of = [0, 0, 0]
        for row in self.table("lines.txt").values():
            line = direction(*self.axis(row))
            sign = 1 if dot(line, direction(30, 0)) > 0 else -1
            sum_of = [s + sign * x for s, x in zip(sum_of, line)]
        length = math.hypot(*sum_of)
        mean = [s / length for s in sum_of]
        cosine = 1 - (6 - length) / length * (20 ** (1 / 5) - 1)
        cone = math.degrees(math.acos(cosine))
        panel = self.drawing("net", "lines.txt").panels[0]
        points = [point for path in panel.of_class("cone") for part in parts_of(path)
                  for point in part]
        self.assertGreater(len(points), 180)
        for point in points:
            self.assertLess(math.hypot(point[0] - panel.x, point[1] - panel.y),
                            panel.radius + 0.002)
            self.assertAlmostEqual(between(panel.direction_at(point), mean), cone, delta=0.05)
        symbols = panel.of_class("mean")
        self.assertEqual(len(symbols), 1)
        at = middle(parts_of(symbols[0])[0])
        self.assertLess(between(panel.direction_at(at), mean), 0.05)

    def test_the_girdle_goes_along_the_poles_and_its_own_pole_is_the_fold_axis(self):
        panel = self.drawing("net", "night-typing.log", "--kind", "bedding").panels[0]
        crosses = panel.of_class("mean")
        axis = panel.direction_at(middle(parts_of(crosses[0])[0]))
        self.assertLess(between(axis, direction(322.1, 15)), 2)
        for path in panel.of_class("girdle"):
            for part in parts_of(path):
                for point in part:
                    self.assertAlmostEqual(between(panel.direction_at(point), axis), 90, delta=0.06)

    def test_contours_count_what_is_within_the_cap(self):
        panel, axes, levels = self.contoured()
        number = len(axes)
        fraction = 9 / (number + 9)
        sigma = 3 * number / (number + 9)
        contours = panel.of_class("contour")
        self.assertEqual(len(contours), len(levels))

        def density(east, north):
            at = panel.direction_at((panel.x + panel.radius * east, panel.y - panel.radius * north))
            return sum(abs(dot(at, axis)) >= 1 - fraction for axis in axes) / sigma

        asked = 0
        steps = 41
        for i in range(steps):
            for k in range(steps):
                east, north = (2 * i / (steps - 1) - 1) * 0.97, (2 * k / (steps - 1) - 1) * 0.97
                if math.hypot(east, north) > 0.97:
                    continue
                here = density(east, north)
                # Counts go in steps, and a line lies somewhere within a step of the grid from
                # there: ask where the count is the same all round.
                near = 0.022
                if any(density(east + a, north + b) != here
                       for a, b in ((near, 0), (-near, 0), (0, near), (0, -near))):
                    continue
                for level, contour in zip(levels, contours):
                    point = panel.x + panel.radius * east, panel.y - panel.radius * north
                    self.assertEqual(is_inside(parts_of(contour), point), here >= level,
                                     (east, north, here, level))
                    asked += 1
        self.assertGreater(asked, 500)

    def contoured(self):
        self.put("many.txt", HEADING + "station A\n" + "".join(
            f" bedding {(37 + 23 * i + i * i) % 60 + (120 if i % 3 else 0):03} {20 + (i * 7) % 50}\n"
            for i in range(36)))
        drawing = self.drawing("net", "many.txt", "--contours")
        axes = [direction(*self.axis(row)) for row in self.table("many.txt").values()]
        self.assertEqual(len(axes), 36)
        stated = drawing.words.split("density after Kamb: ")[1]
        self.assertTrue(stated.startswith(f"N 36, a cap of {100 * 9 / 45:.1f} % of the hemisphere"))
        levels = stated.split("lines at ")[1].split(" sigma")[0]
        return drawing.panels[0], axes, [float(level) for level in levels.split(", ")]

    def test_contours_of_few_readings_come_with_a_warning(self):
        done = self.assert_status(0, "net", "lost-in-fog.log", "--contours", "-o", "c.svg")
        self.assertIn(b"2 nets have fewer than 20 surfaces or lines", done.stderr)
        self.assertIn(b"no contours: N 2, and of under 10", self.read("c.svg"))
        done = self.assert_status(0, "net", "lost-in-fog.log", "-o", "c.svg")
        self.assertNotIn(b"fewer than 20", done.stderr)
        done = self.assert_status(0, "net", "lost-in-fog.log", "--contours", "-q", "-o", "c.svg")
        self.assertEqual(done.stderr, b"")

    def test_units_have_a_panel_each(self):
        rows = self.table("night-typing.log")
        drawing = self.drawing("net", "night-typing.log", "--by", "unit")
        units = {row["unit"] for row in rows.values()}
        self.assertEqual(len(drawing.panels), len(units))
        for panel in drawing.panels:
            self.assertEqual(len({rows[g.get("data-source")]["unit"] for g in panel.readings}), 1)
        labels = [text for element, text in drawing.texts if has_class(element, "label")]
        for unit in units:
            self.assertIn(unit or "no unit", labels)

    def test_the_footer_names_projection_north_and_declination(self):
        words = self.drawing("net", "night-typing.log").words
        for part in ("Equal-area (Schmidt) net, lower hemisphere", "planes as poles",
                     "From true north; declination 24.9E", "Left out: 3 rejected"):
            self.assertIn(part, words)
        words = self.drawing("net", "labrador-1978.log").words
        self.assertIn("From magnetic north; declination unknown", words)
        words = self.drawing("net", *LOGS[:2]).words
        self.assertIn("From true and magnetic north; declination 24.9E in 1 log; "
                      "declination unknown in 1 log", words)
        self.assertEqual(len(self.drawing("net", *LOGS[:2]).panels), 2)

    # ---- roses

    def roses(self, log, *options, bin_degrees=10, repeats="mean"):
        """Each rose with the surfaces, or else readings, that it shows."""
        rows = self.table(log, options=["--repeats", repeats])
        drawing = self.drawing("rose", log, *options, "--bin", str(bin_degrees))
        kinds = list(dict.fromkeys(row["kind"] for row in rows.values()))
        self.assertEqual(len(drawing.panels), len(kinds))
        for panel, kind in zip(drawing.panels, kinds):
            yield panel, {s: row for s, row in rows.items()
                          if row["kind"] == kind and (row["strike"] or row["trend"])
                          and row["uncertainty"]}

    def test_petals_have_areas_by_their_counts(self):
        # The table shows tenths, by which a reading close to the edge of a bin may be in either:
        # declinations of whole degrees keep them on figures as typed.
        self.put("plain.log", (DATA / "night-typing.log").read_text().replace("24.9E", "25E"))
        for log, bin_degrees in (("plain.log", 10), ("plain.log", 15), ("plain.log", 2),
                                 ("plain.log", 45), ("labrador-1978.log", 5),
                                 ("labrador-1978.log", 20), ("labrador-1978.log", 30)):
            for panel, rows in self.roses(log, bin_degrees=bin_degrees):
                counts = [0] * (360 // bin_degrees)
                for row in rows.values():
                    azimuth = float(row["strike"] or row["trend"])
                    counts[int(azimuth // bin_degrees)] += 1
                    if row["type"] == "plane":
                        counts[int((azimuth + 180) % 360 // bin_degrees)] += 1
                areas = [0] * len(counts)
                for petal in panel.of_class("petal"):
                    ring = parts_of(petal)[0]
                    areas[int(panel.azimuth_of(middle(ring)) // bin_degrees)] = area(ring)
                    reach = max(math.hypot(x - panel.x, y - panel.y) for x, y in ring)
                    self.assertLess(reach, panel.radius + 0.003)
                if not rows:
                    self.assertEqual(sum(areas), 0)
                    continue
                largest = max(areas)
                for count, found in zip(counts, areas):
                    self.assertAlmostEqual(found / largest, count / max(counts), delta=0.005)
                if all(row["type"] == "plane" for row in rows.values()):
                    for one, other in zip(areas, areas[len(areas) // 2:]):
                        self.assertAlmostEqual(one / largest, other / largest, delta=0.005)

    def test_every_reading_is_a_tick(self):
        for log in LOGS:
            for panel, rows in self.roses(log, repeats="each"):
                seen = {}
                for group in panel.readings:
                    ticks = [panel.azimuth_of(parts_of(path)[0][1])
                             for path in group if has_class(path, "tick")]
                    seen[group.get("data-source")] = ticks
                self.assertEqual(set(seen), set(rows))
                for source, ticks in seen.items():
                    row = rows[source]
                    azimuth = float(row["strike"] or row["trend"])
                    wanted = [azimuth, azimuth + 180] if row["type"] == "plane" else [azimuth]
                    self.assertEqual(len(ticks), len(wanted))
                    for tick, one in zip(ticks, wanted):
                        self.assertLess(difference(tick, one), 0.07, source)

    def arc(self, number, length):
        """Upton's (Zar 1999, eqs. 26.23 and 26.24), degrees; half a turn where there is none."""
        chi = 3.841459
        if length / number < 0.9:
            excess = 2 * length ** 2 - number * chi
            if excess <= 0:
                return 180
            cosine = math.sqrt(2 * number * excess / (4 * number - chi)) / length
        else:
            rest = number ** 2 - (number ** 2 - length ** 2) * math.exp(chi / number)
            if rest <= 0:
                return 180
            cosine = math.sqrt(rest) / length
        return math.degrees(math.acos(min(1, cosine)))

    def test_means_are_drawn_where_they_mean_something(self):
        drawn = undrawn = 0
        for log in LOGS:
            for panel, rows in self.roses(log):
                azimuths = [float(row["strike"] or row["trend"]) for row in rows.values()]
                lines = panel.of_class("mean")
                if not azimuths:
                    self.assertEqual(lines, [])
                    continue
                fold = 2 if next(iter(rows.values()))["type"] == "plane" else 1
                east = sum(math.sin(math.radians(fold * a)) for a in azimuths)
                north = sum(math.cos(math.radians(fold * a)) for a in azimuths)
                number, length = len(azimuths), math.hypot(east, north)
                # Rayleigh's test.
                chance = math.exp(math.sqrt(1 + 4 * number + 4 * (number ** 2 - length ** 2))
                                  - (1 + 2 * number))
                self.assertFalse(0.04 < chance < 0.06, "choose data of which it is clear")
                arc = self.arc(number, length) / fold
                if number < 3 or chance > 0.05 or arc > 25:
                    self.assertEqual(lines + panel.of_class("sector"), [])
                    undrawn += 1
                    continue
                drawn += 1
                mean = math.degrees(math.atan2(east, north)) / fold % (360 / fold)
                ends = [mean + 360 / fold * i for i in range(fold)]
                self.assertEqual(len(lines), fold)
                for line, sector, end in zip(lines, panel.of_class("sector"), ends):
                    self.assertLess(difference(panel.azimuth_of(parts_of(line)[0][1]), end), 0.1)
                    points = parts_of(sector)[0]
                    # The last is the middle of the rose.
                    for i in (0, -2):
                        self.assertAlmostEqual(difference(panel.azimuth_of(points[i]), end), arc,
                                               delta=0.3)
        self.assertGreater(drawn, 3)
        self.assertGreater(undrawn, 3)

    # ---- every picture

    def commands(self):
        yield from (["net"], ["net", "--circles"], ["net", "--circles", "--poles"],
                    ["net", "--contours"], ["net", "--by", "unit"], ["net", "--by", "unit,station"],
                    ["net", "--by", "unit", "--contours", "--kind", "joint,dike"],
                    ["rose"], ["rose", "--bin", "2"], ["rose", "--by", "station"])

    def assert_fits(self, svg, arguments):
        """Words start and end on the paper, by the mean width of a letter."""
        drawing = Drawing(svg)
        sizes = {"title": 4, "label": 2.8, "figure": 2.2}
        for element, text in drawing.texts:
            size = sizes[element.get("class").split()[0]]
            width = 0.56 * size * len(text)
            x, y = float(element.get("x")), float(element.get("y"))
            anchor = element.get("text-anchor")
            left = x - {"start": 0, "middle": width / 2, "end": width}[anchor]
            self.assertGreaterEqual(left, 0, (arguments, text))
            self.assertLessEqual(left + width, drawing.width, (arguments, text))
            self.assertTrue(size < y < drawing.height, (arguments, text))
        return drawing

    def test_every_picture_is_well_formed_fits_and_renders(self):
        for logs in [[log] for log in LOGS] + [LOGS]:
            for command in self.commands():
                arguments = [*command, *logs]
                svg = self.svg(*arguments)
                self.assertNotIn(b"nan", svg)
                self.assertNotIn(b"inf", svg.replace(b"infin", b""))
                drawing = self.assert_fits(svg, arguments)
                identifiers = [e.get("id") for e in drawing.root.iter() if e.get("id")]
                self.assertEqual(len(identifiers), len(set(identifiers)))
                self.render(svg)

    def test_same_input_gives_same_bytes(self):
        other = self.folder / "other"
        other.mkdir()
        for log in LOGS:
            shutil.copy(DATA / log, other / log)
        for command in self.commands():
            arguments = [*command, *LOGS]
            first = self.svg(*arguments)
            self.assertEqual(self.svg(*arguments), first)
            locale = {"LC_ALL": "de_DE.UTF-8", "LANG": "tr_TR.UTF-8", "TZ": "Asia/Tokyo"}
            self.assertEqual(self.svg(*arguments, env=locale), first)
            self.assertEqual(self.svg(*arguments, env={"LC_ALL": "C"}), first)
            there = [str(other / a) if a in LOGS else a for a in arguments]
            self.assertEqual(self.svg(*there), first)
            self.assertNotIn(str(self.folder).encode(), self.svg(*there))

    def test_ten_thousand_readings_are_all_drawn(self):
        """How long they take, tests/bench/pictures.py measures."""
        state = 7
        lines = [HEADING]
        for i in range(2000):
            lines.append(f"station S{i}\n")
            for _ in range(5):
                state = (state * 1103515245 + 12345) % 2 ** 31
                lines.append(f" bedding {state // 8 % 360:03} {10 + state // 4096 % 80}\n")
        self.put("big.txt", "".join(lines))
        for command in (["net"], ["net", "--circles"], ["net", "--contours"], ["rose"]):
            svg = self.assert_status(0, *command, "big.txt", "-q").stdout
            self.assertEqual(svg.count(b'<g class="reading"'), 10000, command)

    # ---- bad and odd input

    def test_hostile_names_stay_text(self):
        hostile = '<script>alert("x")</script> ]]> &amp; \' <!-- '
        long = "Ñ" * 900
        log = (HEADING + "station one\n unit " + hostile + "\n"
               + " bedding 070 30, 071 31, 069 30\n" * 3 + " bedding 200 80 # " + hostile + "\n"
               + f"station {long}\n unit {'wide ' * 300}\n bedding 300 80, 301 80\n").encode()
        log += (b"station \xff\xfe\x01\n unit \xc3\x28\x1b[31m\n bedding 010 10\n"
                + "station a\u202eb\u2066c\n unit x\u202by\u2069\n bedding 010 10\n".encode())
        name = '<b>"&\n\x01\u202e.txt'
        self.put(name, log)
        for command in (["net"], ["net", "--by", "unit,station"], ["rose", "--by", "unit,station"],
                        ["net", "--contours", "--by", "unit"]):
            svg = self.svg(*command, name)
            drawing = self.assert_fits(svg, command)
            tags = {element.tag.removeprefix(SVG) for element in drawing.root.iter()}
            self.assertLessEqual(tags, {"svg", "title", "desc", "style", "rect", "path", "circle",
                                        "text", "g", "clipPath"})
            for element in drawing.root.iter():
                self.assertFalse([key for key in element.keys() if key.startswith("on")])
            for letter in svg.decode("utf-8"):
                self.assertFalse(letter != "\n" and unicodedata.category(letter) in ("Cc", "Cf"),
                                 hex(ord(letter)))
            self.render(svg)

    def test_nothing_to_draw_is_a_picture_that_says_so(self):
        self.put("none.txt", "set 0\ndeclination 0\nlandmark Peak\nstation A\n sight Peak 020\n")
        self.put("empty.txt", "")
        for log in ("none.txt", "empty.txt"):
            for command in (["net"], ["net", "--contours", "--by", "unit"], ["rose"]):
                svg = self.svg(*command, log, status=0)
                self.assertIn(b"No planes and no lines.", svg)
                done = self.assert_status(0, *command, log, "-o", "x.svg")
                what = "strike or trend" if command == ["rose"] else "plane or line"
                self.assertIn(f"lodebook: warning: nothing to draw: no usable {what}\n".encode(),
                              done.stderr)
                done = self.assert_status(0, *command, log, "-q", "-o", "x.svg")
                self.assertEqual(done.stderr, b"")
                self.assert_fits(svg, command)
                self.render(svg)

    def test_one_reading_and_all_rejected(self):
        self.put("one.txt", HEADING + "station A\n bedding 070 30\n")
        self.put("rejected.txt", HEADING + "station A\n bedding 470 30\n bedding 070 95\n")
        for command in (["net"], ["net", "--circles"], ["net", "--contours"], ["rose"]):
            drawing = self.drawing(*command, "one.txt", status=0)
            self.assertEqual(len(drawing.panels[0].readings), 1)
            self.assertEqual(drawing.panels[0].of_class("mean"), [])
            svg = self.svg(*command, "rejected.txt", status=1)
            self.assertIn(b"Left out: 2 rejected.", svg)
            for log, status, is_said in (("one.txt", 0, False), ("rejected.txt", 1, True)):
                done = self.assert_status(status, *command, log, "-o", "x.svg")
                self.assertEqual(b"nothing to draw" in done.stderr, is_said, (command, log))
            self.assertEqual(Drawing(svg).panels[0].readings, [])
            self.render(svg)

    def test_a_kind_that_was_not_read_is_refused(self):
        for command in ("net", "rose"):
            done = self.assert_status(2, command, "night-typing.log", "--kind", "beding", "-q",
                                      "-o", "x.svg")
            self.assertIn(b"no 'beding' in the logs", done.stderr)
            self.assertIn(b"'bedding'?", done.stderr)
            self.assertEqual(done.stdout, b"")
            self.assertNotIn("x.svg", self.files())
            done = self.assert_status(2, command, "night-typing.log", "--kind", "bedding,sight")
            self.assertIn(b"no 'sight' in the logs", done.stderr)
            self.assertEqual(done.stdout, b"")

    # ---- maps

    def test_logs_too_far_apart_for_one_map_are_refused(self):
        for name, position in (("north.txt", "44.6891N 169.0144E"),
                               ("south.txt", "44.6891S 169.0144E")):
            self.put(name, HEADING + f"station A at {position}\n bedding 070 30\n")
        done = self.assert_status(2, "map", "north.txt", "south.txt", "-o", "x.svg")
        self.assertIn(b"north.txt and south.txt lie 9901 km apart, and one map shows 1900 km",
                      done.stderr)
        self.assertIn(b"help: a map of each", done.stderr)
        self.assertEqual(done.stdout, b"")
        self.assertNotIn("x.svg", self.files())
        self.assert_status(0, "map", "north.txt", "-o", "x.svg")
        self.put("slip.txt", self.read("north.txt") + b"station B at 44.6891S 169.0144E\n")
        done = self.assert_status(2, "map", "slip.txt")
        self.assertIn(b"station A and station B of slip.txt lie 9901 km apart", done.stderr)
        self.assertIn(b"help: is a position mistyped?", done.stderr)

    def test_a_map_of_nothing_says_so(self):
        self.put("empty.txt", "")
        self.put("placeless.txt", HEADING + "station A\n bedding 070 30\n")
        for log in ("empty.txt", "placeless.txt"):
            done = self.assert_status(0, "map", log, "-o", "x.svg")
            self.assertIn(b"lodebook: warning: nothing to draw: no station and no landmark has a "
                          b"position\nhelp: type a position behind a station, ", done.stderr)
            self.assertIn(b"There is nothing to draw", self.read("x.svg"))
            done = self.assert_status(0, "map", log, "-q", "-o", "x.svg")
            self.assertEqual(done.stderr, b"")

    def test_options_are_those_of_the_command(self):
        self.assert_status(2, "net")
        self.assert_status(2, "net", "night-typing.log", "--bin", "10")
        self.assert_status(2, "rose", "night-typing.log", "--circles")
        self.assert_status(2, "rose", "night-typing.log", "--bin", "7")
        self.assert_status(2, "net", "night-typing.log", "--format", "svg")
        done = self.assert_status(2, "net", "night-typing.log", "--by", "unit,age")
        self.assertIn(b"--by does not take 'age'", done.stderr)
        self.assertEqual(done.stdout, b"")

    def test_outputs_are_all_or_nothing_and_never_inputs(self):
        before = self.read("lost-in-fog.log")
        self.put("log.svg", before)
        for command in ("net", "rose"):
            done = self.assert_status(2, command, "log.svg", "-o", "./log.svg")
            self.assertIn(b"both input and output", done.stderr)
            self.assert_status(3, command, "lost-in-fog.log", "-o", "/dev/full")
            self.assert_status(3, command, "lost-in-fog.log", "-o", "no/folder/x.svg")
            with open("/dev/full", "wb") as full:
                self.assert_status(3, command, "lost-in-fog.log", stdout=full)
        self.assertEqual(self.read("log.svg"), before)
        self.assertEqual(self.files(), sorted([*LOGS, "log.svg"]))

    def test_a_log_that_cannot_be_read_leaves_the_others(self):
        alone = self.svg("net", "lost-in-fog.log")
        done = self.assert_status(3, "net", "missing.log", "lost-in-fog.log", "-q")
        self.assertIn(b"cannot read missing.log", done.stderr)
        self.assertEqual(done.stdout, alone)
        done = self.assert_status(3, "net", "missing.log", "-o", "x.svg")
        self.assertNotIn("x.svg", self.files())
        self.assertEqual(done.stdout, b"")

    def test_a_log_may_be_piped_in(self):
        log = self.read("lost-in-fog.log")
        for command in ("net", "rose"):
            piped = self.svg(command, "-", stdin=log)
            self.assertIn(b"&lt;stdin&gt;", piped)
            self.assertEqual(piped.replace(b"&lt;stdin&gt;", b"lost-in-fog.log"),
                             self.svg(command, "lost-in-fog.log"))
        self.assert_status(2, "net", "-", "-")

    def test_faults_are_told_and_count_in_the_status(self):
        self.put("bad.txt", BAD)
        done = self.assert_status(1, "net", "bad.txt", "-o", "x.svg")
        self.assertEqual(done.stderr, b"bad.txt: 1 error; lodebook check says which\n")
        self.assertTrue(self.read("x.svg").startswith(b"<?xml"))
        done = self.assert_status(1, "rose", "bad.txt", "-q", "-o", "x.svg")
        self.assertEqual((done.stdout, done.stderr), (b"", b""))
        self.put("odd.txt", HEADING + "station A\n bedding 070 30 doubtful\n")
        self.assert_status(0, "net", "odd.txt", "-o", "x.svg")
        self.assert_status(1, "net", "odd.txt", "--strict", "-o", "x.svg")

    def test_colour_has_no_place_in_a_picture(self):
        plain = self.svg("net", "lost-in-fog.log")
        for options, env in ((["--color", "always"], {}), ([], {"NO_COLOR": "1"}),
                             ([], {"TERM": "xterm-256color"})):
            self.assertEqual(self.svg("net", "lost-in-fog.log", *options, env=env), plain)


if __name__ == "__main__":
    os.environ.pop("NO_COLOR", None)
    main()
