#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Runs a prepared case and holds its readings against the ranges in its [[expect]] blocks.

A reading outside its range must be named in `outside` with the reason, and a reading named there must be outside:
neither a silent miss nor a stale excuse passes. The energy account must close, no run may end early, and the report page
of the case must hold what the readings say.
usage: expected_ranges.py CASE PROGRAM FOLDER
"""
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tomllib

UNITS = {"mm3": 1e-9, "%": 1e-2, "mm": 1e-3, "ms": 1e-3, "N": 1.0, "kN": 1e3, "kPa": 1e3, "MPa": 1e6, "m": 1.0, "s": 1.0}
OPEN_ACCOUNT = 0.005  # of the drop energy: the alarm of the program itself
MOST_BYTES = 3_000_000  # of a report page
LEAST_FRAMES = 25  # to move smoothly
META = ("label", "source", "outside")


def in_si(value):
    if not isinstance(value, str):
        return float(value)
    number, unit = re.fullmatch(r"\s*([-+0-9.eE]+)\s*(\S*)\s*", value).groups()
    return float(number) * (UNITS[unit] if unit else 1.0)


def check_run(run, blocks):
    problems = []
    label = run["label"]
    if not run["complete"]:
        return [f"{label}: stopped early"]
    readings = {name: reading["value"] for name, reading in run["readings"].items()}
    for block in blocks:
        if "label" in block and not (label == block["label"] or label.endswith("-" + block["label"])):
            continue
        excused = {part.split(":")[0].strip() for part in block.get("outside", "").split(";") if ":" in part}
        for name, limits in block.items():
            if name in META:
                continue
            low, high = map(in_si, limits)
            value = readings[name]
            inside = low <= value <= high
            print(f"  {label:32} {name:24} {value:12.5g}  [{low:.5g}, {high:.5g}]"
                  f"  {'' if inside else 'outside'}{' (reason given)' if name in excused else ''}")
            if inside and name in excused:
                problems.append(f"{label}: {name} = {value:.5g} is inside its range; take it out of 'outside'")
            if not inside and name not in excused:
                problems.append(f"{label}: {name} = {value:.5g} is outside [{low:.5g}, {high:.5g}] without a reason")
    return problems


def refuse(word):
    raise ValueError(f"{word} is no JSON")


def numbers_in(value):
    if isinstance(value, bool):
        return
    if isinstance(value, (int, float)):
        yield value
    elif isinstance(value, (list, dict)):
        for entry in value.values() if isinstance(value, dict) else value:
            yield from numbers_in(entry)


def check_report(path, runs):
    """The page of the case: strict JSON, every block there, shares that add up, a size that mails take."""
    text = path.read_text(encoding="utf-8")
    page = json.loads(re.search(r'id="report-data">(.*?)</script>', text, re.S).group(1), parse_constant=refuse)
    problems = []
    if len(text) > MOST_BYTES:
        problems.append(f"report.html takes {len(text) / 1e6:.1f} MB")
    if len(page["headline"]) < 3 or not page["sentence"].endswith(".") or not page["story"]:
        problems.append("report.html lacks its sentence, its three numbers or its story")
    if [run["label"] for run in page["runs"]] != [run["label"] for run in runs]:
        problems.append("report.html shows other runs")
    for shown, run in zip(page["runs"], runs):
        values = {reading["name"]: reading["value"] for reading in shown["readings"]}
        for name in ("peak_force", "greatest_compression"):
            scale = 1e3 if name == "greatest_compression" else 1
            if abs(values[name] - scale * run["readings"][name]["value"]) > 1e-6 * abs(values[name]):
                problems.append(f"report.html, {shown['label']}: {name} differs from the reading")
        energy = shown["energy"]
        total = sum(share["energy"] for share in energy["shares"])
        if abs(total / energy["input"] - 1) > 0.01 or abs(total / energy["input"] - energy["accounted"]) > 1e-4:
            problems.append(f"report.html, {shown['label']}: the shares add up to {total / energy['input']:.4f}")
        for name in ("section", "curves", "captions"):
            if not shown[name]:
                problems.append(f"report.html, {shown['label']}: no {name}")
        if not all(abs(number) < 1e12 for number in numbers_in(shown)):
            problems.append(f"report.html, {shown['label']}: a number out of all bounds")
        words = " ".join([page["sentence"], *page["story"], *shown["captions"].values()])
        if re.search(r"\bnan\b|\binf\b|\{\}", words):
            problems.append(f"report.html, {shown['label']}: a sentence without its number: {words}")
    if not page["runs"][0]["frames"] or page["runs"][0]["frames"]["n"] < LEAST_FRAMES:
        problems.append("report.html: too few frames to move")
    return problems


def check_slide(run):
    """What holds of any slide: a steady end and shares within 0 and 1."""
    readings = {name: reading["value"] for name, reading in run["readings"].items()}
    problems = [f"{run['label']}: {warning['text']}" for warning in run["warnings"] if warning["reading"] == "effective_grip"]
    if not all(0 <= readings[name] <= 1 for name in ("contact_share", "leading_lift", "trailing_lift")):
        problems.append(f"{run['label']}: a share outside 0 to 1")
    return problems


def check_wear(run):
    """What holds of any wear: it reached its depth, and what was drawn is what the slides asked for."""
    readings = {name: reading["value"] for name, reading in run["readings"].items()}
    problems = [f"{run['label']}: {warning['text']}" for warning in run["warnings"] if warning["reading"] == "worn_depth"]
    if abs(readings["volume_balance"]) > 0.01:  # Archard's law: volume = k F s
        problems.append(f"{run['label']}: {100 * readings['volume_balance']:.2f} % of the volume is missing")
    if not readings["life_steps_lowest"] < readings["life_steps"] < readings["life_steps_highest"]:
        problems.append(f"{run['label']}: the band does not hold the life")
    return problems


def check_abrasion(run):
    """What holds of any abrasion bench: a depth inside its band, and one told as a lower bound when it is one."""
    readings = {name: reading["value"] for name, reading in run["readings"].items()}
    problems = []
    if not readings["ground_depth_lowest"] <= readings["ground_depth"] <= readings["ground_depth_highest"]:
        problems.append(f"{run['label']}: the band does not hold the depth")
    told = any("lower bound" in warning["text"] for warning in run["warnings"] if warning["reading"] == "ground_depth")
    if told != ("through_time" in readings):
        problems.append(f"{run['label']}: worn through or not, and not told so")
    return problems


def check_bench_report(path, runs):
    """Sentence, three numbers, story, the chart and the readings on the page of an abrasion bench."""
    page = json.loads(re.search(r'id="report-data">(.*?)</script>', path.read_text(encoding="utf-8"), re.S).group(1),
                      parse_constant=refuse)
    problems = []
    if len(page["headline"]) < 3 or not page["sentence"].endswith(".") or not page["story"] or not page["lines"]:
        problems.append("report.html lacks its sentence, its three numbers, its story or its chart")
    for shown, run in zip(page["runs"], runs, strict=True):
        values = {reading["name"]: reading["value"] for reading in shown["readings"]}
        if abs(values["ground_depth"] - 1e3 * run["readings"]["ground_depth"]["value"]) > 1e-6:
            problems.append(f"report.html, {shown['label']}: the depth differs from the reading")
    return problems


def check_tread(run):
    """What holds of any map: the grip of each movement lies between nothing and a rubber's most, and turning is held."""
    readings = {name: reading["value"] for name, reading in run["readings"].items()}
    grips = [value for name, value in readings.items() if name.endswith("grip") or name.startswith("grip")]
    problems = [f"{run['label']}: a grip of {grip:.2f}" for grip in grips if not 0 < grip < 2]
    if not readings["pivot_moment"] > 0:
        problems.append(f"{run['label']}: nothing holds the turning foot")
    return problems


def check_slide_report(path, runs):
    """Sentence, three numbers, story and the readings on the page of a slide."""
    text = path.read_text(encoding="utf-8")
    page = json.loads(re.search(r'id="report-data">(.*?)</script>', text, re.S).group(1), parse_constant=refuse)
    problems = []
    if len(page["headline"]) != 3 or not page["sentence"].endswith(".") or not page["story"]:
        problems.append("report.html lacks its sentence, its three numbers or its story")
    if not page["lines"] or any(len(line["x"]) != len(line["y"]) for block in page["lines"] for chart in block["charts"] for line in chart["lines"]):
        problems.append("report.html lacks a chart of the face, or has a torn one")
    for shown, run in zip(page["runs"], runs, strict=True):
        values = {reading["name"]: reading["value"] for reading in shown["readings"]}
        if abs(values["effective_grip"] - run["readings"]["effective_grip"]["value"]) > 1e-6:
            problems.append(f"report.html, {shown['label']}: the grip differs from the reading")
    return problems


def main():
    case, program, folder = sys.argv[1:]
    shutil.rmtree(folder, ignore_errors=True)
    done = subprocess.run([program, "run", case, "--json", "--quiet", "-o", folder], capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"exit code {done.returncode}\n{done.stderr}")
    with open(case, "rb") as file:
        blocks = tomllib.load(file).get("expect", [])
    problems = []
    runs = [run for answer in json.loads(done.stdout)["cases"] for run in answer["runs"]]
    for run in runs:
        problems += check_run(run, blocks)
        if "hardness" in run["readings"]:  # a gauge's reading does not rest on the energy account
            continue
        if "ground_depth" in run["readings"]:
            problems += check_abrasion(run)
        if "effective_grip" in run["readings"]:
            check = check_wear if "life_steps" in run["readings"] else check_tread if "pivot_moment" in run["readings"] else check_slide
            problems += check(run)
        account = run["solver"]["ledger_numerical"] + run["solver"]["ledger_residual"]
        if account > OPEN_ACCOUNT:
            problems.append(f"{run['label']}: the energy account is open by {100 * account:.2f} %")
    if "ground_depth" in runs[0]["readings"]:
        problems += check_bench_report(pathlib.Path(folder) / "report.html", runs)
    elif "effective_grip" in runs[0]["readings"]:
        problems += check_slide_report(pathlib.Path(folder) / "report.html", runs)
    elif "hardness" not in runs[0]["readings"]:
        problems += check_report(pathlib.Path(folder) / "report.html", runs)
    shutil.rmtree(folder, ignore_errors=True)
    if not runs:
        problems.append("no run")
    sys.exit("\n".join(problems) if problems else 0)


main()
