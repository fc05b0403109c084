#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The archive of the static program: what `cpack -G TXZ` makes, and that it works where nothing else is.

archive_test.py BUILD SOURCE
"""

import os
import pathlib
import re
import shutil
import subprocess
import sys
import tarfile
import tempfile
import unittest

BUILD, SOURCE = (pathlib.Path(sys.argv.pop(1)).resolve() for _ in range(2))
DOC = "share/doc/lodebook"
CACHE = (BUILD / "CMakeCache.txt").read_text(encoding="utf-8")


def output_of(*command, status=0, **rest):
    done = subprocess.run(command, capture_output=True, check=False, timeout=600, **rest)
    assert done.returncode == status, (command, done.stdout, done.stderr)
    return done.stdout


def text_of(*command, **rest):
    return output_of(*command, **rest).decode("utf-8")


def make_archive(folder):
    output_of("cpack", "--config", BUILD / "CPackConfig.cmake", "-B", folder,
              env={**os.environ, "SOURCE_DATE_EPOCH": "1790000000"})
    (archive,) = pathlib.Path(folder).glob("*.tar.*")
    return archive


class Archive(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        scratch = tempfile.TemporaryDirectory()
        cls.addClassCleanup(scratch.cleanup)
        cls.scratch = pathlib.Path(scratch.name)
        cls.archive = make_archive(cls.scratch / "archive")
        with tarfile.open(cls.archive, "r:xz") as archive:
            cls.members = archive.getmembers()
            archive.extractall(cls.scratch)
        cls.version = re.search(r"CMAKE_PROJECT_VERSION:STATIC=(\S+)", CACHE)[1]
        cls.name = f"lodebook-{cls.version}-linux-{os.uname().machine}"
        cls.tree = cls.scratch / cls.name

    def test_it_is_named_for_its_version_and_machine_and_so_is_its_one_folder(self):
        self.assertEqual(self.archive.name, self.name + ".tar.xz")
        self.assertEqual({member.name.split("/")[0] for member in self.members}, {self.name})
        self.assertEqual(text_of(self.tree / "bin/lodebook", "--version").split("\n")[0],
                         f"lodebook {self.version}")

    def test_it_holds_the_program_and_what_is_installed_with_it(self):
        installed = self.scratch / "installed"
        output_of("cmake", "--install", BUILD, "--prefix", installed, "--component", "program")
        there = {str(path.relative_to(self.tree)): path for path in self.tree.rglob("*")
                 if path.is_file()}
        wanted = {str(path.relative_to(installed)): path for path in installed.rglob("*")
                  if path.is_file()}
        self.assertIn(f"{DOC}/data/night-typing.log", wanted)
        self.assertEqual({name for name in there.keys() - wanted.keys()
                          if not name.startswith(f"{DOC}/linked-in/")}, {"README"})
        for name, path in wanted.items():
            if name != "bin/lodebook":  # which is stripped
                self.assertEqual(there[name].read_bytes(), path.read_bytes(), name)

    def test_whoever_unpacks_it_can_read_it_and_nobody_else_can_write_it(self):
        for member in self.members:
            self.assertTrue(member.isdir() or member.isfile(), member.name)
            executable = member.isdir() or member.name.endswith("bin/lodebook")
            self.assertEqual(oct(member.mode & 0o7777), oct(0o755 if executable else 0o644),
                             member.name)

    def test_the_program_needs_no_library_and_is_hardened(self):
        program = self.tree / "bin/lodebook"
        segments = text_of("readelf", "--segments", "--wide", program)
        self.assertNotIn("INTERP", segments)
        self.assertIn("GNU_RELRO", segments)
        self.assertRegex(segments, r"GNU_STACK .* RW ")
        dynamic = text_of("readelf", "--dynamic", "--wide", program)
        self.assertNotIn("NEEDED", dynamic)
        self.assertRegex(dynamic, r"\(FLAGS_1\) +Flags: NOW PIE\n")
        self.assertNotIn(".symtab", text_of("readelf", "--sections", "--wide", program))

    def test_it_runs_where_there_is_nothing_else(self):
        root = self.scratch / "root"
        root.mkdir()
        shutil.copy(self.tree / "bin/lodebook", root)
        shutil.copy(SOURCE / "data/night-typing.log", root)
        command = ["chroot", root] if os.geteuid() == 0 else ["unshare", "-r", "chroot", root]
        environment = {"PATH": "/usr/sbin:/usr/bin:/sbin:/bin"}
        for name, arguments in {"night.csv": ("reduce",), "night.json": ("reduce", "--jobs", "2"),
                                "night.svg": ("map",), "night.html": ("sheet",)}.items():
            output_of(*command, "/lodebook", *arguments, "/night-typing.log", "-o", f"/{name}",
                      status=1, env=environment)
            outside = self.scratch / name
            output_of(self.tree / "bin/lodebook", *arguments, "night-typing.log", "-o", outside,
                      status=1, cwd=root)
            self.assertEqual((root / name).read_bytes().replace(b"/night-typing", b"night-typing"),
                             outside.read_bytes().replace(b"/night-typing", b"night-typing"), name)
        self.assertEqual((root / "night.csv").read_bytes().count(b"\n"), 97)

    def test_what_its_page_says_to_type_works(self):
        page = (self.tree / "README").read_text(encoding="utf-8")
        self.assertIn(f"lodebook {self.version}, for Linux on {os.uname().machine}\n", page)
        self.assertLessEqual(max(map(len, page.splitlines())), 82)
        commands = re.findall(r"(?m)^  (\S.*)$", page)
        self.assertEqual(len(commands), 3, commands)
        home = self.scratch / "home"
        home.mkdir()
        output_of("sh", "-c", commands[0], cwd=self.tree, status=1)
        (self.tree / "night.csv").unlink()
        output_of("sh", "-c", commands[2], cwd=self.tree, env={**os.environ, "HOME": str(home)})
        self.assertEqual((home / ".local/bin/lodebook").read_bytes(),
                         (self.tree / "bin/lodebook").read_bytes())
        self.assertTrue((home / ".local/share/man/man1/lodebook.1").is_file())
        self.assertEqual(commands[1].removeprefix("sudo ").replace("/usr/local/", "~/.local/"),
                         commands[2].split(" && ")[1].replace("~/.local/", "~/.local/"))
        for name in re.findall(r"share/doc/\S+?(?=[. ;]*(?:\s|$))", page):
            self.assertTrue((self.tree / name).exists(), name)

    def test_it_holds_the_licences_of_what_is_linked_in(self):
        self.assertTrue((self.tree / DOC / "LICENSE").is_file())
        licences = {file.name: file.read_text(encoding="utf-8")
                    for file in (self.tree / DOC / "linked-in").iterdir()}
        for library, words in {
                "libcli11-dev": "Redistributions in binary form",
                "libfmt-dev": "Permission is hereby granted",
                "libgeographiclib-dev": "Permission is hereby granted",
                "nlohmann-json3-dev": "Permission is hereby granted",
                "libeigen3-dev": "MPL-2", "libstdc++6": "Runtime Library Exception",
                "libc6": "Lesser General Public"}.items():
            self.assertIn(words, licences[library], library)

    def test_a_second_archive_has_the_same_bytes(self):
        again = make_archive(self.scratch / "again")
        self.assertEqual(again.read_bytes(), self.archive.read_bytes())


if __name__ == "__main__":
    unittest.main()
