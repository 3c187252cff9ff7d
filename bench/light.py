"""The light of lamps with measured photometry on a grid of points, in numpy: one lamp at a time, all points at once.

The first line of standard input holds the lamps and the points as JSON; each further line asks for the sums once more
and is answered with their total.
"""

import json
import sys

import numpy as np

given = json.loads(sys.stdin.readline())
xs = np.asarray(given["xs"])
ys = np.asarray(given["ys"])
x, y = (part.ravel() for part in np.meshgrid(xs, ys))
lamps = [
    {
        "at": lamp["at"],
        "axis": np.asarray(lamp["axis"]),
        "c0": np.asarray(lamp["c0"]),
        "c90": np.asarray(lamp["c90"]),
        "planes": np.asarray(lamp["planes_deg"]),
        "gammas": np.asarray(lamp["gammas_deg"]),
        "intensities": np.asarray(lamp["intensities_cd"]),
    }
    for lamp in given["lamps"]
]


def light_of(lamp):
    """Illuminance on level surfaces that face up; the angles of the grid are even, so that no search is needed."""
    planes, gammas, intensities = lamp["planes"], lamp["gammas"], lamp["intensities"]
    rx = x - lamp["at"][0]
    ry = y - lamp["at"][1]
    rz = -lamp["at"][2]
    square = rx * rx + ry * ry + rz * rz
    distance = np.sqrt(square)
    axis, c0, c90 = lamp["axis"], lamp["c0"], lamp["c90"]
    along = (rx * axis[0] + ry * axis[1] + rz * axis[2]) / distance
    gamma = np.degrees(np.arccos(np.clip(along, -1, 1)))
    right = rx * c0[0] + ry * c0[1] + rz * c0[2]
    up = rx * c90[0] + ry * c90[1] + rz * c90[2]
    plane = np.degrees(np.arctan2(up, right)) % 360
    g = (gamma - gammas[0]) / (gammas[1] - gammas[0])
    p = (plane - planes[0]) / (planes[1] - planes[0])
    gi = np.minimum(g.astype(np.intp), len(gammas) - 2)
    pi = np.minimum(p.astype(np.intp), len(planes) - 2)
    gs = g - gi
    ps = p - pi
    at = pi * len(gammas) + gi
    here = intensities[at] * (1 - gs) + intensities[at + 1] * gs
    there = intensities[at + len(gammas)] * (1 - gs) + intensities[at + len(gammas) + 1] * gs
    return (here * (1 - ps) + there * ps) * -rz / (square * distance)


print("ready", flush=True)
for _ in sys.stdin:
    total = np.zeros_like(x)
    for lamp in lamps:
        total += light_of(lamp)
    print(repr(float(total.sum())), flush=True)
