#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Checks the example sheet of README.md with the program: readme_sheet.py README PROGRAM"""
import pathlib
import re
import subprocess
import sys
import tempfile


def main():
    readme, program = pathlib.Path(sys.argv[1]), sys.argv[2]
    sheets = re.findall(r"^```toml\n(.*?)^```", readme.read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL)
    if not sheets:
        sys.exit(f"{readme}: holds no example sheet")
    with tempfile.TemporaryDirectory() as folder:
        for number, text in enumerate(sheets):
            sheet = pathlib.Path(folder, f"sheet-{number}.toml")
            sheet.write_text(text, encoding="utf-8")
            subprocess.run([program, "check", sheet], check=True)
    print(f"{len(sheets)} sheets of the readme are good")


if __name__ == "__main__":
    main()
