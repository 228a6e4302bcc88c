# SPDX-License-Identifier: Apache-2.0
"""What a person may get wrong in a case file: one clear message each, with its place and the cure."""
import unittest

from program import ProgramTest

GOOD = '''format = 1
title = "an invented block"

[[layer]]
name = "core"
material = "eva-soft"
thickness = "16 mm"

[drop]
mass = "1.2 kg"
height = "400 mm"
diameter = "40 mm"
'''


class Check(ProgramTest):
    def sheet(self, text, name="block.toml"):
        (self.folder / name).write_bytes(text if isinstance(text, bytes) else text.encode())
        return name

    def test_a_good_sheet_is_told_with_what_is_assumed(self):
        code, output, messages = self.call("check", self.sheet(GOOD))
        self.assertEqual((code, messages), (0, ""))
        self.assertTrue(output.startswith("block.toml: no errors\n"))
        self.assertIn("core eva-soft 16.0 mm", output)
        for assumed in ["plug.base bonded", "surroundings.temperature 23 °C", "drop.friction 0"]:
            self.assertIn(assumed, output)
        # Nothing is said of rests between hits when there is one hit.
        self.assertNotIn("drop.rest", output)

    def test_prebuilt_cases_are_free_of_errors(self):
        names = [line.split()[0] for line in self.call("cases")[1].splitlines() if line.startswith("  ")]
        self.assertGreaterEqual(len(names), 12)
        code, output, messages = self.call("check", *names)
        self.assertEqual((code, messages), (0, ""))
        self.assertEqual(output.count(": no errors\n"), len(names))

    def test_slips_of_an_abrasion_bench(self):
        good = """format = 1
[[layer]]
name = "tread"
material = "rubber-60a"
thickness = "3 mm"
[abrasion]
tool = "sleeve"
speed = "5000 rpm"
"""
        self.assertEqual(self.call("check", self.sheet(good))[0], 0)
        slips = {
            "unknown tool": (good.replace('"sleeve"', '"sleve"'), 'Did you mean "sleeve"?'),
            "unknown reference": (good + 'reference = "rubber-60b"\n', 'Did you mean "rubber-60a"?'),
            "no loss known": (good.replace("rubber-60a", "eva-soft"), "what the abrasive takes off it is not known"),
            "drum entry": (good + 'mass_lost = "120 mg"\n', "has no meaning for a sleeve"),
            "half of the standard": ('format = 1\n[[layer]]\nname = "p"\nmaterial = "rubber-60a"\nthickness = "6 mm"\n'
                                     '[abrasion]\ntool = "drum"\nmass_lost = "120 mg"\n', "stands alone"),
            "blunt cloth": ('format = 1\n[[layer]]\nname = "p"\nmaterial = "rubber-60a"\nthickness = "6 mm"\n'
                            '[abrasion]\ntool = "drum"\nmass_lost = "120 mg"\ncloth_loss = "250 mg"\n', "cloth_loss"),
            "band beside": (good + 'coefficient = "1 mm3/(N m)"\ncoefficient_lowest = "2 mm3/(N m)"\n',
                            "is more than the coefficient"),
            "with a slide": (good + '[slide]\ncourt = "asphalt"\n', "cannot be combined with a slide"),
            "no time": (good + 'seconds = "0 s"\n', "seconds"),
        }
        for slip, (text, said) in slips.items():
            with self.subTest(slip):
                self.assertIn(said, self.refused("check", self.sheet(text)))

    def test_all_slips_of_all_files_at_once(self):
        first = self.sheet(GOOD.replace("thickness", "thikness"), "first.toml")
        second = self.sheet(GOOD.replace('"16 mm"', "16").replace('"1.2 kg"', '"1,2 kg"'), "second.toml")
        messages = self.refused("check", first, second)
        self.assertIn("first.toml:7:1: core.thikness: there is no such entry. Did you mean \"thickness\"?", messages)
        self.assertIn("second.toml:7:13: core.thickness: 16 has no unit. Write thickness = \"16 mm\", for example",
                      messages)
        self.assertIn("second.toml:10:8: drop.mass: ", messages)

    def test_slips_by_kind(self):
        slips = {
            "unquoted value": (GOOD.replace('"16 mm"', "16 mm"), "block.toml:7:"),
            "curly quotes": (GOOD.replace('"16 mm"', "“16 mm”"), "block.toml:7:"),
            "negative layer": (GOOD.replace('"16 mm"', '"-16 mm"'), "block.toml:7:13: core.thickness: "),
            "wrong unit": (GOOD.replace('"16 mm"', '"16 kg"'), "block.toml:7:13: core.thickness: "),
            "unknown material": (GOOD.replace("eva-soft", "eva-sotf"), 'Did you mean "eva-soft"?'),
            "zero mass": (GOOD.replace("1.2 kg", "0 kg"), "block.toml:10:8: drop.mass: "),
            "not a number": (GOOD.replace('"400 mm"', '"nan mm"'), "block.toml:11:"),
            "binary": (b"\x7fELF\x00\x01\x02", "block.toml"),
            "not UTF-8": (GOOD.encode().replace(b"invented", b"inv\xe9nted"), "block.toml:2:"),
            "ten megabytes": ("#" + "x" * 10_000_000, "block.toml"),
        }
        for kind, (text, expected) in slips.items():
            with self.subTest(kind):
                messages = self.refused("check", self.sheet(text))
                self.assertIn(expected, messages)
                self.assertLess(len(messages), 1500)

    def test_unknown_case_and_file(self):
        self.assertIn('Did you mean "heel-drop"?', self.refused("check", "heel-dorp"))
        self.assertIn("nowhere.toml", self.refused("check", "nowhere.toml"))

    def test_changes_from_the_command_line(self):
        name = self.sheet(GOOD)
        self.assertIn("core eva-firm 14.0 mm", self.call("check", name, "--set", "core.thickness=14 mm", "--set",
                                                          "core.material=eva-firm")[1])
        self.assertIn('Did you mean', self.refused("check", name, "--set", "core.thiknes=14 mm"))
        self.assertIn("core.thickness", self.refused("check", name, "--set", "core.thickness=14"))

    def test_data_elsewhere(self):
        messages = self.refused("cases", code=4, SOLEMECH_DATA=str(self.folder))
        self.assertEqual(messages, f"solemech: SOLEMECH_DATA is set to '{self.folder}', but that folder has no `cases` and `materials/library`. Correct it, or unset it to use the installed folders.\n")


if __name__ == "__main__":
    unittest.main()
