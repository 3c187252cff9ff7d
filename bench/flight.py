"""Thrown spheres in air by an independent integration: the numbers that src/laws/motion/flight.test.ts holds the law to.

The same equation of motion, solved by scipy (DOP853, tolerance 1e-13) with an event where the straight distance from the
launch is reached. Prints a line a case: distance, speed, angle, diameter, density, time, speed on arrival.
"""

import numpy as np
from scipy.integrate import solve_ivp

GRAVITY = 9.80665
AIR_DENSITY = 1.204
AIR_VISCOSITY = 1.813e-5

CASES = [
    (0.6, 4.5, 30, 0.025, 950),
    (0.3, 6.0, 90, 0.004, 998.2),
    (1.5, 3.0, -20, 0.08, 950),
    (2.0, 12.0, 45, 0.01, 300),
    (0.5, 2.0, 0, 0.0005, 998.2),
    (0.2, 8.0, 10, 0.0001, 1500),
    (5.0, 9.0, 60, 0.04, 120),
]


def drag_coefficient(re):
    return 24 / re * (1 + 0.15 * re**0.687) + 0.42 / (1 + 42500 * re**-1.16)


def flight(distance, speed, angle, diameter, density):
    def slope(_, state):
        velocity = state[2:]
        size = np.hypot(*velocity)
        re = AIR_DENSITY * size * diameter / AIR_VISCOSITY
        held = 0.75 * drag_coefficient(re) * AIR_DENSITY * size / (density * diameter)
        pull = np.array([0.0, GRAVITY * (1 - AIR_DENSITY / density)])
        return np.concatenate([velocity, -held * velocity - pull])

    def there(_, state):
        return np.hypot(state[0], state[1]) - distance

    there.terminal = True
    there.direction = 1
    turn = np.radians(angle)
    start = [0, 0, speed * np.cos(turn), speed * np.sin(turn)]
    solved = solve_ivp(slope, (0, 100), start, method="DOP853", rtol=1e-13, atol=1e-15, events=there)
    return solved.t_events[0][0], np.hypot(*solved.y_events[0][0][2:])


if __name__ == "__main__":
    for case in CASES:
        time, speed = flight(*case)
        print(*case, f"{time:.10g}", f"{speed:.10g}")
