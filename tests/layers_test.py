#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Shows that tools/check_layers.py accepts a clean tree and catches a forbidden edge and a cycle."""
import pathlib
import subprocess
import sys
import tempfile
import unittest

CHECK = pathlib.Path(__file__).parent.parent / "tools" / "check_layers.py"


def check(files):
    """Write the given {path: text} to a fresh tree and run the check on it."""
    with tempfile.TemporaryDirectory() as root:
        for path, text in files.items():
            target = pathlib.Path(root, path)
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, encoding="utf-8")
        return subprocess.run([sys.executable, CHECK, root], capture_output=True, text=True, check=False)


class CheckLayers(unittest.TestCase):
    def test_accepts_includes_that_point_down(self):
        run = check({"materials/law.h": "#pragma once\n", "solver/case.h": '#include "materials/law.h"\n',
                     "tools/main.cc": '#include "solver/case.h"\n', "tests/a.cc": '#include "tools/main.cc"\n'})
        self.assertEqual(run.returncode, 0, run.stdout)

    def test_names_an_include_that_points_up(self):
        run = check({"materials/law.h": '  #  include "geometry/stack.h"\n', "geometry/stack.h": ""})
        self.assertEqual(run.returncode, 1)
        self.assertIn("materials/law.h: includes geometry/stack.h; files in materials/ must not know geometry/",
                      run.stdout)

    def test_keeps_rooms_apart(self):
        run = check({"solver/time/step.h": '#include "solver/rigs/drop.h"\n', "solver/rigs/drop.h": "",
                     "tools/language/sheet.h": '#include "tools/program/main.h"\n', "tools/program/main.h": ""})
        self.assertEqual(run.returncode, 1)
        self.assertIn("files in solver/time/ must not know solver/rigs/", run.stdout)
        self.assertIn("files in tools/language/ must not know tools/program/", run.stdout)

    def test_keeps_the_finite_element_library_out_of_laws(self):
        run = check({"materials/law.h": "#include <deal.II/base/tensor.h>\n"})
        self.assertEqual(run.returncode, 1)

    def test_names_a_cycle(self):
        run = check({"solver/a.h": '#include "solver/b.h"\n', "solver/b.h": '#include "solver/a.h"\n'})
        self.assertEqual(run.returncode, 1)
        self.assertIn("cycle: solver/a.h -> solver/b.h -> solver/a.h", run.stdout)

    def test_refuses_a_folder_that_is_not_the_project(self):
        run = check({"readme.txt": ""})
        self.assertIn("holds no source files", run.stderr)


if __name__ == "__main__":
    unittest.main()
