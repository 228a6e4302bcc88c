#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Trends that theory, findings of others or practice ask of the demo stacks, through the real program.

usage: trends.py PROGRAM FOLDER
"""
import json
import shutil
import subprocess
import sys

program, folder = sys.argv[1:]
problems = []
n_runs = 0


def readings(case, *changes):
    """Readings of the single run of a case with changes, by name."""
    global n_runs
    n_runs += 1
    arguments = [part for change in changes for part in ("--set", change)]
    done = subprocess.run([program, "run", case, *arguments, "--json", "--quiet", "-o", f"{folder}/{n_runs}"],
                          capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{case} {changes}: exit code {done.returncode}\n{done.stderr}")
    run = json.loads(done.stdout)["cases"][0]["runs"][0]
    return {name: reading["value"] for name, reading in run["readings"].items()}


def expect(what, source, holds, shown):
    print(f"{'holds ' if holds else 'FAILS '} {what}: {shown}  ({source})")
    if not holds:
        problems.append(f"{what}: {shown}")


shutil.rmtree(folder, ignore_errors=True)
heel, forefoot, dead = readings("heel-drop"), readings("forefoot-drop"), readings("punctured-unit")

ratio = forefoot["rebound_by_height"] / heel["rebound_by_height"]
expect("plate-and-unit forefoot over foam heel, rebound", "the model over all foams of the library: 0.95 to 1.47",
       0.95 <= ratio <= 1.47, f"{ratio:.3f}")
ratio = dead["rebound_by_height"] / heel["rebound_by_height"]
expect("a dead unit still rebounds about like the foam heel", "lumped models: about 1.0 by height, 1.2 by speed",
       0.9 <= ratio <= 1.25, f"{ratio:.3f}")
expect("a dead unit hits harder", "burst units in the literature: direction only",
       dead["peak_force"] > 1.3 * forefoot["peak_force"], f"{dead['peak_force']:.0f} N, {forefoot['peak_force']:.0f} N")

other_plate = readings("forefoot-drop", "plate.material=tpu-plate")
change = abs(other_plate["rebound_by_height"] - forefoot["rebound_by_height"])
expect("a thirty times softer plate hardly shows on a drop", "own theory: under two points", change < 0.02,
       f"{100 * change:.2f} points")

small = readings("impact-forefoot", "drop.energy=5 J")
large = readings("impact-forefoot", "drop.energy=5 J", "unit.outside_volume=10 cm3")
expect("volume outside the plug softens the unit", "gas law: more gas, flatter spring",
       large["peak_force"] < small["peak_force"] and large["greatest_compression"] > small["greatest_compression"],
       f"{small['peak_force']:.0f} to {large['peak_force']:.0f} N")

soft = readings("forefoot-drop", "unit.gauge_pressure=100 kPa")
expect("a softer unit rebounds alike but bottoms sooner", "gas column closed form",
       abs(soft["rebound_by_height"] - forefoot["rebound_by_height"]) < 0.03
       and soft["bottoming_margin"] < forefoot["bottoming_margin"],
       f"{100 * soft['rebound_by_height']:.1f} and {100 * forefoot['rebound_by_height']:.1f} %, "
       f"reserve {100 * soft['bottoming_margin']:.0f} and {100 * forefoot['bottoming_margin']:.0f} %")

adiabatic = readings("forefoot-drop", "unit.heat_time=adiabatic")
lossy = readings("forefoot-drop", "unit.heat_time=10 ms")
expect("gas that trades heat during the blow returns less", "exchange at the pace of the blow loses most",
       lossy["rebound_by_height"] < adiabatic["rebound_by_height"] - 0.02,
       f"{100 * adiabatic['rebound_by_height']:.1f} to {100 * lossy['rebound_by_height']:.1f} %")

cold, warm = (readings("heel-drop", f"surroundings.temperature={t}") for t in ("-20 C", "50 C"))
expect("cold foam hits harder", "Dib et al., Clin J Sport Med 15 (2005) 172: sign",
       cold["peak_deceleration"] > warm["peak_deceleration"],
       f"{cold['peak_deceleration']:.0f} g at -20 C, {warm['peak_deceleration']:.0f} g at 50 C")

cut, wide = (readings("plug-edge", f"plug.radius={r}") for r in ("20 mm", "45 mm"))
ratio = cut["greatest_compression"] / wide["greatest_compression"]
expect("a plug cut at the striker's own size sinks further", "convergence study on another foam: 22 %",
       1.15 <= ratio <= 1.30, f"{100 * (ratio - 1):.0f} %")

returns = [readings("heel-drop", f"core.material={foam}")["rebound_by_height"]
           for foam in ("eva-soft", "tpu-bead", "peba-supercritical")]
expect("EVA, bead TPU, PEBA return more in this order", "Hoogkamer et al., Sports Med 48 (2018) 1009: 65, 76, 87 %",
       returns == sorted(returns), ", ".join(f"{100 * r:.1f} %" for r in returns))

pair = readings("worn-lug", "wear.known_hours=100 h", "wear.known_depth=1 mm", "wear.steps_per_minute=30")
closed_form = 1.0 / (0.2 * 100 * 60 * 30 * 5e-3)  # mm over N/mm2 and m: mm3/(N m)
expect("a worn pair tells the wear of its court", "Archard: depth = k p s; a tenth for walls that widen the face",
       abs(1e9 * pair["pair_coefficient"] / closed_form - 1) < 0.1, f"{1e9 * pair['pair_coefficient']:.5f} and {closed_form:.5f} mm3/(N m)")
heavy = readings("worn-lug", "slide.player_mass=100 kg")
expect("a heavier player wears a tread down sooner", "Archard: way goes with one over pressure",
       abs(heavy["life_steps"] / pair["life_steps"] * 100 / 80 - 1) < 0.03, f"{heavy['life_steps'] / pair['life_steps']:.3f} of the life")

shutil.rmtree(folder, ignore_errors=True)
sys.exit("\n".join(problems) if problems else 0)
