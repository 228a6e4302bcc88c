#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""A pair in one file through the real program: fitted together, and what the answer says is so.

usage: bench_pair.py SHEET PROGRAM FOLDER
"""
import json
import pathlib
import re
import sys

from real_program import RealProgram

sheet, program, folder = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
call = RealProgram(program, folder).call
problems = []

answer = json.loads(call("pair", sheet, "-o", "pair", "--json"))
text = (folder / "pair/summary.txt").read_text(encoding="utf-8")
if not answer["converged"] or "disagree" in text:
    problems.append("the readings of the example contradict the model")
if "nan" in text.lower():
    problems.append("a number is none")


def guide(part):
    return next(one for one in answer[part]["parameters"] if one["name"] == "drop guide loss")


# One rod: both parts say the same of it.
if {key: guide("heel")[key] for key in ["value", "low", "high"]} != \
        {key: guide("forefoot")[key] for key in ["value", "low", "high"]}:
    problems.append("the two parts have two guide losses")

# The shares add up to the difference, and the difference is that of the two runs.
table = answer["comparison"]["shares"][0]
if abs(sum(row["share"] for row in table["shares"]) - table["total"]) > 1e-6 * max(1, abs(table["total"])):
    problems.append("the shares do not add up")

# What each settled stack reads by itself is what the pair says of it.
for part, key in [("heel", "from"), ("forefoot", "to")]:
    run = json.loads(call("run", f"pair/{part}.toml", "--json"))
    alone = run["cases"][0]["runs"][0]["readings"]["rebound_by_height"]["value"]
    said = next(one for one in answer["comparison"]["readings"] if one["name"] == "rebound_by_height")
    if abs(100 * alone - said[key]) > 0.01 * said[key]:
        problems.append(f"{part}: {100 * alone:.1f} % by itself, {said[key]:.1f} % in the pair")

page = (folder / "pair/report.html").read_text(encoding="utf-8")
report = json.loads(re.search(r'id="report-data">(.*?)</script>', page, re.S).group(1))
if len(report["tables"]) < 4 or any(len(row) != len(one["columns"]) for one in report["tables"] for row in one["rows"]):
    problems.append("the page lacks its tables, or a row of one is not complete")
if not re.search(r"The (forefoot|heel) throws the weight back .* than the (heel|forefoot)\.", " ".join(text.split())):
    problems.append("the summary does not begin with what differs")
if "Caution: " not in text or "ottoming" not in text:
    problems.append("the summary lacks its cautions or says nothing of bottoming")

plans = json.loads(call("plan", sheet, "--json"))
if [plan["part"] for plan in plans] != ["heel", "forefoot"] or not all(plan["readings"] for plan in plans):
    problems.append("a plan of a pair is not one for each part")

print(text)
print("\n".join(problems))
sys.exit(1 if problems else 0)
