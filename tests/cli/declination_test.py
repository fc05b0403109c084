#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`lodebook declination` on the real command line."""

import datetime
import json
import os
import re
import subprocess

from program import PROGRAM, Case, main

KEYS = (
    "declination uncertainty annual_change inclination horizontal_nt total_nt model date latitude "
    "longitude elevation_m cautions"
).split()
PLACE = "44.6891S 169.0144E"


class Declination(Case):
    def answer(self, *arguments, **rest):
        done = self.assert_status(0, "declination", "--format", "json", *arguments, **rest)
        self.assertEqual((done.stdout.count(b"\n"), done.stderr), (1, b""), arguments)
        return json.loads(done.stdout)

    def text(self, *arguments):
        done = self.assert_status(0, "declination", *arguments)
        self.assertEqual(done.stderr, b"", arguments)
        return done.stdout.decode()

    def fault(self, *arguments, status=1):
        """What is said about a wrong command line, position or date; nothing else comes out."""
        done = self.assert_status(status, "declination", *arguments)
        self.assertEqual(done.stdout, b"", arguments)
        return done.stderr.decode()

    def assert_at(self, words, latitude, longitude, date=None):
        answer = self.answer(*words)
        self.assertAlmostEqual(answer["latitude"], latitude, 4, words)
        self.assertAlmostEqual(answer["longitude"], longitude, 4, words)
        if date is not None:
            self.assertEqual(answer["date"], date, words)

    def assert_today(self, *words):
        before = datetime.date.today()
        answer = self.answer(*words)
        self.assertIn(answer["date"], {str(before), str(datetime.date.today())}, words)

    # ---- what comes out

    def test_published_rows(self):
        """WMM2025 technical report (NOAA NCEI and BGS), table 6."""
        rows = (
            ("80 0", "2025.0", "0", 1.28, 83.21),
            ("0 120", "2025.0", "0", -0.16, -14.93),
            ("80S 120W", "2025.0", "0", 68.78, -72.00),
            ("80 0", "2025.0", "100000", 0.85, 83.26),
            ("80 0", "2027.5", "0", 2.59, 83.24),
            ("0 120", "2027.5", "100000", -0.23, -14.81),
            ("80S 120W", "2027.5", "100000", 67.93, -72.10),
        )
        for position, date, height, declination, inclination in rows:
            answer = self.answer(position, date, "--elevation", height)
            self.assertLessEqual(abs(answer["declination"] - declination), 0.0051, answer)
            self.assertLessEqual(abs(answer["inclination"] - inclination), 0.0051, answer)
            self.assertEqual(
                (answer["model"], answer["elevation_m"], answer["date"]),
                ("WMM2025", float(height), date),
            )

    def test_a_program_reads_an_object_with_its_keys_in_order(self):
        answer = self.answer(PLACE, "2026-02-14", "--elevation", "812")
        self.assertEqual(list(answer), KEYS)
        self.assertEqual(answer["date"], "2026-02-14")
        self.assertEqual((answer["latitude"], answer["longitude"]), (-44.6891, 169.0144))
        self.assertEqual(answer["cautions"], [])
        # The yearly change is that of the next year, as the model is linear in time.
        later = self.answer(PLACE, "2027-02-14", "--elevation", "812")
        self.assertAlmostEqual(
            later["declination"] - answer["declination"], answer["annual_change"], 3
        )

    def test_a_person_reads_a_statement_that_a_log_takes(self):
        text = self.text(PLACE, "2026-02-14", "--elevation", "812")
        self.assertTrue(text.startswith("44.68910S 169.01440E, elevation 812 m, 2026-02-14\n"))
        statement = re.search(r"(?m)^declination (\d+\.\d\d)E ±\d\.\d\d$", text)
        self.assertIsNotNone(statement, text)
        self.assertRegex(text, r"(?m)^  changes by 0\.\d\d degrees east a year$")
        self.assertRegex(
            text,
            r"(?m)^  magnetic inclination: north end rises \d\d\.\d\d degrees above the horizontal$",
        )
        self.assertRegex(text, r"(?m)^  horizontal field \d+ nT, total field \d+ nT$")
        self.assertRegex(text, r"(?m)^  from the model WMM2025; ± is one sigma$")
        self.assertRegex(text, r"(?m)^caution: magnetic rock and steel .* no model knows of them$")
        self.assertEqual(text.count("caution: "), 1)
        log = f"set 0\n{statement[0]}\nstation Q1\n  bedding N78E 41N\n"
        reduced = self.assert_status(0, "reduce", "-", stdin=log)
        self.assertIn(f",{statement[1]},true,".encode(), reduced.stdout)
        self.assertNotIn(b"warning", reduced.stderr)

    def test_text_is_what_comes_without_a_format(self):
        arguments = [PLACE, "1978-07-19"]
        self.assertEqual(self.text(*arguments), self.text(*arguments, "--format", "text"))

    def test_signs_and_words_agree(self):
        for place in ("60N 60W", "50N 10E", "0 120", "44S 170E", "35S 20E"):
            answer, text = self.answer(place, "2012.5"), self.text(place, "2012.5")
            self.assertIn(f"±{answer['uncertainty']:.2f}\n", text)
            for key, plus, minus, pattern in (
                ("declination", "E", "W", r"declination (?P<figure>\S+)(?P<side>[EW]) "),
                ("annual_change", "east", "west", r"changes by (?P<figure>\S+) degrees (?P<side>\w+) a"),
                ("inclination", "dips", "rises", r"north end (?P<side>\w+) (?P<figure>\S+) degrees"),
            ):
                shown = re.search(pattern, text)
                self.assertEqual(shown["side"], plus if answer[key] > 0 else minus, text)
                self.assertLessEqual(abs(float(shown["figure"]) - abs(answer[key])), 0.00511, text)

    def test_each_year_has_its_model(self):
        for date, model in (
            ("1900", "IGRF-12"),
            ("1978-07-19", "IGRF-12"),
            ("2014-12-31", "IGRF-12"),
            ("2015-01-01", "WMM2015v2"),
            ("2020", "WMM2020"),
            ("2024.999", "WMM2020"),
            ("2030-01-01", "WMM2025"),
        ):
            self.assertEqual(self.answer(PLACE, date)["model"], model, date)
            self.assertIn(f"from the model {model};", self.text(PLACE, date))

    def test_a_weak_field_is_cautioned_of(self):
        for place, date, least, most, words in (
            ("78N 96W", "2020", 2000, 6000, "sluggish"),
            ("82N 120W", "2001", 0, 2000, "a compass is useless here"),
            ("64S 137E", "2015", 0, 2000, "a compass is useless here"),
        ):
            answer, text = self.answer(place, date), self.text(place, date)
            self.assertTrue(least <= answer["horizontal_nt"] < most, answer)
            self.assertEqual(len(answer["cautions"]), 1)
            self.assertIn(words, answer["cautions"][0])
            self.assertIn(f"\ncaution: {answer['cautions'][0]}\n", text)
            self.assertEqual(text.count("caution: "), 2)

    def test_the_height_counts_a_little(self):
        low, high, feet = (
            self.answer(PLACE, "2025", "--elevation", height)
            for height in ("-430", "8000", "3280.84 ft")
        )
        self.assertEqual((low["elevation_m"], feet["elevation_m"]), (-430.0, 1000.0))
        self.assertGreater(low["total_nt"], high["total_nt"])
        self.assertEqual(
            self.answer(PLACE, "2025", "--elevation=1000 m"), feet | {"elevation_m": 1000.0}
        )

    # ---- which words are the position

    def test_a_position_in_every_writing_in_one_argument_or_several(self):
        for words in (
            ["44.6891S 169.0144E"],
            ["44.6891S", "169.0144E"],
            ["169.0144E", "44.6891S"],
            ["44°41.346'S", "169°00.864'E"],
            ["44", "41.346", "S", "169", "00.864", "E"],
            ["44:41:20.76S", "169:00:51.84E"],
            ["44 41 20.76 S", "169 00 51.84 E"],
        ):
            self.assert_at(words, -44.6891, 169.0144)
            self.assert_at([*words, "1999"], -44.6891, 169.0144, "1999")
            self.assert_at([*words, "1999-12-31"], -44.6891, 169.0144, "1999-12-31")
        for words in (
            ["59G 345210 5052310"],
            ["59G", "345210", "5052310"],
            ["59", "south", "345210mE", "5052310mN"],
            ["59G LL 45210 52310"],
            ["59G", "LL", "45210", "52310"],
            ["59GLL4521052310"],
        ):
            self.assert_at([*words, "1999.5"], -44.66588, 169.04736, "1999.5")

    def test_a_position_may_begin_with_a_minus_sign(self):
        for words in (
            ["-44.6891 169.0144"],
            ["-44.6891, 169.0144"],
            ["-44.6891", "169.0144"],
            ["-44.6891,", "169.0144"],
            ["--", "-44.6891", "169.0144"],
        ):
            self.assert_at(words, -44.6891, 169.0144)
        self.assert_at(["-44.6891", "-169.0144", "2025"], -44.6891, -169.0144, "2025")
        self.assert_at(["-.5 -.25"], -0.5, -0.25)

    def test_without_a_date_it_is_today(self):
        self.assert_today(PLACE)
        self.assert_today("44.6891S", "169.0144E")
        self.assert_today("31N", "345210", "1999")  # a northing, since no position stands before it
        before = datetime.date.today()
        text = self.text(PLACE)
        self.assertIn(text.splitlines()[0][-10:], {str(before), str(datetime.date.today())})

    def test_today_is_the_local_day(self):
        zones = ("AAA-14", "BBB+12")  # always on different days
        far = [datetime.datetime.now(datetime.timezone.utc) + datetime.timedelta(hours=hours)
               for hours in (14, -12)]
        dates = [self.answer(PLACE, env={"TZ": zone})["date"] for zone in zones]
        self.assertNotEqual(*dates)
        for date, time in zip(dates, far):
            near = {str((time + datetime.timedelta(minutes=some)).date()) for some in (0, 2)}
            self.assertIn(date, near)

    def test_a_year_that_may_be_a_northing_is_refused_until_quotes_tell(self):
        for words in (["59G", "LM", "4521", "1999"], ["59GLM4521", "1999"], ["59G LM", "4521", "1999"]):
            whole, front = " ".join(words), " ".join(words[:-1])
            said = self.fault(*words, status=2)
            self.assertTrue(said.startswith("lodebook: '1999' may be "), said)
            self.assertIn(f"help: quote the position: lodebook declination '{whole}', or ", said)
            # Both of its advices can be followed.
            self.assert_today(whole)
            self.assertEqual(self.answer(front, "1999.0")["date"], "1999.0")
            self.assertNotEqual(
                self.answer(front, "1999.0")["latitude"], self.answer(whole)["latitude"]
            )
        self.assertEqual(self.answer("59G LM 4521", "1999")["date"], "1999")
        self.assertEqual(self.answer("59G", "LM", "4521", "1999-01-01")["date"], "1999-01-01")
        self.assertEqual(self.answer("59G", "LM", "4521", "1999", "2025")["date"], "2025")

    # ---- what is refused

    def test_a_wrong_command_line_is_status_2(self):
        for arguments, words in (
            ([], "needs a position"),
            ([PLACE, "2025", "extra"], "'extra' is one word too many"),
            (["44.6891S", "169.0144E", "2025", "02", "14"], "'02' is one word too many"),
            ([PLACE, "--format", "csv"], "text|json"),
            ([PLACE, "--format"], "text|json"),
            ([PLACE, "--north", "true"], "declination does not take --north"),
            ([PLACE, "--bogus"], "unknown option"),
            ([PLACE, "--elevation"], "--elevation HEIGHT"),
            ([PLACE, "--elevation", "high"], "--elevation:1:1: error: "),
            ([PLACE, "--elevation", "1,200"], "[decimal-comma]"),
            ([PLACE, "--elevation", "850001"], "-100000 to 850000 metres"),
            ([PLACE, "--elevation", "5", "--elevation", "6"], "is given twice"),
        ):
            self.assertIn(words, self.fault(*arguments, status=2), arguments)

    def test_a_position_that_cannot_be_read_is_shown_with_a_caret(self):
        self.assertEqual(
            self.fault("44.6891S 269.0144E"),
            "argument 1:1:10: error: '269.0144E': a longitude over 180 [position]\n"
            "    1 | 44.6891S 269.0144E\n"
            "      |          ^~~~~~~~~\n"
            "help: 44.6502S 169.0314E, 44 39 00S 169 01 53E or 59G 345210 5052310\n",
        )
        for words, said in (
            (["44.6891S", "269.0144E"], "arguments:1:10: error: '269.0144E'"),
            (["44.6891S", "269.0144E", "2025"], "arguments:1:10: error: '269.0144E'"),
            (["-44.6891", "1690"], "a longitude over 180"),
            (["44.6891S"], "argument 1:1:1: error: "),
            (["somewhere"], "argument 1:1:1: error: "),
            ([""], "argument 1:1:1: error: "),
            (["44,6891 169,0144"], "[decimal-comma]"),
            (["59G", "LM", "452", "19"], "[position]"),
            ([PLACE + " ±8"], "[position]"),
            ([PLACE + "\n" + PLACE], "[trailing-text]"),
            ([PLACE + "\x1b[31m"], "[control-character]"),
            ([b"44.6891S 169.0144E\xff"], "[encoding]"),
            (["\ufeff"], "[position]"),
            (["\n"], "[position]"),
        ):
            self.assertIn(said, self.fault(*words), words)

    def test_a_zone_letter_that_may_mean_south_is_refused(self):
        for words in (["38S 345210 4052310"], ["38S", "345210", "4052310", "2025"]):
            said = self.fault(*words)
            self.assertIn("'38S' is zone 38 north in latitude band S, or zone 38 south", said)
            self.assertIn("help: 38 north (37N 43E) or 38 south (54S 43E)?\n", said)
        self.assertGreater(self.answer("38 north 345210 4052310")["latitude"], 0)
        self.assertLess(self.answer("38 south 345210 4052310")["latitude"], 0)

    def test_a_date_in_another_form_is_refused_with_the_iso_form(self):
        for word, advice in (
            ("14.2.1978", "1978-02-14?"),
            ("2/14/1978", "1978-02-14?"),
            ("3/4/1978", "year-month-day, such as 2026-02-14"),
            ("1978-02-30", "year-month-day, such as 2026-02-14"),
            ("", "year-month-day, such as 2026-02-14"),
        ):
            for words in ([PLACE], PLACE.split()):
                number = len(words) + 1
                said = self.fault(*words, word)
                self.assertTrue(
                    said.startswith(f"argument {number}:1:1: error: '{word}' is not a date [date]\n"),
                    said,
                )
                self.assertTrue(said.endswith(f"help: {advice}\n"), said)
        self.assertIn("'yesterday' is not a date", self.fault(PLACE, "yesterday"))
        self.assertIn("'1978-07' is not a date", self.fault(PLACE, "1978-07"))

    def test_both_faults_are_told_in_one_run(self):
        said = self.fault("44.6891S", "269.0144E", "14.2.1978")
        self.assertIn("[position]", said)
        self.assertIn("[date]", said)

    def test_times_outside_the_models_are_refused_with_the_range(self):
        for date in ("1899-12-31", "1850", "1899.999", "2030-01-02", "2030.001", "2031", "0000"):
            said = self.fault(PLACE, date)
            self.assertIn(f"'{date}' is outside 1900-01-01 to 2030-01-01, ", said)
            self.assertIn("\n    1 | " + date, said)
        for date in ("1900-01-01", "1900", "1900.0", "2030", "2030-01-01"):
            self.assertEqual(self.answer(PLACE, date)["date"], date)

    # ---- streams

    def test_quiet_leaves_the_status_alone(self):
        self.assertEqual(self.fault("44.6891S", "--quiet"), "")
        self.assertEqual(self.fault(PLACE, "1850", "-q"), "")
        self.assertEqual(self.text(PLACE, "1978", "-q"), self.text(PLACE, "1978"))

    def test_colour_is_for_diagnostics(self):
        self.assertIn("\x1b[", self.fault("44.6891S", "--color", "always"))
        self.assertNotIn("\x1b[", self.fault("44.6891S", "--color", "never"))
        self.assertNotIn("\x1b[", self.text(PLACE, "1978", "--color", "always"))

    def test_a_full_disk_is_status_3(self):
        for form in ("text", "json"):
            with open("/dev/full", "wb") as full:
                done = self.run_program("declination", PLACE, "--format", form, stdout=full)
            self.assertEqual(done.returncode, 3)
            self.assertIn(b"cannot write standard output", done.stderr)

    def test_a_closed_pipe_ends_quietly(self):
        for ignored, status in ((False, -13), (True, 3)):
            read_end, write_end = os.pipe()
            os.close(read_end)
            process = subprocess.Popen(
                [PROGRAM, "declination", PLACE],
                env={},
                stdout=write_end,
                stderr=subprocess.PIPE,
                restore_signals=not ignored,
            )
            os.close(write_end)
            self.assertEqual(process.communicate(timeout=60)[1], b"")
            self.assertEqual(process.returncode, status)


if __name__ == "__main__":
    main()
