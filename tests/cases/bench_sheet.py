#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A bench sheet through the real program: it settles, the same again says the same, the settled stack runs by itself.

usage: bench_sheet.py SHEET PROGRAM FOLDER
"""
import json
import pathlib
import re
import subprocess
import sys
import time

from real_program import RealProgram

sheet, program, folder = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
real = RealProgram(program, folder)
problems = []


def run(*arguments):
    return real.call("run", *arguments)


# Killed half way: what was computed by then is not computed again.
store = folder / "results/.runs"


def written():
    """Runs in the store; one that is being written may be empty or gone a moment later."""
    found = {}
    for path in store.iterdir() if store.is_dir() else ():
        try:
            if path.stat().st_size > 0:
                found[path.name] = path.stat().st_mtime_ns
        except FileNotFoundError:
            pass
    return found


begun = subprocess.Popen([program, "run", sheet, "-o", "first", "--quiet"], cwd=folder, stdout=subprocess.DEVNULL)
for _ in range(600):
    if begun.poll() is not None or len(written()) >= 8:
        break
    time.sleep(0.1)
begun.kill()
begun.wait()
kept = written()
if len(kept) < 8 or (folder / "first").exists():
    problems.append("a killed settling left no runs, or half a folder")
first = run(sheet, "-o", "first")
if any((store / name).stat().st_mtime_ns != when for name, when in kept.items() if (store / name).exists()):
    problems.append("runs of a killed settling were computed once more")
if run(sheet, "-o", "again") != first:
    problems.append("the same sheet does not give the same answer")
# The same sheet again is answered from its folder, another one is not.
manifest = (folder / "first/manifest.json").stat().st_mtime_ns
if run(sheet, "-o", "first") != first or (folder / "first/manifest.json").stat().st_mtime_ns != manifest:
    problems.append("the same sheet is not answered from its folder")
plan = subprocess.run([program, "plan", sheet, "--json", "--quiet"], capture_output=True, text=True, cwd=folder)
if not json.loads(plan.stdout)["readings"] or not json.loads(plan.stdout)["cautions"]:
    problems.append("the plan as JSON lacks its readings or its cautions")
if "nan" in first.lower():
    problems.append("a number is none")
if "disagree" in first:
    problems.append("the readings of the example contradict the model")
if not re.search(r"contact time .*agree \(held out\)", first):
    problems.append("the held-out reading does not agree")
page = (folder / "first/report.html").read_text(encoding="utf-8")
report = json.loads(re.search(r'id="report-data">(.*?)</script>', page, re.S).group(1))
if len(report["tables"]) < 2 or any(len(row) != len(table["columns"]) for table in report["tables"] for row in table["rows"]):
    problems.append("the page lacks its tables")
settled = json.loads(run("first/settled.toml", "--json"))["cases"][0]["runs"][0]["readings"]
rebound = re.search(r"settled with your readings\n  rebound +([0-9.]+) mm ±([0-9.]+)", first)
if abs(1e3 * settled["rebound_height"]["value"] - float(rebound[1])) > max(float(rebound[2]) / 4, 1):
    problems.append(f"the settled stack throws back {1e3 * settled['rebound_height']['value']:.0f} mm, the sheet said {rebound[1]}")
# What the sheet says of its own bench is what the settled stack says when it is run alone; other benches have bands too.
band = 1e3 * settled["rebound_height"]["band"]
if not 0.7 * float(rebound[2]) < band < 1.3 * float(rebound[2]) + 0.5:
    problems.append(f"run alone the settled stack is doubtful by {band:.1f} mm, the sheet said {rebound[2]}")
(folder / "other.toml").write_text('format = 1\nstack = "first/settled-stack.toml"\nrig = "guided-rod-1200"\n[drop]\nheight = "600 mm"\n')
higher = json.loads(run("other.toml", "--json"))["cases"][0]["runs"][0]["readings"]
if not (higher["peak_force"]["value"] > settled["peak_force"]["value"] and higher["peak_force"]["band"] > 0):
    problems.append("from higher up the settled stack has no greater force, or no band")
# Without its readings the sheet is predicted, with a wider band than the settled one. Hardness and density of a layer are
# readings too.
bare = re.sub(r"(?m)^(hardness|density) .*\n", "", pathlib.Path(sheet).read_text(encoding="utf-8").split("[[reading]]")[0])
(folder / "bare.toml").write_text(bare, encoding="utf-8")
guessed = run("bare.toml", "-o", "bare")
wide = re.search(r"\n  rebound +([0-9.]+) mm ±([0-9.]+)", guessed)
if "A prediction from assumed values" not in guessed or not wide or not float(wide[2]) > 1.5 * float(rebound[2]):
    problems.append(f"a sheet without readings is not predicted with a wide band:\n{guessed}")
# A trial of the sheet changes the stack that it settles on.
changed = subprocess.run([program, "trial", sheet, "--swap", "core = 15 mm", "--quiet", "--json"], capture_output=True, text=True, cwd=folder)
if changed.returncode != 0:
    problems.append(f"a trial of a sheet: {changed.stderr}")
else:
    now = json.loads(changed.stdout)["now"]["readings"]["rebound_height"]["value"]
    if abs(now - settled["rebound_height"]["value"]) > 1e-3:
        problems.append(f"a trial of the sheet starts from {1e3 * now:.1f} mm, its settled stack reads {1e3 * settled['rebound_height']['value']:.1f} mm")
    if not (folder / "results/trial-bench-heel/1/manifest.json").exists():
        problems.append("a trial of a sheet is not called after the sheet")
sys.exit("\n".join(problems) or 0)
