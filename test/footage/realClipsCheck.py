"""What OpenCV, numpy and scipy say of the clips that people filmed (see tools/realClips.mjs): shifts of windows from frame to
frame by phaseCorrelate, the way of the set behind a hand by matchTemplate, and how deep waves of some rates are in the
mean light, fitted by lstsq together with a quartic trend under Hann weights. Prints what realClipsCheck.json holds:
python3 test/footage/realClipsCheck.py, with python3-opencv and python3-scipy installed.
"""
import json
import subprocess
import cv2
import numpy as np
import scipy
from scipy import signal

RATE = 1000.0


def frames(name, plane):
    size = {'cup.mp4': (640, 480), 'box.mp4': (640, 480), 'tree.avi': (320, 240)}[name]
    raw = subprocess.run(['ffmpeg', '-v', 'quiet', '-i', f'.cache/realClips/{name}', '-vf', f'extractplanes={plane}',
                          '-fps_mode', 'passthrough', '-f', 'rawvideo', '-pix_fmt', 'gray', '-'], capture_output=True).stdout
    return np.frombuffer(raw, np.uint8).reshape(-1, size[1], size[0])


def shifts(name, plane, left, top, side, pairs):
    clip = frames(name, plane)
    window = cv2.createHanningWindow((side, side), cv2.CV_64F)
    found = []
    for a, b in pairs:
        one, other = (clip[i][top:top + side, left:left + side].astype(np.float64) for i in (a, b))
        (x, y), peak = cv2.phaseCorrelate(one - one.mean(), other - other.mean(), window)
        found.append({'from': a, 'to': b, 'x': x, 'y': y, 'peak': peak})
    return {'clip': name, 'left': left, 'top': top, 'side': side, 'shifts': found}


def way():
    clip = frames('cup.mp4', 'y')
    sheet = clip[0][385:455, 235:350]
    found = []
    for i in (12, 96, 108, 132, 144, 156, 168):
        scores = cv2.matchTemplate(clip[i][355:480, 195:400], sheet, cv2.TM_CCOEFF_NORMED)
        _, score, _, (x, y) = cv2.minMaxLoc(scores)
        found.append({'frame': i, 'x': x - 40, 'y': y - 30, 'score': score})
    return found


def depths(name, plane, rates):
    series = np.log(frames(name, plane).reshape(-1, 320 * 240 if name == 'tree.avi' else 640 * 480).mean(axis=1))
    n = len(series)
    i = np.arange(n)
    weights = np.sin(np.pi * (i + 0.5) / n) ** 2
    x = 2 * i / (n - 1) - 1
    found = []
    for rate in rates:
        turn = 2 * np.pi * rate * i / RATE
        columns = np.stack([x**k for k in range(5)] + [np.cos(turn), np.sin(turn)], axis=1)
        root = np.sqrt(weights)
        fit = np.linalg.lstsq(columns * root[:, None], series * root, rcond=None)[0]
        found.append({'rate_Hz': rate, 'amplitude': float(np.hypot(fit[5], fit[6]))})
    trend = np.polynomial.polynomial.polyval(x, np.polynomial.polynomial.polyfit(x, series, 4, w=np.sqrt(weights)))
    rates_Hz, power = signal.periodogram(series - trend, RATE, window='hann', nfft=8192)
    inner = rates_Hz > 5
    return {'clip': name, 'means': series[:3].tolist(), 'waves': found, 'top_Hz': float(rates_Hz[inner][np.argmax(power[inner])])}


print(json.dumps({
    'opencv': cv2.__version__, 'numpy': np.__version__, 'scipy': scipy.__version__,
    'shifts': [
        shifts('tree.avi', 'g', 60, 60, 128, [(0, 1), (1, 2), (5, 6), (10, 12), (20, 24), (40, 41)]),
        shifts('box.mp4', 'y', 190, 160, 128, [(0, 5), (5, 10), (10, 15), (420, 440)]),
        shifts('cup.mp4', 'y', 230, 352, 128, [(0, 6), (0, 12), (96, 108), (108, 144), (144, 168)]),
    ],
    'way': way(),
    'depths': [depths('box.mp4', 'y', [60.5, 123.4, 230, 400.2]), depths('cup.mp4', 'y', [60.5, 123.4, 230, 400.2]),
               depths('tree.avi', 'g', [80, 123.4, 230, 400.2])],
}, indent=2))
