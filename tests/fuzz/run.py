#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Fuzzes: runs the targets of tests/fuzz under libFuzzer with the sanitizers.

usage: run.py BUILD [--seconds 60] [--jobs 1] [TARGET...]

BUILD is a build folder made with clang and -DLODEBOOK_FUZZ=ON; it is made if it is not there. Each
target, or each of those named (log, reduce, draw, convert), runs for so many seconds, with --jobs
so many of them at once. Seeds are the logs of the golden stories, the demonstration data, and what was found
before. What the fuzzer learns stays in BUILD/fuzz/TARGET/corpus for the next time.

Ends with 1 where an input ends the program, runs for over 25 seconds or takes over 2 GB; that input
is made as small as it will go, and shown with what to do.
"""

import argparse
import concurrent.futures
import os
import pathlib
import re
import shutil
import subprocess
import sys

REPOSITORY = pathlib.Path(__file__).resolve().parents[2]
HERE = REPOSITORY / "tests" / "fuzz"
# The longest input of each target: a page of a field book, or a few readings.
LONGEST = {"log": 5000, "reduce": 5000, "draw": 5000, "convert": 256, "page": 3000}
LIMITS = ("-timeout=25", "-rss_limit_mb=2048")
MINIMISING_SECONDS = 60
# A word of the language where the readers of logs compare with it.
WORD = re.compile(r'"([a-z][a-z0-9/-]+)"')
READERS = ("vocabulary.cpp", "*_reader.cpp")


def make_fuzzers(build, targets):
    if not (build / "CMakeCache.txt").exists():
        subprocess.run(
            ["cmake", "-C", ".cmake/sanitize.cmake", "-S", ".", "-B", build, "-G", "Ninja",
             "-DCMAKE_CXX_COMPILER=clang++", "-DLODEBOOK_FUZZ=ON"],
            cwd=REPOSITORY, check=True,
        )
    names = [f"fuzz_{target}" for target in targets]
    subprocess.run(["cmake", "--build", build, "--target", *names], check=True)


def gather_seeds(folder):
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    golden = REPOSITORY / "tests" / "golden"
    paths = [*golden.glob("*/*.txt"), *golden.glob("*/*.csv"), *golden.glob("*/stdin")]
    paths += (REPOSITORY / "data").glob("*.log")
    paths += (REPOSITORY / "tests" / "fair_copy" / "pages").glob("*/*.txt")
    for path in paths:
        shutil.copyfile(path, folder / f"{path.parent.name}-{path.name}")
    return folder


def write_dictionary(path):
    """The signs of the language, which log.dict lists, and its words, from the readers themselves."""
    words = set()
    for pattern in READERS:
        for source in sorted((REPOSITORY / "src" / "notebook").glob(pattern)):
            words.update(WORD.findall(source.read_text(encoding="utf-8")))
    for expected in ("station", "dextral", "model", "from"):
        if expected not in words:
            sys.exit(f"the readers of logs no longer hold the word {expected}")
    lines = [f'"{word}"' for word in sorted(words)]
    signs = (HERE / "log.dict").read_text(encoding="utf-8")
    path.write_text(signs + "\n".join(lines) + "\n", encoding="utf-8")
    return path


def printed_figure(log, name):
    found = re.findall(rf"stat::{name}: +(\d+)", log)
    return int(found[-1]) if found else 0


def told(target, log):
    """One line on what the fuzzer did."""
    steps = re.findall(r"cov: (\d+) ft: (\d+) corp: (\d+)", log)
    edges, features, kept = steps[-1] if steps else (0, 0, 0)
    return (f"{target}: {printed_figure(log, 'number_of_executed_units')} runs, {edges} edges, "
            f"{features} features, {kept} inputs kept, {printed_figure(log, 'peak_rss_mb')} MB")


def show_crash(build, target, found, log):
    fuzzer = build / "tests" / "fuzz" / f"fuzz_{target}"
    smallest = found.with_name(f"smallest-{found.name}")
    subprocess.run(
        [fuzzer, found, "-minimize_crash=1", f"-max_total_time={MINIMISING_SECONDS}",
         f"-exact_artifact_path={smallest}", *LIMITS],
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False,
    )
    if not smallest.exists():
        smallest = found
    reason = re.search(r"^(what must hold does not: .*|.*(runtime error|ERROR): .*)$", log, re.M)
    print(f"\n{target}: {reason.group(1) if reason else 'see the log above'}")
    print(f"  found     {found}\n  smallest  {smallest}")
    print(f"  it holds  {smallest.read_bytes()!r}")
    print(f"To see it again: {build}/tests/fuzz/replay_{target} {smallest}")
    print(f"Keep it as tests/fuzz/found/{target}/WHAT-IT-WAS, so that it is a test; then mend it.")


def fuzz(build, target, seconds, seeds, dictionary):
    folder = build / "fuzz" / target
    corpus = folder / "corpus"
    corpus.mkdir(parents=True, exist_ok=True)
    before = set(folder.glob("*-*"))
    found = HERE / "found" / target
    command = [
        build / "tests" / "fuzz" / f"fuzz_{target}", corpus, seeds,
        *([found] if found.is_dir() else []),
        f"-max_len={LONGEST[target]}", f"-max_total_time={seconds}", f"-dict={dictionary}",
        f"-artifact_prefix={folder}/", "-print_final_stats=1", *LIMITS,
    ]
    # Short traces and a small quarantine: most of the time goes into memory.
    environment = {
        **os.environ,
        "ASAN_OPTIONS": "malloc_context_size=8:quarantine_size_mb=16",
        "UBSAN_OPTIONS": "print_stacktrace=1",
    }
    done = subprocess.run(
        command, stderr=subprocess.PIPE, env=environment, check=False,
        encoding="utf-8", errors="replace",
    )
    print(told(target, done.stderr), flush=True)
    if done.returncode != 0:
        print(done.stderr[-6000:])
    new = sorted(set(folder.glob("*-*")) - before)
    for path in new:
        show_crash(build, target, path, done.stderr)
    return not new and done.returncode == 0


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("build", type=pathlib.Path)
    parser.add_argument("targets", nargs="*", metavar="TARGET", help=", ".join(LONGEST))
    parser.add_argument("--seconds", type=int, default=60, help="for each target")
    parser.add_argument("--jobs", type=int, default=1, help="targets at once")
    asked = parser.parse_intermixed_args()
    for target in asked.targets:
        if target not in LONGEST:
            parser.error(f"no target {target}: there are {', '.join(LONGEST)}")
    targets = asked.targets or list(LONGEST)
    build = asked.build.resolve()
    make_fuzzers(build, targets)
    seeds = gather_seeds(build / "fuzz" / "seeds")
    dictionary = write_dictionary(build / "fuzz" / "dictionary")
    with concurrent.futures.ThreadPoolExecutor(asked.jobs) as pool:
        good = list(
            pool.map(lambda target: fuzz(build, target, asked.seconds, seeds, dictionary), targets)
        )
    sys.exit(0 if all(good) else 1)


if __name__ == "__main__":
    main()
