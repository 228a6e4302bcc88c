# SPDX-License-Identifier: Apache-2.0
"""The real program in a folder of its own."""
import shutil
import subprocess
import sys


class RealProgram:
    """Empties the folder. A call that fails ends the test with what it says."""

    def __init__(self, program, folder):
        self.program, self.folder = program, folder
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)

    def call(self, *arguments):
        done = subprocess.run([self.program, *arguments, "--quiet"], capture_output=True, text=True, cwd=self.folder)
        if done.returncode != 0:
            sys.exit(f"{arguments}: exit code {done.returncode}\n{done.stderr}")
        return done.stdout
