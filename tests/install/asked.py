# SPDX-License-Identifier: MIT
"""What the program says of itself, for the tests of what is made from its tables."""

import re
import subprocess


class Asked:
    def __init__(self, program):
        self.program = program

    def said(self, *arguments):
        done = subprocess.run([self.program, *arguments], capture_output=True, check=False,
                              timeout=60)
        return (done.stdout + done.stderr).decode("utf-8")

    def commands(self):
        return re.findall(r"(?m)^  ([a-z-]+) +[A-Z]", self.said("help").split("Commands:")[1])

    def options_of(self, command):
        """Each option that the help of a command lists: short name, long name, name of its value;
        empty what it has not."""
        return re.findall(r"(?m)^  (?:(-\w),)?(--[a-z-]+)(?: ([A-Z]+))?(?: \.\.\.)?(?= |$)",
                          self.said("help", command))

    def choices_of(self, command, option):
        """The words that an option takes, where it takes no others."""
        refusal = self.said(command, f"{option}=@")
        offered = re.search(rf"(?m)^help: {option} (\S+\|\S+)$", refusal)
        return offered[1].split("|") if offered else []
