# SPDX-License-Identifier: Apache-2.0
"""Lessons as people ask them, with made-up results."""
import html.parser
import json
import os
import pty
import re
import select
import signal
import subprocess
import unittest

from program import PROGRAM, SOURCE, ProgramTest, environment

LESSONS = sorted(path.stem for path in (SOURCE / "cases" / "learn").glob("*.toml"))


class TextOfPage(html.parser.HTMLParser):
    """Collects the text outside of style, and every tag."""

    def __init__(self):
        super().__init__()
        self.tags, self.text, self.inside = [], "", ""

    def handle_starttag(self, tag, attributes):
        self.tags.append(tag)
        self.inside = tag

    def handle_data(self, data):
        if self.inside != "style":
            self.text += data


class List(ProgramTest):
    def test_lessons_are_listed_by_question(self):
        code, output, messages = self.call("learn")
        self.assertEqual((code, messages), (0, ""))
        rows = re.findall(r"^ +(\d+)  (\S+) +(\S.*)$", output, re.MULTILINE)
        self.assertEqual([int(row[0]) for row in rows], list(range(1, len(LESSONS) + 1)))
        self.assertEqual(sorted(row[1] for row in rows), LESSONS)
        for row in rows:
            self.assertTrue(row[2].endswith("?"), row)

    def test_the_list_of_cases_has_a_group_for_them(self):
        groups = self.call("cases")[1].split("\n\n")
        learn = [group for group in groups if group.startswith("Learn\n")]
        self.assertEqual(len(learn), 1)
        for name in LESSONS:
            self.assertIn(f"\n  {name} ", learn[0])


class Asked(ProgramTest):
    def test_without_a_guess_it_asks_prints_and_answers(self):
        code, output, messages = self.call("learn", "dead-unit")
        self.assertEqual(code, 0, messages)
        question, answer = output.split("\n\nThe answer\n\n", 1)
        self.assertTrue(question.startswith("Lesson: a dead unit still rebounds\n\nThe unit of a forefoot has lost its air."))
        self.assertEqual(re.findall(r"^  (\d)  ?\S", question, re.MULTILINE), ["1", "2", "3", "4"])
        self.assertTrue(answer.startswith("The numbers say "), answer)
        for part in ["\n\nHow it was decided\n\n", "\n\nThe readings\n\n", "Outside of this program: ", "where 100 %", "Caution: ",
                     "Invented demo stacks"]:
            self.assertIn(part, answer)
        self.assertIn("results in results/learn-dead-unit/1", messages)

    def test_a_guess_holds_or_not(self):
        answers = [self.call("learn", "three-returns", "--guess", str(n))[1] for n in (1, 2, 3, 4)]
        held = ["Your guess was right," in answer for answer in answers]
        self.assertEqual(held.count(True), 1)
        right = held.index(True) + 1
        for n, answer in enumerate(answers, start=1):
            if n != right:
                self.assertIn(f"Your guess was {n}; the numbers say {right}: ", answer)

    def test_what_it_leaves_behind(self):
        code, output, messages = self.call("learn", "energy-return", "--guess", "1")
        self.assertEqual(code, 0, messages)
        folder = self.folder / "results" / "learn-energy-return" / "1"
        for name in ["summary.txt", "report.html", "worksheet.html", "manifest.json", "data/case.toml",
                     "data/results.h5", "data/readings.csv"]:
            self.assertTrue((folder / name).is_file(), name)
        summary = (folder / "summary.txt").read_text()
        self.assertIn("Your guess", summary)
        self.assertIn("[lesson]", (folder / "data" / "case.toml").read_text())
        page = TextOfPage()
        page.feed((folder / "worksheet.html").read_text())
        self.assertNotIn("script", page.tags)
        self.assertIn("My guess, and why", page.text)
        self.assertIn("Answers", page.text)
        report = (folder / "report.html").read_text()
        self.assertIn("How much of its work comes back?", report)

    def test_the_same_again_is_read_back_and_another_guess_needs_no_new_runs(self):
        first = self.call("learn", "energy-return", "--guess", "1")
        again = self.call("learn", "energy-return", "--guess", "1", STAND_IN_FAULT="1")
        self.assertEqual(again[:2], first[:2])
        self.assertIn("already computed, results in results/learn-energy-return/1", again[2])
        other = self.call("learn", "energy-return", "--guess", "3", STAND_IN_FAULT="1")
        self.assertEqual(other[0], 0, other[2])
        self.assertIn("results in results/learn-energy-return/2", other[2])

    def test_json(self):
        code, output, messages = self.call("learn", "energy-return", "--guess", "2", "--json")
        self.assertEqual((code, messages), (0, ""))
        answer = json.loads(output)
        lesson = answer["lesson"]
        self.assertEqual(lesson["guess"], 2)
        self.assertIn(lesson["answer"], (1, 2, 3))
        self.assertEqual(len(lesson["choices"]), 3)
        value = answer["cases"][0]["runs"][0]["readings"]["loop_return"]["value"]
        self.assertAlmostEqual(lesson["decided_by"][0]["value"], value)
        self.assertIsNone(json.loads(self.call("learn", "energy-return", "--json")[1])["lesson"]["guess"])

    def test_a_lesson_is_an_ordinary_case_too(self):
        for name in LESSONS:
            code, output, messages = self.call("check", name)
            self.assertEqual(code, 0, messages)
        code, output, messages = self.call("run", "hot-and-cold", "--quiet")
        self.assertEqual(code, 0, messages)
        self.assertEqual(self.call("run", "thin-foam", "--set", "foam.thickness=10 mm", "--quiet")[0], 0)


class OnATerminal(ProgramTest):
    def test_a_guess_is_typed_first(self):
        code, shown = self.on_terminal("learn", "energy-return", typed=b"7\nx\n 2 \n")
        self.assertEqual(code, 0, shown)
        self.assertEqual(shown.count("your guess, 1 to 3 (Enter: none): "), 3)
        self.assertEqual(shown.count("That is not one of the choices."), 2)
        self.assertRegex(shown, "Your guess was (right, 2|2; the numbers say)")

    def test_enter_alone_makes_no_guess(self):
        code, shown = self.on_terminal("learn", "energy-return", typed=b"\n")
        self.assertEqual(code, 0, shown)
        self.assertIn("The numbers say", shown)

    def test_a_given_guess_or_quiet_asks_nothing(self):
        for option in (["--guess", "1"], ["--quiet"], ["--json"]):
            code, shown = self.on_terminal("learn", "energy-return", *option)
            self.assertEqual(code, 0, shown)
            self.assertNotIn("your guess, 1 to", shown)

    def test_control_c_while_it_waits_writes_nothing(self):
        ours, theirs = pty.openpty()
        process = subprocess.Popen([PROGRAM, "learn", "energy-return"], cwd=self.folder, env=environment(),
                                   stdin=theirs, stdout=theirs, stderr=theirs)
        os.close(theirs)
        shown = b""
        while b"your guess" not in shown and select.select([ours], [], [], 30)[0]:
            shown += os.read(ours, 4096)
        process.send_signal(signal.SIGINT)
        self.assertEqual(process.wait(timeout=30), 130)
        os.close(ours)
        self.assertFalse((self.folder / "results").exists())


class Slips(ProgramTest):
    def test_an_unknown_lesson_names_the_nearest(self):
        self.assertEqual(self.refused("learn", "ded-unit"), "solemech: there is no lesson 'ded-unit'. Did you mean "
                         "'dead-unit'? `solemech learn` lists the lessons.\n")

    def test_a_case_without_a_lesson(self):
        self.assertIn("'heel-drop' is a case without a lesson. Run it: solemech run heel-drop.",
                      self.refused("learn", "heel-drop"))
        (self.folder / "mine.toml").write_text((SOURCE / "cases/bench/heel-drop.toml").read_text())
        self.assertIn("'mine.toml' has no lesson", self.refused("learn", "mine.toml"))

    def test_a_guess_that_is_no_choice(self):
        for guess in ("0", "5", "-1"):
            self.assertEqual(self.refused("learn", "dead-unit", f"--guess={guess}"),
                             f"solemech: --guess {guess}: 'dead-unit' has 4 choices; give a number from 1 to 4.\n")
        self.assertIn("--guess", self.refused("learn", "dead-unit", "--guess", "rebound"))

    def test_a_place_for_an_unknown_reading_says_where(self):
        text = (SOURCE / "cases/learn/energy-return.toml").read_text()
        (self.folder / "mine.toml").write_text(text.replace("{loop_energy_lost}", "{loop_energy_lots}"))
        line = next(n for n, each in enumerate(text.splitlines(), start=1) if "{loop_energy_lost}" in each)
        column = text.splitlines()[line - 1].index("{loop_energy_lost}") + 1
        messages = self.refused("learn", "mine.toml")
        self.assertTrue(messages.startswith(f"mine.toml:{line}:{column}: lesson.explanation: {{loop_energy_lots}}: "
                                            "there is no reading \"loop_energy_lots\". Did you mean "), messages)

    def test_a_run_that_stops_early_leaves_no_answer(self):
        messages = self.call("learn", "energy-return", STAND_IN_STOPS="1")
        self.assertEqual(messages[0], 3)
        self.assertIn("so the lesson has no answer", messages[2])
        self.assertNotIn("The numbers say", messages[1])
        self.assertEqual(list((self.folder / "results" / "learn-energy-return").glob("*")), [])


if __name__ == "__main__":
    unittest.main()
