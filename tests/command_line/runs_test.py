# SPDX-License-Identifier: Apache-2.0
"""Runs: streams, folders, finished runs, early ends. The stand-in solver gives made-up results."""
import json
import os
import signal
import subprocess
import time
import unittest

from program import PROGRAM, ProgramTest, environment


class Run(ProgramTest):
    def test_summary_on_standard_output_and_place_on_standard_error(self):
        code, output, messages = self.call("run", "heel-drop", "forefoot-drop")
        self.assertEqual(code, 0, messages)
        self.assertIn("rebound", output)
        self.assertIn("forefoot-drop", output)
        self.assertNotIn("\033", output + messages)
        self.assertIn("results in results/heel-drop/1 (open report.html)\n", messages)
        self.assertIn("results in results/forefoot-drop/1 (open report.html)\n", messages)
        self.assertTrue((self.folder / "results/heel-drop/1/manifest.json").exists())
        self.assertTrue((self.folder / "results/heel-drop/1/summary.txt").exists())

    def test_quiet_leaves_only_the_result(self):
        code, output, messages = self.call("run", "heel-drop", "--quiet")
        self.assertEqual((code, messages), (0, ""))
        self.assertIn("rebound", output)

    def test_json(self):
        answer = json.loads(self.call("run", "heel-drop", "--json")[1])
        self.assertIn("schema", answer)

    def test_same_inputs_are_answered_from_the_finished_run(self):
        first = self.call("run", "heel-drop")
        again = self.call("run", "heel-drop")
        self.assertEqual(again[:2], first[:2])
        self.assertEqual(again[2], "already computed, results in results/heel-drop/1 (open report.html)\n")
        # Also in other words and with other output.
        for options in [["--set", "core.thickness=1.6 cm"], ["--details"], ["--json"], ["--lengths", "cm"]]:
            code, output, messages = self.call("run", "heel-drop", *options)
            self.assertEqual((code, messages), (0, "already computed, results in results/heel-drop/1 (open report.html)\n"), options)
            self.assertNotEqual(output, "")
        # Other inputs, or a touched file, are calculated.
        self.assertIn("results in results/heel-drop-changed/1 (open report.html)\n",
                      self.call("run", "heel-drop", "--set", "core.thickness=15 mm")[2])
        (self.folder / "results/heel-drop/1/summary.txt").write_text("61 %")
        self.assertIn("results in results/heel-drop/2 (open report.html)\n", self.call("run", "heel-drop")[2])

    def test_what_was_set_is_told_and_kept(self):
        setting = ("--set", 'core.thickness="18 mm"')
        output = self.call("run", "heel-drop", *setting)[1]
        self.assertIn("changed: core.thickness = 18 mm\n", output)
        folder = self.folder / "results/heel-drop-changed/1"
        self.assertIn("changed: core.thickness = 18 mm\n", (folder / "summary.txt").read_text())
        self.assertIn("# changed: core.thickness = 18 mm\n", (folder / "data/case.toml").read_text())
        answer = json.loads(self.call("run", "heel-drop", *setting, "--json")[1])
        self.assertEqual(answer["cases"][0]["changed"], ["core.thickness = 18 mm"])

    def test_what_was_set_is_not_told_of_a_run_without_it(self):
        sheet = self.folder / "twin.toml"
        text = 'format = 1\nstack = "pair-07-heel"\nrig = "guided-rod-1200"\n'
        sheet.write_text(text)
        self.assertIn("changed:", self.call("run", "twin.toml", "--set", 'core.thickness="18 mm"')[1])
        # The same inputs, this time written in the sheet.
        sheet.write_text(text + '[change]\ncore.thickness = "18 mm"\n')
        code, output, messages = self.call("run", "twin.toml")
        self.assertEqual(code, 0, messages)
        self.assertIn("already computed", messages)
        self.assertIn("rebound", output)
        self.assertNotIn("changed:", output)

    def test_folder_of_ones_own(self):
        self.assertIn("results in out (open report.html)\n", self.call("run", "heel-drop", "-o", "out")[2])
        self.assertIn("already computed, results in out (open report.html)\n", self.call("run", "heel-drop", "-o", "out")[2])
        self.call("run", "heel-drop", "forefoot-drop", "-o", "both")
        self.assertTrue((self.folder / "both/forefoot-drop/manifest.json").exists())

    def test_nothing_is_overwritten(self):
        (self.folder / "full").mkdir()
        (self.folder / "full/holiday.txt").write_text("keep me")
        self.assertIn("full", self.refused("run", "heel-drop", "-o", "full", code=4))
        self.assertEqual([path.name for path in (self.folder / "full").iterdir()], ["holiday.txt"])
        # A finished run of other inputs is something else, too.
        self.call("run", "heel-drop", "-o", "out")
        self.refused("run", "forefoot-drop", "-o", "out", code=4)

    def test_a_file_where_the_folder_should_be(self):
        (self.folder / "results").write_text("a file")
        self.assertIn("results", self.refused("run", "heel-drop", code=4))

    def test_a_folder_that_cannot_be_made(self):
        (self.folder / "file.txt").write_text("")
        self.assertIn("file.txt is a file", self.refused("run", "heel-drop", "-o", "file.txt", code=4))
        self.assertIn("/proc", self.refused("run", "heel-drop", "-o", "/proc/nowhere", code=4))

    def test_one_case_named_twice_is_run_once_and_two_of_one_name_are_refused(self):
        self.assertEqual(self.call("run", "heel-drop", "heel-drop")[2], "results in results/heel-drop/1 (open report.html)\n")
        (self.folder / "heel-drop.toml").write_text("format = 1\n")
        self.assertIn("have the same name", self.refused("run", "heel-drop", "heel-drop.toml"))

    def test_a_series_is_one_record(self):
        code, output, messages = self.call("run", "energy-ladder")
        self.assertEqual(code, 0, messages)
        self.assertEqual(messages, "results in results/energy-ladder/1 (open report.html)\n")
        self.assertIn("12", output)

    def test_errors_of_inputs_come_before_anything_is_made(self):
        self.assertIn('Did you mean "heel-drop"?', self.refused("run", "heel-dorp", "forefoot-drop"))
        self.assertEqual(list(self.folder.iterdir()), [])


class AnswerFirst(ProgramTest):
    """The answer is there before its pictures and files are."""

    def started(self, **changes):
        return subprocess.Popen([PROGRAM, "run", "heel-drop"], cwd=self.folder, env=environment(**changes),
                                stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)

    def test_while_pictures_are_drawn(self):
        tools = self.folder / "tools"
        tools.mkdir()
        plot_program = tools / "gnuplot"
        plot_program.write_text(f"#!/bin/sh\nwhile [ ! -e '{self.folder}/go' ]; do sleep 0.05; done\n")
        plot_program.chmod(0o755)
        with self.started(PATH=f"{tools}:{os.environ['PATH']}") as process:
            lines = []
            while not lines or "rebound" not in lines[-1]:
                lines.append(process.stdout.readline())
                self.assertNotEqual(lines[-1], "", "the output ended")
            self.assertFalse((self.folder / "results/heel-drop/1/manifest.json").exists())
            (self.folder / "go").touch()
            _, messages = process.communicate()
        self.assertEqual(process.returncode, 0, messages)
        self.assertTrue((self.folder / "results/heel-drop/1/manifest.json").exists())

    def test_a_reader_that_goes_costs_the_files_nothing(self):
        with self.started() as process:
            process.stdout.close()
            messages = process.stderr.read()
        self.assertEqual(process.returncode, 0, messages)
        self.assertNotIn("standard output", messages)
        self.assertTrue((self.folder / "results/heel-drop/1/manifest.json").exists())


class OneBadCase(ProgramTest):
    def test_finished_runs_of_a_batch_are_written(self):
        for variable, reason in [("STAND_IN_REFUSES", "height = 7 is not allowed"), ("STAND_IN_TRIPS", "a fault of the program")]:
            with self.subTest(variable):
                code, output, messages = self.call("run", "heel-drop", "forefoot-drop", "press-loop", **{variable: "forefoot-drop"})
                self.assertEqual(code, 3, messages)
                self.assertIn(f"forefoot-drop stopped early: {reason}", messages)
                self.assertIn("heel-drop", output)
                self.assertIn("STOPPED EARLY", output)
                for case in ["heel-drop", "press-loop"]:
                    self.assertIn("already computed", self.call("run", case)[2])
                self.assertNotIn("already computed", self.call("run", "forefoot-drop", **{variable: "forefoot-drop"})[2])

    def test_a_single_refused_case_is_a_mistake_of_the_case(self):
        self.assertIn("height = 7 is not allowed", self.refused("run", "heel-drop", STAND_IN_REFUSES="heel-drop"))

    def test_a_comparison_keeps_what_finished(self):
        code, output, messages = self.call("compare", "heel-drop", "forefoot-drop", STAND_IN_REFUSES="forefoot-drop")
        self.assertEqual(code, 3, messages)
        self.assertIn("forefoot-drop stopped early: height = 7", messages)
        self.assertIn("heel-drop", output)
        self.assertTrue(list(self.folder.glob("results/*/*/report.html")))


class EarlyEnd(ProgramTest):
    def test_a_stopped_calculation_is_kept_but_never_an_answer(self):
        code, output, messages = self.call("run", "heel-drop", STAND_IN_STOPS="1")
        self.assertEqual(code, 3)
        self.assertIn("solemech: heel-drop stopped early: the stand-in was asked to stop\n", messages)
        self.assertIn("results in results/heel-drop/2 (open report.html)\n", self.call("run", "heel-drop")[2])

    def test_a_calculation_that_stops_at_once(self):
        for case in ["heel-drop", "press-loop", "energy-ladder"]:
            code, output, messages = self.call("run", case, STAND_IN_STOPS="at once")
            self.assertEqual(code, 3, messages)
            self.assertIn("stopped early: the stand-in was asked to stop\n", messages)
            self.assertNotIn("nan", output)
            self.assertEqual(self.call("run", case, "--json", "--details", STAND_IN_STOPS="at once")[0], 3)

    def test_a_fault_is_told_without_a_raw_exception(self):
        messages = self.refused("run", "heel-drop", code=1, STAND_IN_FAULT="1")
        self.assertIn("solemech: a fault of the program, not of your input", messages)
        self.assertNotIn("terminate", messages)
        self.assertEqual([path for path in self.folder.rglob("*") if path.is_file()], [])

    def test_interrupt(self):
        process = subprocess.Popen([PROGRAM, "run", "heel-drop"], cwd=self.folder, stdout=subprocess.PIPE,
                                   stderr=subprocess.PIPE, env=environment(STAND_IN_SECONDS="30"))
        for _ in range(600):  # its folder is made when the work begins
            if any(self.folder.rglob("*")):
                break
            time.sleep(0.05)
        process.send_signal(signal.SIGINT)
        output, messages = process.communicate(timeout=30)
        self.assertEqual(process.returncode, 130)
        self.assertEqual(output, b"")
        self.assertEqual(messages.decode(), "solemech: interrupted. No results were written.\n")
        self.assertEqual([path for path in self.folder.rglob("*") if path.is_file()], [])

    def test_after_an_interruption_only_the_others_are_calculated(self):
        stored = lambda: {path.name: path.stat().st_mtime_ns for path in (self.folder / "results/.runs").glob("*.h5")}
        # On one processor one run goes after the other; on twelve all would be there at the first.
        one = {min(os.sched_getaffinity(0))}
        process = subprocess.Popen([PROGRAM, "run", "energy-ladder"], cwd=self.folder, stdout=subprocess.PIPE,
                                   stderr=subprocess.PIPE, env=environment(STAND_IN_SECONDS="0.5"),
                                   preexec_fn=lambda: os.sched_setaffinity(0, one))
        for _ in range(600):
            if stored():
                break
            time.sleep(0.02)
        process.send_signal(signal.SIGINT)
        output, messages = process.communicate(timeout=30)
        self.assertEqual((process.returncode, output), (130, b""))
        self.assertIn(b"Finished runs are kept: the same command goes on from there.", messages)
        kept = stored()
        self.assertGreater(len(kept), 0)
        self.assertEqual(list(self.folder.glob("results/energy-ladder/[0-9]*")), [])
        code, output, messages = self.call("run", "energy-ladder")
        self.assertEqual(code, 0, messages)
        self.assertGreater(len(stored()), len(kept))
        self.assertEqual({name: when for name, when in stored().items() if name in kept}, kept)


class Narration(ProgramTest):
    def test_progress_bar_on_a_terminal_only(self):
        code, shown = self.on_terminal("run", "heel-drop", STAND_IN_SECONDS="3")
        self.assertEqual(code, 0, shown)
        self.assertRegex(shown, r"\r\033\[K#+\.+ +\d+ %  about \d+ s left, heel-drop: falling")
        messages = self.call("run", "heel-drop", "-o", "piped", STAND_IN_SECONDS="3")[2]
        self.assertEqual(messages, "results in piped (open report.html)\n")


if __name__ == "__main__":
    unittest.main()
