#!/usr/bin/env python3
"""Rates of measured calendar ageing, for MeasuredAgeingTest; see README.md.

Input: M. Naumann, Mendeley Data 10.17632/kxh42bfgtj.1, CC BY 4.0 (Naumann et al. 2018, J. Energy
Storage 17, 153): 17 conditions, 35 check-ups each, means of three cells. The check-ups are dated
as if the first had begun on 1 May 2025 and each taken an hour. Where ten or more pairs of the same
calendar month in different years exist, their median slope (months averaged first), else
scipy.stats.theilslopes. Per cent of the line's first value a year.

How to run: python3 ageing.py PATH/naumann_sony_us26650_3ah.csv (scipy 1.17.1)
"""

import csv
import sys
from collections import defaultdict
from datetime import datetime, timedelta
from pathlib import Path

import numpy as np
from scipy import stats

START = datetime(2025, 5, 1, 0, 30)


def percent_a_year(t, y):
    months = defaultdict(list)
    for at, value in zip(t, y):
        when = START + timedelta(days=365.25 * at)
        months[when.year, when.month].append((at, value))
    mean = [(month, *np.mean(points, axis=0)) for (_, month), points in sorted(months.items())]
    slopes = [
        (b[2] - a[2]) / (b[1] - a[1])
        for i, a in enumerate(mean)
        for b in mean[i + 1 :]
        if a[0] == b[0]
    ]
    if len(slopes) >= 10:
        slope = np.median(slopes)
        t, y = [m[1] for m in mean], [m[2] for m in mean]
    else:
        slope = stats.theilslopes(y, t).slope
    return 100 * slope / (np.median(y) - slope * np.median(t))


cells = defaultdict(list)
with open(sys.argv[1], encoding="ascii") as file:
    for row in csv.DictReader(file):
        cells[row["condition_id"]].append(
            [float(row[k]) for k in ("elapsed_days", "capacity_ah", "resistance_dc_ohm")]
        )
lines = ["condition,check_ups,capacity_percent_a_year,resistance_percent_a_year"]
for name, rows in cells.items():
    for n in (18, len(rows)):
        days, capacity, resistance = np.array(rows[:n]).T
        rates = [percent_a_year(days / 365.25, y) for y in (capacity, resistance)]
        lines.append(f"{name.removeprefix('NAUMANN_CAL_')},{n},{rates[0]:.6f},{rates[1]:.6f}")
Path(__file__).with_suffix(".csv").write_text("\n".join(lines) + "\n", encoding="ascii")
