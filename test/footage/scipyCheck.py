"""Series and pictures of scipyCheck.ts, worked out by numpy and scipy: a joint least-squares fit of a cubic trend and one
wave by lstsq at each rate and a bounded search about the best, the same with frames missing, a Lomb-Scargle periodogram,
the depth of a wave at some rates by a weighted lstsq beside a trend of the fourth degree, and a phase correlation by scipy's FFT. Prints what scipyCheck.json holds: python3 test/footage/scipyCheck.py
"""
import json
import numpy as np
import scipy
from scipy import fft, optimize, signal

RATE, COUNT = 800.0, 260
i = np.arange(COUNT)
scatter = 0.002 * np.sin(12.9898 * (i + 1) * (i + 6))
series = 0.1 + 0.0015 * i - 3e-6 * i**2 + 0.012 * np.cos(2 * np.pi * 117.3 * i / RATE + 1.1) + scatter
kept = (i % 11 != 3) & ~((i > 90) & (i < 110))


def left(rate, chosen):
    x = 2 * i[chosen] / (COUNT - 1) - 1
    turn = 2 * np.pi * rate * i[chosen] / RATE
    columns = np.stack([np.ones_like(x), x, x**2, x**3, np.cos(turn), np.sin(turn)], axis=1)
    found = np.linalg.lstsq(columns, series[chosen], rcond=None)[0]
    return np.sum((series[chosen] - columns @ found) ** 2), found


def fit(chosen):
    rates = np.arange(20, RATE / 2, RATE / (8 * COUNT))
    best = rates[np.argmin([left(rate, chosen)[0] for rate in rates])]
    step = RATE / (4 * COUNT)
    rate = optimize.minimize_scalar(lambda f: left(f, chosen)[0], bounds=(best - step, best + step), method='bounded',
                                    options={'xatol': 1e-9}).x
    squares, found = left(rate, chosen)
    return {'rate_Hz': rate, 'amplitude': float(np.hypot(found[4], found[5])),
            'phase_rad': float(np.arctan2(-found[5], found[4])), 'squares': float(squares)}


def lomb():
    x = 2 * i[kept] / (COUNT - 1) - 1
    trend = np.polynomial.polynomial.polyfit(x, series[kept], 3)
    rest = series[kept] - np.polynomial.polynomial.polyval(x, trend)
    rates = np.linspace(20, 399, 200_001)
    power = signal.lombscargle(i[kept] / RATE, rest, 2 * np.pi * rates)
    return float(rates[np.argmax(power)])


DEPTHS_Hz = [0.0, 25.0, 100.0, 117.1875, 118.75, 250.0, 400.0]


def depths(chosen):
    light = np.exp(series)
    weight = np.where(chosen, np.sin(np.pi * (i + 0.5) / COUNT) ** 2, 0)
    x, root = 2 * i / (COUNT - 1) - 1, np.sqrt(weight)
    trend = [x**k for k in range(5)]

    def squares(columns):
        a = np.stack(columns, axis=1) * root[:, None]
        found = np.linalg.lstsq(a, np.log(light) * root, rcond=1e-9)[0]
        return np.sum((np.log(light) * root - a @ found) ** 2)

    def depth(rate):
        turn = 2 * np.pi * rate * i / RATE
        off = squares(trend) - squares([*trend, np.cos(turn), np.sin(turn)])
        return float(np.tanh(np.sqrt(2 * max(0.0, off) / np.sum(weight))))

    return [depth(rate) for rate in DEPTHS_Hz]


SIDE = 64


def picture(dx, dy):
    y, x = np.mgrid[0:SIDE, 0:SIDE].astype(float)
    total = np.zeros((SIDE, SIDE))
    for k in range(80):
        bx, by = (37.7 * k * k + 11.3 * k) % 84 - 10, (23.9 * k * k + 5.1 * k) % 84 - 10
        total += np.sin(k + 1) * np.exp(-((x - bx - dx) ** 2 + (y - by - dy) ** 2) / (2 * (1.3 + 0.7 * np.sin(k)) ** 2))
    return total


def phase(dx, dy):
    window = np.sin(np.pi * (np.arange(SIDE) + 0.5) / SIDE) ** 2
    window = np.outer(window, window)
    a, b = picture(0, 0), picture(dx, dy)
    a, b = ((p - np.sum(p * window) / np.sum(window)) * window for p in (a, b))
    cross = np.conj(fft.fft2(a)) * fft.fft2(b)
    shifts = np.real(fft.ifft2(cross / np.maximum(np.abs(cross), 1e-30)))
    top = np.unravel_index(np.argmax(shifts), shifts.shape)
    wrap = lambda k: int(k if k < SIDE / 2 else k - SIDE)
    return [wrap(top[1]), wrap(top[0])]


print(json.dumps({
    'numpy': np.__version__, 'scipy': scipy.__version__,
    'all': fit(np.ones(COUNT, bool)), 'missing': fit(kept), 'lombScargle_Hz': lomb(),
    'depths': {'rates_Hz': DEPTHS_Hz, 'all': depths(np.ones(COUNT, bool)), 'missing': depths(kept)},
    'shifts': [{'given': d, 'found': phase(*d)} for d in ([3, -2], [-7, 4], [0, 9])],
}, indent=2))
