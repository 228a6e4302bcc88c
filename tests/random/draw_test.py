# SPDX-License-Identifier: Apache-2.0
"""Draws are the same on every machine, spread evenly, and independent of what else is drawn; every kind of bench,
striker, side and base occurs among the cases of one ctest."""
import unittest

import bench_cases
from draw import Draw


class Draws(unittest.TestCase):
    def test_name_and_number_alone_decide(self):
        first = Draw("bench", 7)
        first.unit("something else")
        self.assertEqual(first.unit("mass"), Draw("bench", 7).unit("mass"))
        self.assertNotEqual(first.unit("mass"), Draw("bench", 8).unit("mass"))
        self.assertNotEqual(first.unit("mass"), Draw("other", 7).unit("mass"))

    def test_even(self):
        drawn = [Draw("bench", number).unit("x") for number in range(10000)]
        # Mean and variance of an even distribution within five standard errors: 5/sqrt(12 n), and 5/sqrt(180 n).
        mean = sum(drawn) / len(drawn)
        self.assertAlmostEqual(mean, 0.5, delta=0.015)
        self.assertAlmostEqual(sum((x - mean) ** 2 for x in drawn) / len(drawn), 1 / 12, delta=0.004)

    def test_same_case_again(self):
        self.assertEqual(bench_cases.plausible("bench", 3), bench_cases.plausible("bench", 3))
        self.assertEqual(bench_cases.extreme("bench", 3), bench_cases.extreme("bench", 3))

    def test_every_kind_occurs(self):
        texts = [bench_cases.plausible("bench", number) for number in range(200)]
        for piece in ("[drop]", "[press]", "[durometer]", "[slide]", "[ball]", "[layer.unit]", '"spherical-ended"',
                      '"sphere"', '"flat"', '"shell"', '"wrapped"', '"free"', '"bonded"', '"resting"', '"clamped"',
                      '"sliding"', "plane-strain", '"open"', '"leaking"', '"sealed"', "fibres = false", "base_mass",
                      "peak_force", "peak_displacement", "hits", "ShoreD"):
            self.assertTrue(any(piece in text for text in texts), piece)


if __name__ == "__main__":
    unittest.main()
