"""Quantiles of chi-square and of Student's t by scipy. Prints what fewTakesCheck.json holds:
python3 test/footage/fewTakesCheck.py
"""
import json
import scipy
from scipy import stats

print(json.dumps({
    'scipy': scipy.__version__,
    'chiSquare': [[p, n, float(stats.chi2.ppf(p, n))] for n in (1, 2, 4, 7, 12, 29, 101) for p in (0.001, 0.1, 0.5, 0.95, 0.999)],
    'student': [[p, n, float(stats.t.ppf(p, n))] for n in (1, 2, 3, 6, 11, 40, 101) for p in (0.2, 0.6, 0.9, 0.975, 0.9995)],
}))
