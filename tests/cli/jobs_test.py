#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Many logs at once: the same bytes as one after the other."""

import os
import subprocess
import threading

from program import BAD, GOOD, PROGRAM, WARNING, Case, main

JOBS = (["--jobs", "2"], ["--jobs=8"])
FIXED = (
    "set 0\ndeclination 24.6E\nlandmark Cairn 44.6502S 169.0314E\nlandmark Dome 44.6711S 168.9920E\n"
    "landmark Saddle 44.7033S 169.0467E\nstation {0}\n  bedding N78E 41N, N86E 33N\n"
    "  sight Cairn N17W\n  sight Dome N66W\n  sight Saddle S79E\n"
)

MODELLED = "date 2026-0{0}-14\nset 0\ndeclination model\nstation M at 44.5S 169.25E\n  bedding N78E 41N\n"


def long_log(number, stations):
    """Each number another log, some with faults; 1500 stations are more than a block of output."""
    lines = ["set 0", "declination 24.6E", "dial quadrant" if number % 2 else "dial azimuth"]
    for station in range(stations):
        lines.append(f"station L{number}-{station} at 44.5S 169.25E")
        lines.append(f"  bedding N{station % 90}E 32N" if number % 2 else f"  bedding {station % 90:03} 32 N")
        if station % 9 == number:
            lines.append(f"  photo {station}")
        if station % 50 == number:
            lines.append("  bedding N98E 41N ; over ninety")
        if station % 70 == number:
            lines.append("  bedding N14E 32E doubtful")
    return "\n".join(lines) + "\n"


class Jobs(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)
        self.put("warning.txt", WARNING)
        self.put("empty.txt", "")
        self.put("nothing.txt", "# no reading\n")
        self.put("1252.txt", "set 0\nstation Q\n  bedding N78°E 41N\n".encode("windows-1252"))
        (self.folder / "folder").mkdir()
        for number in range(4):
            self.put(f"fixed{number}.txt", FIXED.format(f"F{number}"))
            self.put(f"modelled{number}.txt", MODELLED.format(number + 1))
            self.put(f"long{number}.txt", long_log(number, (1500, 500, 500, 40)[number]))

    def mix(self):
        """Long before short and short before long, the same log twice, and what cannot be read."""
        return [
            "modelled0.txt", "modelled1.txt", "long0.txt", "good.txt", "missing.txt", "bad.txt", "good.txt",
            "empty.txt", "long3.txt", "folder", "warning.txt", "nothing.txt", "long1.txt", "1252.txt", "fixed0.txt", "-",
            "long2.txt", "fixed1.txt", "missing2.txt", "fixed2.txt", "fixed3.txt", "long3.txt",
        ]  # fmt: skip

    def assert_same(self, *arguments, status=None, stdin=GOOD):
        """Apart, and with both streams in one file, as one job writes them."""
        one = self.run_program(*arguments, "--jobs", "1", stdin=stdin)
        if status is not None:
            self.assertEqual(one.returncode, status)
        for jobs in JOBS:
            many = self.run_program(*arguments, *jobs, stdin=stdin)
            self.assertEqual(many.returncode, one.returncode, (arguments, jobs))
            self.assertTrue(many.stderr == one.stderr, (arguments, jobs))
            self.assertTrue(many.stdout == one.stdout, (arguments, jobs))
        return one

    def test_every_command_and_format_gives_the_bytes_of_one_job(self):
        for arguments in (
            ["reduce"],
            ["reduce", "--format", "json", "--report-format", "json"],
            ["reduce", "--format", "geojson", "--quiet"],
            ["reduce", "--strict", "--repeats", "mean", "--grid"],
            ["check"],
            ["check", "--report-format", "json"],
            ["check", "--quiet"],
            ["fix"],
            ["fix", "--format", "json"],
            ["fix", "--format", "csv"],
            ["fix", "--format", "geojson"],
            ["summary"],
            ["summary", "--by", "unit,station", "--format", "json"],
            ["summary", "--format", "csv"],
            ["net"],
            ["rose"],
            ["register"],
            ["register", "--format", "json"],
            ["register", "--format", "geojson"],
        ):
            with self.subTest(arguments):
                self.assert_same(*arguments, *self.mix(), status=3)

    def test_messages_stand_between_reports_where_one_job_writes_them(self):
        for command in ("reduce", "check"):
            written = []
            for jobs in (["--jobs", "1"], *JOBS):
                with open(self.folder / "both", "wb") as file:
                    self.run_program(command, *self.mix(), *jobs, stdin=GOOD, stdout=file, stderr=file)
                written.append(self.read("both"))
            for other in written[1:]:
                self.assertTrue(other == written[0], command)
            self.assertIn(b"cannot read missing2.txt", written[0])

    def test_output_files_are_the_same(self):
        for arguments, names in (
            (["reduce", "-o", "t.csv", "--sidecar", "--report", "r.txt"], ["t.csv", "t.csvt", "r.txt"]),
            (["reduce", "-o", "t.geojson", "--report", "r.json", "--report-format", "json"], ["t.geojson", "r.json"]),
            (["fix", "-o", "f.json", "--rays", "f.geojson"], ["f.json", "f.geojson"]),
        ):
            self.run_program(*arguments, *self.mix(), "--jobs", "1", stdin=GOOD)
            one = [self.read(name) for name in names]
            for jobs in (*JOBS, []):
                self.run_program(*arguments, *self.mix(), *jobs, stdin=GOOD)
                for name, content in zip(names, one):
                    self.assertTrue(self.read(name) == content, (arguments, jobs, name))

    def test_the_status_is_that_of_one_job(self):
        self.assert_same("reduce", "good.txt", "good.txt", "fixed0.txt", status=0)
        self.assert_same("reduce", "good.txt", "bad.txt", "good.txt", status=1)
        self.assert_same("check", "good.txt", "warning.txt", status=0)
        self.assert_same("check", "good.txt", "warning.txt", "--strict", status=1)
        self.assert_same("check", "bad.txt", "good.txt", "missing.txt", "good.txt", status=3)
        self.assert_same("reduce", "missing.txt", "folder", "missing2.txt", status=3)

    def test_the_first_fields_of_the_model_are_asked_for_at_once(self):
        """A library's table that grows at its first use once broke one run in twenty."""
        logs = [f"modelled{number}.txt" for number in range(4)]
        for _ in range(15):
            self.assert_same("reduce", *logs, status=0)

    def test_logs_with_more_to_write_than_may_wait_are_the_same(self):
        for number in range(2):
            reading = f"  bedding N8{number}E 32N ; {'x' * 20_000}\n"
            self.put(f"wide{number}.txt", "set 0\ndeclination 24.6E\n" + f"station W{number}\n{reading * 50}" * 70)
        logs = ["wide0.txt", "wide1.txt"]
        one, many = (self.run_program("reduce", "-q", *logs, "--jobs", jobs) for jobs in ("1", "2"))
        self.assertEqual((many.returncode, many.stderr), (0, b""))
        self.assertTrue(many.stdout == one.stdout)

    def test_one_log_alone_is_the_same(self):
        for log in ("good.txt", "long1.txt", "-", "missing.txt"):
            self.assert_same("reduce", log)
        self.assert_same("reduce", "bad.txt", "--format", "log", status=1)

    def test_pipes_are_read_in_their_turn(self):
        for name in ("first", "second"):
            os.mkfifo(self.folder / name)
        logs = ["good.txt", "first", "fixed0.txt", "second", "good.txt", "fixed1.txt"]
        named = ["good.txt", "bad.txt", "fixed0.txt", "fixed2.txt", "good.txt", "fixed1.txt"]
        wanted = self.run_program("reduce", "-q", *named).stdout

        def feed():
            self.put("first", BAD)
            self.put("second", FIXED.format("F2"))

        for jobs in (["--jobs", "1"], *JOBS):
            writer = threading.Thread(target=feed)
            writer.start()
            out = self.run_program("reduce", "-q", *logs, *jobs).stdout
            writer.join(timeout=60)
            out = out.replace(b",first:", b",bad.txt:").replace(b",second:", b",fixed2.txt:")
            self.assertEqual(out, wanted)

    def test_a_reader_that_goes_early_ends_the_run(self):
        os.mkfifo(self.folder / "never")
        for jobs in (["--jobs", "1"], *JOBS):
            process = subprocess.Popen(
                # Nobody ever writes to the pipe, so that only an early end ends it.
                [PROGRAM, "reduce", "-q", *["long0.txt"] * 9, "never", *jobs],
                cwd=self.folder, env={}, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
            )  # fmt: skip
            process.stdout.readline()
            process.stdout.close()
            self.assertEqual(process.stderr.read(), b"")
            process.stderr.close()
            self.assertEqual(process.wait(timeout=60), -13)

    def test_a_wrong_number_of_jobs_is_a_wrong_command_line(self):
        for value in ("0", "-1", "257", "99999999999999999999", "two", "2.5", "1e2", " 2", "2x"):
            done = self.assert_status(2, "reduce", "good.txt", "--jobs", value)
            self.assertEqual(
                done.stderr.decode(),
                f"lodebook: --jobs does not take '{value}'\nhelp: a whole number from 1 to 256\n",
            )
        self.assert_status(2, "reduce", "good.txt", "--jobs")
        self.assert_status(2, "reduce", "good.txt", "--jobs=")
        self.assert_status(2, "reduce", "good.txt", "--jobs", "2", "--jobs", "2")
        for command in (["map", "good.txt"], ["sheet", "good.txt"], ["convert", "N50W"]):
            self.assert_status(2, *command, "--jobs", "2")


if __name__ == "__main__":
    main()
