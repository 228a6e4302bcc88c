# SPDX-License-Identifier: Apache-2.0
"""Comparisons: inputs of every kind, answers, folders, the store of runs. The stand-in solver knows two answers: one
for stacks with an air unit and one for stacks without, so that only a change that brings the unit has a share."""
import csv
import json
import re
import signal
import subprocess
import time
import unittest

from program import PROGRAM, ProgramTest, environment

PAIR = ("heel-drop", "forefoot-drop")
FOLDER = "results/compare-heel-drop-forefoot-drop/1"


def told_place(messages):
    return messages.splitlines()[-1]


class Compare(ProgramTest):
    def runs(self):
        return sorted(path.name for path in (self.folder / "results/.runs").glob("*.h5"))

    def shares(self, *names):
        code, output, messages = self.call("compare", *names, "--json", "--quiet")
        self.assertEqual(code, 0, messages)
        comparison = json.loads(output)["comparisons"][0]
        return comparison, {row["change"]: row["share"] for row in comparison["shares"][0]["shares"]}

    def test_answer_and_folder(self):
        code, output, messages = self.call("compare", *PAIR)
        self.assertEqual(code, 0, messages)
        self.assertTrue(told_place(messages).startswith(f"results in {FOLDER}"), messages)
        for words in ["forefoot-drop throws the weight back", "what differs, heel-drop -> forefoot-drop",
                      "eva-firm 7 mm", "share of each change, averaged over every order of change", "core -> air unit",
                      "where the energy went", "Invented demo stacks", "never pierce"]:
            self.assertIn(words, re.sub("carrier -> base, thickness +", "eva-firm ", output), words)
        for name in ["summary.txt", "report.html", "manifest.json", "data/results.h5", "data/comparison.json",
                     "data/shares.csv", "data/cases.toml", "data/resolved.txt", "data/details.txt"]:
            self.assertTrue((self.folder / FOLDER / name).is_file(), name)
        self.assertEqual((self.folder / FOLDER / "summary.txt").read_text(), output)
        with open(self.folder / FOLDER / "data/shares.csv", newline="") as file:
            rows = list(csv.DictReader(file))
        self.assertEqual({row["from"] for row in rows}, {"heel-drop"})
        self.assertIn("core -> air unit", {row["change"] for row in rows})

    def test_only_the_change_with_an_effect_has_a_share_and_shares_add_up(self):
        comparison, shares = self.shares(*PAIR)
        self.assertGreaterEqual(len(shares), 6)
        total = comparison["shares"][0]["total"]
        self.assertNotEqual(total, 0)
        for change, share in shares.items():
            self.assertAlmostEqual(share, total if change == "core -> air unit" else 0, delta=1e-9 * abs(total))
        self.assertAlmostEqual(sum(shares.values()), total, delta=1e-9 * abs(total))

    def test_turned_round_the_sentence_turns_and_no_run_is_repeated(self):
        there, shares = self.shares(*PAIR)
        back, turned = self.shares(*reversed(PAIR))
        self.assertIn("forefoot-drop throws the weight back", there["sentence"])
        self.assertIn("heel-drop throws the weight back", back["sentence"])
        self.assertEqual("higher" in there["sentence"], "lower" in back["sentence"])
        self.assertAlmostEqual(shares["core -> air unit"], -turned["air unit -> core"])
        self.assertEqual(back["runs"]["calculated"], 0)

    def test_the_same_again_is_answered_at_once(self):
        first = self.call("compare", *PAIR)
        for options in [(), ("--details",), ("--json",)]:
            code, output, messages = self.call("compare", *PAIR, *options)
            self.assertEqual(code, 0)
            self.assertTrue(messages.startswith(f"already computed, results in {FOLDER}"), messages)
            if not options:
                self.assertEqual(output, first[1])
        # A touched file is no answer, but the runs are still there.
        (self.folder / FOLDER / "summary.txt").write_text("70 %")
        code, output, messages = self.call("compare", *PAIR, "--json")
        self.assertIn("/2", told_place(messages))
        self.assertEqual(json.loads(output)["comparisons"][0]["runs"]["calculated"], 0)

    def test_equal_stacks_make_no_difference_and_no_mixture(self):
        (self.folder / "same.toml").write_text('format = 1\nstack = "pair-07-heel"\nrig = "guided-rod-1200"\n')
        code, output, messages = self.call("compare", "heel-drop", "same.toml")
        self.assertEqual(code, 0, messages)
        self.assertIn("no difference", output.splitlines()[0])
        self.assertEqual(len(self.runs()), 2)  # one stack, at two levels of mesh and step

    def test_what_cannot_be_told_is_said(self):
        # Both with a unit: the stand-in gives the same numbers, so that no sign is known.
        output = self.call("compare", "forefoot-drop", "punctured-unit")[1]
        self.assertIn("cannot separate these two", output)
        self.assertIn("cannot tell", output)
        self.assertIn("unit, air  140 kPa gauge -> open, no pressure", output)

    def test_drop_against_press_compares_what_both_have(self):
        code, output, messages = self.call("compare", "heel-drop", "press-loop")
        self.assertEqual(code, 0, messages)
        self.assertIn("different kinds of readings", output)
        self.assertIn("peak force", output)
        self.assertNotIn("share of each change", output)

    def test_finished_runs_are_compared_by_their_folders(self):
        (self.folder / "own.toml").write_text(
            'format = 1\nstack = "mine"\nrig = "guided-rod-1200"\n')
        (self.folder / "mine.toml").write_text(
            'format = 1\n[[layer]]\nname = "foam"\nmaterial = "eva-soft"\nthickness = "25 mm"\n')
        self.call("run", "own.toml")
        self.call("run", "own.toml", "--set", "foam.thickness=22 mm")
        (self.folder / "mine.toml").unlink()
        (self.folder / "own.toml").unlink()
        code, output, messages = self.call("compare", "results/own/1", "results/own-changed/1/")
        self.assertEqual(code, 0, messages)
        self.assertRegex(output, r"foam, thickness +25 mm -> 22 mm")
        self.assertIn("what differs, results/own/1 -> results/own-changed/1\n", output)
        # What was run is no longer what the texts say.
        (self.folder / "results/own/1/data/resolved.txt").write_text("another case\n")
        self.assertIn("cannot be reused", self.refused("compare", "results/own/1", "results/own-changed/1", code=4))

    def test_a_series_is_compared_with_its_first(self):
        code, output, messages = self.call("compare", "plug-edge", "--json", "--quiet")
        self.assertEqual(code, 0, messages)
        comparisons = json.loads(output)["comparisons"]
        self.assertEqual(len(comparisons), 4)
        self.assertEqual(len({comparison["from"] for comparison in comparisons}), 1)
        self.assertEqual(len({comparison["to"] for comparison in comparisons}), 4)

    def test_slips(self):
        self.assertIn('Did you mean "heel-drop"?', self.refused("compare", "heel-dorp", "forefoot-drop"))
        self.assertIn("needs two cases", self.refused("compare", "heel-drop"))
        self.assertIn("Did you mean '--details'?", self.refused("compare", *PAIR, "--detials"))
        self.assertIn("needs the name", self.refused("compare"))
        (self.folder / "empty").mkdir()
        self.assertIn("no manifest.json", self.refused("compare", "heel-drop", "empty"))
        self.assertEqual([path.name for path in self.folder.iterdir()], ["empty"])

    def test_folder_of_ones_own_and_quiet(self):
        code, output, messages = self.call("compare", *PAIR, "-o", "out", "--quiet")
        self.assertEqual((code, messages), (0, ""))
        self.assertTrue((self.folder / "out/manifest.json").is_file())
        self.assertIn("out", self.refused("compare", *reversed(PAIR), "-o", "out", code=4))

    def test_a_stopped_run_is_told(self):
        code, output, messages = self.call("compare", *PAIR, STAND_IN_STOPS="1")
        self.assertEqual((code, output), (3, ""))
        self.assertIn("heel-drop stopped early: the stand-in was asked to stop\n", messages)


class Interrupted(ProgramTest):
    def start(self, seconds):
        return subprocess.Popen([PROGRAM, "compare", *PAIR], cwd=self.folder, stdout=subprocess.PIPE,
                                stderr=subprocess.PIPE, env=environment(STAND_IN_SECONDS=seconds))

    def stored(self):
        return {path.name: path.stat().st_mtime_ns for path in (self.folder / "results/.runs").glob("*.h5")}

    def goes_on(self, kept):
        """The same command repeats no finished run and loses none."""
        code, output, messages = self.call("compare", *PAIR, "--json")
        self.assertEqual(code, 0, messages)
        runs = json.loads(output)["comparisons"][0]["runs"]
        self.assertEqual(runs["from_store"], len(kept))
        self.assertGreater(runs["calculated"], 0)
        self.assertEqual({name: time for name, time in self.stored().items() if name in kept}, kept)
        self.assertEqual(len(self.stored()), runs["from_store"] + runs["calculated"])

    def wait_for_runs(self, process, n_runs):
        for _ in range(600):
            if len(self.stored()) >= n_runs:
                return
            time.sleep(0.05)
        process.kill()
        self.fail("no run was finished in time")

    def test_killed_in_the_middle(self):
        process = self.start("0.1")
        self.wait_for_runs(process, 5)
        process.send_signal(signal.SIGKILL)
        process.communicate(timeout=30)
        kept = self.stored()
        self.assertGreaterEqual(len(kept), 5)
        self.assertLess(len(kept), 100)
        self.goes_on(kept)

    def test_interrupted_from_the_keyboard(self):
        process = self.start("0.1")
        self.wait_for_runs(process, 3)
        process.send_signal(signal.SIGINT)
        output, messages = process.communicate(timeout=30)
        self.assertEqual((process.returncode, output), (130, b""))
        self.assertIn(b"Finished runs are kept", messages)
        self.assertEqual(list(self.folder.glob("results/compare-*/[0-9]*")), [])
        self.goes_on(self.stored())


if __name__ == "__main__":
    unittest.main()
