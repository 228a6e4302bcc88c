#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Which way common changes go, through the real program, and whether a stack bottoms where a trial says so.

usage: trial_signs.py PROGRAM FOLDER

Only signs are asked for. Sizes from a column model (rough, +-20 %) stand beside them for the reader; where this model
gives another size, the reason is in the comment.
"""
import json
import shutil
import subprocess
import sys
from pathlib import Path

program, folder = sys.argv[1:]
problems = []
shutil.rmtree(folder, ignore_errors=True)
Path(folder).mkdir(parents=True)


def ask(command, *arguments):
    done = subprocess.run([program, command, *arguments, "--json", "--quiet"], cwd=folder, capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{command} {arguments}: exit code {done.returncode}\n{done.stderr}")
    return json.loads(done.stdout)


def change(answer, reading):
    """Relative change of a reading."""
    return answer["changed"]["readings"][reading]["value"] / answer["now"]["readings"][reading]["value"] - 1


def points(answer, reading):
    return 100 * (answer["changed"]["readings"][reading]["value"] - answer["now"]["readings"][reading]["value"])


def expect(what, source, holds, shown):
    print(f"{'holds ' if holds else 'FAILS '} {what}: {shown}  ({source})")
    if not holds:
        problems.append(f"{what}: {shown}")


# Column model: force -7 to -11 %, rebound 0 to +1 point. The insert squeezes less than the core, where slipping
# branches lose a greater share, so that the rebound goes the other way, inside what can be read as real.
eva = ask("trial", "heel-drop", "--swap", "insert = eva-insert 3 mm")
expect("3 mm of foam more land softer", "common practice, no source; a longer spring is softer",
       change(eva, "peak_force") < -0.03, f"{100 * change(eva, 'peak_force'):+.1f} %")
expect("3 mm of foam more are squeezed further", "a longer spring is softer",
       change(eva, "greatest_compression") > 0.03, f"{100 * change(eva, 'greatest_compression'):+.1f} %")
expect("3 mm of EVA on EVA leave the rebound", "common practice, no source",
       abs(points(eva, "rebound_by_height")) < 2, f"{points(eva, 'rebound_by_height'):+.1f} points")

# Column model: force +5 to +15 %, rebound 0 to +2 points. Here the sheet brings the whole plug into play, 3.4 times
# the area of the puck, which a column takes for a part of it: the force goes further up.
pp = ask("trial", "heel-drop", "--swap", "insert = pp-semirigid 2 mm", "--player", "95 kg")
expect("a semirigid sheet under the puck lands harder", "common practice, no source; more foam bears the load",
       change(pp, "peak_force") > 0.03, f"{100 * change(pp, 'peak_force'):+.1f} %")
expect("a semirigid sheet is squeezed in less far", "more foam bears the load",
       change(pp, "greatest_compression") < -0.03, f"{100 * change(pp, 'greatest_compression'):+.1f} %")
expect("a semirigid sheet leaves the rebound", "common practice, no source",
       abs(points(pp, "rebound_by_height")) < 2, f"{points(pp, 'rebound_by_height'):+.1f} points")
soft = ask("trial", "heel-drop", "--swap", "insert = pp-semirigid 2 mm + eva-soft 2 mm")
expect("foam under the sheet takes some of it back", "a longer spring is softer",
       change(soft, "peak_force") < change(pp, "peak_force"), f"{100 * change(soft, 'peak_force'):+.1f} %")

# More gas at a higher pressure: stiffer against the same blow, more travel left (gas spring, from memory).
unit = ask("trial", "forefoot-drop", "--range", "gauge_pressure=80..200 kPa by 60")
left = [point["travel_left"] for point in unit["range"]["points"]]
depth = [point["compression"] for point in unit["range"]["points"]]
expect("more pressure, less compression", "gas spring", depth == sorted(depth, reverse=True), depth)
expect("more pressure, more travel left", "gas spring", left == sorted(left), left)

# Where it bottoms: the search tolerance is 2 %, so 3 % to either side must tell.
for name in ("now", "changed"):
    limit = ask("trial", "forefoot-drop", "--swap", "unit = 10 mm")[name]["bottoming_energy"]
    expect("the unit bottoms within the search", "its travel ends", limit["answer"] == "bottoms at", limit)
    for factor, bottoms in ((0.97, False), (1.03, True)):
        thickness = ("--set", "unit.thickness=10 mm") if name == "changed" else ()
        run = ask("run", "forefoot-drop", "--set", f"drop.energy={factor * limit['load']:.6g} J", *thickness)
        margin = run["cases"][0]["runs"][0]["readings"]["bottoming_margin"]["value"]
        expect(f"{name}, at {factor} of the energy named", "the trial itself", (margin <= 0) == bottoms, margin)

sys.exit("\n".join(problems) or 0)
