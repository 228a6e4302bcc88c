# SPDX-License-Identifier: Apache-2.0
"""Calls the program the way a shell does: own scratch folder, streams apart, no terminal unless asked for."""
import os
import pty
import select
import subprocess
import tempfile
import unittest
from pathlib import Path

PROGRAM = os.environ["SOLEMECH_PROGRAM"]
SOURCE = Path(os.environ["SOLEMECH_SOURCE"])


def environment(**changes):
    kept = {name: value for name, value in os.environ.items() if not name.startswith("STAND_IN")}
    kept.pop("SOLEMECH_DATA", None)
    kept.pop("NO_COLOR", None)
    return {**kept, "TERM": "xterm", **changes}


class ProgramTest(unittest.TestCase):
    def setUp(self):
        scratch = tempfile.TemporaryDirectory()
        self.addCleanup(scratch.cleanup)
        self.folder = Path(scratch.name)

    def call(self, *arguments, **changes):
        """Runs the program; answers (exit code, standard output, standard error)."""
        done = subprocess.run([PROGRAM, *arguments], cwd=self.folder, env=environment(**changes), timeout=60,
                              stdin=subprocess.DEVNULL, capture_output=True)
        return done.returncode, done.stdout.decode(), done.stderr.decode()

    def on_terminal(self, *arguments, typed=b"", **changes):
        """Runs the program on a terminal and types at once; answers (exit code, everything shown)."""
        ours, theirs = pty.openpty()
        process = subprocess.Popen([PROGRAM, *arguments], cwd=self.folder, env=environment(**changes),
                                   stdin=theirs, stdout=theirs, stderr=theirs)
        os.close(theirs)
        os.write(ours, typed)
        shown = b""
        while select.select([ours], [], [], 60)[0]:
            try:
                part = os.read(ours, 4096)
            except OSError:  # the other side is closed
                break
            if not part:
                break
            shown += part
        os.close(ours)
        return process.wait(timeout=60), shown.decode()

    def refused(self, *arguments, code=2, **changes):
        """Standard error of a call that must end with `code` and print no result."""
        exit_code, output, messages = self.call(*arguments, **changes)
        self.assertEqual(exit_code, code, messages)
        self.assertEqual(output, "")
        return messages
