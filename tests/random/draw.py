# SPDX-License-Identifier: Apache-2.0
"""Numbers drawn by name: each is a hash of seed, case and name, so that a draw added later shifts no other."""
import hashlib


class Draw:
    """Draws of one case. The same name gives the same number."""

    def __init__(self, seed, number):
        self.key = f"{seed}/{number}/"

    def unit(self, name):
        """Evenly in [0, 1)."""
        digest = hashlib.sha256((self.key + name).encode()).digest()
        return int.from_bytes(digest[:7], "big") / 2.0**56

    def between(self, name, low, high):
        return low + (high - low) * self.unit(name)

    def spread(self, name, low, high):
        """Even in the logarithm."""
        return low * (high / low) ** self.unit(name)

    def chance(self, name, share):
        return self.unit(name) < share

    def one_of(self, name, choices):
        return choices[int(self.unit(name) * len(choices))]

    def weighted(self, name, weights):
        """A key of `weights`, as often as its weight says."""
        left = self.unit(name) * sum(weights.values())
        for key, weight in weights.items():
            left -= weight
            if left < 0:
                return key
        return next(reversed(weights))
