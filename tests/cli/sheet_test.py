#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`lodebook sheet` as a program, and its page as a browser, a parser and a reader find it."""

import base64
import hashlib
import html.parser
import json
import pathlib
import re
import tempfile
import xml.etree.ElementTree

from selenium import webdriver
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.utils import is_connectable
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.by import By

from program import BAD, GOOD, WARNING, Case, main

NIGHT = pathlib.Path(__file__).parents[2] / "data" / "night-typing.log"
SVG = "http://www.w3.org/2000/svg"
FLAGS = """--headless --no-sandbox --disable-gpu --disable-dev-shm-usage --disable-quic
--no-first-run --disable-background-networking --disable-component-update --disable-sync""".split()

TRICK = "<script>document.title='fooled'</script>"
HOSTILE = (
    f"area {TRICK}\nset 0\ndeclination 24.6E\nstation {'Q' * 500} at 44.6891S 169.0144E\n"
    f"  unit {'x' * 700}\n  bedding N78E 41N ; {'y' * 900} \u202e\n  bedding {'9' * 3000}E\n"
    f"  sample {'s' * 400} {TRICK}\n  {TRICK}\nstation {TRICK}\n  joint N14E 80E\n"
)


def hundred_stations():
    lines = ["area Long Ridge", "date 2026-02-16", "set 0", "declination 24.6E ±0.4"]
    for i in range(1, 101):
        lines += [
            f"station R{i} at {44.69 - 0.0004 * i:.5f}S {169.01 + 0.0005 * i:.5f}E ±8",
            "  unit banded schist",
            f"  bedding N8{i % 10}E 3{i % 7}N, N84E 33N, N82E 31N  ; on the limb",
            f"  lineation N2{i % 9}W 25",
            f"  cleavage N5{i % 8}W 70SW",
            f"  joint N1{i % 10}E 80E",
            "  sight R1 N40W" if i > 1 else "  joint N98E 80S",
        ]
    return "\n".join(lines) + "\n"


class Reader(html.parser.HTMLParser):
    """A page as HTML: its elements closed in turn, its words, and what it refers to."""

    NEVER_CLOSED = ("meta",)

    def __init__(self, text):
        super().__init__()
        self.open, self.words, self.references = [], [], []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attributes):
        self.handle_startendtag(tag, attributes)
        if tag not in self.NEVER_CLOSED:
            self.open.append(tag)

    def handle_startendtag(self, tag, attributes):
        self.references += [
            value for name, value in attributes if name in ("src", "href", "xlink:href", "action")
        ]

    def handle_endtag(self, tag):
        if self.open.pop() != tag:
            raise AssertionError(f"</{tag}> out of turn")

    def handle_data(self, data):
        if not {"script", "style"} & set(self.open):
            self.words.append(data)


def squeezed(text):
    return " ".join(text.split()).lower()


def parts_of(line):
    """What a line of the text report says, piece by piece."""
    typed = re.fullmatch(r" *\d+ \| (.*)", line)
    if typed:
        return [squeezed(typed.group(1))]
    line = re.sub(r"^ *\S+?:\d+:\d+: (\w+: |station \S+: )?|^(help|note|  notes): ", "", line)
    parts = []
    for part in re.split(r"[;:,] ", line):
        # The uncertainties of a kind's readings stand each in its own row.
        kind = re.fullmatch(r" *(\S+) ±([0-9. -]+)", part)
        figures = [] if kind is None else [f for f in kind.group(2).split() if f != "-"]
        parts += [f"±{figure}" for figure in figures] or [re.sub(r"^line \d+ ", "", part)]
    return [squeezed(part.rstrip(":")) for part in parts]


class Pages(Case):
    """The pages of a demonstration, a long and a hostile log."""

    def setUp(self):
        super().setUp()
        self.put("night-typing.log", NIGHT.read_bytes())
        self.put("long.log", hundred_stations())
        self.put("hostile.log", HOSTILE)

    def page(self, log):
        """Writes the sheet of a log and returns its path."""
        path = self.folder / (log + ".html")
        done = self.run_program("sheet", "-q", log, "-o", path.name)
        self.assertEqual((done.returncode, done.stdout, done.stderr), (1, b"", b""))
        return path

    def typed(self, log):
        """Every reading's own text, as the table has it."""
        rows = self.run_program("reduce", "-q", log, "--format", "json").stdout
        return [
            reading["written"]
            for station in json.loads(rows)["logs"][0]["stations"]
            for reading in station["readings"]
        ]


class Program(Pages):
    def test_the_page_goes_to_the_screen_or_to_the_file(self):
        self.put("good.txt", GOOD)
        done = self.assert_status(0, "sheet", "good.txt")
        self.assertTrue(done.stdout.startswith(b"<!DOCTYPE html>\n"))
        self.assertEqual(done.stderr, b"")
        quiet = self.assert_status(0, "sheet", "good.txt", "-o", "good.html")
        self.assertEqual((quiet.stdout, quiet.stderr), (b"", b""))
        self.assertEqual(self.read("good.html"), done.stdout)

    def test_a_log_may_be_piped_in_and_have_another_encoding(self):
        done = self.assert_status(0, "sheet", "-", stdin=GOOD)
        self.assertIn(b"<dd>&lt;stdin&gt;</dd>", done.stdout)
        self.put("old.txt", GOOD.replace("Q1", "Bühl").encode("cp1252"))
        done = self.assert_status(0, "sheet", "old.txt", "--encoding", "windows-1252")
        self.assertIn("<h3>Bühl</h3>".encode(), done.stdout)

    def test_options_stand_in_for_what_the_log_does_not_say(self):
        self.put("bare.txt", "station Q1\n  bedding N78E 41\n")
        done = self.assert_status(
            0, "sheet", "bare.txt", "--declination", "24.6E", "--set", "0", "--rule", "right"
        )
        self.assertIn(b"declination 24.6E (option), so 24.6 is added", done.stdout)

    def test_it_takes_one_log(self):
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)
        done = self.assert_status(2, "sheet", "good.txt", "bad.txt", "-o", "page.html")
        self.assertIn(b"sheet takes one log\nhelp: one log at a time", done.stderr)
        self.assertIn(b"sheet needs a log", self.assert_status(2, "sheet").stderr)
        self.assert_status(2, "sheet", "good.txt", "--format", "json")
        self.assertNotIn("page.html", self.files())

    def test_it_ends_as_other_commands_do(self):
        self.put("good.txt", GOOD)
        self.put("bad.txt", BAD)
        self.put("odd.txt", WARNING)
        told = self.assert_status(1, "sheet", "bad.txt", "-o", "bad.html").stderr
        self.assertEqual(told, b"bad.txt: 1 error; lodebook check says which\n")
        self.assertIn(b"rejected", self.read("bad.html"))
        self.assert_status(0, "sheet", "odd.txt")
        self.assert_status(1, "sheet", "odd.txt", "--strict")
        self.assert_status(3, "sheet", "missing.txt", "-o", "none.html")
        self.assert_status(3, "sheet", "good.txt", "-o", "/dev/full")
        done = self.assert_status(2, "sheet", "good.txt", "-o", "./good.txt")
        self.assertIn(b"both input and output", done.stderr)
        self.assertEqual(self.read("good.txt"), GOOD.encode())
        self.assertNotIn("none.html", self.files())

    def test_the_same_log_gives_the_same_bytes_anywhere(self):
        first = self.page("night-typing.log").read_bytes()
        done = self.run_program(
            "sheet", "-q", "night-typing.log", env={"LC_ALL": "de_DE.UTF-8", "TZ": "Asia/Tokyo"}
        )
        self.assertEqual(done.stdout, first)

    def test_a_hundred_stations(self):
        path = self.page("long.log")
        self.assertLess(path.stat().st_size, 2_000_000)
        self.assertEqual(path.read_text().count('<tr class="'), len(self.typed("long.log")))


class Parsed(Pages):
    def test_it_is_the_same_text_as_html_and_as_xml(self):
        for log in ("night-typing.log", "long.log", "hostile.log"):
            text = self.page(log).read_text()
            read = Reader(text)
            self.assertEqual(read.open, [])
            tree = xml.etree.ElementTree.fromstring(text)
            for parent in list(tree.iter()):
                for child in list(parent):
                    if child.tag in ("script", "style"):
                        child.text = ""
            self.assertEqual("".join(tree.itertext()).split(), "".join(read.words).split(), log)

    def test_it_refers_to_nothing_outside(self):
        for log in ("night-typing.log", "long.log", "hostile.log"):
            text = self.page(log).read_text()
            for reference in Reader(text).references:
                self.assertTrue(reference.startswith("#"), reference)
            for reference in re.findall(r"url\(([^)]*)\)", text):
                self.assertTrue(reference.startswith("#"), reference)
            self.assertEqual(set(re.findall(r"\w+://[^\"<\s]*", text)), {SVG})
            self.assertNotIn("@import", text)

    def test_only_its_own_script_may_run(self):
        text = self.page("night-typing.log").read_text()
        script = re.search(r"<script>(.*?)</script>", text, re.S).group(1)
        digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
        self.assertIn(f"script-src 'sha256-{digest}'", text)

    def test_nothing_of_the_report_is_lost(self):
        for log in ("night-typing.log", "long.log"):
            words = squeezed("".join(Reader(self.page(log).read_text()).words))
            for line in self.run_program("check", log).stdout.decode().splitlines():
                if line.strip(" |~^") and line != "worth a second look:":
                    for part in parts_of(line):
                        self.assertIn(part, words, line)


class Driver(Service):
    """The driver by its number: a bare machine need not know the name localhost."""

    @property
    def service_url(self):
        return f"http://127.0.0.1:{self.port}"

    def is_connectable(self):
        return is_connectable(self.port, "127.0.0.1")


class Browser(Pages):
    """The page as Chromium shows it. A missing browser is a failure."""

    @classmethod
    def setUpClass(cls):
        folder = tempfile.TemporaryDirectory()
        cls.addClassCleanup(folder.cleanup)
        options = webdriver.ChromeOptions()
        options.binary_location = "/usr/bin/chromium"
        for flag in (*FLAGS, "--remote-debugging-pipe", f"--user-data-dir={folder.name}"):
            options.add_argument(flag)
        options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
        cls.driver = webdriver.Chrome(options=options, service=Driver("/usr/bin/chromedriver"))
        cls.addClassCleanup(cls.driver.quit)
        # No window of a headless browser has the focus, of which not all versions tell the page.
        cls.driver.execute_cdp_cmd("Emulation.setFocusEmulationEnabled", {"enabled": True})

    def setUp(self):
        super().setUp()
        self.show(1000)

    def show(self, width, medium="", scheme="light"):
        """A window so wide, showing in a medium and colour scheme."""
        self.driver.execute_cdp_cmd(
            "Emulation.setDeviceMetricsOverride",
            {"width": width, "height": 900, "deviceScaleFactor": 1, "mobile": False},
        )
        self.driver.execute_cdp_cmd(
            "Emulation.setEmulatedMedia",
            {
                "media": medium,
                "features": [{"name": "prefers-color-scheme", "value": scheme}],
            },
        )

    def open(self, log):
        self.driver.get("about:blank")
        for kind in ("browser", "performance"):
            self.driver.get_log(kind)
        url = self.page(log).as_uri()
        self.driver.get(url)
        return url

    def script(self, text, *arguments):
        return self.driver.execute_script(text, *arguments)

    def background(self):
        return self.script("return getComputedStyle(document.body).backgroundColor")

    def marked(self):
        return self.script(
            "return Array.from(document.querySelectorAll('.marked'),"
            " element => [element.tagName, element.dataset.source])"
        )

    def test_it_loads_without_a_message_and_without_a_request(self):
        for log in ("night-typing.log", "long.log", "hostile.log"):
            url = self.open(log)
            self.assertEqual(self.driver.get_log("browser"), [])
            events = [json.loads(entry["message"])["message"]
                      for entry in self.driver.get_log("performance")]
            self.assertEqual(
                [event["params"]["request"]["url"] for event in events
                 if event["method"] == "Network.requestWillBeSent"],
                [url],
            )

    def test_every_reading_is_there_to_read(self):
        for log in ("night-typing.log", "long.log"):
            self.open(log)
            shown = self.script(
                "return Array.from(document.querySelectorAll('tbody td:nth-child(3)'),"
                " cell => cell.firstElementChild.textContent)"
            )
            self.assertGreater(len(shown), 90)
            self.assertEqual(shown, self.typed(log))
            self.assertIn("Look here first", self.driver.find_element(By.TAG_NAME, "body").text)

    def test_a_hostile_log_is_only_text(self):
        self.open("hostile.log")
        self.assertEqual(self.driver.title, TRICK)
        self.assertEqual(self.script("return document.scripts.length"), 1)
        self.assertEqual(self.script("return document.querySelector('h1').textContent"), TRICK)

    def test_nothing_overflows_on_a_phone_a_desk_or_paper(self):
        paper = round(190 / 25.4 * 96)
        for log in ("night-typing.log", "long.log", "hostile.log"):
            self.open(log)
            for width, medium in ((360, ""), (320, ""), (768, ""), (1600, ""), (paper, "print")):
                self.show(width, medium)
                self.assertLessEqual(
                    self.script("return document.scrollingElement.scrollWidth"), width,
                    (log, width, medium),
                )
                # Also within its parts: no cell, line or picture is wider than what holds it.
                wide = self.script(
                    "return Array.from(document.querySelectorAll("
                    "'td, th, caption, dd, p, code, h1, h3, svg'))"
                    ".filter(part => part.closest('thead, .unseen') === null)"
                    ".filter(part => part.getBoundingClientRect().right > innerWidth + 1"
                    " || part.scrollWidth > part.clientWidth + 1 && part.clientWidth > 0)"
                    ".map(part => part.outerHTML.slice(0, 80))"
                )
                self.assertEqual(wide, [], (log, width, medium))

    def test_on_a_phone_each_reading_is_a_card(self):
        self.open("night-typing.log")
        self.show(360)
        typed, corrected, status = self.script(
            "return Array.from(document.querySelectorAll('.suspect td'),"
            " cell => cell.getBoundingClientRect().toJSON()).filter((_, i) => i in {1: 0, 2: 0, 5: 0})"
        )
        self.assertEqual(typed["top"], corrected["top"])
        self.assertGreater(corrected["left"], typed["left"])
        for cell in (typed, corrected):
            self.assertGreater(cell["width"], 150)
        self.assertGreater(status["top"], typed["bottom"] - 1)
        self.assertGreater(status["width"], 300)

    def test_a_hovered_reading_is_marked_wherever_it_is_shown(self):
        self.open("night-typing.log")
        source = "night-typing.log:35:3"
        row = self.driver.find_element(By.CSS_SELECTOR, f"tr[data-source='{source}']")
        ActionChains(self.driver).move_to_element(row).perform()
        # Its row, net, rose and map.
        self.assertEqual(sorted(name.lower() for name, _ in self.marked()), ["g", "g", "g", "tr"])
        self.assertEqual({place for _, place in self.marked()}, {source})
        heading = self.driver.find_element(By.TAG_NAME, "h1")
        ActionChains(self.driver).move_to_element(heading).perform()
        self.assertEqual(self.marked(), [])

    def test_a_focused_reading_stays_marked_while_the_pictures_are_looked_at(self):
        self.open("night-typing.log")
        source = "night-typing.log:35:25"
        link = self.driver.find_element(By.CSS_SELECTOR, f"tr[data-source='{source}'] a")
        self.script("arguments[0].focus()", link)
        marked = self.marked()
        # The mean on the map has the place of its first reading.
        mean = ["g", "night-typing.log:35:3"]
        self.assertIn(mean, marked)
        self.assertEqual({place for _, place in marked if place != mean[1]}, {source})
        stroke = ("return getComputedStyle(document.querySelector('#net g.reading.marked .mark'))"
                  ".strokeWidth")
        self.assertEqual(self.script(stroke), "1.6px")
        self.script("arguments[0].click()", link)
        self.assertTrue(self.driver.current_url.endswith("#net"))
        self.assertEqual(self.marked(), marked)
        other = self.driver.find_element(By.CSS_SELECTOR, "nav a")
        self.script("arguments[0].focus()", other)
        self.assertEqual(self.marked(), [])

    def test_each_repeat_marks_its_mean_on_the_map_and_the_mean_marks_them(self):
        self.open("night-typing.log")
        first, second = "night-typing.log:35:3", "night-typing.log:35:25"
        mean = f"#map g.reading[data-source='{first}']"
        row = self.driver.find_element(By.CSS_SELECTOR, f"tr[data-source='{second}']")
        ActionChains(self.driver).scroll_to_element(row).move_to_element(row).perform()
        is_marked = "return document.querySelector(arguments[0]).classList.contains('marked')"
        self.assertTrue(self.script(is_marked, mean))
        self.assertFalse(self.script(is_marked, f"tr[data-source='{first}']"))
        mark = self.driver.find_element(By.CSS_SELECTOR, mean + " path")
        ActionChains(self.driver).scroll_to_element(mark).move_to_element(mark).perform()
        for source in (first, second):
            self.assertTrue(self.script(is_marked, f"tr[data-source='{source}']"))

    def test_a_picture_marks_its_row(self):
        self.open("night-typing.log")
        mark = self.driver.find_element(By.CSS_SELECTOR, "#net g.reading path")
        ActionChains(self.driver).scroll_to_element(mark).move_to_element(mark).perform()
        self.assertIn("tr", [name.lower() for name, _ in self.marked()])

    def test_dark_is_dark_and_paper_is_light(self):
        self.open("night-typing.log")
        light = self.background()
        paper = "return getComputedStyle(document.querySelector('svg .frame')).stroke"
        ink = self.script(paper)
        self.show(1000, "", "dark")
        self.assertNotEqual(self.background(), light)
        self.assertNotEqual(self.script(paper), ink)
        self.show(1000, "print", "dark")
        self.assertEqual(self.background(), "rgb(255, 255, 255)")
        self.assertEqual(self.script(paper), ink)

    def test_it_prints_on_a4_and_letter(self):
        self.open("night-typing.log")
        for width, height in ((210, 297), (215.9, 279.4)):
            printed = self.driver.execute_cdp_cmd(
                "Page.printToPDF", {"paperWidth": width / 25.4, "paperHeight": height / 25.4}
            )
            document = base64.b64decode(printed["data"])
            self.assertTrue(document.startswith(b"%PDF"))
            boxes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", document)
            self.assertGreater(len(boxes), 5)
            for box in boxes:
                self.assertAlmostEqual(float(box[0]) / 72 * 25.4, width, delta=1)
                self.assertAlmostEqual(float(box[1]) / 72 * 25.4, height, delta=1)
        self.show(700, "print")
        style = ("return [getComputedStyle(document.querySelector('.station')).breakInside,"
                 " getComputedStyle(document.querySelector('thead')).display,"
                 " getComputedStyle(document.querySelector('nav')).display]")
        self.assertEqual(self.script(style), ["avoid", "table-header-group", "none"])

    def test_a_screen_reader_finds_headings_tables_and_pictures(self):
        for width in (1000, 360):
            self.show(width)
            self.open("night-typing.log")
            nodes = [
                (node["role"]["value"], node.get("name", {}).get("value", ""))
                for node in self.driver.execute_cdp_cmd("Accessibility.getFullAXTree", {})["nodes"]
                if not node["ignored"]
            ]
            roles = [role for role, _ in nodes]
            self.assertEqual(roles.count("table"), 12)
            self.assertEqual(roles.count("row"), 96 + 12)
            self.assertEqual(roles.count("rowheader"), 96)
            self.assertEqual(roles.count("columnheader"), 7 * 12)
            self.assertEqual(roles.count("cell"), 6 * 96)
            for name in ("Look here first", "Stations", "H1", "Pictures", "Net", "Map", "Cautions"):
                self.assertIn(("heading", name), nodes)
            pictures = [name for role, name in nodes if role in ("image", "img")]
            self.assertEqual(len(pictures), 3)
            self.assertTrue(all("bedding: " in name for name in pictures[:2]), pictures)


if __name__ == "__main__":
    main()
