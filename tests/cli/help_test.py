#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Help, the card of the log language, and explanations."""

import re

from program import Case, main

COMMANDS = ("reduce", "check", "convert", "declination", "fix", "fair-copy", "summary", "net", "rose", "map", "sheet",
            "register", "explain", "help")

COMMANDS_OF_LOGS = ("reduce", "check", "fix", "summary", "net", "rose", "map", "sheet", "register")


class Help(Case):
    def assert_fits(self, text, lines=None):
        for line in text.decode().splitlines():
            self.assertLessEqual(len(line), 80, line)
            self.assertEqual(line, line.rstrip())
        if lines is not None:
            self.assertLessEqual(text.count(b"\n"), lines)

    def test_help_is_one_text_by_any_way_to_it(self):
        for command in COMMANDS:
            texts = {
                self.assert_status(0, *arguments).stdout
                for arguments in (
                    ["help", command],
                    [command, "--help"],
                    [command, "-h"],
                    ["--help", command],
                    [command, "--help", "word", "--strict"]
                    if command in COMMANDS_OF_LOGS
                    else [command, "--help", "word"],
                )
            }
            self.assertEqual(len(texts), 1, command)
            self.assert_fits(texts.pop())

    def test_the_overview_names_every_command_and_goes_to_standard_output(self):
        texts = {self.assert_status(0, *line).stdout for line in (["help"], ["--help"])}
        self.assertEqual(len(texts), 1)
        text = texts.pop()
        self.assert_fits(text)
        for command in COMMANDS:
            self.assertRegex(text, rb"(?m)^  " + command.encode() + rb" ")
        bare = self.assert_status(2)
        self.assertEqual((bare.stdout, bare.stderr), (b"", text))

    def test_the_version_stands_first_and_the_models_after_it(self):
        for arguments in (["--version"], ["reduce", "--version"]):
            version, *models = self.assert_status(0, *arguments).stdout.decode().splitlines()
            self.assertEqual(version, "lodebook 0.2.0")
            years = [re.fullmatch(r"geomagnetic model (\S+), (\d+) to (\d+)", one) for one in models]
            self.assertEqual([one[1] for one in years],
                             ["IGRF-12", "WMM2015v2", "WMM2020", "WMM2025"])
            # No gap between them; and each is the model that answers for its first year.
            self.assertEqual([one[3] for one in years[:-1]], [one[2] for one in years[1:]])
            self.assertEqual((years[0][2], years[-1][3]), ("1900", "2030"))
            for one in years:
                answer = self.assert_status(0, "declination", "44.69S 169.01E", one[2]).stdout
                self.assertIn(one[1].encode(), answer)

    def test_the_card_is_one_page(self):
        self.assert_fits(self.assert_status(0, "help", "log").stdout, lines=66)
        self.assert_fits(self.assert_status(0, "help", "log", "--blank").stdout, lines=60)

    def test_what_the_card_shows_can_be_typed(self):
        """Every example of the card, put into one log, reads without an error."""
        card = self.assert_status(0, "help", "log").stdout.decode()
        heads = (
            "dial set declination rule order date pace landmark station elevation unit sample "
            "bedding lineation fault sight leg kind short"
        ).split()
        examples = []
        for line in card.splitlines():
            shown = re.split(r" {2,}", line.strip())[0]
            if line.startswith("  ") and shown.split()[0] in heads:
                examples.append(shown)
        self.assertGreater(len(examples), 20)
        bases = "\n".join(examples).replace(" is one surface measured twice.", "")
        heading = [line for line in bases.splitlines() if line.split()[0] in heads[:8]]
        rest = [line for line in bases.splitlines() if line.split()[0] not in heads[:8]]
        # `order` would refuse other pairs of the card, so that it stands in a log of its own.
        heading = [line for line in heading if not line.startswith("order")]
        self.assert_status(0, "check", "-", stdin="order strike/dip\n")
        done = self.assert_status(0, "check", "-", stdin="\n".join(heading + rest) + "\n")
        self.assertIn(b"0 rejected", done.stdout)

    def test_every_code_is_listed_and_explained(self):
        listing = self.assert_status(0, "explain").stdout.decode().splitlines()
        codes = [line.split()[0] for line in listing]
        self.assertEqual(len(codes), len(set(codes)))
        self.assertGreater(len(codes), 50)
        for code in codes:
            page = self.assert_status(0, "explain", code).stdout
            self.assert_fits(page)
            self.assertTrue(page.startswith(code.encode() + b" ("), code)
            for part in (b"\nExample:\n", b"\nRemedy: "):
                self.assertIn(part, page)
            self.assertEqual(self.assert_status(0, "explain", code.upper()).stdout, page)

    def test_an_unknown_code_gets_the_nearest(self):
        done = self.assert_status(2, "explain", "quadrant-angel")
        self.assertIn(b"help: lodebook explain quadrant-angle?\n", done.stderr)
        done = self.assert_status(2, "explain", "xyzzy")
        self.assertIn(b"help: lodebook explain lists all codes\n", done.stderr)


if __name__ == "__main__":
    main()
