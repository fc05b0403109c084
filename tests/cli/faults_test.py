#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What goes wrong around a run: kills, full disks, logs that change. Nothing is half written."""

import os
import resource
import shutil
import signal
import subprocess
import time

from program import BAD, GOOD, PROGRAM, WARNING, Case, main

CATCHABLE = (signal.SIGHUP, signal.SIGINT, signal.SIGQUIT, signal.SIGTERM, signal.SIGXCPU,
             signal.SIGUSR1, signal.SIGUSR2)  # fmt: skip
# More than a block, so that its table is on the disk before the log behind it is read.
LONG = "set 0\ndeclination 24.6E\n" + "".join(
    f"station L{i} at 44.5S 169.25E\n  bedding N{30 + i % 60}E 32N\n" for i in range(4000)
)


class Faults(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)
        self.put("warning.txt", WARNING)
        self.put("long.txt", LONG)
        self.put("old.csv", "old")

    def temporaries(self):
        return [name for name in self.files() if name.startswith(".lodebook-")]

    def start_and_wait(self, *arguments, ignored=None):
        """A run that has written some of its output and waits for a log that nobody writes."""
        os.mkfifo(self.folder / "never")

        def prepare():
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
            if ignored is not None:
                signal.signal(ignored, signal.SIG_IGN)

        process = subprocess.Popen(
            [PROGRAM, "reduce", "-q", "long.txt", "never", "good.txt", *arguments],
            cwd=self.folder, env={}, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
            stderr=subprocess.PIPE, preexec_fn=prepare,
        )  # fmt: skip
        end = time.monotonic() + 60
        while not self.temporaries():
            self.assertIsNone(process.poll())
            self.assertLess(time.monotonic(), end)
            time.sleep(0.01)
        return process

    def end(self, process):
        said = process.stderr.read()
        process.stderr.close()
        status = process.wait(timeout=60)
        os.unlink(self.folder / "never")
        return status, said

    def test_a_killed_run_leaves_the_old_output_and_no_file_of_its_own(self):
        before = self.files()
        for number in CATCHABLE:
            for jobs in ("1", "4"):
                process = self.start_and_wait("-o", "old.csv", "--jobs", jobs)
                process.send_signal(number)
                status, said = self.end(process)
                self.assertEqual((status, said), (-number, b""), number)
                self.assertEqual(self.files(), before)
                self.assertEqual(self.read("old.csv"), b"old")

    def test_a_run_that_cannot_see_its_end_coming_leaves_no_half_output_either(self):
        process = self.start_and_wait("-o", "old.csv")
        process.kill()
        self.assertEqual(self.end(process)[0], -signal.SIGKILL)
        self.assertEqual(self.read("old.csv"), b"old")
        # What it leaves is in nobody's way.
        self.assertEqual(len(self.temporaries()), 1)
        self.assert_status(0, "reduce", "-q", "good.txt", "-o", "old.csv")
        self.assertEqual(len(self.temporaries()), 1)

    def test_a_signal_that_the_parent_ignores_does_not_end_a_run(self):
        process = self.start_and_wait("-o", "old.csv", ignored=signal.SIGHUP)
        process.send_signal(signal.SIGHUP)
        self.put("never", GOOD)
        self.assertEqual(self.end(process), (0, b""))
        self.assertEqual(self.temporaries(), [])
        self.assertTrue(self.read("old.csv").endswith(b"good.txt:4:3\n"))

    def limited(self, *arguments):
        """A run whose files may not grow over 64 KiB."""
        limit = 1 << 16
        return self.assert_status(
            3, *arguments,
            preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit)),
        )  # fmt: skip

    def test_a_file_that_may_not_grow_is_told_and_the_old_one_stays(self):
        before = self.files()
        for name in ("old.csv", "old.json", "old.geojson", "old.log"):
            self.put(name, "old")
            before = self.files()
            done = self.limited("reduce", "-q", "long.txt", "-o", name)
            self.assertEqual(
                done.stderr.decode(), f"lodebook: cannot write {name}: File too large\n"
            )
            self.assertEqual(self.read(name), b"old")
            self.assertEqual(self.files(), before)

    def test_a_report_or_drawing_that_may_not_grow_leaves_the_rest(self):
        self.put("report.txt", "old")
        done = self.limited("reduce", "long.txt", "-o", "/dev/null", "--report", "report.txt")
        self.assertEqual(done.stderr, b"lodebook: cannot write report.txt: File too large\n")
        self.assertEqual(self.read("report.txt"), b"old")
        self.limited("net", "long.txt", "-o", "net.svg")
        self.limited("sheet", "long.txt", "-o", "page.html")
        self.assertNotIn("net.svg", self.files())
        self.assertNotIn("page.html", self.files())
        self.assertEqual(self.temporaries(), [])

    def test_a_full_disk_is_told_by_every_command(self):
        self.put("sights.txt", "set 0\ndeclination 1E\nlandmark A 44.6S 169.0E\nstation Q\n  sight A N17W\n")
        for arguments in (
            ["reduce", "good.txt", "--format", "json"],
            ["reduce", "good.txt", "--format", "geojson"],
            ["reduce", "good.txt", "--format", "log"],
            ["check", "good.txt", "--report-format", "json"],
            *(["fix", "sights.txt", "--format", form] for form in ("text", "json", "csv", "geojson")),
            *(["summary", "good.txt", "--format", form] for form in ("text", "json", "csv")),
            ["net", "good.txt"],
            ["rose", "good.txt"],
            ["map", "good.txt"],
            ["sheet", "good.txt"],
            ["declination", "44.69S", "169.01E", "2026-02-14"],
        ):
            with self.subTest(arguments):
                with open("/dev/full", "wb") as full:
                    done = self.assert_status(3, *arguments, stdout=full)
                wanted = b"lodebook: cannot write standard output: No space left on device\n"
                self.assertIn(wanted, done.stderr)
                if arguments[0] != "declination":
                    done = self.assert_status(3, *arguments, "-o", "/dev/full")
                    self.assertIn(b"lodebook: cannot write /dev/full: No space left", done.stderr)
        done = self.assert_status(3, "fix", "sights.txt", "-o", "f.txt", "--rays", "/dev/full")
        self.assertIn(b"lodebook: cannot write /dev/full: No space left", done.stderr)
        self.assertIn("f.txt", self.files())

    def test_a_full_disk_keeps_the_status_of_the_logs_apart(self):
        """Nowhere to say so, and still no other status than 3."""
        with open("/dev/full", "wb") as full:
            self.assert_status(3, "reduce", "bad.txt", stdout=full, stderr=full)

    def test_a_log_that_is_longer_or_shorter_than_it_says_is_read_to_its_end(self):
        # A file of /proc says that it is empty, one of /sys that it has 4096 bytes.
        for name in ("/proc/self/status", "/sys/kernel/mm/transparent_hugepage/enabled"):
            if not os.path.exists(name):
                self.skipTest(f"no {name}")
            size = len(open(name, "rb").read())
            self.assertNotEqual(os.stat(name).st_size, size)
            for jobs in ("1", "2"):
                done = self.assert_status(1, "check", name, name, "--jobs", jobs)
                self.assertIn(b"not understood", done.stdout)
                self.assertNotIn(b"0 lines not understood", done.stdout.splitlines()[-1])

    def test_a_log_that_grows_while_it_is_read_gives_whole_rows(self):
        # It ends, or a slow reader would never come to the end of it.
        script = """i=0
            while [ $i -lt 20000 ]; do echo '  bedding N78E 41N'; i=$((i + 1)); done >> grows.txt"""
        grower = subprocess.Popen(["/bin/sh", "-c", script], cwd=self.folder)
        try:
            while "grows.txt" not in self.files() or len(self.read("grows.txt")) < 1000:
                time.sleep(0.01)
            for jobs in ("1", "2"):
                done = self.run_program("reduce", "-q", "grows.txt", "grows.txt", "--jobs", jobs)
                self.assertIn(done.returncode, (0, 1))  # a line may be cut where reading ended
                for row in done.stdout.splitlines()[1:-2]:
                    self.assertIn(b",bedding,plane,", row)
        finally:
            grower.kill()
            grower.wait(timeout=60)

    def test_what_may_not_be_read_is_told(self):
        os.chmod(self.folder, 0o755)
        self.put("secret.txt", GOOD)
        os.chmod(self.folder / "secret.txt", 0)
        # Where another user, too, can reach it: the build may lie in a private home.
        reachable = shutil.copy(PROGRAM, self.folder / "lodebook")

        def become_nobody():
            if os.geteuid() == 0:  # for root nothing is secret
                os.setuid(65534)

        for jobs in ("1", "4"):
            done = self.assert_status(
                3, "check", "good.txt", "secret.txt", "good.txt", "--jobs", jobs,
                executable=reachable, preexec_fn=become_nobody,
            )  # fmt: skip
            self.assertEqual(
                done.stderr, b"lodebook: cannot read secret.txt: Permission denied\n"
            )

    def test_a_log_over_the_limit_is_refused_at_once(self):
        with open(self.folder / "huge.txt", "wb") as file:
            file.truncate(0xFFFF_FFFF)  # takes no room on the disk
        done = self.assert_status(3, "check", "good.txt", "huge.txt")
        self.assertEqual(done.stderr, b"lodebook: cannot read huge.txt: File too large\n")

    def test_ten_thousand_logs_on_one_command_line(self):
        names = [f"{number}.txt" for number in range(10_000)]
        for name in names:
            os.link(self.folder / "good.txt", self.folder / name)
        tables = []
        for jobs in ("1", "4"):
            done = self.assert_status(0, "reduce", *names, "--jobs", jobs, "-o", "table.csv")
            self.assertIn(b"10000 readings: 10000 ok", done.stderr.splitlines()[-1])
            tables.append(self.read("table.csv"))
        self.assertEqual(tables[0], tables[1])
        rows = tables[0].splitlines()
        self.assertEqual(len(rows), 10_001)
        self.assertTrue(rows[1].endswith(b"0.txt:4:3") and rows[-1].endswith(b"9999.txt:4:3"))

    def test_the_longest_line_is_read_and_a_longer_one_is_not(self):
        for size, status, code in ((65_536, 0, b"60 readings"), (65_537, 1, b"[line-length]")):
            body = "set 0\nstation Q1\n"
            readings = "  bedding " + ", ".join(["N78E 41N"] * 60)
            line = readings + "   ; " + "x" * (size - len(readings) - 5)
            self.put("line.txt", f"{body}{line}\n")
            done = self.run_program("check", "line.txt")
            self.assertEqual(done.returncode, status)
            self.assertIn(code, done.stdout)

    def test_messages_never_go_into_a_log(self):
        for arguments in (
            ["check", "bad.txt", "good.txt"],
            ["reduce", "missing.txt", "good.txt", "-o", "t.csv"],
            ["convert", "--column", "set", "good.txt", "-o", "t.csv"],
        ):
            with open(self.folder / "good.txt", "ab") as log:
                done = self.assert_status(2, *arguments, stderr=log)
            self.assertEqual(done.stdout, b"")
            self.assertEqual(self.read("good.txt"), GOOD.encode())
            self.assertNotIn("t.csv", self.files())


if __name__ == "__main__":
    main()
