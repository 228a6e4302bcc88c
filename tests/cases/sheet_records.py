#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Records of a sensor through a whole bench sheet: the curves of a stack of known stiffness, written as a sensor would,
settle an unknown foam on that stiffness. The truth is the foam's own number, which the sheet does not see.

usage: sheet_records.py PROGRAM FOLDER
"""
import bisect
import csv
import json
import pathlib
import shutil
import subprocess
import sys

program, folder = sys.argv[1], pathlib.Path(sys.argv[2])
shutil.rmtree(folder, ignore_errors=True)
folder.mkdir(parents=True)
problems = []
TRUE_STIFFNESS = 0.52e6  # Pa, shear modulus; the foam that a sheet starts from has 0.42e6
LAYER = '\n[[layer]]\nname = "core"\nmaterial = "{}"\nthickness = "20 mm"\n{}\n[plug]\nradius = "30 mm"\n'
TRUTH = LAYER.format("true-foam", "") + '\n[[material]]\nname = "true-foam"\nfrom = "eva-soft"\nshear_modulus = "0.52 MPa"\n'
PRESS = '[press]\npeak_displacement = "5 mm"\nduration = "1 s"\ndiameter = "40 mm"\n'
SHEET = 'format = 1\nrig = "guided-rod-1200"\n' + LAYER.format("unknown foam", 'density = "170 kg/m3 +- 9"') + """
[[reading]]
kind = "impact record"
file = "impact.csv"
[[reading]]
kind = "press loop"
file = "press.csv"
diameter = "40 mm"
duration = "1 s"
"""


def run(name, text):
    (folder / f"{name}.toml").write_text(text)
    done = subprocess.run([program, "run", f"{name}.toml", "-o", name, "--quiet"], capture_output=True, text=True, cwd=folder)
    if done.returncode != 0:
        sys.exit(f"{name}: exit code {done.returncode}\n{done.stderr}")


def curves(name, *columns):
    rows = list(csv.reader(open(folder / name / "data/curves.csv", encoding="utf-8")))
    places = [rows[0].index(column) for column in columns]
    return [[float(row[place]) for place in places] for row in rows[1:]]


def between(curve, x):
    """Straight between two rows of a curve, nothing outside of it."""
    i = bisect.bisect([row[0] for row in curve], x)
    if i in (0, len(curve)):
        return 0.0
    (a, low), (b, high) = curve[i - 1], curve[i]
    return low + (high - low) * (x - a) / (b - a)


run("drop", 'format = 1\nrig = "guided-rod-1200"\n' + TRUTH)
run("press", "format = 1\n" + PRESS + TRUTH)
hit = curves("drop", "time [s]", "force [N]")
(folder / "impact.csv").write_text("time [ms], force [N]\n" + "".join(  # 20 kHz, from 5 ms before first touch
    f"{k / 20 - 5:.2f}, {between(hit, (k / 20 - 5) / 1e3):.3f}\n" for k in range(500)))
(folder / "press.csv").write_text("force [N], compression [mm]\n" + "".join(
    f"{force:.3f}, {1e3 * abs(way):.4f}\n" for force, way in curves("press", "force [N]", "tup_displacement [m]")))
run("sheet", SHEET)
settled = json.loads((folder / "sheet/settled.json").read_text(encoding="utf-8"))
for reading in settled["readings"]:
    if reading["verdict"] == "disagree":
        problems.append(f"{reading['name']} disagrees with the stack that it was made on")
if len(settled["readings"]) < 6:
    problems.append("a record gave fewer readings than it holds")
stiffness = next(one for one in settled["parameters"] if one["name"] == "core stiffness")
if not stiffness["low"] < TRUE_STIFFNESS < stiffness["high"] or stiffness["doubt_left"] > 0.5:
    problems.append(f"stiffness {stiffness['low']:.3g} to {stiffness['high']:.3g} Pa, true {TRUE_STIFFNESS:.3g}")
sys.exit("\n".join(problems) or 0)
