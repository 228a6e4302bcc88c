# SPDX-License-Identifier: Apache-2.0
"""Whole soles: a file to fill in passes, prepared ones are drawn in no time, every mistake is found with its place."""
import json
import math
import re
import time
import unittest
import xml.etree.ElementTree as ET

from program import SOURCE, ProgramTest

PREPARED = sorted(path.stem for path in (SOURCE / "cases/soles").glob("*.toml"))

SOLE = """format = 1
title = "a sole of no shoe"
[outline]
length = "290 mm"
medial = ["24 mm", "33 mm", "31 mm", "36 mm", "44 mm", "46 mm", "32 mm"]
lateral = ["24 mm", "34 mm", "36 mm", "43 mm", "50 mm", "47 mm", "30 mm"]
[bottom]
toe_spring_rise = "12 mm"
[[layer]]
name = "foam"
material = "eva-firm"
thickness = "20 mm"
[[layer]]
name = "plate"
material = "glass-nylon-plate"
thickness = "1.2 mm"
from = "20 mm"
to = "270 mm"
inset = "6 mm"
[[layer]]
name = "outsole"
material = "rubber-60a"
thickness = "3 mm"
"""
# An ellipse 300 by 100: a shape whose area every handbook has.
ELLIPSE = [(150 * math.cos(a * math.pi / 40), 50 * math.sin(a * math.pi / 40)) for a in range(80)]


class Draw(ProgramTest):
    def write(self, name, text):
        (self.folder / name).write_text(text)
        return name

    def sole(self, *changes):
        """The sole with each (old, new) exchanged."""
        text = SOLE
        for old, new in changes:
            self.assertIn(old, text)
            text = text.replace(old, new, 1)
        return self.write("sole.toml", text)

    def facts(self, name):
        code, output, messages = self.call("draw", name, "--json")
        self.assertEqual((code, messages), (0, ""))
        return json.loads(output)

    def drawing(self, name):
        return ET.parse(self.folder / name).getroot()

    def problem(self, place, reason, *changes):
        """The message about a changed sole begins with its place and says why; nothing is written."""
        for command in ["check", "draw"]:
            messages = self.refused(command, self.sole(*changes))
            self.assertRegex(messages, rf"sole\.toml:\d+:\d+: {re.escape(place)}: .*{reason}")
            self.assertEqual(messages.count("sole.toml:"), 1, messages)
        self.assertEqual([path.name for path in self.folder.glob("*.svg")], [])

    def test_prepared_soles_are_drawn_to_scale_within_a_second(self):
        self.assertEqual(len(PREPARED), 3)
        for name in PREPARED:
            started = time.monotonic()
            code, output, messages = self.call("draw", name)
            self.assertLess(time.monotonic() - started, 10)  # a second when the machine is free
            self.assertEqual((code, messages), (0, ""))
            self.assertIn("(invented)", output)
            root = self.drawing(f"{name}-drawing.svg")
            self.assertEqual(root.get("viewBox").split()[2] + "mm", root.get("width"))
            words = " ".join(text.text for text in root.iter("{http://www.w3.org/2000/svg}text"))
            for word in ["From above", "Along the middle line", "Across the heel", "ball line", "Invented"]:
                self.assertIn(word, words)

    def test_the_mass_is_area_times_thickness_times_density(self):
        facts = self.facts(self.sole(("inset = \"6 mm\"\n", ""), ("from = \"20 mm\"\nto = \"270 mm\"\n", "")))
        area = facts["area"]
        masses = {part["layer"]: part["mass"] for part in facts["parts"]}
        # Densities of materials/library: eva-firm 220, glass-nylon-plate 1350 kg/m3.
        self.assertAlmostEqual(masses["foam"], area * 0.020 * 220, delta=1e-5 * masses["foam"])
        self.assertAlmostEqual(masses["plate"], area * 0.0012 * 1350, delta=1e-5 * masses["plate"])
        self.assertAlmostEqual(facts["toe_spring"], 0.012, delta=1e-9)
        self.assertAlmostEqual(facts["height_heel"], 0.0242, delta=1e-9)
        self.assertAlmostEqual(facts["drop"], 0, delta=1e-9)

    def test_traces_of_points_and_of_curves_give_the_area_of_an_ellipse(self):
        rows = "x,y\n" + "".join(f"{x:.4f},{y:.4f}\n" for x, y in ELLIPSE)
        self.write("trace.csv", rows)
        # Four cubic curves of a circle are round to 3e-4 (handle length 0.5523, from memory).
        k, a, b = 0.5522847, 150, 50
        path = (f"M {a} 0 C {a} {k*b} {k*a} {b} 0 {b} S {-a} {k*b} {-a} 0 c 0 {-k*b} {a-k*a} {-b} {a} {-b} "
                f"S {a} {-k*b} {a} 0 Z")
        self.write("trace.svg", f'<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><!-- <path d="x"/> -->'
                                f'<g transform="translate(3,-4)"><path style="fill:none" d="{path}"/></g></svg>')
        half_widths = re.search(r"medial = .*\nlateral = .*\n", SOLE)[0]
        for entry in ['points = "trace.csv"', 'path = "trace.svg"']:
            facts = self.facts(self.sole((half_widths, entry + '\ntoe = "right"\n')))
            self.assertAlmostEqual(facts["area"], math.pi / 4 * 0.290 * 0.290 / 3, delta=3e-3 * facts["area"])

    def test_a_right_sole_is_the_mirror_image_and_a_turned_trace_the_same_sole(self):
        half_widths = re.search(r"medial = .*\nlateral = .*\n", SOLE)[0]
        skewed = [(x, y * (1.2 if y > 0 else 0.8)) for x, y in ELLIPSE]
        # Half ellipses: 50 mm on the inner side fit one of 60 mm (58 at this length), but not one of 40 mm.
        rows = "".join(f"{side} = [" + ", ".join(f'"{2 * most * math.sqrt(s * (1 - s)):.2f} mm"'
                                                 for s in [0.06, 0.16, 0.35, 0.50, 0.64, 0.74, 0.90]) + "]\n"
                       for side, most in [("medial", 50), ("lateral", 30)])

        def exit_code(points, *lines):
            self.write("trace.csv", "".join(f"{x:.4f},{y:.4f}\n" for x, y in points))
            name = self.sole((half_widths, "".join(line + "\n" for line in ['points = "trace.csv"', *lines])),
                             ('inset = "6 mm"\n', rows))
            return self.call("check", name)[0]

        self.assertEqual(exit_code(skewed, 'toe = "right"'), 2)
        self.assertEqual(exit_code(skewed, 'toe = "right"', 'foot = "right"'), 0)
        self.assertEqual(exit_code([(-y, x) for x, y in skewed], 'toe = "up"', 'foot = "right"'), 0)
        self.assertEqual(exit_code([(x, -y) for x, y in skewed], 'toe = "right"'), 0)
        self.assertEqual(exit_code([(-x, y) for x, y in skewed], 'toe = "left"'), 0)

    def test_a_file_to_fill_in_can_be_checked_and_drawn(self):
        code, output, messages = self.call("sheet", "--sole", "my-sole.toml")
        self.assertEqual((code, messages), (0, ""))
        for line in (self.folder / "my-sole.toml").read_text().splitlines():
            if re.match(r'\w+ += (\[?"[-\d]|true)', line):
                self.assertIn("INVENTED", line)
        self.assertEqual(self.call("check", "my-sole.toml")[0], 0)
        self.assertEqual(self.call("draw", "my-sole.toml")[0], 0)
        text = (self.folder / "my-sole.toml").read_text()
        for block in re.finditer(r"(?m)^# \[\[?(?:layer\.\w+|pod|groove)\]\]?.*\n(?:# (?:\w+ = |\[).*\n)+", text):
            freed = re.sub(r"(?m)^# ", "", block.group())
            self.write("freed.toml", text[:block.start()] + freed + text[block.end():])
            self.assertEqual(self.call("check", "freed.toml"), (0, self.call("check", "freed.toml")[1], ""), freed)
        self.refused("sheet", "--sole", "--rig", "other.toml")

    def test_a_file_of_somebody_else_is_never_drawn_over(self):
        name = self.sole()
        self.assertEqual(self.call("draw", name)[0], 0)
        self.assertEqual(self.call("draw", name)[0], 0)
        self.write("trace.svg", "<svg/>")
        self.assertIn("left alone", self.refused("draw", name, "-o", "trace.svg", code=4))
        self.assertEqual((self.folder / "trace.svg").read_text(), "<svg/>")
        self.refused("draw", name, "-o", "sole.toml")
        self.refused("draw")
        self.assertIn("Did you mean", self.refused("draw", "hall-plane"))

    def test_mistakes_of_the_outline(self):
        self.problem("outline.ball_medial", "the ball line ends 275 mm", ("[bottom]", 'ball_medial = "275 mm"\n[bottom]'))
        self.problem("outline.medial", "lists 6 values, but 7 are needed", ('"24 mm", "33 mm",', '"33 mm",'))
        self.problem("outline.medial", "crosses itself",
                     (re.search(r"medial = .*\nlateral = .*\n", SOLE)[0],
                      'medial = ["99 mm", "2 mm", "99 mm", "2 mm", "99 mm", "2 mm", "99 mm"]\nlateral = "2 mm"\n'),
                     ('inset = "6 mm"\n', ''))
        self.problem("outline.lateral", '"-34 mm" is out of range', ('"34 mm"', '"-34 mm"'))
        self.problem("outline.length", "has no unit", ('"290 mm"', '290'))

    def test_mistakes_of_layers_and_plates(self):
        self.problem("foam.thickness", '"0.1 mm" is out of range.*Allowed: 0.3 mm to 100 mm', ('"20 mm"', '"0.1 mm"'))
        self.problem("foam.thickness", '"-3 mm" is out of range',
                     ('"20 mm"', '["20 mm", "20 mm", "-3 mm", "20 mm", "20 mm"]'))
        self.problem("plate.lateral", r"reaches 4(\.\d+)? mm over the edge", ('inset = "6 mm"', 'medial = "20 mm"\nlateral = [' +
                     '"20 mm", "30 mm", "40 mm", "40 mm", "40 mm", "40 mm", "26 mm"]'))
        self.problem("plate.slot.width", "cut the layer through",
                     ('inset = "6 mm"', '[[layer.slot]]\nfrom = "100 mm"\nto = "150 mm"\nwidth = "110 mm"'))
        self.problem("foam.slot", "is not a plate",
                     ('"20 mm"\n', '"20 mm"\n[[layer.slot]]\nfrom = "100 mm"\nto = "150 mm"\nwidth = "10 mm"\n'))
        self.problem("plate.to", "from 20 mm to 300 mm", ('to = "270 mm"', 'to = "300 mm"'))
        self.problem("plate.filled_by", "there is no other layer", ('inset = "6 mm"', 'filled_by = "air"'))
        self.problem("foam.material", "there is no material", ('"eva-firm"', '"eva-frim"'))
        ply = '[[layer.ply]]\nmodulus_along = "120 GPa"\nmodulus_across = "8 GPa"\nshear_modulus = "4 GPa"\nthickness = "0.5 mm"\n'
        self.problem("plate.ply", "the plies are 0.5 mm thick together, the layer 1.2 mm", ('inset = "6 mm"\n', ply))

    def test_mistakes_of_pockets_tread_and_bottom(self):
        pocket = '[[layer.pocket]]\nx = "{}"\ny = "{}"\nlength = "50 mm"\nwidth = "40 mm"\nfloor = "{}"\nroof = "4 mm"\n'
        foam = '"20 mm"\n'
        self.problem("plate.pocket", "a pocket cuts the plate",
                     ('inset = "6 mm"\n', 'inset = "6 mm"\n' + pocket.format("50 mm", "0 mm", "0 mm").replace("4 mm", "0 mm")))
        self.problem("foam.pocket.x", "reaches out of its layer",
                     (foam, foam + pocket.format("50 mm", "25 mm", "4 mm")))
        self.problem("foam.pocket.floor", "leave 0 mm of room",
                     (foam, foam + pocket.format("50 mm", "0 mm", "17 mm")))
        self.problem("foam.pocket.unit.film", "is missing",
                     (foam, foam + pocket.format("50 mm", "0 mm", "4 mm") +
                      '[layer.pocket.unit]\nfilm_thickness = "0.5 mm"\n'))
        self.problem("groove.depth", "does not fit into an outsole of 3 mm",
                     ('"3 mm"\n', '"3 mm"\n[[groove]]\nx = "200 mm"\nlength = "4 mm"\nwidth = "70 mm"\ndepth = "3 mm"\n'))
        self.problem("bottom.rocker_radius", "does not rise by 12 mm",
                     ('"12 mm"', '"12 mm"\nrocker_radius = "2 m"'))
        self.problem("bottom.toe_spring_start", "starts 50 mm from the heel",
                     ('"12 mm"', '"12 mm"\ntoe_spring_start = "50 mm"'))

    def test_mistakes_of_traces(self):
        half_widths = re.search(r"medial = .*\nlateral = .*\n", SOLE)[0]

        def refused(name, text, reason, kind="path"):
            self.write(name, text)
            messages = self.refused("check", self.sole((half_widths, f'{kind} = "{name}"\n')))
            self.assertRegex(messages, reason)

        svg = '<svg xmlns="http://www.w3.org/2000/svg">{}</svg>'
        refused("a.svg", svg.format('<path d="M0 0 L 10 0 L 10 20"/>'), r"a\.svg:1:1: the path is not closed")
        refused("b.svg", svg.format("<rect/>"), "the drawing has no path")
        refused("c.svg", svg.format('<path d="M0 0 1 1 0 1Z"/><path d="M0 0 1 1 0 1Z"/>'), "several paths")
        refused("d.svg", svg.format('<path transform="rotate(20)" d="M0 0 1 1 0 1Z"/>'), "turned, mirrored or stretched")
        refused("e.svg", svg.format('<path d="M0 0 A 5 5 0 0 1 9 9 Z"/>'), "circular arcs")
        refused("f.svg", svg.format('<path d="M' + "0 0 " * 100_000 + 'Z"/>'), "more than 20000 points")
        refused("g.svg", svg.format('<path d="M' + "0 0 " * 1_000_000 + 'Z"/>'), "too large|larger than")
        refused("h.svg", "no drawing", "is not an SVG drawing")
        refused("i.svg", svg.format('<path d="M0 0 L 5'), "a tag of the drawing has no end")
        refused("a.csv", "1,2\n3,4\n", "2 different points", "points")
        refused("b.csv", "1,2\n3;4;5\n", r"b\.csv:2:1: this line does not hold two numbers", "points")
        refused("c.csv", "".join(f"{x},{y}\n" for x, y in ELLIPSE[:10] + ELLIPSE[20:30] + ELLIPSE[10:20] + ELLIPSE[30:]),
                "crosses itself", "points")
        for name in ["../trace.csv", "/etc/passwd"]:
            messages = self.refused("check", self.sole((half_widths, f'points = "{name}"\n')))
            self.assertIn("outline.points", messages)
            self.assertNotIn("root:", messages)


if __name__ == "__main__":
    unittest.main()
