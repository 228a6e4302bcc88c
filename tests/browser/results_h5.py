#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""results.h5 as JSON on stdout, for the page's tests: curves, ledger, readings, shapes. Reads with h5py, not with our code."""
import json
import sys

import h5py


def text(values):
    return [value.decode() if isinstance(value, bytes) else str(value) for value in values]


with h5py.File(sys.argv[1], "r") as file:
    run = file["runs/0000"]
    snapshots = run["picture/snapshots"]
    json.dump({
        "time": run["time"][:].tolist(),
        "force": run["curves/force"][:].tolist(),
        "way": run["curves/tup_displacement"][:].tolist(),
        "readings": dict(zip(text(run["readings/name"][:]), run["readings/value"][:].tolist())),
        "ledger": run["ledger/energy"][:].tolist(),
        "shape_time": snapshots["time"][:].tolist(),
        "position": snapshots["position"][:].tolist(),
        "tup": snapshots["tup_position"][:].tolist(),
        "stretch": snapshots["vertical_stretch"][:].tolist(),
    }, sys.stdout)
