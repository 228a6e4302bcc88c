# SPDX-License-Identifier: Apache-2.0
"""Trials: streams, folders, finished trials, slips. The stand-in solver gives made-up results."""
import json
import unittest

from program import ProgramTest

INSERT = ("--swap", "insert = eva-insert 3 mm")


class Trial(ProgramTest):
    def test_table_on_standard_output_and_place_on_standard_error(self):
        code, output, messages = self.call("trial", "heel-drop", *INSERT)
        self.assertEqual(code, 0, messages)
        self.assertTrue(output.startswith("trial of heel-drop: insert = eva-insert 3 mm\n"), output)
        for part in ["before", "after", "what to know", "peak force", "stack height", "+3.0 mm", "counter depth",
                     "What improves:", "What gets worse:", "licensed foot professional"]:
            self.assertIn(part, output)
        self.assertNotIn("\033", output + messages)
        self.assertIn("results in results/trial-heel-drop/1", messages)
        folder = self.folder / "results/trial-heel-drop/1"
        self.assertEqual((folder / "summary.txt").read_text(), output)
        for name in ["manifest.json", "report.html", "data/trial.json", "data/trial.csv", "data/results.h5",
                     "data/case.toml"]:
            self.assertTrue((folder / name).exists(), name)
        self.assertIn("# trial: insert = eva-insert 3 mm\n", (folder / "data/case.toml").read_text())

    def test_same_trial_is_answered_from_its_folder(self):
        first = self.call("trial", "heel-drop", *INSERT)
        again = self.call("trial", "heel-drop", "--swap", "insert=eva-insert  3 mm")
        self.assertEqual(again[:2], first[:2])
        self.assertIn("already computed", again[2])
        for options in [["--details"], ["--json"], ["--lengths", "cm"]]:
            code, output, messages = self.call("trial", "heel-drop", *INSERT, *options)
            self.assertEqual(code, 0, messages)
            self.assertIn("already computed", messages)
            self.assertNotEqual(output, "")
        other = self.call("trial", "heel-drop", "--swap", "insert = eva-insert 4 mm")
        self.assertIn("results in results/trial-heel-drop/2", other[2])

    def test_json(self):
        first = json.loads(self.call("trial", "heel-drop", *INSERT, "--player", "95 kg", "--json")[1])
        self.assertEqual(first["kind"], "trial")
        self.assertEqual(first["player_mass"], 95)
        self.assertIn("peak_force", first["changed"]["readings"])
        self.assertEqual(first, json.loads((self.folder / "results/trial-heel-drop/1/data/trial.json").read_text()))
        again = self.call("trial", "heel-drop", *INSERT, "--player", "95 kg", "--json")[1]
        self.assertEqual(first, json.loads(again))

    def test_range(self):
        code, output, messages = self.call("trial", "forefoot-drop", "--range", "gauge_pressure=80..200 kPa")
        self.assertEqual(code, 0, messages)
        self.assertIn("over unit gauge pressure, kPa", output)
        # Nothing is changed: one column, and no second run.
        self.assertRegex(output, r"(?m)^ +now *$")
        self.assertNotRegex(output, r"(?m)^ +before +after")
        manifest = json.loads((self.folder / "results/trial-forefoot-drop/1/manifest.json").read_text())
        self.assertFalse([name for name in manifest["files"] if "after" in name])
        table = (self.folder / "results/trial-forefoot-drop/1/data/range.csv").read_text().splitlines()
        self.assertEqual(len(table), 8)
        self.assertTrue(table[1].startswith("80,"))

    def test_own_folder_and_quiet(self):
        code, output, messages = self.call("trial", "heel-drop", *INSERT, "-o", "out", "--quiet")
        self.assertEqual((code, messages), (0, ""))
        self.assertTrue((self.folder / "out/manifest.json").exists())
        self.refused("trial", "heel-drop", "--swap", "insert = eva-insert 4 mm", "-o", "out", code=4)

    def test_slips_all_at_once_before_anything_runs(self):
        messages = self.refused("trial", "heel-drop", "--swap", "insert = pp-semirigd 2 mm", "--swap", "corre = 18 mm",
                                "--player", "95")
        self.assertIn("--swap:1:10: insert.material: there is no material \"pp-semirigd\"", messages)
        self.assertIn("Did you mean \"pp-semirigid\"?", messages)
        self.assertIn("--swap:2:1: corre: there is no such layer. Did you mean \"core\"?", messages)
        self.assertIn("--player:1:1", messages)
        self.assertFalse((self.folder / "results").exists())
        self.assertIn("Write base.thickness or board.thickness",
                      self.refused("trial", "forefoot-drop", "--range", "thickness=2..5 mm"))
        self.assertIn("more than the film can hold",
                      self.refused("trial", "forefoot-drop", "--range", "gauge_pressure=80..2000 kPa"))
        self.assertIn("Did you mean \"heel-drop\"?", self.refused("trial", "heel-drp", *INSERT))
        self.assertIn("12 cases", self.refused("trial", "energy-ladder", *INSERT))
        self.assertIn("--swap", self.refused("trial", "heel-drop"))
        self.assertIn("Did you mean '--swap'?", self.refused("trial", "heel-drop", "--swp", "insert = eva-insert 3 mm"))

    def test_a_run_that_stops(self):
        self.assertIn("the stack before the change stopped early",
                      self.refused("trial", "heel-drop", *INSERT, code=3, STAND_IN_STOPS="in time"))
        self.assertFalse(list(self.folder.glob("results/trial-heel-drop/*/manifest.json")))

    def test_nothing_is_asked_of_the_shell(self):
        """Control characters and markup in an option come back harmless."""
        messages = self.refused("trial", "heel-drop", "--swap", "insert = \033[2J 2 mm")
        self.assertNotIn("\033", messages)


if __name__ == "__main__":
    unittest.main()
