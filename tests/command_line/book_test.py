# SPDX-License-Identifier: Apache-2.0
"""The book of a folder: what it lists, what it leaves alone, points by the user's own yardstick. Invented pairs."""
import base64
import csv
import hashlib
import json
import os
import re
import time
import unittest

from program import ProgramTest

SHEET = """format = 1
title = "invented {pair}"
rig = "guided-rod-1200"
pair = "{pair}"
part = "heel"

[[layer]]
name = "core"
material = "unknown foam"
thickness = "16.0 mm +- 0.5"

[[reading]]
kind = "rebound"
values = ["{a} mm", "{b} mm +- 3"]

[[reading]]
kind = "hardness"
layer = "core"
value = "42 AskerC +- 2"
"""

YARDSTICK = """format = 1
title = "club hall"

[[category]]
name = "springy"
reading = "rebound"
weight = 3
anchors = [["200 mm", 0], ["300 mm", 10]]

[[category]]
name = "soft"
reading = "hardness of core"
anchors = [["60 AskerC", 1], ["40 AskerC", 5]]

[[category]]
name = "light"
reading = "mass"
anchors = [["300 g", 10], ["400 g", 0]]
"""


class Book(ProgramTest):
    def sheet(self, name, pair="pair 07", a=240, b=260):
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(SHEET.format(pair=pair, a=a, b=b))
        return path

    def result(self, label, number, sheet_text, days=0):
        folder = self.folder / "results" / label / str(number)
        (folder / "data").mkdir(parents=True)
        (folder / "data/case.toml").write_text(sheet_text)
        (folder / "data/readings.csv").write_text('name,value,unit,error,meaning\n"rebound_height",0.2518,"m",0.003,"x, y"\n')
        (folder / "settled.json").write_text(json.dumps({"parameters": [
            {"name": "core returns", "value": 0.64, "low": 0.61, "high": 0.67, "doubt_left": 0.4}]}))
        # As earlier versions wrote it: it does not say which sheet it is of.
        (folder / "manifest.json").write_text(json.dumps({"program": "solemech", "files": {
            name: "" for name in ["summary.txt", "report.html", "data/results.h5", "data/resolved.txt"]}}))
        then = time.time() - days * 86400 - 60
        os.utime(folder / "manifest.json", (then, then))

    def rows(self):
        with open(self.folder / "book.csv", newline="", encoding="utf-8") as file:
            return {row["sheet"]: row for row in csv.DictReader(file)}

    def test_sheets_readings_settled_numbers_and_age(self):
        text = self.sheet("heel.toml").read_text()
        self.sheet("season/fore.toml", pair="pair 11")
        self.result("heel", 1, text, days=9)
        self.result("heel", 2, text, days=3)
        self.result("fore", 1, "older", days=1)
        (self.folder / "rig.toml").write_text('format = 1\nmass = "1 kg"\n')
        self.assertEqual(self.call("book", "."), (0, "2 sheets, 4 readings, 2 results: ./book.html and book.csv\n", ""))
        rows = self.rows()
        self.assertEqual(sorted(rows), ["heel.toml", "season/fore.toml"])
        heel = rows["heel.toml"]
        self.assertEqual((heel["pair"], heel["part"], heel["result"], heel["days old"], heel["made from this sheet"]),
                         ("pair 07", "heel", "results/heel/2", "3", "yes"))
        self.assertEqual(heel["measured rebound"], "240 mm; 260 mm +- 3")
        self.assertEqual(heel["measured hardness of core"], "42 AskerC +- 2")
        self.assertEqual(float(heel["model rebound_height [m]"]), 0.2518)
        self.assertEqual([heel["settled core returns" + end] for end in ["", " low", " high"]], ["0.64", "0.61", "0.67"])
        self.assertEqual(rows["season/fore.toml"]["made from this sheet"], "no")
        page = (self.folder / "book.html").read_text()
        self.assertIn("the sheet was changed since", page)
        self.assertIn('href="./results/heel/2/report.html"', page)
        self.assertIn("core returns 0.64 (0.61 to 0.67)", page)

    def test_results_are_found_whatever_the_sheet_is_called_and_never_those_of_another(self):
        names = ["my heel.toml", "myheel.toml", "my-heel.toml", "my-heel-changed.toml", "Heel ß [1].toml", "con.toml", "season/my heel.toml",
                 "trial-my-heel.toml", "a" * 120 + ".toml"]
        text = 'format = 1\ntitle = "number {}"\nrig = "guided-rod-1200"\nstack = "pair-07-heel"\n'
        for number, name in enumerate(names):
            (self.folder / name).parent.mkdir(exist_ok=True)
            (self.folder / name).write_text(text.format(number))
            code, _, messages = self.call("run", name, "--set", f"core.thickness={20 + number} mm")
            self.assertEqual(code, 0, messages)
            self.assertEqual(self.call("run", name)[0], 0)
        self.assertEqual(self.call("book", ".")[0], 0)
        rows = self.rows()
        self.assertEqual(sorted(rows), sorted(names))
        folders = {name: row["result"] for name, row in rows.items()}
        self.assertEqual(len({folder.rsplit("/", 1)[0] for folder in folders.values()}), len(names), folders)
        for number, name in enumerate(names):
            with self.subTest(name):
                self.assertTrue(folders[name].endswith("/1"), folders[name])
                self.assertEqual(rows[name]["made from this sheet"], "yes")
                self.assertIn(f'"number {number}"', (self.folder / folders[name] / "data/case.toml").read_text())
        # A prepared case of the same name is none of the sheet's.
        (self.folder / "heel-drop.toml").write_text(text.format("own"))
        self.assertEqual(self.call("run", "heel-drop")[0], 0)
        self.assertEqual(self.call("book", ".")[0], 0)
        self.assertEqual(self.rows()["heel-drop.toml"]["result"], "")
        # One that the command line changed is better than none, and says so.
        (self.folder / "tried.toml").write_text(text.format("tried"))
        self.assertEqual(self.call("run", "tried.toml", "--set", "core.thickness=21 mm")[0], 0)
        self.assertEqual(self.call("book", ".")[0], 0)
        self.assertEqual(self.rows()["tried.toml"]["made from this sheet"], "with core.thickness = 21 mm")
        # Earlier versions numbered changed runs with the others: those say what was changed.
        (self.folder / "early.toml").write_text(text.format("early"))
        self.result("early", 1, text.format("early") + "# changed: core.thickness = 19 mm\n")
        self.assertEqual(self.call("book", ".")[0], 0)
        self.assertEqual(self.rows()["early.toml"]["made from this sheet"], "with core.thickness = 19 mm")

    def test_copies_in_results_are_no_sheets_wherever_they_lie(self):
        (self.folder / "heel.toml").write_text('format = 1\nrig = "my-rod.toml"\nstack = "pair-07-heel"\n')
        (self.folder / "my-rod.toml").write_text('format = 1\n[drop]\nmass = "1.2 kg"\nheight = "400 mm"\ndiameter = "40 mm"\n')
        self.assertEqual(self.call("run", "heel.toml", "-o", "elsewhere")[0], 0)
        self.assertEqual(self.call("run", "heel.toml")[0], 0)
        self.assertEqual(self.call("book", ".")[0], 0)
        self.assertEqual(sorted(self.rows()), ["heel.toml"])

    def test_a_result_made_in_the_folder_of_its_sheet(self):
        (self.folder / "season").mkdir()
        (self.folder / "season/heel.toml").write_text('format = 1\nrig = "guided-rod-1200"\nstack = "pair-07-heel"\n')
        place = self.folder
        self.folder = place / "season"
        self.assertEqual(self.call("run", "heel.toml")[0], 0)
        self.folder = place
        self.assertEqual(self.call("book", ".")[0], 0)
        self.assertEqual(self.rows()["season/heel.toml"]["result"], "season/results/heel/1")

    def test_a_date_in_the_future_has_no_age(self):
        text = self.sheet("heel.toml").read_text()
        self.result("heel", 1, text, days=-5)
        self.assertEqual(self.call("book", ".")[0], 0)
        self.assertEqual(self.rows()["heel.toml"]["days old"], "")
        self.assertIn("dated in the future", (self.folder / "book.html").read_text())

    def test_points_of_an_own_yardstick_come_with_reasons(self):
        self.sheet("heel.toml")
        (self.folder / "yardstick.toml").write_text(YARDSTICK)
        self.assertEqual(self.call("book", ".")[0], 0)
        row = self.rows()["heel.toml"]
        # 250 of 200..300 mm: 5. 42 of 60..40: 1 + 4 * 18 / 20 = 4.6. Mean with weights 3 and 1.
        self.assertEqual((row["points springy"], row["points soft"], row["points light"], row["points in all"]),
                         ("5.00", "4.60", "", "4.90"))
        page = (self.folder / "book.html").read_text()
        self.assertIn("springy: rebound 250 mm, mean of 2 measured, lies between 200 mm (0) and 300 mm (10): 5.0", page)
        self.assertIn("light: no reading of mass", page)

    def test_readings_of_other_falls_are_never_averaged_and_a_bare_number_is_no_share(self):
        falls = "".join(f'\n[[reading]]\nkind = "rebound"\n{height}values = {values}\n'
                        for height, values in [("", '["321 mm", "312 mm", "318 mm"]'), ('height = "250 mm"\n', '["178 mm", "170 mm"]')])
        sheet = SHEET.split("\n[[reading]]")[0].format(pair="pair 07") + falls + '\n[[reading]]\nkind = "deceleration"\nvalue = "94"\n'
        (self.folder / "heel.toml").write_text(sheet)
        (self.folder / "yardstick.toml").write_text(
            "format = 1\n" + "".join(f'[[category]]\nname = "{name}"\nreading = "{reading}"\nanchors = [["{low}", 0], ["{high}", 10]]\n'
                                     for name, reading, low, high in [("springy", "rebound", "200 mm", "400 mm"),
                                                                      ("low", "rebound from 250 mm", "100 mm", "200 mm"),
                                                                      ("hard", "deceleration", "60", "160")]))
        self.assertEqual(self.call("book", ".")[0], 0)
        row = self.rows()["heel.toml"]
        self.assertEqual((row["measured rebound"], row["measured rebound from 250 mm"]), ("321 mm; 312 mm; 318 mm", "178 mm; 170 mm"))
        # 317 of 200..400 mm: 5.85; 174 of 100..200 mm: 7.4; 94 of 60..160: 3.4.
        self.assertEqual([row["points " + name] for name in ["springy", "low", "hard"]], ["5.85", "7.40", "3.40"])
        page = (self.folder / "book.html").read_text()
        self.assertIn("hard: deceleration 94, measured", page)
        self.assertNotIn("9400", page)
        # Only from elsewhere: that one, and it says so; from several: none is picked.
        (self.folder / "heel.toml").write_text(sheet.replace('kind = "rebound"\nvalues', 'kind = "rebound"\nheight = "450 mm"\nvalues'))
        self.assertEqual(self.call("book", ".")[0], 0)
        self.assertIn("rebound was read under several conditions; choose one of them: rebound from 450 mm, rebound from 250 mm",
                      (self.folder / "book.html").read_text())

    def test_slips_of_a_yardstick_are_named_at_once_with_their_place(self):
        self.sheet("heel.toml")
        (self.folder / "yardstick.toml").write_text(
            YARDSTICK.replace("weight = 3", "weight = -3").replace('"40 AskerC", 5', '"40 ShoreA", 5')
            .replace('reading = "mass"', 'raeding = "mass"'))
        messages = self.refused("book", ".")
        self.assertRegex(messages, r"yardstick.toml:\d+:\d+: weight: must be a positive number")
        self.assertRegex(messages, r"yardstick.toml:\d+:\d+: anchors: the anchors are of different kinds")
        self.assertRegex(messages, r"yardstick.toml:\d+:\d+: raeding: a category has no entry of this name")
        self.assertFalse((self.folder / "book.html").exists())

    def test_a_page_without_network_whose_policy_allows_only_its_own_script_and_style(self):
        self.sheet("heel.toml", pair="<script>alert(1)</script>")
        self.sheet("a b#c.toml", pair="=1+1")
        self.assertEqual(self.call("book", ".")[0], 0)
        page = (self.folder / "book.html").read_text()
        policy = re.search(r'Content-Security-Policy" content="([^"]+)"', page)[1]
        self.assertIn("default-src 'none'", policy)
        self.assertNotIn("unsafe", policy)
        for kind, tag in [("script", "script"), ("style", "style")]:
            body = re.findall(rf"<{tag}>(.*?)</{tag}>", page, re.DOTALL)
            self.assertEqual(len(body), 1)
            digest = base64.b64encode(hashlib.sha256(body[0].encode()).digest()).decode()
            self.assertIn(f"{kind}-src 'sha256-{digest}'", policy)
        self.assertIn("&lt;script&gt;alert(1)", page)
        self.assertIn('href="./a%20b%23c.toml"', page)
        self.assertEqual(self.rows()["a b#c.toml"]["pair"], "'=1+1")

    def test_files_of_others_and_everything_outside_stay(self):
        self.sheet("bench/heel.toml")
        outside = self.sheet("outside/other.toml")
        (self.folder / "bench/link").symlink_to(outside.parent)
        (self.folder / "bench/linked.toml").symlink_to(outside)
        (self.folder / "bench/results").symlink_to(outside.parent)
        before = {path: path.stat().st_mtime_ns for path in self.folder.rglob("*") if "bench" not in path.parts[-1]}
        self.assertEqual(self.call("book", "bench")[1][:8], "1 sheets")
        for path in ["outside/other.toml", "bench/heel.toml"]:
            self.assertEqual((self.folder / path).stat().st_mtime_ns, before[self.folder / path])
        self.assertEqual(sorted(path.name for path in (self.folder / "bench").iterdir()),
                         ["book.csv", "book.html", "heel.toml", "link", "linked.toml", "results"])
        self.assertEqual(self.call("book", "bench")[0], 0)  # its own files it may replace
        (self.folder / "bench/book.html").write_text("mine")
        self.assertIn("was not written by `solemech book`, so it was left alone", self.refused("book", "bench", code=4))
        self.assertEqual((self.folder / "bench/book.html").read_text(), "mine")

    def test_a_broken_sheet_is_listed_with_what_is_wrong(self):
        self.sheet("good.toml")
        (self.folder / "broken.toml").write_text("format = 1\nx = = 3\n")
        code, _, messages = self.call("book", ".")
        self.assertEqual(code, 0)
        self.assertIn("broken.toml:2:", messages)
        self.assertIn("broken.toml:2:", self.rows()["broken.toml"]["problem"])

    def test_nothing_to_list(self):
        self.assertIn("there is no folder 'nowhere'", self.refused("book", "nowhere"))
        self.assertIn("holds no sheets", self.refused("book", "."))
        self.assertIn("needs the folder with your sheets", self.refused("book"))

    def test_two_hundred_sheets(self):
        for i in range(200):
            text = self.sheet(f"pair-{i:03}.toml", pair=f"pair {i}", a=200 + i % 90, b=205 + i % 90).read_text()
            self.result(f"pair-{i:03}", 1, text)
        (self.folder / "yardstick.toml").write_text(YARDSTICK)
        self.assertEqual(self.call("book", ".")[0], 0)
        self.assertEqual(len(self.rows()), 200)


if __name__ == "__main__":
    unittest.main()
