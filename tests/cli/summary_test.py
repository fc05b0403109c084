#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`lodebook summary` as a program: its figures recomputed, its formats, and how it ends."""

import csv
import io
import json
import math
import os
import pathlib
import shutil

from program import BAD, Case, main

DATA = pathlib.Path(__file__).resolve().parents[2] / "data"
LOGS = ["night-typing.log", "labrador-1978.log", "lost-in-fog.log"]
HEADING = "set 0\ndeclination 0\nrule right\n"


def direction(trend, plunge):
    trend, plunge = math.radians(trend), math.radians(plunge)
    return (math.cos(trend) * math.cos(plunge), math.sin(trend) * math.cos(plunge),
            math.sin(plunge))


def between(a, b):
    cross = (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
    return math.degrees(math.atan2(math.hypot(*cross), abs(sum(x * y for x, y in zip(a, b)))))


def line_of(json_line):
    return direction(json_line["trend"] or 0, json_line["plunge"])


def refuse_constant(word):
    raise ValueError(f"{word} is not JSON")


class Summary(Case):
    def setUp(self):
        super().setUp()
        for log in LOGS:
            shutil.copy(DATA / log, self.folder / log)

    def text(self, *arguments, **rest):
        done = self.run_program("summary", "-q", *arguments, **rest)
        self.assertIn(done.returncode, (0, 1), done.stderr)
        self.assertEqual(done.stderr, b"")
        return done.stdout.decode()

    def document(self, *arguments, **rest):
        return json.loads(self.text(*arguments, "--format", "json", **rest),
                          parse_constant=refuse_constant)

    def group(self, kind, *arguments):
        groups = [g for g in self.document(*arguments)["groups"] if g["kind"] == kind]
        self.assertEqual(len(groups), 1)
        return groups[0]

    def rows(self, *arguments):
        return list(csv.DictReader(io.StringIO(self.text(*arguments, "--format", "csv"))))

    def table(self, log, kind):
        done = self.run_program("reduce", "-q", "--format", "csv", log)
        return [row for row in csv.DictReader(io.StringIO(done.stdout.decode()))
                if row["kind"] == kind and row["status"] != "rejected"]

    # ---- figures

    def test_the_fold_of_the_night_typed_log_has_the_axis_it_was_made_with(self):
        # The log was computed from a fold axis that plunges 15 towards N63W of the compass, 24.9
        # degrees east of true north; rounded and scattered by a degree or less.
        bedding = self.group("bedding", "night-typing.log")
        self.assertEqual(bedding["fabric"], "girdle")
        axis = line_of(bedding["girdle"]["axis"])
        self.assertLess(between(axis, direction(322, 15)), 2)
        self.assertLess(bedding["girdle"]["axis"]["cone95"], 3)
        # The repeat with a slip of the quadrant, and the intersection with one of 27 degrees.
        self.assertEqual([far["source"] for far in bedding["far_off"]], ["night-typing.log:35:25"])
        intersection = self.group("intersection", "night-typing.log")
        self.assertEqual([far["written"] for far in intersection["far_off"]],
                         ["N36W 15 on bedding"])
        cleavage = self.group("cleavage", "night-typing.log")
        self.assertEqual(cleavage["fabric"], "cluster")
        self.assertEqual(cleavage["far_off"], [])

    def test_the_fold_of_the_old_log_has_the_axis_that_was_read_on_it(self):
        # Its fold axes and stretching were read at 21 to 23 towards S20E and S21E of the compass.
        foliation = self.group("foliation", "labrador-1978.log")
        self.assertEqual((foliation["fabric"], foliation["north"]), ("girdle", "magnetic"))
        self.assertLess(between(line_of(foliation["girdle"]["axis"]), direction(159.5, 22)), 2)
        true = self.group("foliation", "labrador-1978.log", "--declination", "31.5W")
        self.assertEqual(true["north"], "true")
        self.assertLess(between(line_of(true["girdle"]["axis"]), direction(128, 22)), 2)

    def test_fishers_figures_are_those_of_the_table(self):
        checked = 0
        shutil.copy(DATA / "sand-quarry.log", self.folder / "sand-quarry.log")
        for log in [*LOGS, "sand-quarry.log"]:
            for group in self.document(log)["groups"]:
                mean = group["mean"]
                if group["surfaces"] < 3 or group["no_single_mean"] or group["type"] == "arrow":
                    continue
                rows = self.table(log, group["kind"])
                self.assertEqual(len(rows), group["count"])
                pole = line_of(mean["pole"] if group["type"] == "plane" else mean)
                # Repeats of one surface count once, as their mean.
                surfaces = {}
                for row in rows:
                    axis = direction(float(row["strike"] or 0) - 90, 90 - float(row["dip"])) \
                        if group["type"] == "plane" \
                        else direction(float(row["trend"] or 0), float(row["plunge"]))
                    sign = 1 if sum(a * b for a, b in zip(axis, pole)) > 0 else -1
                    one = surfaces.setdefault((row["station"], row["surface"]), [0, 0, 0])
                    one[:] = [t + sign * a for t, a in zip(one, axis)]
                self.assertEqual(len(surfaces), group["surfaces"])
                total = [0, 0, 0]
                for one in surfaces.values():
                    total = [t + a / math.hypot(*one) for t, a in zip(total, one)]
                length, number = math.hypot(*total), len(surfaces)
                self.assertAlmostEqual(mean["resultant"], length, delta=0.003 * number)
                self.assertLess(between(total, pole), 0.1)
                if number - length > 0.01:
                    k = (number - 1) / (number - length)
                    self.assertAlmostEqual(mean["precision_k"] / k, 1, delta=0.02)
                    if k > 4.1:
                        cosine = 1 - (number - length) / length * (20 ** (1 / (number - 1)) - 1)
                        self.assertAlmostEqual(mean["cone95"], math.degrees(math.acos(cosine)),
                                               delta=0.3)
                    elif k < 3.9:
                        self.assertIsNone(mean["cone95"])
                checked += 1
        self.assertGreater(checked, 3)

    def test_eigenvalues_add_up_to_one(self):
        for group in self.document(*LOGS, "--by", "unit,station")["groups"]:
            if group["count"] > 0:
                self.assertAlmostEqual(sum(group["tensor"]["eigenvalues"]), 1, delta=0.0002)
            else:
                self.assertIsNone(group["tensor"])

    def test_a_planted_slip_is_named_with_its_line(self):
        lines = [f" bedding {60 + i % 5:03} {30 + i % 3}\n" for i in range(15)]
        self.put("clean.txt", HEADING + "station A\n" + "".join(lines))
        self.assertEqual(self.group("bedding", "clean.txt")["far_off"], [])
        lines[7] = " bedding 162 31\n"
        self.put("slip.txt", HEADING + "station A\n" + "".join(lines))
        far = self.group("bedding", "slip.txt")["far_off"]
        self.assertEqual([(one["source"], one["written"], one["station"]) for one in far],
                         [("slip.txt:12:2", "162 31", "A")])
        self.assertIn("outlier         slip.txt:12:2, station A: 162 31, 4", self.text("slip.txt"))

    def test_undefined_is_a_word_in_text_null_in_json_and_empty_in_a_table(self):
        self.put("few.txt", HEADING + "station A\n bedding 070 30\n bedding horizontal\n"
                 " lineation 030/20\n lineation 030/20\n lineation 030/20\n lineation vertical\n"
                 " joint 000 90\n joint 090 90\n fault 000 60\n fault 120 60\n fault 240 60\n")
        text = self.text("few.txt")
        self.assertIn("undefined", text)
        for logs in (["few.txt"], LOGS):
            for form in ("text", "json", "csv"):
                out = self.text(*logs, "--format", form, "--by", "station").lower()
                for word in ("nan", "inf"):
                    self.assertNotIn(word, out.replace("infeld", ""))
        joint = self.group("joint", "few.txt")
        self.assertIsNone(joint["mean"])
        self.assertIn("mean of poles   no single mean: no direction stands out", text)
        row = [r for r in self.rows("few.txt") if r["kind"] == "joint"][0]
        self.assertEqual((row["mean_strike"], row["mean_dip"], row["cone95"]), ("", "", ""))

    def test_kinds_of_one_name_but_another_nature_are_not_averaged_together(self):
        self.put("a.txt", HEADING + "kind striae line\nstation A\n striae 020/10\n")
        self.put("b.txt", HEADING + "kind striae plane\nstation A\n striae 020 70\n")
        groups = self.document("a.txt", "b.txt", "--kind", "striae")["groups"]
        self.assertEqual([(g["type"], g["count"]) for g in groups], [("line", 1), ("plane", 1)])

    # ---- groups and counts

    def test_counts_agree_with_the_table(self):
        for log in LOGS:
            for options in ([], ["--by", "unit"], ["--by", "station"], ["--by", "unit,station"],
                            ["--by", "station,unit"], ["--without-suspect"]):
                done = self.run_program("reduce", "-q", "--format", "csv", log)
                rows = [r for r in csv.DictReader(io.StringIO(done.stdout.decode()))
                        if r["type"] in ("plane", "line")]
                groups = self.document(log, *options)["groups"]
                self.assertEqual(sum(g["count"] + g["rejected"] + g["suspect_left_out"]
                                     for g in groups), len(rows))
                suspect = sum(r["status"] == "suspect" for r in rows)
                key = "suspect_left_out" if options == ["--without-suspect"] else "suspect"
                self.assertEqual(sum(g[key] for g in groups), suspect)
                self.assertEqual(sum(g["rejected"] for g in groups),
                                 sum(r["status"] == "rejected" for r in rows))

    def test_groups_are_of_what_by_says(self):
        for by, keys in (("unit", ["unit"]), ("station", ["station"]),
                         ("unit,station", ["unit", "station"])):
            groups = self.document("night-typing.log", "--by", by)["groups"]
            names = [tuple([g["kind"]] + [g[key] for key in keys]) for g in groups]
            self.assertEqual(len(names), len(set(names)))
            if "unit" not in keys:
                self.assertEqual({g["unit"] for g in groups}, {None})
        done = self.assert_status(2, "summary", "night-typing.log", "--by", "age")
        self.assertIn(b"help: --by unit, --by station, or --by unit,station", done.stderr)

    def test_the_text_says_what_counts(self):
        text = self.text("night-typing.log")
        self.assertIn("planes are averaged by their poles", text)
        self.assertIn("bedding: 27 readings of 12 surfaces, 1 suspect; from true north", text)
        self.assertIn("joint: 5 readings; left out: 2 rejected", text)
        self.assertIn("36 sights and legs are not summed up", text)
        self.assertIn("a girdle", text)
        text = self.text("night-typing.log", "--without-suspect")
        self.assertIn("bedding: 26 readings of 12 surfaces; left out: 1 suspect", text)
        text = self.text("night-typing.log", "--repeats", "mean")
        self.assertIn("repeats of one surface count once", text)

    def test_formats_agree(self):
        for log in LOGS:
            for group, row in zip(self.document(log)["groups"], self.rows(log), strict=True):
                self.assertEqual(row["kind"], group["kind"])
                self.assertEqual(int(row["count"]), group["count"])
                for column, value in (
                        ("resultant", (group["mean"] or {}).get("resultant")),
                        ("precision_k", (group["mean"] or {}).get("precision_k")),
                        ("cone95", (group["mean"] or {}).get("cone95")),
                        ("axis_trend", ((group["girdle"] or {}).get("axis") or {}).get("trend")),
                        ("azimuth_mean", group["azimuths"]["mean"]),
                        ("woodcock_k", (group["tensor"] or {}).get("woodcock_k"))):
                    self.assertEqual(float(row[column]) if row[column] else None, value, column)
                self.assertEqual(row["far_off"].split(), [f["source"] for f in group["far_off"]])

    def test_mixed_norths_are_groups_apart(self):
        groups = self.document("night-typing.log", "labrador-1978.log", "--kind", "joint")["groups"]
        self.assertEqual([g["north"] for g in groups], ["true", "magnetic"])
        logs = self.document("night-typing.log", "labrador-1978.log")["logs"]
        self.assertEqual([log["least_declination"] for log in logs], [24.9, None])

    # ---- files and ends

    def test_the_extension_names_the_format(self):
        for name, start in (("a.csv", b"kind,type,"), ("a.json", b'{"format":"lodebook-summary"'),
                            ("a.txt", b"lost-in-fog.log: "), ("a", b"lost-in-fog.log: ")):
            self.assert_status(0, "summary", "lost-in-fog.log", "-q", "-o", name)
            self.assertTrue(self.read(name).startswith(start), name)
        self.assert_status(0, "summary", "lost-in-fog.log", "-q", "-o", "b.csv", "--format", "text")
        self.assertTrue(self.read("b.csv").startswith(b"lost-in-fog.log: "))
        self.assert_status(2, "summary", "lost-in-fog.log", "--format", "geojson")
        self.assert_status(2, "summary", "lost-in-fog.log", "--circles")

    def test_unknown_kinds_are_refused_and_nothing_is_written(self):
        done = self.assert_status(2, "summary", "lost-in-fog.log", "--kind", "joint,dyke", "-o", "x")
        self.assertIn(b"no 'dyke' in the logs", done.stderr)
        self.assertIn(b"help: 'dike'? the logs have joint, dike", done.stderr)
        self.assertNotIn("x", self.files())

    def test_nothing_one_and_all_rejected(self):
        self.put("empty.txt", "")
        self.assertIn("no planes and no lines", self.text("empty.txt"))
        self.assertEqual(self.document("empty.txt")["groups"], [])
        self.assertEqual(self.rows("empty.txt"), [])
        self.put("one.txt", HEADING + "station A\n bedding 070 30\n")
        self.assertIn("bedding: 1 reading; from true north\n  mean of poles   340.0/60.0, plane "
                      "070.0/30.0 S\n", self.text("one.txt"))
        self.put("rejected.txt", HEADING + "station A\n bedding 470 30\n")
        self.assertIn("bedding: 0 readings; left out: 1 rejected", self.text("rejected.txt"))
        group = self.group("bedding", "rejected.txt")
        self.assertEqual((group["count"], group["mean"], group["tensor"]), (0, None, None))

    def test_same_input_gives_same_bytes(self):
        for form in ("text", "json", "csv"):
            first = self.text(*LOGS, "--format", form)
            self.assertEqual(self.text(*LOGS, "--format", form), first)
            locale = {"LC_ALL": "de_DE.UTF-8", "LANG": "tr_TR.UTF-8", "TZ": "Asia/Tokyo"}
            self.assertEqual(self.text(*LOGS, "--format", form, env=locale), first)
            there = [str(self.folder / log) for log in LOGS]
            self.assertEqual(self.text(*there, "--format", form), first)

    def test_hostile_names_keep_to_their_cells(self):
        unit = 'a,"b"\x07;=1+1'
        self.put('=cmd,"x"\n\x1b[31m.txt', (HEADING + "station =S1\n unit " + unit + "\n"
                 " bedding 070 30 # \x1b[31m\n").encode() + b"station \xff\xc3(\n bedding 010 10\n")
        name = '=cmd,"x"\n\x1b[31m.txt'
        for form in ("text", "json"):
            out = self.text(name, "--by", "unit,station", "--format", form)
            self.assertNotIn("\x1b", out)
        rows = self.rows(name, "--by", "unit,station")
        self.assertEqual({len(row) for row in rows}, {len(self.rows("lost-in-fog.log")[0])})
        self.assertEqual(len(rows), len(self.document(name, "--by", "unit,station")["groups"]))
        for row in rows:
            for cell in row.values():
                self.assertFalse(cell.startswith("="), cell)

    def test_colour_is_for_the_screen_alone(self):
        escape = "\x1b["
        self.assertNotIn(escape, self.text("lost-in-fog.log"))
        self.assertIn(escape, self.text("lost-in-fog.log", "--color", "always"))
        self.assertIn(escape, self.text("lost-in-fog.log", "--color", "always",
                                        env={"NO_COLOR": "1"}))
        for form in ("json", "csv"):
            self.assertNotIn(escape,
                             self.text("lost-in-fog.log", "--color", "always", "--format", form))
        self.text("lost-in-fog.log", "--color", "always", "-o", "x.txt")
        self.assertNotIn(b"\x1b", self.read("x.txt"))

    def test_how_it_ends(self):
        self.put("bad.txt", BAD)
        done = self.assert_status(1, "summary", "bad.txt")
        self.assertEqual(done.stderr, b"bad.txt: 1 error; lodebook check says which\n")
        self.assertIn(b"bedding: 1 reading; left out: 1 rejected", done.stdout)
        done = self.assert_status(3, "summary", "missing.txt", "bad.txt", "-q")
        self.assertIn(b"cannot read missing.txt", done.stderr)
        self.assertIn(b"bedding: 1 reading", done.stdout)
        self.assert_status(3, "summary", "bad.txt", "-o", "/dev/full")
        done = self.assert_status(2, "summary", "bad.txt", "-o", "./bad.txt")
        self.assertIn(b"both input and output", done.stderr)
        self.assertEqual(self.read("bad.txt"), BAD.encode())
        self.assert_status(2, "summary")
        self.assert_status(2, "summary", "-", "-")
        with open("/dev/full", "wb") as full:
            self.assert_status(3, "summary", "bad.txt", stdout=full)
        self.put("odd.txt", HEADING + "station A\n bedding 070 30 doubtful\n")
        self.assert_status(0, "summary", "odd.txt")
        self.assert_status(1, "summary", "odd.txt", "--strict")

    def test_a_log_may_be_piped_in(self):
        log = self.read("lost-in-fog.log")
        piped = self.text("-", stdin=log)
        self.assertTrue(piped.startswith("<stdin>: declination "))
        self.assertEqual(piped.replace("<stdin>", "lost-in-fog.log"), self.text("lost-in-fog.log"))


if __name__ == "__main__":
    os.environ.pop("NO_COLOR", None)
    main()
