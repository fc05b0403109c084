#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The line that says how far a run is: for whoever waits at a terminal, and for nobody else."""

import os
import subprocess
import threading

from program import BAD, GOOD, PROGRAM, Case, main, open_terminal

ERASURE = b"\r\x1b[K"


class Progress(Case):
    def setUp(self):
        super().setUp()
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)
        os.mkfifo(self.folder / "slow")

    def on_terminal(self, *arguments, wait_for=None, env=None):
        """What a terminal behind the error stream shows. The log `slow` is written only once it has
        shown `wait_for`, or two seconds have gone."""
        leader, follower = open_terminal()
        process = subprocess.Popen(
            [PROGRAM, *arguments],
            cwd=self.folder,
            env={"TERM": "xterm"} if env is None else env,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=follower,
        )
        os.close(follower)
        seen = threading.Event()
        shown = b""

        def feed():
            seen.wait(timeout=2 if wait_for is None else 60)
            self.put("slow", GOOD)

        writer = threading.Thread(target=feed)
        writer.start()
        while True:
            try:
                data = os.read(leader, 4096)
            except OSError:  # nobody writes to it any more
                break
            if not data:
                break
            shown += data
            if wait_for is not None and wait_for in shown:
                seen.set()
        os.close(leader)
        writer.join(timeout=60)
        self.assertIn(process.wait(timeout=60), (0, 1, 3))
        return shown

    def test_a_long_wait_is_told_and_the_line_goes(self):
        for command in (["check", "-o", "r.txt"], ["reduce", "-o", "t.csv", "--report", "r.txt"], ["summary"]):
            for jobs in ("1", "4"):
                line = b"reading log 2 of 3 ..."
                shown = self.on_terminal(
                    *command, "good.txt", "slow", "good.txt", "--jobs", jobs, wait_for=line
                )
                self.assertEqual(shown, ERASURE + line + ERASURE, command)

    def test_a_message_stands_alone_and_not_behind_the_line(self):
        line = b"reading log 1 of 3 ..."
        shown = self.on_terminal(
            "check", "-o", "r.txt", "slow", "missing.txt", "good.txt", wait_for=line
        )
        said = b"lodebook: cannot read missing.txt: No such file or directory\r\n"
        self.assertEqual(shown, ERASURE + line + ERASURE + said)

    def test_nothing_where_nobody_waits_or_something_else_is_shown(self):
        for arguments, env in (
            (["check", "-o", "r.txt", "--quiet"], None),
            (["check", "-o", "r.txt"], {"TERM": "dumb"}),
            (["reduce", "-o", "t.csv"], None),  # the report goes there
        ):
            shown = self.on_terminal(*arguments, "good.txt", "slow", "good.txt", env=env)
            self.assertNotIn(b"reading log", shown)
            self.assertNotIn(b"\x1b[K", shown)

    def test_nothing_where_the_error_stream_is_no_terminal(self):
        def feed():
            threading.Event().wait(timeout=2)
            self.put("slow", GOOD)

        writer = threading.Thread(target=feed)
        writer.start()
        done = self.assert_status(0, "check", "-o", "r.txt", "slow", env={"TERM": "xterm"})
        writer.join(timeout=60)
        self.assertEqual(done.stderr, b"")


if __name__ == "__main__":
    main()
