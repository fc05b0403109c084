#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`convert --column`: the cells of one column change, and not one other byte."""

import random

from program import Case, main

READINGS = {"N50W": "310", "S": "180", "N68.5E": "068.5", "N78E 41N": "258/41 N", "nne": "022.5"}
FAILURES = ["N98E", "spam", "n/a", "-", "N50W extra"]
SEED = 20260214


class CsvColumn(Case):
    def convert(self, text, *options, status=0):
        self.put("in.csv", text)
        done = self.assert_status(status, "convert", "--column", *options, "in.csv")
        return done

    def test_the_column_is_replaced_and_nothing_else(self):
        done = self.convert("name,strike,note\nA,N50W,x\nB,S,y\n", "strike")
        self.assertEqual(done.stdout, b"name,strike,note\nA,310,x\nB,180,y\n")

    def test_odd_files_keep_their_oddities(self):
        for before, after in (
            (b"\xef\xbb\xbfs\r\nN50W\r\n", b"\xef\xbb\xbfs\r\n310\r\n"),
            (b"s\rN50W\rS", b"s\r310\r180"),
            (b's,t\n"N50W","a ""b"" c"\n', b's,t\n"310","a ""b"" c"\n'),
            (b's,t\nN50W,"two\nlines"\nS,"\r\n"', b's,t\n310,"two\nlines"\n180,"\r\n"'),
            (b"t,s\nshort\n1,N50W,long,,\n\n", b"t,s\nshort\n1,310,long,,\n\n"),
            (b"s,t\n,1\n  ,2\n\"\",3\n", b"s,t\n,1\n  ,2\n\"\",3\n"),
            (b"s,t\n N50W ,\xff\x00\n", b"s,t\n 310 ,\xff\x00\n"),
            (b's\n" N50W"\n', b's\n" 310"\n'),
            (b"s", b"s"),
        ):
            with self.subTest(before):
                self.assertEqual(self.convert(before, "s").stdout, after)

    def test_a_cell_that_fails_stays_with_a_diagnostic_at_its_place(self):
        text = 'name,strike\nA,N98E\n"two\nlines",N50W\nB,"  N98E"\n'
        done = self.convert(text, "strike", status=1)
        self.assertEqual(done.stdout, text.replace("N50W", "310").encode())
        self.assertTrue(done.stderr.startswith(b"in.csv:2:3: error: "), done.stderr)
        self.assertIn(b"\nin.csv:5:6: error: ", done.stderr)

    def test_a_cell_with_doubled_quotes_is_read_and_placed(self):
        done = self.convert('s,t\n"N68°32\'30""E",1\n', "s")
        self.assertEqual(done.stdout, b's,t\n"068.5417",1\n')
        done = self.convert('t,s\n1,"N98°32\'30""E"\n', "s", status=1)
        self.assertTrue(done.stderr.startswith(b"in.csv:2:3: error: "), done.stderr)

    def test_a_cell_broken_over_lines_is_one_reading(self):
        self.assertEqual(self.convert('s\n"N78E\n41N"\n', "s").stdout, b's\n"258/41 N"\n')

    def test_several_columns(self):
        done = self.convert("a,b,c\nN50W,x,S\n", "a", "--column", "c")
        self.assertEqual(done.stdout, b"a,b,c\n310,x,180\n")

    def test_names_match_exactly_first_and_then_in_any_case(self):
        self.assertEqual(self.convert("S,s\nN,N\n", "s").stdout, b"S,s\nN,000\n")
        self.assertEqual(self.convert("Strike\nN\n", "STRIKE").stdout, b"Strike\n000\n")
        self.assertEqual(self.convert('" Strike dir "\nN\n', "strike dir").stdout, b'" Strike dir "\n000\n')

    def test_an_unknown_column_is_status_2_and_the_columns_are_named(self):
        done = self.convert("name,strike\nA,N50W\n", "strik", status=2)
        self.assertEqual(done.stdout, b"")
        self.assertEqual(
            done.stderr,
            b"lodebook: no column 'strik' in in.csv\nhelp: 'strike'? the columns are name, strike\n",
        )
        self.assertEqual(self.convert("", "s", status=2).stdout, b"")

    def test_columns_that_are_not_separated_by_commas_are_told(self):
        for mark, name in ((";", b"semicolons"), ("\t", b"tabs")):
            done = self.convert(f"name{mark}strike\nA{mark}N62E\n", "strike", status=2)
            self.assertIn(b"the columns of in.csv are separated by " + name, done.stderr)

    def test_a_quote_that_is_never_closed_is_told(self):
        text = 's,t\nN50W,1\nS,"x\nN,2\n'
        done = self.convert(text, "s", status=1)
        self.assertEqual(done.stdout, text.replace("N50W", "310").replace("S,", "180,").encode())
        self.assertIn(b"lodebook: in.csv:3: a cell opens with a quote", done.stderr)

    def test_a_windows_1252_file_stays_one(self):
        before = "s,t\nN68°32'E,gris é\nN98°E,ü\n".encode("windows-1252")
        done = self.convert(before, "s", "--encoding", "windows-1252", status=1)
        self.assertEqual(done.stdout, before.replace("N68°32'E".encode("windows-1252"), b"068.53"))
        self.assertTrue(done.stderr.startswith(b"in.csv:3:1: error: "), done.stderr)

    def test_the_result_goes_to_a_file(self):
        done = self.convert("s\nN50W\n", "s", "-o", "out.csv")
        self.assertEqual((done.stdout, self.read("out.csv")), (b"", b"s\n310\n"))

    def test_a_csv_from_standard_input(self):
        done = self.assert_status(0, "convert", "--column", "s", "-", stdin="s\nN50W\n")
        self.assertEqual(done.stdout, b"s\n310\n")

    def test_corrections_apply_to_cells(self):
        done = self.convert("s\nN50W\n", "s", "--declination", "24.6E")
        self.assertEqual(done.stdout, b"s\n334.6\n")

    def test_random_files_keep_every_other_byte(self):
        chance = random.Random(SEED)
        for number in range(150):
            before, after, failures = self.random_file(chance)
            with self.subTest(seed=SEED, number=number):
                done = self.convert(before, "Target", status=1 if failures else 0)
                self.assertEqual(done.stdout, after)

    def random_file(self, chance):
        """A file, what it must become, and how many of its cells fail."""
        end = chance.choice([b"\n", b"\r\n", b"\r"])
        width = chance.randint(1, 5)
        target = chance.randrange(width)
        header = [b"c%d" % i for i in range(width)]
        header[target] = chance.choice([b"Target", b'"Target"'])
        before, after, failures = [b",".join(header)], [b",".join(header)], 0
        for _ in range(chance.randint(0, 12)):
            cells = [self.random_cell(chance) for _ in range(chance.randint(1, width + 2))]
            changed = list(cells)
            if target < len(cells):
                cells[target], changed[target], failed = self.random_reading(chance)
                failures += failed
            before.append(b",".join(cells))
            after.append(b",".join(changed))
        mark = b"\xef\xbb\xbf" if chance.random() < 0.3 else b""
        last = end if chance.random() < 0.7 else b""
        return mark + end.join(before) + last, mark + end.join(after) + last, failures

    @staticmethod
    def random_cell(chance):
        inner = bytes(chance.choice(b'ab ,"\n\r;\t\xc3\xa9\xff0') for _ in range(chance.randint(0, 6)))
        if chance.random() < 0.5:
            return b'"' + inner.replace(b'"', b'""') + b'"'
        plain = bytes(c for c in inner if c not in b",\n\r")
        return plain.lstrip(b'"')

    @staticmethod
    def random_reading(chance):
        kind = chance.random()
        if kind < 0.15:
            blank = chance.choice([b"", b"  ", b'""', b'" "'])
            return blank, blank, 0
        lead, trail = chance.choice([b"", b" "]), chance.choice([b"", b"  "])
        if kind < 0.3:
            word = chance.choice(FAILURES).encode()
            cell = chance.choice([lead + word + trail, b'"' + lead + word + trail + b'"'])
            return cell, cell, 1
        typed, converted = chance.choice(sorted(READINGS.items()))
        quote = chance.choice([b"", b'"'])
        return (
            quote + lead + typed.encode() + trail + quote,
            quote + lead + converted.encode() + trail + quote,
            0,
        )


if __name__ == "__main__":
    main()
