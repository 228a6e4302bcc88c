# SPDX-License-Identifier: Apache-2.0
"""Finished means finished: killed runs, runs at once, full disks, few files, little memory. The stand-in solver
gives made-up results."""
import hashlib
import json
import os
import re
import resource
import signal
import subprocess
import time
import unittest

from program import PROGRAM, ProgramTest, environment

RUN_FILES = {"summary.txt", "report.html", "data/results.h5", "data/resolved.txt"}


class FinishedTest(ProgramTest):
    def begin(self, *arguments, before=(), limits=None, **changes):
        def set_limits():
            for what, value in (limits or {}).items():
                resource.setrlimit(what, (value, value))
        return subprocess.Popen([*before, PROGRAM, *arguments], cwd=self.folder, env=environment(**changes),
                                stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                                preexec_fn=set_limits)

    def end(self, process):
        output, messages = process.communicate(timeout=60)
        return process.returncode, output.decode(), messages.decode()

    def whole_folders(self):
        """Every numbered folder is whole, and there is nothing hidden beside."""
        results = self.folder / "results"
        for number in results.glob("[!.]*/[0-9]*"):
            manifest = json.loads((number / "manifest.json").read_text())
            self.assertLessEqual(RUN_FILES, set(manifest["files"]))
            for name, checksum in manifest["files"].items():
                self.assertEqual(hashlib.sha256((number / name).read_bytes()).hexdigest(), checksum, name)
        return sorted(path.relative_to(results).as_posix() for path in results.glob("[!.]*/[0-9]*"))

    def unfinished(self):
        return sorted(self.folder.glob("results/**/.unfinished-*"))


class Killed(FinishedTest):
    def test_killed_at_any_moment_and_swept_by_the_next_run(self):
        for i in range(25):
            process = self.begin("run", "heel-drop", "--set", f"core.thickness={14 + 0.1 * i} mm")
            time.sleep(0.02 * i)
            process.send_signal(signal.SIGKILL)
            process.communicate()
            self.whole_folders()
        self.assertEqual(self.end(self.begin("run", "forefoot-drop"))[0], 0)
        self.assertEqual(self.unfinished(), [])
        self.whole_folders()

    def test_what_a_living_process_holds_stays(self):
        slow = self.begin("run", "heel-drop", STAND_IN_SECONDS="4")
        deadline = time.monotonic() + 10
        while not any(path.is_dir() for path in self.unfinished()) and time.monotonic() < deadline:
            time.sleep(0.02)
        held = self.unfinished()
        dead = self.folder / "results/heel-drop/.unfinished-0123456789abcdef"
        dead.mkdir()
        (dead / "summary.txt").write_text("half")
        self.assertEqual(self.end(self.begin("run", "forefoot-drop"))[0], 0)
        self.assertEqual(self.unfinished(), held)
        self.assertEqual(self.end(slow)[0], 0)
        self.assertEqual(self.unfinished(), [])
        self.assertEqual(self.whole_folders(), ["forefoot-drop/1", "heel-drop/1"])

    def test_many_at_once_share_a_folder_of_results(self):
        # Where the system lets us, each has the same process number, as in a container of its own.
        alone = ["unshare", "--user", "--map-root-user", "--pid", "--fork", "--kill-child"]
        if subprocess.run([*alone, "true"], capture_output=True).returncode != 0:
            alone = []
        processes = [self.begin("run", "heel-drop", "--set", f"core.thickness={14 + i} mm", before=alone)
                     for i in range(6)]
        answers = [self.end(process) for process in processes]
        self.assertEqual([code for code, _, _ in answers], [0] * 6, answers)
        self.assertEqual(self.whole_folders(), [f"heel-drop-changed/{i + 1}" for i in range(6)])
        self.assertEqual(self.unfinished(), [])
        # The same inputs in a store of runs that all share.
        processes = [self.begin("compare", "heel-drop", "forefoot-drop", "-o", f"out-{i}", before=alone)
                     for i in range(4)]
        self.assertEqual([self.end(process)[0] for process in processes], [0] * 4)

    def test_a_manifest_that_lacks_files_is_no_finished_run(self):
        self.assertEqual(self.call("run", "heel-drop")[0], 0)
        folder = self.folder / "results/heel-drop/1"
        whole = json.loads((folder / "manifest.json").read_text())
        for number, name in enumerate(sorted(RUN_FILES), 2):
            fewer = {**whole, "files": {file: sum for file, sum in whole["files"].items() if file != name}}
            (folder / "manifest.json").write_text(json.dumps(fewer))
            self.assertIn(f"results in results/heel-drop/{number} ", self.call("run", "heel-drop")[2])
            (self.folder / f"results/heel-drop/{number}/manifest.json").unlink()


class Full(FinishedTest):
    WORDS = re.compile(r"^solemech: cannot write \S+: (No space left on device|File too large)\. "
                       r"Make room there and try again", re.MULTILINE)

    COMMANDS = {"run": ("run", "heel-drop"), "series": ("run", "energy-ladder"),
                "compare": ("compare", "heel-drop", "forefoot-drop"), "learn": ("learn", "gas-or-foam"),
                "trial": ("trial", "heel-drop", "--swap", "core = eva-firm")}

    def test_a_file_that_cannot_grow_is_told_whichever_it_is(self):
        sizes = [0, 500, 1500, 3000, 6000, 12000, 25000, 50000, 100000, 200000, 400000]
        said = set()
        for name, command in self.COMMANDS.items():
            for size in sizes if name == "run" else sizes[::3]:
                with self.subTest(command=name, size=size):
                    code, output, messages = self.end(self.begin(*command, limits={resource.RLIMIT_FSIZE: size}))
                    self.assertIn(code, [0, 4], messages)
                    if code == 4:
                        self.assertRegex(messages, self.WORDS)
                        said.add(re.search(r"cannot write \S*?([^/\s]+): ", messages)[1].split(".")[-1])
                    self.assertEqual(self.unfinished(), [])
                    self.whole_folders()
        self.assertGreaterEqual(len(said), 3, said)

    def test_one_record_that_cannot_be_written_does_not_cost_the_others(self):
        self.assertEqual(self.end(self.begin("run", "heel-drop"))[0], 0)
        code, output, messages = self.end(self.begin("run", "heel-drop", "forefoot-drop", limits={resource.RLIMIT_FSIZE: 1500}))
        self.assertEqual(code, 4, messages)
        self.assertRegex(messages, self.WORDS)
        self.assertIn("heel-drop", output)
        self.assertIn("forefoot-drop", output)
        self.assertEqual(self.whole_folders(), ["heel-drop/1"])

    def test_a_disk_that_fills_up(self):
        mounted = ["unshare", "--user", "--map-root-user", "--mount", "sh", "-c"]
        if subprocess.run([*mounted, "mount -t tmpfs -o size=64k none /tmp"], capture_output=True).returncode != 0:
            self.skipTest("no disk of one's own may be mounted here")
        (self.folder / "results").mkdir()
        for kilobytes in [8, 40, 100, 200, 300, 400, 500]:
            script = (f"mount -t tmpfs -o size={kilobytes}k none results && {PROGRAM} run heel-drop; code=$?; "
                      "echo left:; ls -A results/heel-drop 2>/dev/null; exit $code")
            code, output, messages = self.end(subprocess.Popen(
                [*mounted, script], cwd=self.folder, env=environment(), stdout=subprocess.PIPE, stderr=subprocess.PIPE))
            with self.subTest(kilobytes=kilobytes):
                self.assertIn(code, [0, 4], messages)
                if code == 4:
                    self.assertRegex(messages, "No space left on device")
                    answer, left = output.split("left:\n")
                    self.assertTrue(answer == "" or "rebound" in answer, answer)
                    self.assertEqual(left, "")

    def test_standard_output_on_a_full_disk(self):
        with open("/dev/full", "w") as full:
            for command in [("run", "heel-drop"), ("check", "heel-drop"), ("cases",), ("materials",)]:
                done = subprocess.run([PROGRAM, *command], cwd=self.folder, env=environment(), stdout=full,
                                      stderr=subprocess.PIPE, timeout=60)
                self.assertEqual(done.returncode, 4, done.stderr)
                self.assertIn(b"is the disk full?", done.stderr)

    def test_the_book(self):
        (self.folder / "heel.toml").write_text('format = 1\nrig = "guided-rod-1200"\nstack = "pair-07-heel"\n')
        code, output, messages = self.end(self.begin("book", ".", limits={resource.RLIMIT_FSIZE: 100}))
        self.assertEqual(code, 4, messages)
        self.assertRegex(messages, self.WORDS)
        self.assertEqual([path.name for path in self.folder.iterdir()], ["heel.toml"])


class Short(FinishedTest):
    def test_few_open_files(self):
        for n_files in range(3, 20, 2):
            code, output, messages = self.end(self.begin("run", "heel-drop", "-o", f"out-{n_files}",
                                                         limits={resource.RLIMIT_NOFILE: n_files}))
            with self.subTest(n_files=n_files):
                self.assertIn(code, [0, 2, 4, 127], messages)
                if code in [2, 4]:
                    self.assertIn("ulimit -n", messages)

    def test_little_memory(self):
        for megabytes in range(40, 600, 90):
            code, output, messages = self.end(self.begin("run", "heel-drop", "-o", f"out-{megabytes}",
                                                         limits={resource.RLIMIT_AS: megabytes << 20}))
            with self.subTest(megabytes=megabytes):
                self.assertIn(code, [0, 3, 4, 127], messages)
                if code in [3, 4]:
                    self.assertIn("memory", messages)


if __name__ == "__main__":
    unittest.main()
