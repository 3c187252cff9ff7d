"""The swing of three lamps over rates by shutters, in numpy: one lamp at a time, all shutters and phases at once.

The first line of standard input holds the lamps, rates and shutters as JSON; each further line asks for the chart once
more and is answered with the sum of its cells.
"""

import json
import math
import sys

import numpy as np

PHASES = 840
given = json.loads(sys.stdin.readline())
rates = np.asarray(given["rates_fps"])
exposures = np.asarray(given["exposures_s"])
fits = exposures[None, :] * rates[:, None] <= 1 + 1e-9
lamps = [
    {
        "share": lamp["shareFraction"],
        "period": lamp["period_s"],
        "sums": np.concatenate([[0.0], np.cumsum(np.asarray(lamp["samples"]) / len(lamp["samples"]))]),
        "counts": np.asarray(lamp["counts"]),
    }
    for lamp in given["lamps"]
]


def summed(sums, phase):
    whole = np.floor(phase)
    at = (phase - whole) * (len(sums) - 1)
    cell = np.minimum(at.astype(np.intp), len(sums) - 2)
    here = sums[cell]
    return whole * sums[-1] + here + (sums[cell + 1] - here) * (at - cell)


def lights_of(lamp):
    """Mean light of every exposure at every phase."""
    phases = np.arange(PHASES) / PHASES
    length = exposures / lamp["period"]
    begun = summed(lamp["sums"], phases)
    return (summed(lamp["sums"], phases[None, :] + length[:, None]) - begun[None, :]) / length[:, None]


def widest(lights, count):
    """Least and most of so many even phases, where they begin worst."""
    steps = math.ceil(PHASES / count)
    if count * steps != PHASES:
        at = np.arange(count * steps) * (PHASES / (count * steps))
        cell = at.astype(np.intp)
        here = lights[:, cell]
        lights = here + (lights[:, (cell + 1) % PHASES] - here) * (at - cell)
    folded = lights.reshape(len(exposures), count, steps)
    least = folded.min(axis=1)
    most = folded.max(axis=1)
    start = (most - least).argmax(axis=1)
    row = np.arange(len(exposures))
    return least[row, start], most[row, start]


def chart():
    least = np.zeros((len(rates), len(exposures)))
    most = np.zeros((len(rates), len(exposures)))
    for lamp in lamps:
        lights = lights_of(lamp)
        for count in np.unique(lamp["counts"]):
            low, high = (lights.min(axis=1), lights.max(axis=1)) if count == 0 else widest(lights, int(count))
            rows = lamp["counts"] == count
            least[rows] += lamp["share"] * low
            most[rows] += lamp["share"] * high
    return np.log2(most[fits] / least[fits])


print("ready", flush=True)
for _ in sys.stdin:
    print(repr(float(chart().sum())), flush=True)
