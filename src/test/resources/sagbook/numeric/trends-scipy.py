"""Makes trends-scipy.csv: random series with SciPy's Theil-Sen slope and exact Kendall p-value.

Run: python3 trends-scipy.py > trends-scipy.csv
"""
import numpy as np
import scipy
from scipy import stats

print(f"# times,values,theilslopes slope,kendalltau exact p; SciPy {scipy.__version__}")
rng = np.random.default_rng(20261125)
for n in (2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 12):
    t = np.round(np.sort(rng.uniform(0, 900, n)), 3)
    y = np.round(rng.normal(280, 5, n) - 0.02 * t, 6)
    slope = stats.theilslopes(y, t).slope
    p = stats.kendalltau(t, y, method="exact").pvalue
    print(",".join([" ".join(map(repr, t.tolist())), " ".join(map(repr, y.tolist())),
                    repr(float(slope)), repr(float(p))]))
