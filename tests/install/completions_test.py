#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The completions for bash, zsh and fish, each run by its own shell, against what the program says.

completions_test.py PROGRAM PAGES
"""

import os
import pathlib
import re
import shlex
import subprocess
import sys
import tempfile
import time
import unittest

PAGES = pathlib.Path(sys.argv.pop(2)).resolve()
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "cli"))

from asked import Asked  # noqa: E402
from program import PROGRAM, Case, main, open_terminal  # noqa: E402

END = "--end--"
FILES = {"day 1.txt", "day2.txt"}


ASKED = Asked(PROGRAM)
COMMANDS = set(ASKED.commands())
CODES = {line.split()[0] for line in ASKED.said("explain").splitlines()}


def names_of(command):
    """The names of a command's options, each with the name of its value."""
    return {name: value for short, long, value in ASKED.options_of(command)
            for name in (short, long) if name}


def choices_of(command, option):
    return set(ASKED.choices_of(command, option))


def split_line(line):
    """The words of a line, the last of which is being typed; bash parts them at `=` too."""
    words = re.findall(r"=|[^\s=]+", line)
    return words if line[-1] not in " =" or line.endswith("=") else [*words, ""]


def ask_bash(lines, folder):
    script = [f"source {shlex.quote(str(PAGES / 'lodebook'))}"]
    for line in lines:
        words = split_line(line)
        script += [f"COMP_WORDS=({shlex.join(words)}) COMP_CWORD={len(words) - 1}", "_lodebook",
                   f"printf '%s\\n' \"${{COMPREPLY[@]}}\" {END}"]
    done = subprocess.run(["bash", "--norc", "--noprofile", "-u", "-c", "\n".join(script)],
                          cwd=folder, capture_output=True, check=True, timeout=120)
    assert not done.stderr, done.stderr
    return done.stdout.decode("utf-8")


def ask_fish(lines, folder):
    script = [f"source {shlex.quote(str(PAGES / 'lodebook.fish'))}"]
    for line in lines:
        script += [f"complete -C {shlex.quote(line)}", f"echo {END}"]
    done = subprocess.run(["fish", "--no-config", "-c", "\n".join(script)], cwd=folder,
                          env={"HOME": str(folder), "PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8"},
                          capture_output=True, check=True, timeout=120)
    assert not done.stderr, done.stderr
    words = [line.split("\t")[0] for line in done.stdout.decode("utf-8").splitlines()]
    return "\n".join(re.sub(r"^--[a-z-]+=", "", word).replace("\\ ", " ") for word in words)


ZSH = """\
PS1=
LISTMAX=1000  # no question before a list that is longer than the screen
fpath=({pages} $fpath)
autoload -Uz compinit && compinit -u -D
zstyle ':completion:*' insert-tab false
# What is offered goes into a file; calls that only sort words offer nothing yet.
compadd() {{
  local -a offered
  if [[ ${{@[1,(i)(-|--)]}} == *-[OAD]\\ * ]]; then
    builtin compadd "$@"
    return
  fi
  builtin compadd -A offered "$@"
  (($#offered)) && print -rl -- $offered >>{answers}
  builtin compadd "$@"
}}
answer() {{
  zle complete-word
  print -r -- {end} >>{answers}
  BUFFER=
}}
zle -N answer
bindkey '^I' answer
print -r -- {end} >>{answers}
"""


def ask_zsh(lines, folder):
    with tempfile.TemporaryDirectory() as other:
        answers = pathlib.Path(other) / "answers"
        setup = pathlib.Path(other) / "setup"
        setup.write_text(ZSH.format(pages=PAGES, answers=answers, end=END), encoding="utf-8")
        answers.touch()
        leader, follower = open_terminal()
        shell = subprocess.Popen(["zsh", "-f", "-i"], cwd=folder, stdin=follower, stdout=follower,
                                 stderr=follower, start_new_session=True,
                                 env={"PATH": os.environ["PATH"], "TERM": "dumb", "HOME": other,
                                      "LC_ALL": "C.UTF-8"})
        os.close(follower)
        os.set_blocking(leader, False)
        try:
            wanted = 0
            for typed in [f" source {setup}\n", *(line + "\t" for line in lines)]:
                os.write(leader, typed.encode())
                wanted += 1
                late = time.monotonic() + 60
                while answers.read_text(encoding="utf-8").split("\n").count(END) < wanted:
                    try:
                        os.read(leader, 65536)  # its screen, which would fill up
                    except BlockingIOError:
                        time.sleep(0.01)
                    assert time.monotonic() < late, f"zsh has no answer to {typed!r}"
        finally:
            shell.kill()
            shell.wait()
            os.close(leader)
        return answers.read_text(encoding="utf-8").split(END + "\n", 1)[1].replace("\\ ", " ")


class Completions(Case):
    @classmethod
    def setUpClass(cls):
        """Every question is put to each shell in one go."""
        cls.wanted = {}
        ask = cls.wanted.__setitem__
        ask("lodebook ", COMMANDS)
        ask("lodebook re", {"reduce", "register"})
        ask("lodebook --quiet --north true re", {"reduce", "register"})
        ask("lodebook explain ", CODES)
        ask("lodebook explain quadrant-a", {"quadrant-angle"})
        ask("lodebook help ", COMMANDS | {"log"})
        ask("lodebook declination ", set())
        ask("lodebook convert ", set())
        ask("lodebook convert --column strike ", FILES)
        ask("lodebook reduce -q day2.txt ", FILES)
        ask("lodebook check day2", {"day2.txt"})
        ask("lodebook reduce --set ", set())
        ask("lodebook reduce --declination ", {"model", "as-set"})
        ask("lodebook summary --by ", {"unit", "station"})
        ask("lodebook reduce --format=j", {"json"})
        ask("lodebook fix day2.txt --format=", choices_of("fix", "--format"))
        ask("lodebook --north m", {"magnetic"})
        common = set.intersection(*(set(names_of(command)) for command in COMMANDS))
        ask("lodebook --", {name for name in common if name.startswith("--")})
        cls.enumerated = set()
        for command in sorted(COMMANDS):
            options = names_of(command)
            ask(f"lodebook {command} --", {name for name in options if name.startswith("--")})
            for option, value in options.items():
                if value == "FILE":
                    ask(f"lodebook {command} {option} ", FILES)
                elif option.startswith("--") and (choices := choices_of(command, option)):
                    cls.enumerated.add(option)
                    ask(f"lodebook {command} {option} ", choices)

    def check(self, shell):
        for name in FILES:
            self.put(name, "")
        lines = list(self.wanted)
        answers = shell(lines, self.folder).split(END)
        self.assertEqual(len(answers), len(lines) + 1)
        for line, answer in zip(lines, answers):
            with self.subTest(line):
                self.assertEqual({word for word in answer.split("\n") if word.strip()},
                                 self.wanted[line])

    def test_the_questions_are_what_the_program_can_be_asked(self):
        self.assertEqual(len(COMMANDS), 14)
        self.assertGreater(len(CODES), 50)
        self.assertIn("-o", names_of("reduce"))
        self.assertEqual(self.enumerated, {"--format", "--north", "--rule", "--repeats", "--to",
                                           "--as", "--report-format", "--encoding", "--color", "--bin",
                                           "--notation", "--order"})
        self.assertGreater(len(self.wanted), 90)

    def test_bash(self):
        self.check(ask_bash)

    def test_zsh(self):
        self.check(ask_zsh)

    def test_fish(self):
        self.check(ask_fish)

    def test_short_options_stand_beside_the_long(self):
        lines = [f"lodebook {command} -" for command in sorted(COMMANDS)]
        for shell in (ask_bash, ask_zsh, ask_fish):
            answers = shell(lines, self.folder).split(END)
            for command, answer in zip(sorted(COMMANDS), answers):
                short = {name for name in names_of(command) if not name.startswith("--")}
                self.assertLessEqual(short, set(answer.split("\n")), (shell, command))

    def test_a_list_is_completed_behind_its_last_comma(self):
        line = "lodebook summary --kind bedding,cle"
        self.assertIn("bedding,cleavage", ask_bash([line], self.folder).split("\n"))
        self.assertIn("bedding,cleavage", ask_fish([line], self.folder).split("\n"))
        self.assertIn("cleavage", ask_zsh([line], self.folder).split("\n"))


if __name__ == "__main__":
    main()
