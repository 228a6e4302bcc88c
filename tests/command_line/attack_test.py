# SPDX-License-Identifier: Apache-2.0
"""Files from a stranger: whatever names stand in a sheet, nothing outside its folder is read, shown or written,
and nothing is written through a link. Through the program itself; the stand-in solver gives made-up results."""
import hashlib
import json
import unittest

from program import SOURCE, ProgramTest

STACK = '''format = 1
[[layer]]
name = "core"
material = "eva-soft"
thickness = "16 mm"
'''
RIG = '''format = 1
[drop]
mass = "1.2 kg"
height = "400 mm"
diameter = "40 mm"
'''
HISTORY = "time [s], force [N]\n0, 0\n0.05, 900\n0.1, 0\n"
PRESS = '[press]\ndiameter = "40 mm"\nhistory = "{}"\n'
READING = '[[reading]]\nkind = "impact record"\nfile = "{}"\n'
UNKNOWN = '[[layer]]\nname = "core"\nmaterial = "unknown foam"\nthickness = "16 mm"\n'
LESSON = '[lesson]\nnumber = 1\n'

# One that every kind of reader would quote in a message, if it read it.
SECRET = 'password = hunter2 = "do not show"\n'


class Named(ProgramTest):
    """Names of files in sheets."""

    def setUp(self):
        super().setUp()
        self.home = self.folder / "home"
        self.bench = self.home / "bench"
        (self.bench / "inner").mkdir(parents=True)
        (self.home / "secret.toml").write_text(SECRET)
        (self.home / "secret.csv").write_text(SECRET)
        (self.home / "stack.toml").write_text(STACK)
        (self.home / "rig.toml").write_text(RIG)
        (self.home / "history.csv").write_text(HISTORY)

    def case(self, text, name="case.toml"):
        (self.bench / name).write_text("format = 1\n" + text)
        return str(self.bench / name)

    def kinds(self):
        """Each kind of named file: what to write, the ending, the text of a good one."""
        return [("stack", lambda name: f"stack = {json.dumps(name)}\nrig = \"guided-rod-1200\"\n", ".toml", STACK),
                ("rig", lambda name: f"rig = {json.dumps(name)}\n{STACK[11:]}", ".toml", RIG),
                ("history", lambda name: STACK[11:] + PRESS.format(name), ".csv", HISTORY),
                ("reading", lambda name: 'rig = "guided-rod-1200"\n' + UNKNOWN + READING.format(name), ".csv", HISTORY)]

    def snapshot(self):
        return {path: hashlib.sha256(path.read_bytes()).hexdigest()
                for path in self.home.rglob("*") if path.is_file() and not path.is_symlink()}

    def refused_without_a_word(self, case, commands=(("check",),)):
        before = self.snapshot()
        for command in commands:
            code, output, messages = self.call(command[0], case, *command[1:])
            self.assertEqual(code, 2, (command, output, messages))
            self.assertNotIn("hunter2", output + messages)
            self.assertNotIn("password", output + messages)
        self.assertEqual(self.snapshot(), before)
        self.assertFalse((self.folder / "results").exists())
        return messages

    def test_every_command_that_reads_cases(self):
        (self.bench / "link.toml").symlink_to(self.home / "secret.toml")
        (self.bench / "link.csv").symlink_to(self.home / "secret.csv")
        for kind, text, ending, good in self.kinds():
            for name in ["./../secret", "link"]:
                with self.subTest(kind=kind, name=name):
                    self.refused_without_a_word(self.case(text(name + ending)), [
                        ("check",), ("run",), ("trial", "--swap", "core = eva-firm"), ("plan",), ("learn",),
                        ("compare", "heel-drop")])

    def test_a_way_up_and_absolute_paths(self):
        for kind, text, ending, good in self.kinds():
            for target in ["secret", {"stack": "stack", "rig": "rig"}.get(kind, "history")]:
                for name in [f"../{target}", f"./../{target}", f"inner/../../{target}", f"inner/./.././../{target}",
                             f".//..//{target}", f"{self.home}/{target}", f"/{self.home}/bench/../{target}"]:
                    with self.subTest(kind=kind, name=name):
                        self.refused_without_a_word(self.case(text(name + ending)))
        for name in ["/etc/passwd", "/dev/zero", "/proc/self/environ", "../../../../../../etc/passwd", "/", "..", "."]:
            for kind, text, ending, good in self.kinds():
                with self.subTest(kind=kind, name=name):
                    self.assertNotIn("root:", self.refused_without_a_word(self.case(text(name))))

    def test_links_of_files_and_of_folders_on_the_way(self):
        (self.bench / "up").symlink_to(self.home)
        (self.bench / "inner/up").symlink_to("../..")
        for kind, text, ending, good in self.kinds():
            for target in ["secret", {"stack": "stack", "rig": "rig"}.get(kind, "history")]:
                link = self.bench / f"link-{kind}-{target}{ending}"
                link.symlink_to(self.home / (target + ending))
                (self.bench / f"chain-{kind}-{target}{ending}").symlink_to(link.name)
                for name in [link.name, f"chain-{kind}-{target}{ending}", f"up/{target}{ending}", f"inner/up/{target}{ending}"]:
                    with self.subTest(kind=kind, name=name):
                        self.assertIn("link", self.call("check", self.case(text(name)))[2])
                        self.refused_without_a_word(self.case(text(name)))
        # A prepared name does not lead to a link that lies beside the sheet either.
        (self.bench / "stacks").symlink_to(self.home)
        (self.home / "pair-07-heel.toml").write_text(SECRET)
        self.refused_without_a_word(self.case(self.kinds()[0][1]("pair-07-heel")))

    def test_what_is_no_file(self):
        import os
        os.mkfifo(self.bench / "pipe.toml")
        os.mkfifo(self.bench / "pipe.csv")
        (self.bench / "folder.toml").mkdir()
        (self.bench / "folder.csv").mkdir()
        for kind, text, ending, good in self.kinds():
            for name in ["pipe" + ending, "folder" + ending, "inner", "inner/", "missing" + ending, "x" * 300 + ending,
                         "d/" * 400 + "x" + ending, "\u0001" + ending, "con" + ending]:
                with self.subTest(kind=kind, name=name[:20]):
                    self.refused_without_a_word(self.case(text(name)))

    def test_an_empty_file_is_told(self):
        for kind, text, ending, good in self.kinds()[:2]:
            (self.bench / "empty.toml").write_text("")
            self.assertIn("the file is empty", self.refused("check", self.case(text("empty.toml"))))
        self.assertIn("the file is empty", self.refused("check", str(self.bench / "empty.toml")))

    def test_own_files_below_the_folder_are_copied_under_numbers_and_the_manifest_says_what_they_were(self):
        names = ["Rig.toml", "rig.toml", "inner/rig.toml", "inner/con.toml", "x" * 200 + ".toml", "ü ß [1].toml",
                 "-o.toml", "$(touch pwned).toml"]
        for number, name in enumerate(names, 1):
            with self.subTest(name):
                (self.bench / name).write_text(RIG.replace("400", str(400 + number)))
                case = self.case(self.kinds()[1][1](name), "case.toml")
                code, output, messages = self.call("run", case, "-o", f"out-{number}")
                self.assertEqual(code, 0, messages)
                folder = self.folder / f"out-{number}"
                manifest = json.loads((folder / "manifest.json").read_text())
                self.assertEqual([(one["file"], one["kind"], one["named"]) for one in manifest["inputs"]],
                                 [("inputs/1.toml", "rig", name)])
                self.assertEqual((folder / "inputs/1.toml").read_text(), (self.bench / name).read_text())
                files = {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}
                self.assertEqual(files - {"manifest.json"}, set(manifest["files"]))
                for file, checksum in manifest["files"].items():
                    self.assertEqual(hashlib.sha256((folder / file).read_bytes()).hexdigest(), checksum)
        self.assertFalse((self.folder / "pwned").exists())

    def test_a_finished_run_is_taken_up_from_its_copies(self):
        (self.bench / "my-rig.toml").write_text(RIG)
        (self.bench / "inner/my-stack.toml").write_text(STACK)
        case = self.case('rig = "my-rig.toml"\nstack = "inner/my-stack.toml"\n')
        self.assertEqual(self.call("run", case, "-o", "out")[0], 0)
        for path in [self.bench / "my-rig.toml", self.bench / "inner/my-stack.toml", self.bench / "case.toml"]:
            path.unlink()
        code, output, messages = self.call("compare", "out", "heel-drop")
        self.assertEqual(code, 0, messages)

    def test_a_folder_of_results_with_hostile_copies(self):
        (self.bench / "my-rig.toml").write_text(RIG)
        self.assertEqual(self.call("run", self.case(self.kinds()[1][1]("my-rig.toml")), "-o", "out")[0], 0)
        path = self.folder / "out/manifest.json"
        manifest = json.loads(path.read_text())
        for file in ["../home/secret.toml", str(self.home / "secret.toml"), "inputs/link.toml"]:
            manifest["inputs"][0]["file"] = file
            path.write_text(json.dumps(manifest))
            if file.endswith("link.toml"):
                (self.folder / "out" / file).symlink_to(self.home / "secret.toml")
            code, output, messages = self.call("compare", "out", "heel-drop")
            self.assertIn(code, [2, 4], messages)
            self.assertNotIn("hunter2", output + messages)


class Written(ProgramTest):
    """Places that are written to."""

    def outside(self):
        outside = self.folder / "outside"
        outside.mkdir(exist_ok=True)
        (outside / "mine.txt").write_text("mine")
        return outside

    def test_results_are_not_written_through_a_link(self):
        outside = self.outside()
        for link in ["results", "results/heel-drop"]:
            with self.subTest(link):
                path = self.folder / link
                path.parent.mkdir(exist_ok=True)
                path.symlink_to(outside)
                for command in [("run", "heel-drop")] + ([("compare", "heel-drop", "forefoot-drop"),
                                                          ("learn", "gas-or-foam"),
                                                          ("trial", "heel-drop", "--swap", "core = eva-firm")]
                                                         if link == "results" else []):
                    self.assertIn("is a link", self.refused_early(*command))
                self.assertEqual([path.name for path in outside.iterdir()], ["mine.txt"])
                path.unlink()
        (self.folder / "to").symlink_to(outside)
        self.assertIn("is a link", self.refused("run", "heel-drop", "-o", "to", code=4))

    def refused_early(self, *command):
        code, output, messages = self.call(*command)
        self.assertEqual(code, 4, messages)
        return messages

    def test_a_link_with_the_next_number_is_stepped_over(self):
        outside = self.outside()
        (self.folder / "results/heel-drop").mkdir(parents=True)
        (self.folder / "results/heel-drop/1").symlink_to(outside)
        code, output, messages = self.call("run", "heel-drop")
        self.assertIn("results in results/heel-drop/2 ", messages)
        self.assertEqual([path.name for path in outside.iterdir()], ["mine.txt"])

    def test_a_finished_run_behind_links_is_no_answer(self):
        self.call("run", "heel-drop", "-o", "elsewhere")
        (self.folder / "results/heel-drop").mkdir(parents=True)
        (self.folder / "results/heel-drop/1").symlink_to(self.folder / "elsewhere")
        self.assertIn("results in results/heel-drop/2 ", self.call("run", "heel-drop")[2])
        summary = self.folder / "results/heel-drop/2/summary.txt"
        (self.folder / "copy.txt").write_bytes(summary.read_bytes())
        summary.unlink()
        summary.symlink_to(self.folder / "copy.txt")
        self.assertIn("results in results/heel-drop/3 ", self.call("run", "heel-drop")[2])

    def test_a_sheet_is_not_written_through_a_link(self):
        outside = self.outside()
        (self.folder / "sheet.toml").symlink_to(outside / "mine.txt")
        (self.folder / "new.toml").symlink_to(outside / "new.txt")
        for name in ["sheet.toml", "new.toml"]:
            self.refused("sheet", name, code=4)
        self.assertEqual([path.name for path in outside.iterdir()], ["mine.txt"])

    def test_the_book_writes_and_reads_through_no_link(self):
        outside = self.outside()
        bench = self.folder / "bench"
        bench.mkdir()
        (bench / "heel.toml").write_text('format = 1\nrig = "guided-rod-1200"\nstack = "pair-07-heel"\n')
        (outside / "secret.toml").write_text(SECRET)
        (bench / "yardstick.toml").symlink_to(outside / "secret.toml")
        code, output, messages = self.call("book", "bench")
        self.assertNotIn("hunter2", output + messages)
        self.assertIn("link", messages)
        (bench / "yardstick.toml").unlink()
        for name in ["book.html", "book.csv", ".book.html.new", ".book.csv.new"]:
            (bench / name).symlink_to(outside / "mine.txt")
        self.call("book", "bench")
        self.assertEqual((outside / "mine.txt").read_text(), "mine")


class Shown(ProgramTest):
    """Characters that a terminal would obey."""

    ESCAPES = ["\\u001b[2J", "\\u001b]0;owned\\u0007", "\\u009b31m", "\\u0008\\u0008", "\\u202e", "\\u2066", "\\u007f"]

    def clean(self, text, *where):
        for character in text:
            code = ord(character)
            self.assertFalse((code < 32 and character not in "\n\t") or 127 <= code < 160 or 0x202a <= code <= 0x202e
                             or 0x2066 <= code <= 0x2069, (hex(code), where, text[:400]))

    def test_texts_of_sheets(self):
        sheet = ('format = 1\ntitle = "{title}"\nnote = "{note}"\nquestion = "{question}"\nrig = "guided-rod-1200"\n'
                 '[pair]\nlabel = "{label}"\npart = "heel"\n[[layer]]\nname = "{name}"\nmaterial = "{material}"\n'
                 'thickness = "16 mm"\n')
        good = {"title": "t", "note": "n", "question": "q?", "label": "pair", "name": "core", "material": "eva-soft"}
        lesson = (SOURCE / "cases/learn/foam-density.toml").read_text()
        for escape in self.ESCAPES:
            for entry in good:
                (self.folder / "sheet.toml").write_text(sheet.format(**{**good, entry: "x" + escape + "y"}))
                for command in ["check", "run", "plan"]:
                    code, output, messages = self.call(command, "sheet.toml")
                    self.assertEqual(code, 2, (entry, messages))
                    self.clean(output + messages, command, entry)
                code, output, messages = self.call("book", ".")
                self.clean(output + messages, entry)
            (self.folder / "lesson.toml").write_text(lesson.replace('title = "', 'title = "' + escape, 1))
            code, output, messages = self.call("learn", "lesson.toml", "--guess", "1")
            self.assertEqual(code, 2, messages)
            self.clean(output + messages)
            (self.folder / "yardstick.toml").write_text(
                'format = 1\n[[category]]\nname = "' + escape + '"\nreading = "rebound"\nanchors = [["1 mm", 1], ["2 mm", 2]]\n')
            self.clean("".join(map(str, self.call("book", ".")[1:])))
            (self.folder / "yardstick.toml").unlink()

    def test_the_command_line_and_names_of_files(self):
        for raw in ["\x1b[2J", "\x1b]0;owned\x07", "\x9b31m", "\u202e", "\x08", "\n"]:
            for command in [("run", "heel-drop", "--set", f"core.thickness={raw}"), ("run", "heel-drop", "--set", f"{raw}=1 mm"),
                            ("run", f"{raw}.toml"), ("check", raw), ("learn", raw), ("cases", raw), (raw,), (f"--{raw}",),
                            ("trial", "heel-drop", "--swap", f"core = {raw}"), ("sheet", f"{raw}.toml"), ("book", raw),
                            ("compare", raw, "heel-drop"), ("run", "heel-drop", "-o", raw)]:
                code, output, messages = self.call(*command)
                self.assertEqual(code, 2, (command, messages))
                self.clean(output + messages, command)
        # As TOML writes it, the option is taken for what it says.
        code, output, messages = self.call("run", "heel-drop", "--set", 'title="a\\u001b[2Jb"')
        self.clean(output + messages)
        (self.folder / "x\x1b[2Jy.toml").write_text('format = 1\nx = = 3\n')
        self.clean("".join(map(str, self.call("book", ".")[1:])))

    def test_the_heading_of_a_record(self):
        (self.folder / "impact.csv").write_text("time [ms],\x1b[2J\u009b31m,force [N]\n" + "".join(
            f"{0.1 * i},0,{max(0, 600 * (1 - ((i - 90) / 50) ** 2))}\n" for i in range(200)))
        (self.folder / "sheet.toml").write_text('format = 1\nrig = "guided-rod-1200"\n' + UNKNOWN + READING.format("impact.csv"))
        code, output, messages = self.call("check", "sheet.toml")
        self.assertIn("is not used", output + messages)
        self.clean(output + messages)

    def test_stored_texts(self):
        self.assertEqual(self.call("run", "heel-drop")[0], 0)
        folder = self.folder / "results/heel-drop/1"
        summary = b"\x1b[2J\x1b]0;owned\x07" + (folder / "summary.txt").read_bytes()
        (folder / "summary.txt").write_bytes(summary)
        manifest = json.loads((folder / "manifest.json").read_text())
        manifest["files"]["summary.txt"] = hashlib.sha256(summary).hexdigest()
        (folder / "manifest.json").write_text(json.dumps(manifest))
        code, output, messages = self.call("run", "heel-drop")
        self.assertIn("already computed", messages)
        self.clean(output + messages)

    def test_a_key_of_fifty_thousand_parts(self):
        for key in [".".join(["a"] * 50_000), ".".join(['"a"'] * 50_000), " . ".join(["a"] * 50_000)]:
            for text in [f"{key} = 1\n", f"[{key}]\nx = 1\n", f"[[{key}]]\nx = 1\n", f"x = {{ {key} = 1 }}\n",
                         f"[change]\n{key} = 1\n"]:
                (self.folder / "deep.toml").write_text("format = 1\n" + text)
                for command in ["check", "run", "book"]:
                    code, output, messages = self.call(command, "." if command == "book" else "deep.toml")
                    self.assertIn(code, [0, 2] if command == "book" else [2], messages[:300])
                self.assertLess(len(messages), 3000)
        for setting in [".".join(["a"] * 50_000) + "=1", "x={" + ".".join(["a"] * 50_000) + "=1}", "a=" + "[" * 50_000,
                        "." * 50_000 + "=1"]:
            self.assertEqual(self.call("run", "heel-drop", "--set", setting)[0], 2)

    def test_empty_names(self):
        for name, material in [("", "eva-soft"), (" ", "eva-soft"), ("core", ""), ("core", " ")]:
            (self.folder / "sheet.toml").write_text(f'format = 1\nrig = "guided-rod-1200"\n[[layer]]\nname = "{name}"\n'
                                                    f'material = "{material}"\nthickness = "16 mm"\n')
            self.refused("check", "sheet.toml")
        (self.folder / "sheet.toml").write_text('format = 1\nrig = "guided-rod-1200"\n[[layer]]\nname = "core"\n'
                                                'material = "eva-soft"\nthickness = "16 mm"\n[[material]]\nname = ""\nfrom = "eva-soft"\n')
        self.assertIn("is empty", self.refused("check", "sheet.toml"))


if __name__ == "__main__":
    unittest.main()
