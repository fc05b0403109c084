#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The Debian package: what `cpack -G DEB` makes, what lintian says of it, installing and removing.

package_test.py BUILD SOURCE
"""

import gzip
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

BUILD, SOURCE = (pathlib.Path(sys.argv.pop(1)).resolve() for _ in range(2))
DOC = "usr/share/doc/lodebook"
MANUALS = ["usr/share/man/man1/lodebook.1.gz", "usr/share/man/man5/lodebook-log.5.gz"]


def run(*command, **rest):
    return subprocess.run(command, capture_output=True, check=False, timeout=600, **rest)


def output_of(*command, **rest):
    done = run(*command, **rest)
    assert done.returncode == 0, (command, done.stdout, done.stderr)
    return done.stdout.decode("utf-8")


def make_package(folder):
    output_of("cpack", "--config", BUILD / "CPackConfig.cmake", "-G", "DEB", "-B", folder,
              env={**os.environ, "SOURCE_DATE_EPOCH": "1790000000"})
    (package,) = pathlib.Path(folder).glob("*.deb")
    return package


def files_below(root):
    return {str(path.relative_to(root)) for path in root.rglob("*") if not path.is_dir()}


class Package(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        scratch = tempfile.TemporaryDirectory()
        cls.addClassCleanup(scratch.cleanup)
        cls.scratch = pathlib.Path(scratch.name)
        cls.package = make_package(cls.scratch / "package")
        cls.tree = cls.scratch / "tree"
        output_of("dpkg-deb", "--extract", cls.package, cls.tree)

    def field(self, name):
        return output_of("dpkg-deb", "--field", self.package, name).strip()

    def test_lintian_is_content(self):
        # Of all that it can say, two are left out: that no call is fortified (the compiler can do so
        # only where it knows the size of a buffer, and these are all strings), and that a name of a
        # function, `positionN` and more, is no English. Root, as in a container, is no fault either.
        done = run("lintian", "--pedantic", "--display-info", "--allow-root",
                   "--suppress-tags", "hardening-no-fortify-functions,spelling-error-in-binary",
                   "--fail-on", "error,warning,info,pedantic", self.package)
        self.assertEqual((done.returncode, done.stdout.decode()), (0, ""), done.stderr)
        self.assertFalse((self.tree / "usr/share/lintian").exists())

    def test_its_fields(self):
        version = output_of(self.tree / "usr/bin/lodebook", "--version").split()[1]
        self.assertEqual(self.field("Package"), "lodebook")
        self.assertEqual(self.field("Version").split("-")[0], version)
        self.assertEqual(self.field("Section"), "science")
        self.assertEqual(self.field("Architecture"),
                         output_of("dpkg", "--print-architecture").strip())
        # All else is linked in.
        self.assertRegex(self.field("Depends"), r"^libc6 \(>= 2\.\d+\)$")

    def test_it_holds_the_program_and_not_the_library(self):
        files = files_below(self.tree)
        self.assertLessEqual(
            {"usr/bin/lodebook", *MANUALS, f"{DOC}/copyright", f"{DOC}/changelog.gz",
             f"{DOC}/changelog.Debian.gz", f"{DOC}/README.md", f"{DOC}/data/night-typing.log",
             "usr/share/bash-completion/completions/lodebook",
             "usr/share/zsh/vendor-completions/_lodebook",
             "usr/share/fish/vendor_completions.d/lodebook.fish"}, files)
        self.assertEqual([name for name in files
                          if name.startswith(("usr/include", "usr/lib", "usr/local"))], [])
        self.assertNotIn(f"{DOC}/LICENSE", files)

    def test_the_program_is_stripped_and_hardened(self):
        program = self.tree / "usr/bin/lodebook"
        self.assertIn(", stripped", output_of("file", program))
        self.assertNotIn(".symtab", output_of("readelf", "--sections", "--wide", program))
        dynamic = output_of("readelf", "--dynamic", "--wide", program)
        self.assertRegex(dynamic, r"\(FLAGS_1\) +Flags: NOW PIE\n")
        self.assertNotRegex(dynamic, r"RPATH|RUNPATH")
        self.assertIn("GNU_RELRO", output_of("readelf", "--segments", "--wide", program))

    def test_what_is_compressed_is_so_the_same_way_each_time(self):
        for name in (*MANUALS, f"{DOC}/changelog.gz", f"{DOC}/changelog.Debian.gz"):
            data = (self.tree / name).read_bytes()
            self.assertEqual(data[3:9], bytes([0, 0, 0, 0, 0, 2]), name)  # no name, no time, best
            self.assertTrue(gzip.decompress(data))
        changes = gzip.decompress((self.tree / DOC / "changelog.gz").read_bytes())
        self.assertEqual(changes, (SOURCE / "docs/CHANGELOG.md").read_bytes())

    def test_its_changelog_is_of_its_version_and_of_the_day_of_the_release(self):
        log = self.scratch / "changelog"
        log.write_bytes(gzip.decompress((self.tree / DOC / "changelog.Debian.gz").read_bytes()))
        parsed = output_of("dpkg-parsechangelog", "-l", log)
        self.assertIn(f"\nVersion: {self.field('Version')}\n", parsed)
        self.assertIn(f"\nMaintainer: {self.field('Maintainer')}\n", parsed)
        seconds = int(re.search(r"(?m)^Timestamp: (\d+)$", parsed)[1])
        day = output_of("date", "--utc", "--date", f"@{seconds}", "+%a %F").strip()
        self.assertEqual(day.split()[0], re.search(r"  (\w{3}), ", log.read_text())[1])
        self.assertIn(f", {day.split()[1]}\n", (SOURCE / "docs/CHANGELOG.md").read_text())

    def test_its_copyright_has_the_whole_licence(self):
        def words(text):
            return " ".join(line.strip() for line in text.splitlines() if line.strip() != ".").split()
        copyright_file = words((self.tree / DOC / "copyright").read_text(encoding="utf-8"))
        licence = (SOURCE / "LICENSE").read_text(encoding="utf-8")
        licence = words(licence[licence.index("Permission is hereby"):])
        self.assertGreater(len(licence), 100)
        self.assertEqual(copyright_file[-len(licence):], licence)

    def test_it_holds_the_licences_of_what_is_linked_in(self):
        licences = {file.name: file.read_text(encoding="utf-8")
                    for file in (self.tree / DOC / "linked-in").iterdir()}
        self.assertIn("Redistributions in binary form", licences["libcli11-dev"])
        for library in ("libfmt-dev", "libgeographiclib-dev", "nlohmann-json3-dev"):
            self.assertIn("Permission is hereby granted", licences[library], library)
        self.assertIn("MPL-2", licences["libeigen3-dev"])
        self.assertIn("Runtime Library Exception", licences["libstdc++6"])

    def test_a_second_package_has_the_same_bytes(self):
        again = make_package(self.scratch / "again")
        self.assertEqual(again.read_bytes(), self.package.read_bytes())

    def test_it_can_be_installed_used_and_removed(self):
        root = self.scratch / "root"
        for name in ("info", "updates", "triggers"):
            (root / "var/lib/dpkg" / name).mkdir(parents=True)
        (root / "var/lib/dpkg/status").touch()
        environment = {"PATH": "/usr/sbin:/usr/bin:/sbin:/bin", "LC_ALL": "C.UTF-8"}
        # The libraries that it depends on are those outside, which this administration knows not.
        dpkg = ["fakeroot", "dpkg", f"--root={root}", "--force-not-root", "--force-depends",
                "--log=/dev/null"]
        output_of(*dpkg, "--install", self.package, env=environment)
        self.assertEqual(output_of(*dpkg, "--verify", env=environment), "")
        done = run(root / "usr/bin/lodebook", "reduce", "data/night-typing.log", cwd=root / DOC)
        self.assertEqual((done.returncode, done.stdout.count(b"\n")), (1, 97), done.stderr)
        output_of(*dpkg, "--purge", "lodebook", env=environment)
        left = {name for name in files_below(root) if not name.startswith("var/lib/dpkg/")}
        self.assertEqual(left, set())
        self.assertEqual([path for path in root.rglob("*lodebook*")], [])


if __name__ == "__main__":
    unittest.main()
