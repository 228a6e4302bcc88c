#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""owners.py TABLE PROGRAM...: every row of the table of outside checks holds and belongs to one of the test
programs, which compares it; no row is left over from a program that is gone."""
import sys

table, *programs = sys.argv[1:]
rows = [[cell.strip() for cell in line.strip().strip("|").split("|")]
        for line in open(table, encoding="utf-8") if line.startswith("| ")][1:]
wrong = [row for row in rows if row[-1] not in programs or row[-2] != "holds"]
for row in wrong:
    print(f"'{row[0]}: {row[1]}': verdict '{row[-2]}', test '{row[-1]}'")
print(f"{len(rows)} outside checks of {len(programs)} test programs, {len(wrong)} wrong")
sys.exit(bool(wrong) or not rows)
