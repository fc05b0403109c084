#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What `cmake --install` puts where, that it works from there, and what its manual pages say.

installation_test.py BUILD SOURCE CONFIG
"""

import os
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

from asked import Asked

BUILD, SOURCE = (pathlib.Path(sys.argv.pop(1)).resolve() for _ in range(2))
CONFIG = sys.argv.pop(1)
PREFIX = "usr/local"
DOC = f"{PREFIX}/share/doc/lodebook"
MANUALS = [f"{PREFIX}/share/man/man1/lodebook.1", f"{PREFIX}/share/man/man5/lodebook-log.5"]


def run(*command, **rest):
    return subprocess.run(command, capture_output=True, check=False, timeout=300, **rest)


def install(root, *more):
    done = run("cmake", "--install", BUILD, "--config", CONFIG, "--prefix", f"/{PREFIX}", *more,
               env={**os.environ, "DESTDIR": str(root)})
    assert done.returncode == 0, done.stderr
    return {str(path.relative_to(root)) for path in root.rglob("*") if not path.is_dir()}


def rendered(page):
    """A manual page as it is read, without bold and underlining, its lines one."""
    done = run("mandoc", "-Tutf8", "-O", "width=200", page)
    return " ".join(re.sub(r".\x08", "", done.stdout.decode("utf-8")).split())


class Installation(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        scratch = tempfile.TemporaryDirectory()
        cls.addClassCleanup(scratch.cleanup)
        cls.root = pathlib.Path(scratch.name)
        cls.files = install(cls.root)
        cls.program = cls.root / PREFIX / "bin/lodebook"

    def test_everything_has_its_usual_place(self):
        wanted = {
            f"{PREFIX}/bin/lodebook",
            *MANUALS,
            f"{PREFIX}/share/bash-completion/completions/lodebook",
            f"{PREFIX}/share/zsh/site-functions/_lodebook",
            f"{PREFIX}/share/fish/vendor_completions.d/lodebook.fish",
            *(f"{DOC}/{name}" for name in ("LICENSE", "README.md", "DEVELOPERS.md")),
        }
        for folder in ("docs", "data"):
            wanted |= {f"{DOC}/{path.relative_to(SOURCE)}" for path in (SOURCE / folder).rglob("*")
                       if not path.is_dir() and "geomagnetic" not in path.parts}
        others = {name for name in self.files
                  if "/orientation/" in name or "/cmake/lodebook/" in name or name.endswith(".a")}
        self.assertEqual(self.files - others, wanted)
        self.assertIn(f"{PREFIX}/include/lodebook/orientation/azimuth.hpp", others)

    def test_the_program_and_the_library_are_components(self):
        parts = []
        for component in ("program", "orientation"):
            with tempfile.TemporaryDirectory() as root:
                parts.append(install(pathlib.Path(root), "--component", component))
        self.assertEqual(parts[0] & parts[1], set())
        self.assertEqual(parts[0] | parts[1], self.files)

    def test_the_program_runs_from_there(self):
        done = run(self.program, "reduce", "data/night-typing.log", cwd=self.root / DOC)
        self.assertEqual(done.returncode, 1, done.stderr)
        self.assertEqual(done.stdout.count(b"\n"), 97)
        self.assertIn(b"96 readings: ", done.stderr)

    def test_links_of_the_guide_lead_to_installed_files(self):
        count = 0
        for page in (self.root / DOC).rglob("*.md"):
            for link in re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", page.read_text(encoding="utf-8")):
                count += 1
                self.assertTrue((page.parent / link).exists(), f"{page}: {link}")
        self.assertGreater(count, 30)

    def test_manual_pages_are_well_formed(self):
        for manual in MANUALS:
            page = self.root / manual
            done = run("mandoc", "-Tlint", "-W", "warning", page)
            self.assertEqual((done.returncode, done.stdout, done.stderr), (0, b"", b""))
            done = run("man", "--warnings", "-E", "UTF-8", "-l", "-Tutf8", "-Z", page,
                       env={**os.environ, "LC_ALL": "C.UTF-8", "MANWIDTH": "80", "MANROFFSEQ": ""})
            self.assertEqual((done.returncode, done.stderr), (0, b""))
            self.assertTrue(page.read_bytes().isascii())

    def test_manual_pages_fit_a_terminal_of_80_columns(self):
        plain = {**os.environ, "LC_ALL": "C.UTF-8", "MANWIDTH": "80", "MANPAGER": "cat",
                 "GROFF_NO_SGR": "1"}
        for manual in MANUALS:
            for reader in (("man", "-E", "UTF-8", "-l"), ("mandoc", "-Tutf8", "-O", "width=78")):
                done = run(*reader, self.root / manual, env=plain)
                self.assertEqual(done.returncode, 0, done.stderr)
                lines = re.sub(r".\x08", "", done.stdout.decode("utf-8")).splitlines()
                self.assertGreater(len(lines), 200, reader)
                self.assertEqual([line for line in lines if len(line) > 80], [], (reader, manual))

    def test_the_manual_has_every_command_option_and_word(self):
        page = rendered(self.root / MANUALS[0])
        asked = Asked(self.program)
        commands = asked.commands()
        self.assertGreater(len(commands), 10)
        count = 0
        for command in commands:
            self.assertTrue(f"lodebook {command} [OPTION ...]" in page, command)
            for _, name, value in asked.options_of(command):
                words = " | ".join(asked.choices_of(command, name)) or value
                self.assertTrue(f"{name} {words}".strip() in page, (command, name, words))
                count += 1
        self.assertGreater(count, 80)
        for section in ("ENVIRONMENT NO_COLOR", "FILES", "EXIT STATUS 0", "EXAMPLES", "DIAGNOSTICS",
                        "SEE ALSO lodebook-log(5)", "CAVEATS Positions, bearings and slopes"):
            self.assertTrue(section in page, section)

    def test_the_page_of_the_language_has_every_word_of_it(self):
        page = rendered(self.root / MANUALS[1])
        source = (SOURCE / "src/notebook/vocabulary.cpp").read_text(encoding="utf-8")
        tables = re.findall(r"std::array<[^;]*?, (\d+)> \w+ = \{(.*?)\};", source, re.DOTALL)
        self.assertEqual(len(tables), 5)
        for size, table in tables:
            words = re.findall(r'"([a-z-]+)"', table)
            self.assertEqual(len(words), int(size))
            for word in words:
                self.assertTrue(re.search(rf"(?<![\w-]){word}(?![\w-])", page), word)
        self.assertTrue("CAVEATS Positions, bearings and slopes" in page)


if __name__ == "__main__":
    unittest.main()
