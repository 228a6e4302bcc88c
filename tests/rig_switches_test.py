#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Shows that tools/check_rigs.py counts who asks which rig a case has, and leaves the registries out."""
import pathlib
import subprocess
import sys
import tempfile
import unittest

CHECK = pathlib.Path(__file__).parent.parent / "tools" / "check_rigs.py"
CASE = "struct DropRig {};\nusing Rig = std::variant<DropRig, OtherRig>;\n"


def check(files):
    """Write the given {path: text} beside a solver/rig.h to a fresh tree and run the check on it."""
    with tempfile.TemporaryDirectory() as root:
        for path, text in {"solver/rig.h": CASE, "tools/main.cc": "", **files}.items():
            target = pathlib.Path(root, path)
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, encoding="utf-8")
        return subprocess.run([sys.executable, CHECK, root], capture_output=True, text=True, check=False)


class CheckRigs(unittest.TestCase):
    def test_names_every_way_to_ask(self):
        run = check({"tools/a.cc": "std::get<solver::DropRig>(x);\nstd::get_if<OtherRig>(&x);\n"
                                   "std::holds_alternative<DropRig>(x);\na.rig.index();\n"
                                   "std::visit([](const auto &rig) {}, x.rig);\nkind == RigKind::drop;\n"})
        self.assertEqual(run.returncode, 0, run.stdout)
        for line in range(1, 7):
            self.assertIn(f"tools/a.cc:{line}: ", run.stdout)
        self.assertIn("6 places", run.stdout)

    def test_refuses_more_than_allowed(self):
        run = check({"solver/b.cc": "std::get<DropRig>(x);\n" * 11})
        self.assertEqual(run.returncode, 1)
        self.assertIn("11 places", run.stdout)

    def test_leaves_registries_and_other_variants_out(self):
        run = check({"tools/rigs/drop.cc": "numbers_of<DropRig>(x);\n",
                     "solver/rigs/drop.cc": "std::get<DropRig>(x);\n",
                     "tools/c.cc": "std::get<materials::FoamData>(x);\n"})
        self.assertIn("0 places", run.stdout)

    def test_says_when_the_variant_is_gone(self):
        run = check({"solver/rig.h": "struct Case {};\n"})
        self.assertNotEqual(run.returncode, 0)
        self.assertIn("is not there", run.stderr)


if __name__ == "__main__":
    unittest.main()
