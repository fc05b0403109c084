#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`check --watch`: the reports that come when a log is saved."""

import json
import os
import select
import signal
import subprocess
import time

from program import BAD, GOOD, PROGRAM, Case, main, open_terminal

CLEAR = b"\x1b[H\x1b[2J"
RULER = b"-" * 80 + b"\n"
LONGEST = 20  # seconds, on a machine that is busy with other things


class Watched:
    """A run of it, whose outputs are read as they come."""

    def __init__(self, case, *arguments, terminal=False):
        self.case = case
        if terminal:
            self.output, stdout = open_terminal()
            self.errors, stderr = self.output, stdout
        else:
            self.output, stdout = os.pipe()
            self.errors, stderr = os.pipe()
        self.process = subprocess.Popen([PROGRAM, "check", "--watch", *arguments],
                                        cwd=case.folder, env={"TERM": "xterm"},
                                        stdin=subprocess.DEVNULL, stdout=stdout, stderr=stderr)
        for number in {stdout, stderr}:
            os.close(number)
        case.addCleanup(self.end)

    def end(self):
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()
        for number in {self.output, self.errors} - {None}:
            os.close(number)

    def until(self, last, number=None):
        """What comes on an output up to `last`."""
        number = self.output if number is None else number
        text = b""
        until = time.monotonic() + LONGEST
        while last not in text:
            ready, _, _ = select.select([number], [], [], max(0, until - time.monotonic()))
            some = os.read(number, 65536) if ready else b""
            self.case.assertTrue(some, (last, text))
            text += some
        return text

    def rest(self):
        """What comes until nothing has for a while."""
        text = b""
        while select.select([self.output], [], [], 0.3)[0]:
            text += os.read(self.output, 65536)
        return text

    def interrupt(self):
        self.process.send_signal(signal.SIGINT)
        return self.process.wait(timeout=LONGEST)


class Watch(Case):
    def setUp(self):
        super().setUp()
        self.put("day.txt", GOOD)

    def replace(self, name, content):
        self.put(".new", content)
        os.rename(self.folder / ".new", self.folder / name)

    def test_reports_at_every_save_whatever_the_way(self):
        run = Watched(self, "day.txt")
        self.assertEqual(run.until(b"not understood\n"),
                         self.run_program("check", "day.txt").stdout)

        self.put("day.txt", BAD)
        run.until(RULER + self.run_program("check", "day.txt").stdout)

        self.replace("day.txt", GOOD)
        expected = self.run_program("check", "day.txt").stdout
        self.assertEqual(run.until(b"not understood\n"), RULER + expected)

        os.remove(self.folder / "day.txt")
        self.put("day.txt", GOOD + "  bedding N79E 41N\n")
        run.until(b"2 readings: 2 ok, 0 suspect, 0 rejected; 1 station; 0 lines not understood\n")

        with open(self.folder / "day.txt", "a", encoding="utf-8") as log:
            for _ in range(100):
                log.write("  joint N14E 80E\n")
                log.flush()
        run.until(b"102 readings: 102 ok, 0 suspect, 0 rejected; 1 station; 0 lines not "
                  b"understood\n")
        self.put("other.txt", BAD)
        self.assertEqual(run.rest(), b"")
        self.assertEqual(run.interrupt(), -signal.SIGINT)

    def test_waits_for_a_log_that_is_gone(self):
        run = Watched(self, "day.txt")
        run.until(b"not understood\n")
        os.remove(self.folder / "day.txt")
        self.assertEqual(run.until(b"\n", run.errors),
                         b"lodebook: cannot read day.txt: No such file or directory\n")
        self.assertEqual(run.rest(), b"")
        self.put("day.txt", GOOD)
        self.assertTrue(run.until(b"not understood\n").startswith(RULER))

    def test_watches_every_log_and_the_headings_of_all(self):
        os.makedirs(self.folder / "ours")
        self.put("ours/dial.txt", "set 0\ndeclination 24.6E\nrule right\n")
        self.put("ours.txt", "observer MK\n")
        self.put("two.txt", "heading ours/dial.txt\nstation Q2\n  bedding 062/37\n")
        run = Watched(self, "--heading", "ours.txt", "day.txt", "two.txt")
        last = b"; 2 stations; 0 lines not understood\n"
        run.until(b"\n2 readings: 2 ok, 0 suspect, 0 rejected" + last)
        for name, content, shown in (("two.txt", "heading ours/dial.txt\nstation Q7\n", b"Q7"),
                                     ("ours/dial.txt", "set 0\ndeclination 21.5E\n", b"21.5E"),
                                     ("ours.txt", "observer RH\n", b"RH"),
                                     ("day.txt", BAD, b"quadrant-angle")):
            self.replace(name, content)
            self.assertIn(shown, run.until(last), name)

    def test_clears_a_terminal_and_nothing_else(self):
        run = Watched(self, "day.txt", terminal=True)
        last = b"waiting for day.txt to be saved; Ctrl-C ends\r\n"
        first = run.until(last)
        self.assertTrue(first.startswith(CLEAR), first)
        self.replace("day.txt", BAD)
        second = run.until(last)
        self.assertTrue(second.startswith(CLEAR), second)
        self.assertEqual(second.count(CLEAR), 1)
        os.remove(self.folder / "day.txt")
        gone = run.until(last)
        self.assertEqual(gone, b"lodebook: cannot read day.txt: No such file or directory\r\n"
                               + last)
        self.assertEqual(run.interrupt(), -signal.SIGINT)

    def test_a_file_holds_the_last_report_alone(self):
        for options in (["-o", "report.txt"], ["--report", "report.txt", "-q"]):
            self.put("day.txt", GOOD)
            run = Watched(self, *options, "day.txt")
            for log in (GOOD, BAD):
                self.put("day.txt", log)
                expected = self.run_program("check", "day.txt").stdout
                report = self.folder / "report.txt"
                until = time.monotonic() + LONGEST
                while not report.exists() or report.read_bytes() != expected:
                    self.assertLess(time.monotonic(), until)
                    time.sleep(0.01)
            self.assertEqual(run.rest(), b"")
            self.assertEqual(run.interrupt(), -signal.SIGINT)
            self.assertEqual(self.files(), ["day.txt", "report.txt"])
            os.remove(self.folder / "report.txt")

    def test_documents_and_lines_for_programs(self):
        run = Watched(self, "--report-format", "json", "day.txt")
        self.assertEqual(json.loads(run.until(b"}}\n"))["counts"]["rejected"], 0)
        self.replace("day.txt", BAD)
        self.assertEqual(json.loads(run.until(b"}}\n"))["counts"]["rejected"], 1)
        run = Watched(self, "--report-format", "lines", "day.txt")
        fault = run.until(b"]\n")
        self.replace("day.txt", BAD + "\n")
        self.assertEqual(run.until(b"]\n"), RULER + fault)

    def test_does_nothing_while_it_waits(self):
        run = Watched(self, "day.txt")
        run.until(b"not understood\n")

        def used():
            about = (f"/proc/{run.process.pid}/stat")
            with open(about, encoding="ascii") as file:
                fields = file.read().rsplit(")", 1)[1].split()
            return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

        before = used()
        time.sleep(2)
        self.assertLess(used() - before, 0.2)

    def test_ends_when_nobody_reads(self):
        run = Watched(self, "day.txt")
        run.until(b"not understood\n")
        os.close(run.output)
        run.output = None
        self.assertEqual(run.process.wait(timeout=LONGEST), -signal.SIGPIPE)

    def test_refuses_what_cannot_be_read_again(self):
        os.mkfifo(self.folder / "pipe")
        for arguments, shown in ((["-"], b"standard input is none"), (["pipe"], b"pipe is none"),
                                 (["day.txt", "--heading", "-"], b"standard input is none"),
                                 (["."], b". is none"), (["-q", "day.txt"], b"--quiet"),
                                 (["day.txt", "-o", "day.txt"], b"both input and output")):
            done = self.assert_status(2, "check", "--watch", *arguments)
            self.assertEqual(done.stdout, b"")
            self.assertIn(shown, done.stderr)
        self.assert_status(2, "reduce", "--watch", "day.txt")


main()
