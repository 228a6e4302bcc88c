# SPDX-License-Identifier: Apache-2.0
"""A pair from template to answer: one file, three commands; and what cannot be a pair."""
import csv
import json
import re
import unittest

from program import SOURCE, ProgramTest

READING = '\n[[{}.reading]]\nkind = "rebound"\nvalues = ["{} mm", "{} mm"]\n'


class Pairs(ProgramTest):
    def filled_in(self, name="my-pair.toml"):
        code, output, messages = self.call("sheet", name, "--pair")
        self.assertEqual((code, messages), (0, ""))
        self.assertIn(f"solemech pair {name}", output)
        path = self.folder / name
        path.write_text(path.read_text() + READING.format("heel", 240, 244) + READING.format("forefoot", 305, 309))
        return path

    def book(self):
        self.assertEqual(self.call("book", ".")[0], 0)
        with open(self.folder / "book.csv", newline="", encoding="utf-8") as file:
            return list(csv.DictReader(file))

    def test_one_file_three_commands(self):
        self.filled_in()
        code, output, messages = self.call("check", "my-pair.toml")
        self.assertEqual((code, messages), (0, ""))
        self.assertTrue(output.startswith("my-pair.toml: no errors\n  heel\n"))
        self.assertIn("\n  forefoot\n", output)
        code, output, messages = self.call("pair", "my-pair.toml")
        self.assertEqual(code, 0, messages)
        for said in ["my pair: heel and forefoot on one rod", "heel, your readings", "forefoot, your readings",
                     "readings", "Caution: "]:
            self.assertIn(said, output)
        place = self.folder / re.search(r"results in (\S+)", messages).group(1)
        for kept in ["report.html", "summary.txt", "pair.json", "heel.toml", "forefoot.toml", "manifest.json"]:
            self.assertTrue((place / kept).is_file(), kept)
        # The same again is answered from its folder, as text and as JSON.
        again = self.call("pair", "my-pair.toml")
        self.assertEqual(again[:2], (0, (place / "summary.txt").read_text()))
        self.assertIn("already computed", again[2])
        values = json.loads(self.call("pair", "my-pair.toml", "--json", "--quiet")[1])
        self.assertEqual(values["pair"], "my pair")
        self.assertEqual([one["name"] for one in values["heel"]["readings"]], ["rebound"])
        self.assertEqual(values["comparison"]["from"], "heel")
        # The book has a row for each part, with what the pair settled.
        rows = self.book()
        self.assertEqual([(row["sheet"], row["part"], row["result"], row["made from this sheet"]) for row in rows],
                         [("my-pair.toml", part, str(place.relative_to(self.folder)), "yes") for part in ["heel", "forefoot"]])
        self.assertTrue(any(key.startswith("settled core ") and value for key, value in rows[0].items()), rows[0])
        # Both settled stacks are cases.
        for part in ["heel", "forefoot"]:
            self.assertEqual(self.call("check", str(place / f"{part}.toml"))[0], 0)

    def test_a_change_is_of_one_part_or_of_both(self):
        self.filled_in()
        changes = ["--set", 'heel.core.thickness="19 mm"', "--set", 'drop.height="380 mm"']
        code, output, messages = self.call("check", "my-pair.toml", *changes)
        self.assertEqual(code, 0, messages)
        self.assertIn("core core-foam 19.0 mm", output)
        self.assertEqual(output.count("falls 380 mm"), 2, output)
        code, output, messages = self.call("pair", "my-pair.toml", *changes)
        self.assertEqual(code, 0, messages)
        self.assertIn("heel: changed from what the sheet says: core.thickness = 19 mm", " ".join(output.split()))
        self.assertIn("results/my-pair-changed/1", messages)
        self.assertTrue(all("with heel.core.thickness = 19 mm" in row["made from this sheet"] for row in self.book()))
        self.assertIn("no-such", self.refused("pair", "my-pair.toml", "--set", 'heel.no-such.thickness="1 mm"'))

    def test_a_file_with_both_parts_is_no_single_sheet(self):
        self.filled_in()
        for command in [["run"], ["trial", "--player", "90 kg"], ["compare", "heel-drop"]]:
            with self.subTest(command=command[0]):
                text = self.refused(*command, "my-pair.toml")
                self.assertIn("the file holds both parts of a pair", text)
                self.assertIn("solemech pair my-pair.toml", text)

    def test_two_sheets_in_any_order(self):
        for part in ["heel", "forefoot"]:
            self.call("sheet", f"{part}.toml", "--part", part)
        code, output, messages = self.call("pair", "forefoot.toml", "heel.toml")
        self.assertEqual(code, 0, messages)
        self.assertIn("heel.toml is the heel and forefoot.toml the forefoot", output)
        self.assertIn("The heel has no reading to fit to: it is predicted", " ".join(output.split()))
        rows = {row["sheet"]: row for row in self.book()}
        for part in ["heel", "forefoot"]:
            self.assertEqual(rows[f"{part}.toml"]["result"], "results/pair-heel-forefoot/1")
            self.assertEqual(rows[f"{part}.toml"]["made from this sheet"], "yes")

    def test_what_cannot_be_a_pair(self):
        for part in ["heel", "forefoot"]:
            self.call("sheet", f"{part}.toml", "--part", part)
        (self.folder / "other-heel.toml").write_text((self.folder / "heel.toml").read_text())
        self.assertIn("both sheets are of a heel", self.refused("pair", "heel.toml", "other-heel.toml"))
        self.assertIn("holds one part, the heel, only", self.refused("pair", "heel.toml"))
        self.assertIn("solemech compare", self.refused("pair", "heel-drop", "forefoot-drop"))
        self.assertIn("was given twice", self.refused("pair", "heel.toml", "heel.toml"))
        self.assertIn("takes one file", self.refused("pair", "heel.toml", "forefoot.toml", "other-heel.toml"))
        self.assertIn("--pair cannot be combined", self.refused("sheet", "x.toml", "--pair", "--rig"))
        rod = (self.folder / "forefoot.toml").read_text() + '\n[drop]\nmass = "1.05 kg"\n'
        (self.folder / "forefoot.toml").write_text(rod)
        text = self.refused("pair", "heel.toml", "forefoot.toml")
        self.assertIn("different rods", text)
        self.assertIn(f"forefoot.toml:{rod.count(chr(10), 0, rod.index('[drop]')) + 1}:1: drop: ", text)

    def test_compare_fits_sheets_first(self):
        sheet = (SOURCE / "cases/sheets/bench-heel.toml").read_text()
        (self.folder / "my-heel.toml").write_text(sheet)
        code, output, messages = self.call("compare", "my-heel.toml", "heel-drop")
        self.assertEqual(code, 0, messages)
        self.assertIn("my-heel", output)
        self.assertEqual(len(list((self.folder / "results").glob("my-heel/*/settled.toml"))), 1)
        self.assertIn("already computed", self.call("compare", "my-heel.toml", "heel-drop")[2])


if __name__ == "__main__":
    unittest.main()
