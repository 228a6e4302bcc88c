# SPDX-License-Identifier: Apache-2.0
"""Sheets and rig files to fill in: valid as written, examples in the remarks too, and never over a file."""
import re
import unittest

from program import ProgramTest

# A hit and a press loop as a sensor writes them; made up, smooth, and complete enough to be read.
IMPACT = "time [ms], force [kN]\n" + "".join(
    f"{t / 20}, {1.3 * max(0.0, 1 - ((t / 20 - 12) / 4.5) ** 2):.5f}\n" for t in range(481))
PRESS = "force [N], compression [mm]\n" + "".join(
    f"{(1 if i <= 100 else 0.8) * 1000 * x ** 2:.3f}, {8 * x:.4f}\n"
    for i in range(201) for x in [1 - abs(i - 100) / 100])


def without_marks(text):
    """Frees the readings and the notes at the layers from their # one by one: (what, text of the sheet)."""
    for block in re.finditer(r"(?m)^# \[\[reading\]\]\n(?:# .*\n)+", text):
        freed = re.sub(r"(?m)^# ", "", block.group())
        yield freed, text[:block.start()] + freed + text[block.end():]
    for note in re.finditer(r"(?m)^# (?:hardness|density) = .*\n", text):
        yield note.group(), text[:note.start()] + note.group()[2:] + text[note.end():]


class Sheets(ProgramTest):
    def written(self, *arguments):
        code, output, messages = self.call("sheet", *arguments)
        self.assertEqual((code, messages), (0, ""))
        return output

    def test_sheets_of_both_parts_pass_the_check(self):
        for part in ["heel", "forefoot"]:
            name = f"my-{part}.toml"
            self.assertIn(f"solemech check {name}", self.written(name, "--part", part))
            code, output, messages = self.call("check", name)
            self.assertEqual((code, messages), (0, ""))
            self.assertTrue(output.startswith(f"{name}: no errors\n"))
            self.assertIn("none yet", output)
            self.assertIn(f'part = "{part}"', (self.folder / name).read_text())

    def test_the_heel_is_the_default(self):
        self.written("a.toml")
        self.written("b.toml", "--part", "heel")
        self.assertEqual((self.folder / "a.toml").read_text(), (self.folder / "b.toml").read_text())

    def test_every_number_of_a_layer_rig_and_plug_says_that_it_is_invented(self):
        self.written("heel.toml")
        self.written("forefoot.toml", "--part", "forefoot")
        self.written("rod.toml", "--rig")
        for name in ["heel", "forefoot", "rod"]:
            for line in (self.folder / f"{name}.toml").read_text().splitlines():
                if re.match(r'\w+ = "[-\d]', line):
                    self.assertIn("INVENTED", line)

    def test_the_check_lists_what_is_still_invented(self):
        for arguments in [["a.toml"], ["b.toml", "--part", "forefoot"], ["c.toml", "--rig"]]:
            self.written(*arguments)
            path = self.folder / arguments[0]
            lines = path.read_text().splitlines()
            marked = [str(i) for i, line in enumerate(lines, 1) if re.match(r"\w+ = .*# INVENTED", line)]
            self.assertGreaterEqual(len(marked), 5)
            said = " ".join(self.call("check", arguments[0])[1].split())
            self.assertRegex(said, f"assumed ({arguments[0]}: )?lines {', '.join(marked)} still INVENTED")
            path.write_text("\n".join(line.replace("INVENTED", "mine") for line in lines) + "\n")
            self.assertNotIn("INVENTED", self.call("check", arguments[0])[1])

    def test_examples_in_the_remarks_pass_the_check(self):
        (self.folder / "impact.csv").write_text(IMPACT)
        (self.folder / "press.csv").write_text(PRESS)
        n_freed = 0
        for part in ["heel", "forefoot"]:
            self.written(f"{part}.toml", "--part", part)
            for what, text in without_marks((self.folder / f"{part}.toml").read_text()):
                with self.subTest(part=part, what=what):
                    (self.folder / "freed.toml").write_text(text)
                    code, output, messages = self.call("check", "freed.toml")
                    self.assertEqual((code, messages), (0, ""))
                    if "tread left" not in what:
                        self.assertNotIn("none yet", output)
                    n_freed += 1
        self.assertGreaterEqual(n_freed, 24)

    def test_a_record_of_a_million_rows(self):
        n = 1_000_000
        hit = [1.3 * max(0.0, 1 - ((24 * i / n - 12) / 4.5) ** 2) for i in range(n)]
        (self.folder / "impact.csv").write_text("time [ms], force [kN]\n" + "".join(
            f"{24 * i / n:.6f}, {force:.5f}\n" for i, force in enumerate(hit)))
        self.written("heel.toml")
        with open(self.folder / "heel.toml", "a", encoding="utf-8") as sheet:
            sheet.write('\n[[reading]]\nkind = "impact record"\nfile = "impact.csv"\n')
        code, output, messages = self.call("check", "heel.toml")
        self.assertEqual((code, messages), (0, ""))
        self.assertIn("peak force, record", output)

    def test_core_with_a_ring(self):
        self.written("heel.toml")
        text = (self.folder / "heel.toml").read_text()
        (self.folder / "ringed.toml").write_text(re.sub(r"(?m)^# (core_diameter|ring) =", r"\1 =", text))
        code, output, messages = self.call("check", "ringed.toml")
        self.assertEqual((code, messages), (0, ""))
        self.assertIn("ringed by", output)

    def test_rig_file_passes_the_check_alone_and_under_a_sheet(self):
        self.assertIn('rig = "my-rod.toml"', self.written("--rig", "my-rod.toml"))
        code, output, messages = self.call("check", "my-rod.toml")
        self.assertEqual((code, messages), (0, ""))
        self.assertIn("drop weight 1.2 kg", output)
        rod = (self.folder / "my-rod.toml").read_text()
        (self.folder / "my-rod.toml").write_text(re.sub(r"(?m)^# (base_\w+|hits|discarded|rest) =", r"\1 =", rod)
                                                 .replace('"1.20 kg"', '"1.35 kg"'))
        for part in ["heel", "forefoot"]:
            self.written(f"{part}.toml", "--part", part)
            text = (self.folder / f"{part}.toml").read_text().replace('"guided-rod-1200"', '"my-rod.toml"')
            (self.folder / f"{part}.toml").write_text(text + '\n[drop]\nguide_loss = "3 % +- 1 %"\n')
            code, output, messages = self.call("check", f"{part}.toml")
            self.assertEqual((code, messages), (0, ""))
            self.assertIn("drop weight 1.35 kg", output)
            self.assertIn("drop guide loss", output)
            self.assertIn("my-rod.toml: lines ", output)

    def test_an_abrasive_sleeve_is_a_rig_file_too(self):
        (self.folder / "sleeve.toml").write_text('format = 1\n[abrasion]\ntool = "sleeve"\nspeed = "9000 rpm"\n')
        code, output, messages = self.call("check", "sleeve.toml")
        self.assertEqual((code, messages), (0, ""))
        self.assertIn("at 9000 rpm", output)

    def test_several_sheets_are_checked_at_once(self):
        self.written("heel.toml")
        self.written("forefoot.toml", "--part", "forefoot")
        code, output, messages = self.call("check", "heel.toml", "forefoot.toml", "heel-drop")
        self.assertEqual((code, messages), (0, ""))
        self.assertEqual(output.count(": no errors\n"), 3)
        for part in ["heel", "forefoot"]:
            text = (self.folder / f"{part}.toml").read_text()
            (self.folder / f"{part}.toml").write_text(text.replace("thickness = ", "thikness = ", 1))
        messages = self.refused("check", "heel.toml", "forefoot.toml")
        self.assertIn("heel.toml:", messages)
        self.assertIn("forefoot.toml:", messages)

    def test_the_check_asks_back_what_no_bench_shows(self):
        self.written("heel.toml")
        text = (self.folder / "heel.toml").read_text().replace('thickness = "16.0 mm +- 0.5"', 'thickness = "14.6 cm +- 0.5"')
        (self.folder / "heel.toml").write_text(text + """
[[reading]]
kind = "contact time"
value = "10.1 s"
[[reading]]
kind = "rebound"
values = ["321 mm", "312 mm", "318 mm"]
[[reading]]
kind = "deceleration"
value = "94 g +- 5 g"
""")
        code, output, messages = self.call("check", "heel.toml")
        self.assertEqual((code, messages), (0, ""))
        said = " ".join(output.split())
        for part in ["please check core thickness of 146 mm is unusual; 1.0 mm to 80 mm is expected. Is it 14.6 mm?",
                     "please check contact time of 10.1 s is unusual; 1.0 ms to 100.0 ms is expected. Is it 10.1 ms?",
                     "deceleration 94.0 g ±5.0"]:
            self.assertIn(part, said)

    def test_a_hit_a_tenth_of_the_others_is_asked_back_and_not_averaged(self):
        self.written("heel.toml")
        text = (self.folder / "heel.toml").read_text()
        for values in ['["321 mm", "31.2 mm", "318 mm"]', '["31.2 mm", "318 mm"]']:
            (self.folder / "heel.toml").write_text(f'{text}\n[[reading]]\nkind = "rebound"\nvalues = {values}\n')
            for command in ["check", "run", "plan"]:
                self.assertRegex(self.refused(command, "heel.toml"), r"heel\.toml:\d+:\d+: reading\.values: 31\.2 mm is far from the others, "
                                 r"about 318 mm\. Is it 312 mm\? Correct it, or remove it if it was a bad reading\.")

    def test_a_settled_stack_whose_run_stops_early_is_no_answer_and_is_tried_again(self):
        self.written("heel.toml")
        code, output, messages = self.call("run", "heel.toml", STAND_IN_STOPS="with pictures")
        self.assertEqual(code, 3, messages)
        self.assertIn("solemech: heel stopped early: the stand-in was asked to stop\n", messages)
        self.assertTrue(list(self.folder.glob("results/heel*/1/settled.toml")))
        code, output, messages = self.call("run", "heel.toml")
        self.assertEqual(code, 0, messages)
        self.assertNotIn("already computed", messages)
        self.assertIn("already computed", self.call("run", "heel.toml")[2])

    def test_what_a_failed_run_leaves_without_bands_is_tried_again(self):
        self.written("heel.toml")
        self.assertEqual(self.call("run", "heel.toml", STAND_IN_TRIPS="coarser runs")[0], 3)
        settled = str(next(self.folder.glob("results/heel*/1/settled.toml")))
        for told_again, *command in [("already computed", "run", settled), ("already computed", "run", "heel.toml"),
                                     ("already computed, results in results/trial", "trial", "heel.toml", "--swap", "core = 20 mm")]:
            with self.subTest(command):
                code, output, messages = self.call(*command, STAND_IN_TRIPS="coarser runs")
                self.assertEqual(code, 3, messages)
                self.assertIn("a run of this answer failed and is left out", messages)
                code, output, messages = self.call(*command)
                self.assertEqual(code, 0, messages)
                self.assertNotIn(told_again, messages)
                self.assertIn(told_again, self.call(*command)[2])

    def test_a_trial_of_a_sheet_whose_settled_stack_stops_early_is_no_answer(self):
        self.written("heel.toml")
        code, output, messages = self.call("trial", "heel.toml", "--swap", "core = 20 mm", STAND_IN_STOPS="with pictures")
        self.assertEqual((code, output), (3, ""), messages)
        self.assertIn("stopped early: the stand-in was asked to stop\n", messages)
        self.assertEqual(list(self.folder.glob("results/trial*")), [])

    def test_a_settling_without_runs_says_why_they_stopped(self):
        self.written("heel.toml")
        messages = self.refused("run", "heel.toml", code=3, STAND_IN_STOPS="at once")
        self.assertIn("a run stopped early: the stand-in was asked to stop\n", messages)

    def test_the_same_band_in_the_check_as_in_the_answer(self):
        self.written("heel.toml")
        with open(self.folder / "heel.toml", "a", encoding="utf-8") as sheet:
            sheet.write('\n[[reading]]\nkind = "rebound"\nvalues = ["242 mm", "246 mm", "250 mm"]\n')
        said = " ".join(self.call("check", "heel.toml")[1].split())
        self.assertIn("rebound 246 mm ±7", said)
        self.assertIn("a height read by eye on a rule assumed, ±6 mm; with the scatter of 3 hits ±7 mm", said)

    def test_a_slip_in_a_rig_file_is_shown_in_its_place(self):
        self.written("--rig", "my rod.toml")
        path = self.folder / "my rod.toml"
        path.write_text(path.read_text().replace("diameter = ", "diametre = "))
        self.assertRegex(self.refused("check", "my rod.toml"), r'my rod\.toml:\d+:1: drop\.diametre: .*"diameter"')

    def test_a_doubt_in_a_rig_file_is_sent_to_the_sheet(self):
        self.written("--rig", "rod.toml")
        text = (self.folder / "rod.toml").read_text()
        for doubt in ["+- 1 %", "± 1", "+/- 1 %"]:
            (self.folder / "rod.toml").write_text(text.replace('"3 %"', f'"3 % {doubt}"'))
            messages = self.refused("check", "rod.toml")
            self.assertRegex(messages, r"rod\.toml:\d+:14: drop\.guide_loss: .* has a ±, which is not allowed here")
            self.assertIn("guide loss under [drop]", messages)

    def test_a_file_that_is_there_stays(self):
        for arguments in [["a.toml"], ["a.toml", "--part", "forefoot"], ["--rig", "a.toml"]]:
            (self.folder / "a.toml").write_text("mine")
            self.assertIn("'a.toml' exists already", self.refused("sheet", *arguments, code=4))
            self.assertEqual((self.folder / "a.toml").read_text(), "mine")
        (self.folder / "folder.toml").mkdir()
        self.assertIn("exists already", self.refused("sheet", "folder.toml", code=4))
        (self.folder / "link.toml").symlink_to("elsewhere.toml")
        self.assertIn("exists already", self.refused("sheet", "link.toml", code=4))
        self.assertFalse((self.folder / "elsewhere.toml").exists())

    def test_the_folder_must_be_there(self):
        self.assertIn("there is no folder 'nowhere'", self.refused("sheet", "nowhere/a.toml", code=4))
        self.assertFalse((self.folder / "nowhere").exists())

    def test_slips_of_the_command_line(self):
        self.assertEqual(self.refused("sheet", "a.toml", "--part", "forefot"),
                         "solemech: --part forefot: choose heel or forefoot. Did you mean 'forefoot'?\n")
        self.assertIn("cannot be combined", self.refused("sheet", "a.toml", "--rig", "--part", "heel"))
        self.assertIn("such as 'my-heel.toml'", self.refused("sheet", "my-heel"))
        self.assertIn("such as 'my-heel.toml'", self.refused("sheet", ""))
        self.assertIn("such as 'my-heel.toml'", self.refused("sheet", ".toml"))
        self.assertIn("needs the file to write", self.refused("sheet"))
        self.assertIn("Did you mean '--part'?", self.refused("sheet", "a.toml", "--prat", "heel"))
        self.assertEqual(list(self.folder.iterdir()), [])


if __name__ == "__main__":
    unittest.main()
