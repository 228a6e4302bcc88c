# SPDX-License-Identifier: Apache-2.0
"""Help, version, lists: what answers at once."""
import re
import shlex
import unittest

from program import PROGRAM, ProgramTest

COMMANDS = ["cases", "materials", "check", "draw", "run", "pair", "compare", "learn", "trial", "plan", "book", "sheet", "version", "help"]


class Help(ProgramTest):
    def test_every_command_has_help_with_examples(self):
        for command in COMMANDS:
            code, output, messages = self.call("help", command)
            self.assertEqual((code, messages), (0, ""))
            examples = re.findall(r"^  solemech .+$", output.split("Examples:\n")[1], re.MULTILINE)
            self.assertGreaterEqual(len(examples), 2, command)
            self.assertLessEqual(len(examples), 4, command)
            self.assertEqual(self.call(command, "--help")[1], output)

    def test_general_help_names_commands_and_exit_codes(self):
        code, output, messages = self.call("--help")
        self.assertEqual((code, messages), (0, ""))
        for command in COMMANDS:
            self.assertRegex(output, rf"\n  {command} ")
        for exit_code in ["0", "1", "2", "3", "4", "130"]:
            self.assertRegex(output, rf"\n  {exit_code} +\w")
        self.assertEqual(self.call(), (0, output, ""))

    def test_examples_of_the_help_are_understood(self):
        # Each example with a prebuilt case only is run as printed, but for shell parts.
        for command in ["cases", "materials", "version"]:
            for line in re.findall(r"^  solemech ([^|&>\n]+)$", self.call("help", command)[1], re.MULTILINE):
                self.assertEqual(self.call(*shlex.split(line))[0], 0, line)

    def test_version_is_one_line_and_the_long_form_tells_the_build(self):
        code, output, messages = self.call("--version")
        self.assertEqual((code, messages), (0, ""))
        self.assertRegex(output, r"^solemech \d+\.\d+\.\d+\n$")
        self.assertEqual(self.call("version")[1], output)
        long_form = self.call("version", "--verbose")[1]
        for fact in ["source", "build", "deal.II", "HDF5", "BLAS"]:
            self.assertRegex(long_form, rf"\n  {re.escape(fact)} +\S")

    def test_slips_name_the_nearest_word(self):
        self.assertEqual(self.refused("rnu", "heel-drop"), "solemech: there is no command 'rnu'. "
                         "Did you mean 'run'? `solemech help` lists the commands.\n")
        self.assertEqual(self.refused("run", "heel-drop", "--detials"), "solemech: `run` has no option "
                         "'--detials'. Did you mean '--details'? `solemech help run` lists the options.\n")
        self.assertEqual(self.refused("materials", "eva-sotf"), "solemech: there is no material 'eva-sotf'. "
                         "Did you mean \"eva-soft\"? `solemech materials` lists them.\n")
        self.assertEqual(self.refused("run"), "solemech: `run` needs the name of a case or a case file. "
                         "`solemech cases` lists the prebuilt ones.\n")
        self.assertEqual(self.refused("plan"), "solemech: `plan` needs a bench sheet, for example "
                         "`solemech plan my-pair-heel.toml`.\n")
        self.assertEqual(self.refused("plan", "my.toml", "--for", "forse"), "solemech: --for forse: choose rebound, "
                         "force or compression. Did you mean 'force'?\n")
        self.assertIn("there is no file 'none.toml'", self.refused("plan", "none.toml"))


class Lists(ProgramTest):
    def test_cases_are_grouped_and_say_what_they_answer(self):
        code, output, messages = self.call("cases")
        self.assertEqual((code, messages), (0, ""))
        self.assertRegex(output, r"^[A-Z][^\n]*\n  \S")
        for name in ["heel-drop", "forefoot-drop", "energy-ladder", "punctured-unit"]:
            self.assertRegex(output, rf"\n  {name} +[^\n]*\?\n")

    def test_materials_table(self):
        code, output, messages = self.call("materials")
        self.assertEqual((code, messages), (0, ""))
        # What the model's gauge reads; in brackets what the source states, where the two differ.
        self.assertRegex(output, r"\neva-soft +170 +4\d AskerC +\S.* MPa +\w")
        self.assertRegex(output, r"\nrubber-60a +1150 +5\d ShoreA \(60\) +.*3\.6\d MPa")
        self.assertIn("Gent 1958", output)

    def test_one_material_in_full(self):
        output = self.call("materials", "eva-soft", "carbon-plate")[1]
        self.assertIn("eva-soft: soft moulded EVA\n", output)
        self.assertRegex(output, r"\n  source +\w")
        self.assertRegex(output, r"\n  Poisson ratio +0\.3\n")

    def test_stated_and_read_numbers_and_what_use_leaves(self):
        output = self.call("materials", "eva-moulded-medium")[1]
        self.assertRegex(output, r"\n  hardness, model +4[78]\.\d AskerC\n  hardness, stated +48 AskerC\n")
        self.assertRegex(output, r"\n  ball rebound, model +50 %\n  ball rebound, stated +50 %\n")
        self.assertRegex(output, r"\n  ageing, after 500 km of running +75\.\.110 % of the stiffness and 85\.\.100 %")
        self.assertIn("No run uses it yet", output)

    def test_the_nearest_materials(self):
        output = self.call("materials", "--like", "55 AskerC, 200 kg/m3, 48 % ball")[1]
        self.assertTrue(output.startswith("Nearest to 55 AskerC, 200 kg/m3, 48 % ball rebound:\n"), output)
        self.assertRegex(output, r"\neva-moulded-firm +0\.[0-3] ")
        self.assertRegex(self.call("materials", "--like", "60 ShoreA, 65 % pulse")[1], r"\nrubber-\S+ .*no pulse return known")
        self.assertIn('Did you mean "ball"?', self.refused("materials", "--like", "48 % bal"))
        self.assertNotIn("Did you mean", self.refused("materials", "--like", "55 ShoreC"))
        self.assertIn("nothing to look for", self.refused("materials", "--like", ""))
        self.assertIn("not both", self.refused("materials", "eva-soft", "--like", "55 AskerC"))


class Streams(ProgramTest):
    def test_no_escape_codes_in_a_pipe(self):
        for arguments in [["--help"], ["cases"], ["materials"], ["materials", "eva-soft"]]:
            self.assertNotIn("\033", self.call(*arguments)[1])

    def test_emphasis_on_a_terminal_unless_switched_off(self):
        self.assertIn("\033[1m", self.on_terminal("cases")[1])
        self.assertNotIn("\033", self.on_terminal("cases", NO_COLOR="1")[1])
        self.assertNotIn("\033", self.on_terminal("cases", TERM="dumb")[1])

    def test_a_full_disk_is_told(self):
        with open("/dev/full", "w") as full:
            import subprocess
            done = subprocess.run([PROGRAM, "cases"], stdout=full, stderr=subprocess.PIPE)
        self.assertEqual(done.returncode, 4)
        self.assertEqual(done.stderr.decode(), "solemech: cannot write to standard output: is the disk full?\n")


class StartUp(ProgramTest):
    def test_no_solver_library_is_loaded(self):
        import subprocess
        libraries = subprocess.run(["ldd", PROGRAM], capture_output=True, text=True).stdout
        for library in ["deal", "hdf5", "blas", "mpi"]:
            self.assertNotIn(library, libraries)


if __name__ == "__main__":
    unittest.main()
