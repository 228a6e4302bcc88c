#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""One bad case never costs the others, through the real program: batches, series, comparisons and trials.

usage: one_bad_case.py PROGRAM FOLDER

The bad case is a foam of 20 mm squeezed to a seventeenth: that leaves less room than its polymer fills, so the run stops.
What finished is written and shown, what failed is named with its reason, and the exit code is 3.
"""
import json
import shutil
import subprocess
import sys
from pathlib import Path

program, folder = sys.argv[1], Path(sys.argv[2])
shutil.rmtree(folder, ignore_errors=True)
folder.mkdir(parents=True)
problems = []

PRESS = """format = 1
title = "{title}"
accuracy = "3 %"

[press]
peak_displacement = "{peak}"
duration = "1 s"
diameter = "40 mm"

[[layer]]
name = "foam"
material = "eva-soft"
thickness = "20 mm"
{extra}"""


def sheet(name, peak, extra=""):
    (folder / f"{name}.toml").write_text(PRESS.format(title=name, peak=peak, extra=extra))


def check(holds, what):
    if not holds:
        problems.append(what)


def call(*arguments):
    done = subprocess.run([program, *arguments], cwd=folder, capture_output=True, text=True, timeout=250)
    what = " ".join(arguments)
    check(done.returncode == 3, f"{what}: exit code {done.returncode}\n{done.stderr}")
    check("stopped early: " in done.stderr, f"{what}: does not say what failed\n{done.stderr}")
    check("fault of the program" not in done.stderr, f"{what}: {done.stderr}")
    return what, done


sheet("good", "2 mm")
sheet("other", "3 mm")
sheet("bad", "18.8 mm")
sheet("ladder", "2 mm", '[[series]]\nvary = "press.peak_displacement"\nvalues = ["2 mm", "18.8 mm", "3 mm"]\n')

what, done = call("run", "good.toml", "bad.toml", "other.toml")
for name in ("good", "other"):
    check((folder / "results" / name / "1" / "report.html").exists(), f"{what}: {name} was not written")
    check(name in done.stdout, f"{what}: {name} is not in the answer")
check("STOPPED EARLY" in done.stdout, f"{what}: the answer does not list what failed")
again = subprocess.run([program, "run", "good.toml"], cwd=folder, capture_output=True, text=True)
check(again.returncode == 0 and "already computed" in again.stderr, "a finished run of a batch does not answer later")

what, done = call("run", "ladder.toml", "--json")
runs = json.loads(done.stdout)["cases"][0]["runs"]
check([run["complete"] for run in runs] == [True, False, True], f"{what}: {[run['complete'] for run in runs]}")
check(runs[1]["stop_reason"] != "", f"{what}: no reason")

what, done = call("compare", "good.toml", "bad.toml", "other.toml")
check("other" in done.stdout, f"{what}: the pair that finished is not compared")
check(list(folder.glob("results/*/*/data/shares.csv")), f"{what}: the finished comparison was not written")
what, done = call("compare", "good.toml", "bad.toml")
check("good" in done.stdout, f"{what}: the finished run is not shown")

what, done = call("trial", "good.toml", "--range", "press.peak_displacement=2..18.8 mm by 8.4 mm")
check(list(folder.glob("results/trial-good/*/report.html")), f"{what}: nothing was written")

if problems:
    sys.exit("\n".join(problems))
print("what finished was kept, what failed was named")
