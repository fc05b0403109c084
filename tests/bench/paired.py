# SPDX-License-Identifier: MIT
"""Whole programs, run and measured. The speed of a machine changes from minute to minute, so two
commands are run in turns and compared run by run."""

import os
import statistics
import time
import typing


class Run(typing.NamedTuple):
    wall: float  # seconds
    cpu: float  # seconds, of user and system
    peak: int  # bytes of memory


def run(command, output=os.devnull, statuses=(0,)):
    """Runs the command, its output to a file, and what it says to nowhere."""
    files = [(os.POSIX_SPAWN_OPEN, 1, str(output), os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o644),
             (os.POSIX_SPAWN_OPEN, 2, os.devnull, os.O_WRONLY, 0)]
    command = [str(word) for word in command]
    start = time.perf_counter()
    child = os.posix_spawnp(command[0], command, os.environ, file_actions=files)
    _, status, usage = os.wait4(child, 0)
    wall = time.perf_counter() - start
    if os.waitstatus_to_exitcode(status) not in statuses:
        raise RuntimeError(f"{' '.join(command)}: status {os.waitstatus_to_exitcode(status)}")
    return Run(wall, usage.ru_utime + usage.ru_stime, usage.ru_maxrss * 1024)


def pairs(first, second, count):
    """Runs two functions in turns; what they return, pair by pair."""
    return [(first(), second()) for _ in range(count)]


class Ratio(typing.NamedTuple):
    median: float
    least: float
    most: float

    def __str__(self):
        return f"{self.median:.2f} ({self.least:.2f} to {self.most:.2f})"


def ratio(measured, of="wall"):
    """The first of each pair over the second."""
    ratios = [getattr(first, of) / getattr(second, of) for first, second in measured]
    return Ratio(statistics.median(ratios), min(ratios), max(ratios))


def median(runs, of="wall"):
    return statistics.median(getattr(run, of) for run in runs)
