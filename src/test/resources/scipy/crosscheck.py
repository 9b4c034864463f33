#!/usr/bin/env python3
"""Write small tables of reference values for Sagbook's numerics, computed with SciPy.

Each table holds its input beside SciPy's answers, so a test needs nothing else; README.md beside
this script says what the columns mean. Numbers are written so that reading them back gives the
same double. Nothing is random but for one seeded generator.

Versions: Python 3.11.7, numpy 2.4.6, scipy 1.17.1, pybamm 26.10.1.1.

How to run:
    python3 -m venv venv
    venv/bin/pip install numpy==2.4.6 scipy==1.17.1 pybamm==26.10.1.1
    venv/bin/python crosscheck.py
"""

from pathlib import Path

import numpy as np
import pybamm
from pybamm.input.parameters.lithium_ion import Ai2020, Chen2020, NCA_Kim2011, Prada2013
from scipy import interpolate, linalg, optimize, stats

OUT = Path(__file__).resolve().parent


def write(name, header, rows):
    lines = [header]
    for row in rows:
        lines.append(",".join(v if isinstance(v, str) else repr(float(v)) for v in row))
    (OUT / name).write_text("\n".join(lines) + "\n", encoding="ascii")


# --- summaries -------------------------------------------------------------------------------

SERIES = {
    "odd": [3.2, -1.5, 0.0, 8.75, 2.25],
    "even": [10.0, 20.0, 30.0, 40.5],
    "ties": [5.0, 5.0, 5.0, 6.0, 5.0, 9.0, 5.0],
    "wild": [0.851, 0.849, 0.853, 0.858, 0.855, 85.5, 0.862, 0.860, -40.0, 0.866, 0.864],
    "volts": [3.3312, 3.3308, 3.3315, 3.3302, 3.3309, 3.3311, 3.3307, 3.2991],
    "one": [7.0],
}  # fmt: skip
LEVELS = [0, 0.025, 0.1, 0.25, 0.5, 0.75, 0.9, 0.975, 1]


def summaries():
    rows = []
    for name, values in SERIES.items():
        y = np.array(values)
        rows += [(name, "data", "", v) for v in y]
        rows += [(name, "quantile", p, np.quantile(y, p, method="linear")) for p in LEVELS]
        rows.append((name, "spread", "", stats.median_abs_deviation(y, scale="normal")))
        if len(y) > 1:
            rows.append((name, "sd_of_mean", "", stats.sem(y)))
    write("summaries.csv", "series,kind,p,value", rows)


# --- weighted least squares with priors ------------------------------------------------------


def least_squares_cases():
    generator = np.random.default_rng(20261125)
    cases = {}
    x = np.column_stack([np.ones(12), np.linspace(-40, 40, 12)])
    y = 0.3 + 0.86 * x[:, 1] + 1.3 * generator.standard_normal(12)
    cases["line"] = (x, y, np.full(12, 1.3**-2), [])
    # columns of very different size: a constant in V, an Ah shift, a resistance in ohm
    x = generator.standard_normal((25, 4)) * np.array([1, 1e-4, 120, 3e3])
    y = x @ np.array([0.02, 14.0, 2.5e-4, -1e-6]) + 1e-3 * generator.standard_normal(25)
    cases["sizes"] = (x, y, 10 ** generator.uniform(5, 7, 25), [])
    # fewer observations than parameters: the priors decide
    x = generator.standard_normal((3, 5))
    y = generator.standard_normal(3)
    priors = [(k, 0.1 * k, 0.5 + 0.1 * k) for k in range(5)]
    cases["priors"] = (x, y, np.array([4.0, 1.0, 0.25]), priors)
    # two columns almost alike
    x = generator.standard_normal((30, 3))
    x[:, 2] = x[:, 1] + 1e-3 * x[:, 2]
    y = x @ np.array([1.0, 2.0, -1.0]) + 0.01 * generator.standard_normal(30)
    cases["almost alike"] = (x, y, np.full(30, 1e4), [(2, 0.0, 10.0)])
    return cases


def linear():
    rows = []
    for name, (x, y, weight, priors) in least_squares_cases().items():
        n = x.shape[1]
        for row, value, w in zip(x, y, weight):
            rows.append((name, "observe", " ".join(repr(float(v)) for v in row), value, w))
        for k, mean, sd in priors:
            rows.append((name, "prior", str(k), mean, sd))
        root = np.sqrt(weight)
        a = np.vstack([x * root[:, None]] + [np.eye(n)[k] / sd for k, _, sd in priors])
        b = np.concatenate([y * root, [mean / sd for _, mean, sd in priors]])
        fit = optimize.lsq_linear(a, b, method="bvls", tol=1e-15)
        r = np.linalg.qr(a, mode="r")
        inverse = np.linalg.inv(r)
        sd = np.sqrt(np.sum(inverse**2, axis=1))
        rows += [(name, "answer", str(k), fit.x[k], sd[k]) for k in range(n)]
    write("linear.csv", "case,kind,x,value,weight", rows)


# --- lines with errors in both variables and curves ------------------------------------------

# Steps of current (A) and of voltage (mV), both read with error.
STEPS = (
    [-38.83, -30.67, -26.92, -17.65, -11.58, -5.23, 4.41, 9.68, 16.43, 24.79, 33.06, 39.29],
    [-34.11, -25.02, -24.29, -13.22, -10.55, -5.10, 5.62, 7.62, 15.90, 20.19, 29.99, 33.29],
    0.6,
    1.3,
)


def line_of_least(x, y, sx, sy, near):
    """Root of the derivative of sum (y - a - b x)^2 / (sy^2 + b^2 sx^2), to about 14 digits."""

    def intercept(b):
        w = 1 / (sy**2 + (b * sx) ** 2)
        return np.sum(w * (y - b * x)) / np.sum(w)

    def half_derivative(b):
        w = 1 / (sy**2 + (b * sx) ** 2)
        r = y - intercept(b) - b * x
        return -np.sum(w * r * x) - b * np.sum((w * r * sx) ** 2)

    slope = optimize.brentq(half_derivative, near - 0.01, near + 0.01, xtol=1e-15, rtol=1e-15)
    return slope, intercept(slope)


def both_variables():
    x, y = np.array(STEPS[0]), np.array(STEPS[1])
    sx, sy = np.full(len(x), STEPS[2]), np.full(len(x), STEPS[3])
    rows = [("data", *row) for row in zip(x, y, sx, sy)]
    slope, intercept = line_of_least(x, y, sx, sy, np.polyfit(x, y, 1)[0])
    rows.append(("answer", intercept, slope, "", ""))
    write("both_variables.csv", "kind,x,y,sx,sy", rows)


def open_circuit(p, q):
    """Full cell of Chen et al. 2020 from the package's own functions; charges in shares."""
    y = (p[0] - q) / p[1]
    x = (q - p[2]) / p[3]
    return number(Chen2020.nmc_LGM50_ocp_Chen2020, y) - number(
        Chen2020.graphite_LGM50_ocp_Chen2020, x
    ) + p[4]


def number(function, at):
    return np.array([float(np.squeeze(function(pybamm.Scalar(v)).evaluate())) for v in np.atleast_1d(at)])


def curve():
    generator = np.random.default_rng(7)
    q = np.linspace(0.05, 0.97, 60)
    true = np.array([1.45, 1.70, -0.03, 1.13, 0.002])
    volt = open_circuit(true, q) + 0.002 * generator.standard_normal(len(q))

    def residuals(p):
        return np.concatenate(
            [(open_circuit(p, q) - volt) / 0.002, [(p[1] / 1.7 - 1) / 0.06, p[4] / 0.006]]
        )

    fit = optimize.least_squares(
        residuals, [1.40, 1.65, 0.0, 1.10, 0.0], xtol=1e-14, ftol=1e-14, gtol=1e-14, jac="3-point"
    )
    covariance = np.linalg.inv(fit.jac.T @ fit.jac)
    rows = [("data", a, b, "") for a, b in zip(q, volt)]
    rows += [("answer", k, v, s) for k, (v, s) in enumerate(zip(fit.x, covariance.diagonal() ** 0.5))]
    write("curve.csv", "kind,place,value,sd", rows)


# --- half cells ------------------------------------------------------------------------------


def safari_delacourt_lfp(y):
    """J. Electrochem. Soc. 158 (2011) A562; not in the package, so written out."""
    return (
        3.4323
        - 0.8428 * np.exp(-80.2493 * (1 - y) ** 1.3198)
        - 3.2474e-6 * np.exp(20.2645 * (1 - y) ** 3.8003)
        + 3.2482e-6 * np.exp(20.2646 * (1 - y) ** 3.7995)
    )


def safari_delacourt_graphite(x):
    return (
        0.6379
        + 0.5416 * np.exp(-305.5309 * x)
        + 0.044 * np.tanh(-(x - 0.1958) / 0.1088)
        - 0.1978 * np.tanh((x - 1.0571) / 0.0854)
        - 0.6875 * np.tanh((x + 0.0117) / 0.0529)
        - 0.0175 * np.tanh((x - 0.5692) / 0.0875)
    )


def about_energy_nmc(y):
    """Example parameters for the Battery Parameter eXchange, December 2022; written out."""
    return (
        -3.04420906 * y
        + 10.04892207
        - 0.65637536 * np.tanh(-4.02134095 * (y - 0.80063948))
        + 4.24678547 * np.tanh(12.17805062 * (y - 7.57659337))
        - 0.3757068 * np.tanh(59.33067782 * (y - 0.99784492))
    )


def about_energy_graphite(x):
    return (
        9.47057878e-01 * np.exp(-1.59418743e02 * x)
        - 3.50928033e04
        + 1.64230269e-01 * np.tanh(-4.55509094e01 * (x - 3.24116012e-02))
        + 3.69968491e-02 * np.tanh(-1.96718868e01 * (x - 1.68334476e-01))
        + 1.91517003e04 * np.tanh(3.19648312e00 * (x - 1.85139824e00))
        + 5.42448511e04 * np.tanh(-3.19009848e00 * (x - 2.01660395e00))
    )


def half_cells():
    share = np.linspace(0.02, 0.98, 49)
    measured = share[share >= 0.42]
    electrodes = {
        ("AFSHAR_CHEN", "positive"): number(Prada2013.LFP_ocp_Afshar2017, share),
        ("AFSHAR_CHEN", "negative"): number(Chen2020.graphite_LGM50_ocp_Chen2020, share),
        ("NMC_CHEN", "positive"): number(Chen2020.nmc_LGM50_ocp_Chen2020, share),
        ("NMC_CHEN", "negative"): number(Chen2020.graphite_LGM50_ocp_Chen2020, share),
        ("SAFARI_DELACOURT", "positive"): safari_delacourt_lfp(share),
        ("SAFARI_DELACOURT", "negative"): safari_delacourt_graphite(share),
        ("NMC_ABOUT_ENERGY", "positive"): about_energy_nmc(share),
        ("NMC_ABOUT_ENERGY", "negative"): about_energy_graphite(share),
        ("NCA_KIM", "positive"): number(NCA_Kim2011.nca_ocp_Kim2011, share),
        ("NCA_KIM", "negative"): number(NCA_Kim2011.graphite_ocp_Kim2011, share),
        ("LCO_AI", "positive"): number(Ai2020.lico2_ocp_Ai2020, measured),
        ("LCO_AI", "negative"): number(Ai2020.graphite_ocp_Enertech_Ai2020, share),
    }
    rows = []
    for (pair, electrode), volt in electrodes.items():
        rows += [(pair, electrode, s, v) for s, v in zip(share[-len(volt) :], volt)]
    write("half_cells.csv", "pair,electrode,share,volt", rows)


# --- interpolation ---------------------------------------------------------------------------


def even_table():
    values = [2.5, 3.0, 3.16, 3.22, 3.26, 3.29, 3.30, 3.325, 3.333, 3.345, 3.65]
    straight = interpolate.make_interp_spline(np.linspace(0, 1, 11), values, k=1)
    place = np.concatenate([np.linspace(-0.2, 1.2, 57), [1 / 3, 2 / 3]])
    rows = [("data", k / 10, v) for k, v in enumerate(values)]
    rows += [("value", q, v) for q, v in zip(place, straight(place, extrapolate=True))]
    write("even_table.csv", "kind,place,value", rows)


PCHIP_CURVES = {
    "two points": ([0, 2], [1, 5]),
    "three points": ([0, 1, 3], [0, 2, 3]),
    "step": ([0, 1, 2, 3, 4, 5], [0, 0, 0, 1, 1, 1]),
    "uneven": ([0, 0.1, 0.5, 2, 2.2, 6], [0, 1, 1.2, 4, 9, 9.5]),
    "rest voltage": (
        [0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.75, 0.9, 0.97, 1],
        [2.5, 2.78, 3.0, 3.16, 3.22, 3.26, 3.29, 3.3, 3.325, 3.333, 3.345, 3.65],
    ),
}


def pchip():
    rows = []
    for name, (x, y) in PCHIP_CURVES.items():
        x, y = np.array(x, dtype=float), np.array(y, dtype=float)
        curve = interpolate.PchipInterpolator(x, y)
        rows += [(name, "data", a, b) for a, b in zip(x, y)]
        inside = [a + f * (b - a) for a, b in zip(x, x[1:]) for f in (0.25, 0.5, 0.9)]
        rows += [(name, "value", q, curve(q)) for q in sorted(set(x) | set(inside))]
    write("pchip.csv", "series,kind,x,y", rows)


def normal():
    write("normal.csv", "p,quantile", [(p, stats.norm.ppf(p)) for p in (0.025, 0.5, 0.975)])


def student():
    rows = []
    for level in (0.95, 0.99):
        rows += [(level, f, stats.t.ppf((1 + level) / 2, f)) for f in (1, 2, 5, 9, 11, 16, 30, 200)]
        rows.append((level, "inf", stats.norm.ppf((1 + level) / 2)))
    write("student.csv", "level,degrees_of_freedom,factor", rows)


# --- what wanders ------------------------------------------------------------------------------


def wander():
    """Mean of a Gaussian process with an exponential covariance, by one dense solve."""
    rng = np.random.default_rng(4)
    sd, kept_for, noise_sd = 1.7, 4.5, 0.4
    time = np.cumsum(rng.choice([0.02, 0.3, 2.5], 40))
    gain = rng.choice([0.0, 0.2, 1.5], 40)
    covariance = sd**2 * np.exp(-np.abs(time[:, None] - time[None, :]) / kept_for)
    truth = np.linalg.cholesky(covariance) @ rng.normal(size=40)
    observed = gain * truth + noise_sd * rng.normal(size=40)
    observed[7:11] = np.nan
    seen = ~np.isnan(observed)
    design = np.diag(gain)[seen]
    of = design @ covariance @ design.T + noise_sd**2 * np.eye(seen.sum())
    mean = covariance @ design.T @ linalg.solve(of, observed[seen], assume_a="pos")
    write("wander.csv", "time,observed,gain,mean", zip(time, observed, gain, mean))


if __name__ == "__main__":
    summaries()
    linear()
    both_variables()
    curve()
    half_cells()
    even_table()
    pchip()
    normal()
    student()
    wander()
