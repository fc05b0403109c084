#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The statistics of random data sets agree with what numpy and scipy make of them.

Means, eigenvalues and eigenvectors, and what follows from them, of 200 sets of directions and 200
of azimuths: clusters from a hundredth of a degree to the whole sphere, girdles, mixtures, N from 3
to 500. Directions agree within 1e-9 degrees, numbers within 1e-9, relative if over 1; unless double
precision has no such digits, see `rounding`.

usage: compare_statistics.py STATISTICS_OF
"""

import json
import subprocess
import sys

import numpy
import scipy.stats

SEED = 20260214
SETS = 200
AGREE = 1e-9
EPSILON = numpy.finfo(float).eps
CHI_SQUARE_95 = scipy.stats.chi2.ppf(0.95, 1)


def rounding(difference):
    """What sixteen roundings do to a figure that is made of a difference, given as a share of the
    numbers it is taken from: N - R of N, for a tight cluster's k and cone; a small eigenvalue, of
    their sum, for K and C; and the gap between two eigenvalues, over which their eigenvectors
    turn, in radians. No other way of reckoning in doubles would find more digits."""
    return 16 * EPSILON / difference


def units(v):
    return v / numpy.linalg.norm(v, axis=-1, keepdims=True)


def some_directions(random, count):
    """Of one of four kinds, in any position."""
    turn, _ = numpy.linalg.qr(random.normal(size=(3, 3)))
    spread = numpy.radians(10 ** random.uniform(-2, 2, size=3))
    noise = random.normal(size=(count, 3))
    kind = random.integers(4)
    if kind == 0:  # a cluster, as a rule not a round one
        vectors = [0, 0, 1] + noise * spread
    elif kind == 1:  # a girdle, or a part of it
        along = random.uniform(0, numpy.pi, count) * random.uniform(0.3, 1)
        vectors = numpy.stack([numpy.cos(along), numpy.sin(along), 0 * along], -1)
        vectors = vectors + noise * spread[0] * [0, 0, 1]
    elif kind == 2:  # all over the sphere
        vectors = noise
    else:  # two clusters and what belongs to none
        vectors = numpy.where(random.random((count, 1)) < 0.5, [0, 0, 1], [1, 0, 0])
        vectors = vectors + noise * numpy.where(random.random((count, 1)) < 0.1, 1, spread[0] / 10)
    return units(units(vectors) @ turn.T)


def some_azimuths(random, count):
    kind = random.integers(3)
    centre = random.uniform(0, 360)
    if kind == 0:
        azimuths = numpy.degrees(random.vonmises(0, 10 ** random.uniform(-1, 5), count)) + centre
    elif kind == 1:  # all round
        azimuths = random.uniform(0, 360, count)
    else:  # axes, of either end
        azimuths = random.normal(centre, random.uniform(0.1, 40), count)
        azimuths = azimuths + 180 * random.integers(2, size=count)
    return azimuths % 360


class Comparison:
    """Of one data set."""

    def __init__(self, name):
        self.name = name

    def fail(self, what, ours, theirs):
        sys.exit(f"{self.name}: {what}: {ours!r}, but numpy or scipy has {theirs!r}")

    def number(self, what, ours, theirs, noise=0):
        if theirs is None or ours is None:
            if theirs is not ours:
                self.fail(what, ours, theirs)
        elif not abs(ours - theirs) <= max(AGREE, noise) * max(1, abs(theirs)):
            self.fail(what, ours, theirs)

    def azimuth(self, what, ours, theirs, turn):
        if not abs((ours - theirs + turn / 2) % turn - turn / 2) <= AGREE:
            self.fail(what, ours, theirs)

    def direction(self, what, ours, theirs, noise=0):
        off = numpy.degrees(numpy.arctan2(numpy.linalg.norm(numpy.cross(ours, theirs)),
                                          numpy.dot(ours, theirs)))
        if not off <= max(AGREE, numpy.degrees(noise)):
            self.fail(what, ours, list(theirs))

    def axis(self, what, ours, theirs, noise=0):
        if ours[2] < 0:
            self.fail(what + " points up", ours, list(theirs))
        self.direction(what, ours, theirs * numpy.copysign(1, numpy.dot(ours, theirs)), noise)

    def fisher(self, ours, total, count):
        """R. A. Fisher 1953, of a vector sum."""
        length = numpy.linalg.norm(total)
        lost = count - length
        noise = rounding(lost / count)
        precision = (count - 1) / lost
        cone = None
        if precision >= 4:
            cone = numpy.degrees(numpy.arccos(1 - lost / length * (20 ** (1 / (count - 1)) - 1)))
        self.number("R", ours["resultant"], length)
        self.number("k", ours["precision"] / precision, 1, noise)
        self.number("cone", ours["cone95"], cone, noise)

    def directions(self, ours, vectors):
        count = len(vectors)
        total = vectors.sum(axis=0)
        self.direction("mean of arrows", ours["arrows"]["axis"], total)
        self.fisher(ours["arrows"], total, count)

        values, axes = numpy.linalg.eigh(vectors.T @ vectors / count)
        values, axes = values[::-1], axes.T[::-1]
        tensor = ours["tensor"]
        gaps = [values[0] - values[1], min(values[0] - values[1], values[1] - values[2]),
                values[1] - values[2]]
        for i in range(3):
            self.number(f"S{i + 1}", tensor["eigenvalues"][i], values[i])
            self.axis(f"axis {i + 1}", tensor["axes"][i], axes[i],
                      rounding(gaps[i]))
        noise = rounding(values[2])
        self.number("C", tensor["strength"], numpy.log(values[0] / values[2]), noise)
        flat = numpy.log(values[1] / values[2])
        self.number("K", tensor["shape"], numpy.log(values[0] / values[1]) / flat,
                    noise / min(1, flat))

        total = (vectors * numpy.copysign(1, vectors @ axes[0])[:, None]).sum(axis=0)
        self.axis("mean of axes", ours["axes"]["axis"], units(total))
        self.fisher(ours["axes"], total, count)

    def circular(self, ours, azimuths, turn):
        """Of azimuths that come back after `turn`: 360 for arrows, 180 for axes."""
        count = len(azimuths)
        angles = 2 * numpy.pi / turn * azimuths
        length = abs(numpy.exp(1j * angles).sum())
        self.azimuth("mean", ours["azimuth"],
                     numpy.angle(numpy.exp(1j * angles).sum(), deg=True) * turn / 360, turn)
        self.azimuth("circmean", ours["azimuth"], scipy.stats.circmean(azimuths, turn), turn)
        self.number("R", ours["resultant"], length / count)
        self.number("circvar", 1 - ours["resultant"], scipy.stats.circvar(azimuths, turn))
        # D. Wilkie 1983, multiplied out by the conjugate root.
        root = numpy.sqrt(1 + 4 * count + 4 * (count ** 2 - length ** 2))
        self.number("chance", ours["chance"],
                    numpy.exp(-4 * length ** 2 / (root + 1 + 2 * count)))
        # G. J. G. Upton, by squares of shares.
        share = length / count
        arc = None
        if share >= 0.9:
            square = (1 - (1 - share ** 2) * numpy.exp(CHI_SQUARE_95 / count)) / share ** 2
        else:
            square = (4 - 2 * CHI_SQUARE_95 / (count * share ** 2)) / (4 - CHI_SQUARE_95 / count)
        if square > 0:
            arc = numpy.degrees(numpy.arccos(numpy.sqrt(square))) * turn / 360
        self.number("arc", ours["arc95"], arc, rounding(1 - share))


def main(program):
    random = numpy.random.default_rng(SEED)
    counts = numpy.round(numpy.geomspace(3, 500, SETS)).astype(int)
    sets = [some_directions(random, count) for count in counts]
    sets += [some_azimuths(random, count) for count in counts]
    lines = "".join(json.dumps(one.tolist()) + "\n" for one in sets)
    done = subprocess.run([program], input=lines, stdout=subprocess.PIPE, text=True, check=True)
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    if len(answers) != len(sets):
        sys.exit(f"{len(answers)} answers for {len(sets)} data sets")
    for number, (one, ours) in enumerate(zip(sets, answers)):
        comparison = Comparison(f"data set {number} of {len(one)}, seed {SEED}")
        if one.ndim == 2:
            comparison.directions(ours, one)
        else:
            comparison.circular(ours["arrows"], one, 360)
            comparison.circular(ours["axes"], one, 180)
    print(f"{len(sets)} data sets agree")


main(sys.argv[1])
