# SPDX-License-Identifier: Apache-2.0
"""Runs random cases through the real program and counts how they end.

    random_cases_test.py PROGRAM FOLDER FIRST COUNT [--seed S] [--extreme] [--rig KIND] [--set ENTRY=VALUE ...]

Plausible cases: at least 99.5 % are answered, with an energy account that closes within half a per cent and finite
readings, in 30 s of processor time each; the rest is refused before anything is calculated. Extreme cases: an
answer, a refusal before the calculation, or a calculation that says where and why it stopped."""
import argparse
import collections
import json
import math
import os
import re
import resource
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import bench_cases

CLOSED = 0.005  # of the energy put in: what the account may leave open
LONGEST = 30    # processor time of one run [s]
ANSWERED = 0.995
SEED = "bench"
CPU_LIMIT = 4 * LONGEST  # where a run is ended [s]

Outcome = collections.namedtuple("Outcome", "kind text seconds")


def run(program, path, results, settings):
    """Exit code, standard output, standard error and processor time [s] of one run."""
    arguments = [program, "run", str(path), "--json", "--quiet", "--output", str(results)]
    for setting in settings:
        arguments += ["--set", setting]
    with tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
        process = subprocess.Popen(
            arguments, stdout=out, stderr=err, stdin=subprocess.DEVNULL, cwd=path.parent,
            preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (CPU_LIMIT, CPU_LIMIT)))
        _, status, used = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        out.seek(0), err.seek(0)
        return process.returncode, out.read().decode(), err.read().decode(), used.ru_utime + used.ru_stime


def faults(answer):
    """What is wrong with an answer, in words."""
    found = []
    for single in (run for case in answer["cases"] for run in case["runs"]):
        for name, reading in single["readings"].items():
            if not math.isfinite(reading["value"]):
                found.append(f"{name} is not finite")
        opened = single["solver"]["ledger_residual"] + single["solver"]["ledger_numerical"]
        if not opened <= CLOSED:
            found.append(f"account open by {100 * opened:.2f} %")
        energy = single.get("energy") or {}
        if energy.get("input") and not abs(energy["accounted"] - 1) <= CLOSED:
            found.append(f"{100 * energy['accounted']:.2f} % accounted for")
    return ", ".join(found)


def outcome(program, path, results, settings):
    code, out, err, seconds = run(program, path, results, settings)
    text = " ".join(err.split())
    if code == 0:
        wrong = faults(json.loads(out))
        return Outcome("suspect" if wrong else "slow" if seconds > LONGEST else "answered", wrong, seconds)
    if code == 2 and re.search(r"\.toml:\d+:\d+: ", err):
        return Outcome("refused", text, seconds)
    return Outcome("stopped" if code == 3 else f"exit {code}", text, seconds)


def arguments():
    parser = argparse.ArgumentParser()
    parser.add_argument("program", type=Path)
    parser.add_argument("folder", type=Path)
    parser.add_argument("first", type=int)
    parser.add_argument("count", type=int)
    parser.add_argument("--seed", default=SEED)
    parser.add_argument("--extreme", action="store_true")
    parser.add_argument("--rig", help="only cases of this rig")
    parser.add_argument("--without-units", action="store_true")
    parser.add_argument("--set", action="append", default=[])
    parser.add_argument("--threads", type=int, default=1)
    parser.add_argument("--keep", action="store_true", help="keep cases and results")
    return parser.parse_args()


def main():
    wish = arguments()
    wish.folder.mkdir(parents=True, exist_ok=True)
    make = bench_cases.extreme if wish.extreme else bench_cases.plausible
    chosen = {}
    for number in range(wish.first, wish.first + wish.count):
        text = make(wish.seed, number)
        if (not wish.rig or f"random {wish.rig} " in text) and not (wish.without_units and "[layer.unit]" in text):
            chosen[number] = text

    def end_of(item):
        number, text = item
        path = wish.folder / f"case-{number}.toml"
        path.write_text(text)
        with tempfile.TemporaryDirectory() as scratch:
            ended = outcome(wish.program, path, wish.folder if wish.keep else scratch, wish.set)
        if ended.kind != "answered":
            print(f"{path}: {ended.kind} after {ended.seconds:.1f} s: {ended.text}", flush=True)
        return ended

    with ThreadPoolExecutor(wish.threads) as pool:
        ended = list(pool.map(end_of, chosen.items()))
    counts = collections.Counter(one.kind for one in ended)
    seconds = sorted(one.seconds for one in ended)
    print(f"{len(ended)} cases: " + ", ".join(f"{n} {kind}" for kind, n in counts.most_common()) +
          f"; processor time {sum(seconds):.0f} s, median {seconds[len(seconds) // 2]:.2f} s, longest {seconds[-1]:.1f} s")
    good = {"answered", "refused"} | ({"stopped", "slow"} if wish.extreme else set())
    enough = wish.extreme or counts["answered"] >= ANSWERED * len(ended) - 1e-9
    return 0 if enough and set(counts) <= good else 1


if __name__ == "__main__":
    sys.exit(main())
