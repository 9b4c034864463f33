#!/usr/bin/env python3
"""Simulate the log of a house battery: eight LFP cells in series, with known faults.

What it does
    Each cell is a physics model (single particle model with electrolyte, SPMe) with the
    published parameter set "Prada2013", scaled to about 100 Ah. The eight cells differ as the
    table CELLS below says. All see one shared current, made by a small house: solar charging
    by day with clouds, appliances switched on and off, a charger that tapers on the highest
    cell, a cut-off on the lowest one. Time goes in steps of 10 s or a few of them, all eight
    cells together, so the charger and the cut-off act on the simulated voltages themselves.

    Two runs with the same cells: 12 days at 25 degC, and, some months later on the clock,
    4 days at 10 degC. Both are isothermal and both start from rest.

What it writes, into the folder it is in
    log_25c.csv.gz, log_10c.csv.gz   the logs
    truth.csv, truth_10c.csv         each cell's capacity, resistance, offset and finding
    resistance.csv                   resistance by temperature, charge and current
    pack.toml                        the description of the battery

Versions
    Python 3.11.7, pybamm 26.10.1.1, pybammsolvers 0.11.1, casadi 3.8.1, numpy 2.4.6,
    scipy 1.17.1. Nothing is random but two seeded generators (house, voltage noise), so
    the same versions give the same bytes.

How to run
    python3 -m venv venv
    venv/bin/pip install pybamm==26.10.1.1 pybammsolvers==0.11.1 casadi==3.8.1 \\
        numpy==2.4.6 scipy==1.17.1
    venv/bin/python simulate_string.py
"""

import gzip
import io
import math
import os
from dataclasses import dataclass
from datetime import datetime, timezone
from pathlib import Path

os.environ.setdefault("PYBAMM_DISABLE_TELEMETRY", "true")

import numpy as np
import pybamm
from scipy.optimize import brentq

pybamm.set_logging_level("ERROR")

OUT = Path(__file__).resolve().parent

# --- the cells -------------------------------------------------------------------------------

NOMINAL_AH = 100.0
PARALLEL_ELECTRODES = 45  # times 0.18 m2 in the parameter set: 8.1 m2, about 101.5 Ah
FULL_VOLT, EMPTY_VOLT = 3.65, 2.50  # rest voltages between which capacity is defined


@dataclass(frozen=True)
class Cell:
    """How one cell differs from the parameter set.

    size        factor on electrode width: on capacity, and inversely on resistance
    lithium     factor on the cyclable lithium, active material unchanged
    exchange    factor on the negative electrode's exchange-current density
    joint       resistance in series with the cell, inside its voltage taps, ohm
    offset      charge more (+) or less (-) than the string's median cell when that one is
                full, percent of nominal capacity
    """

    name: str
    finding: str
    size: float
    lithium: float
    exchange: float
    joint: float
    offset: float


CELLS = [
    #    name   finding            size   lithium exchange joint    offset
    Cell("v01", "healthy",         1.000, 1.00,   1.00,    0.00e-3, +0.1),
    Cell("v02", "healthy",         1.004, 1.00,   0.98,    0.00e-3, +0.0),
    Cell("v03", "low capacity",    1.000, 0.90,   1.00,    0.00e-3, +0.0),
    Cell("v04", "healthy",         0.995, 1.00,   1.02,    0.00e-3, -0.2),
    Cell("v05", "out of balance",  1.002, 1.00,   0.99,    0.00e-3, -5.0),
    Cell("v06", "high resistance", 0.998, 1.00,   0.68,    0.00e-3, +0.0),
    Cell("v07", "connection",      1.001, 1.00,   1.01,    0.34e-3, +0.2),
    Cell("v08", "healthy",         0.997, 1.00,   1.00,    0.00e-3, -0.1),
]  # fmt: skip

# --- the logs --------------------------------------------------------------------------------

CADENCE_S = 10
SAMPLES_PER_DAY = 86400 // CADENCE_S
NOISE_VOLT = 0.9e-3


@dataclass(frozen=True)
class Run:
    """One log. Per day: its sky, and whether a heater runs through the evening and night."""

    label: str
    celsius: float
    start: datetime
    seed: int
    days: tuple


RUN_25C = Run(
    "25c", 25.0, datetime(2025, 6, 2, tzinfo=timezone.utc), 20250602,
    (
        ("clear", False), ("broken", False), ("clear", True), ("clear", False),
        ("overcast", False), ("broken", False), ("clear", True), ("clear", False),
        ("broken", False), ("clear", True), ("clear", False), ("broken", False),
    ),
)  # fmt: skip
RUN_10C = Run(
    "10c", 10.0, datetime(2025, 10, 20, tzinfo=timezone.utc), 20251020,
    (("clear", True), ("clear", False), ("broken", True), ("clear", False)),
)  # fmt: skip

# --- the charger and the cut-off -------------------------------------------------------------

START_BELOW_FULL_AH = 45.0  # charge missing from the median cell at the first row
TAPER_VOLT = 3.58  # the charger aims the highest cell at this ...
TAPER_GAIN = 300.0  # ... with a current ceiling of this many ampere per volt below it
TAIL_AMPERE = 2.0  # charging ends when the ceiling has come down to this
RECHARGE_AH = 3.0  # and starts again when this much was drawn since
CUTOFF_VOLT = 2.80  # loads are switched off when the lowest cell is below this
RECONNECT_AH = 8.0  # and on again when this much was charged since


# --- one cell --------------------------------------------------------------------------------


def parameters(cell, celsius):
    """The published parameter set with this cell's differences."""
    values = pybamm.ParameterValues("Prada2013")
    kelvin = 273.15 + celsius
    published = values["Negative electrode exchange-current density [A.m-2]"]

    def exchange_current(c_e, c_s_surf, c_s_max, T):
        return cell.exchange * published(c_e, c_s_surf, c_s_max, T)

    values.update(
        {
            "Number of electrodes connected in parallel to make a cell": PARALLEL_ELECTRODES,
            "Electrode width [m]": cell.size * values["Electrode width [m]"],
            "Negative electrode exchange-current density [A.m-2]": exchange_current,
            "Contact resistance [Ohm]": cell.joint,
            "Nominal cell capacity [A.h]": NOMINAL_AH,
            "Reference temperature [K]": 298.15,
            "Ambient temperature [K]": kelvin,
            "Initial temperature [K]": kelvin,
            "Current function [A]": "[input]",
            "Open-circuit voltage at 0% SOC [V]": EMPTY_VOLT,
            "Open-circuit voltage at 100% SOC [V]": FULL_VOLT,
        }
    )
    return values


class Balance:
    """The electrode balance of a cell: which charge in the negative electrode is full, empty."""

    def __init__(self, cell):
        values = parameters(cell, 25.0)
        symbols = pybamm.LithiumIonParameters()
        self.q_negative = float(values.evaluate(symbols.n.Q_init))
        self.q_positive = float(values.evaluate(symbols.p.Q_init))
        self.q_lithium = cell.lithium * float(values.evaluate(symbols.Q_Li_particles_init))
        self._values = values
        self.full = brentq(lambda q: self.rest_voltage(q) - FULL_VOLT, 1.0, self.q_lithium - 1e-6)
        self.empty = brentq(lambda q: self.rest_voltage(q) - EMPTY_VOLT, 1e-3, self.full)
        self.capacity = self.full - self.empty
        self._check_against_package()

    def rest_voltage(self, q):
        """Open-circuit voltage with q Ah of lithium in the negative electrode."""
        x, y = self.stoichiometries(q)
        negative = self._values["Negative electrode OCP [V]"](pybamm.Scalar(x))
        positive = self._values["Positive electrode OCP [V]"](pybamm.Scalar(y))
        return float(self._values.evaluate(positive)) - float(self._values.evaluate(negative))

    def stoichiometries(self, q):
        return q / self.q_negative, (self.q_lithium - q) / self.q_positive

    def _check_against_package(self):
        """The package's own electrode state-of-health solver must find the same capacity."""
        solver = pybamm.lithium_ion.ElectrodeSOHSolver(self._values)
        solution = solver.solve(
            {"Q_n": self.q_negative, "Q_p": self.q_positive, "Q_Li": self.q_lithium}
        )
        package = self.q_negative * float(solution["x_100"] - solution["x_0"])
        if not math.isclose(package, self.capacity, rel_tol=1e-4):
            raise AssertionError(f"capacity {self.capacity} but the package finds {package}")


class SimulatedCell:
    """A cell at one temperature that can be stepped with a constant current."""

    def __init__(self, cell, balance, celsius, q_start):
        values = parameters(cell, celsius)
        x, y = balance.stoichiometries(q_start)
        c_n = "concentration in negative electrode [mol.m-3]"
        c_p = "concentration in positive electrode [mol.m-3]"
        values.update(
            {
                f"Initial {c_n}": x * values[f"Maximum {c_n}"],
                f"Initial {c_p}": y * values[f"Maximum {c_p}"],
            }
        )
        model = pybamm.lithium_ion.SPMe({"contact resistance": "true"})
        model.events = []  # the charger and the cut-off below keep the limits
        simulation = pybamm.Simulation(
            model,
            parameter_values=values,
            var_pts={"x_n": 10, "x_s": 10, "x_p": 10, "r_n": 40, "r_p": 40},
            solver=pybamm.IDAKLUSolver(rtol=1e-6, atol=1e-7),
        )
        simulation.build()
        self._model = simulation.built_model
        self._solver = simulation.solver
        self._solution = None

    def step(self, charge_ampere, seconds, at):
        """Voltages at the times `at` (first 0, last `seconds`) of a step from now on."""
        self._solution = self._solver.step(
            self._solution,
            self._model,
            float(seconds),
            t_eval=np.array([0.0, float(seconds)]),
            t_interp=np.array(at, dtype=float),
            inputs={"Current function [A]": -float(charge_ampere)},
            save=False,
        )
        return self._solution["Voltage [V]"].data


def pulse_resistance(cell, balance, celsius, charge=0.5, ampere=-20.0):
    """Resistance in milliohm 10, 30 and 60 s into a pulse from rest, at a share of charge."""
    start = balance.empty + charge * balance.capacity
    simulated = SimulatedCell(cell, balance, celsius, start)
    rest = simulated.step(0.0, 10, [0, 10])[-1]
    loaded = simulated.step(ampere, 60, [0, 10, 30, 60])
    return [float(1000 * (volt - rest) / ampere) for volt in loaded[1:]]


# --- the house -------------------------------------------------------------------------------


def seconds(hour, minute=0.0):
    return int(hour * 3600 + minute * 60)


def house(run):
    """Solar and appliance current for every 10 s of the run, both positive, ampere."""
    random = np.random.default_rng(run.seed)
    count = len(run.days) * SAMPLES_PER_DAY
    load = np.zeros(count)

    def switch_on(day, second, duration, ampere):
        first = day * SAMPLES_PER_DAY + round(second / CADENCE_S)
        last = first + max(1, round(duration / CADENCE_S))
        load[max(0, first) : min(count, last)] += ampere

    for day, (_, heater) in enumerate(run.days):
        base = random.uniform(1.0, 1.4)
        switch_on(day, 0, 86400, base)
        # morning: lights, kettle, toaster
        switch_on(day, seconds(6, random.uniform(0, 20)), seconds(1.2), random.uniform(1.8, 2.4))
        switch_on(day, seconds(6, random.uniform(25, 45)), random.uniform(180, 260), 39.6)
        switch_on(day, seconds(6, random.uniform(50, 60)), random.uniform(150, 210), 31.2)
        # midday: kettle, on some days the washing
        switch_on(day, seconds(12, random.uniform(0, 40)), random.uniform(150, 240), 39.6)
        if random.uniform() < 0.5:
            begin = seconds(9, random.uniform(0, 120))
            switch_on(day, begin, random.uniform(900, 1300), 34.4)
            switch_on(day, begin + 1400, 2400, 5.3)
        # evening: cooking on a ring that switches itself, kettle, lights, screen
        begin = seconds(18, random.uniform(0, 30))
        for _ in range(int(random.integers(8, 13))):
            on, off = random.uniform(50, 110), random.uniform(40, 120)
            switch_on(day, begin, on, 42.5)
            begin += on + off
        switch_on(day, seconds(19, random.uniform(30, 60)), random.uniform(180, 240), 39.6)
        switch_on(day, seconds(18, random.uniform(15, 45)), seconds(4.3), random.uniform(2.5, 3.2))
        switch_on(day, seconds(19, random.uniform(0, 40)), seconds(2.8), random.uniform(3.6, 4.4))
        if heater:  # through the night until the cut-off, with its thermostat
            begin = seconds(19, random.uniform(0, 20))
            while begin < seconds(32):
                on, off = random.uniform(900, 1500), random.uniform(240, 480)
                switch_on(day, begin, on, 6.9)
                begin += on + off

    second = 0.0
    while second < len(run.days) * 86400:  # fridge
        on, off = random.uniform(600, 1000), random.uniform(1500, 2300)
        switch_on(0, second, on, 4.4)
        second += on + off

    solar = np.zeros(count)
    sunrise, sunset, peak = seconds(5, 40), seconds(18, 20), 23.0
    for day, (sky, _) in enumerate(run.days):
        factor, left = 1.0, 0.0
        for second in range(sunrise, sunset, 60):
            if left <= 0:
                if sky == "clear":
                    factor = 0.7 if random.uniform() < 0.06 else 1.0
                    left = random.uniform(120, 300) if factor < 1 else random.uniform(600, 2400)
                elif sky == "broken":
                    factor = random.choice([1.05, 1.0, 0.7, 0.45, 0.3])
                    left = random.uniform(60, 480)
                else:
                    factor = random.uniform(0.18, 0.38)
                    left = random.uniform(400, 1200)
            left -= 60
            height = math.sin(math.pi * (second + 30 - sunrise) / (sunset - sunrise))
            ampere = peak * height**1.2 * factor * random.uniform(0.995, 1.005)
            first = day * SAMPLES_PER_DAY + second // CADENCE_S
            solar[first : first + 6] = ampere
    return solar, load


# --- the string ------------------------------------------------------------------------------


def simulate(run, balances):
    """True voltages and current of the whole run, one row each 10 s.

    Row k is the end of step k: its voltages are taken while its current has been flowing for
    at least 10 s, so a change of current between two rows is seen 10 s after the edge.
    """
    solar, load = house(run)
    count = len(solar)
    median_offset = float(np.median([cell.offset for cell in CELLS]))
    string = []
    for cell, balance in zip(CELLS, balances):
        missing = START_BELOW_FULL_AH - (cell.offset - median_offset) / 100 * NOMINAL_AH
        string.append(SimulatedCell(cell, balance, run.celsius, balance.full - missing))

    volts = np.empty((count, len(CELLS)))
    amperes = np.empty(count)
    highest = lowest = 3.3
    full = disconnected = False
    drawn = restored = 0.0
    full_times, cutoff_times = [], []
    index = 0
    while index < count:
        net = solar[index] - (0.0 if disconnected else load[index])
        ceiling = TAPER_GAIN * (TAPER_VOLT - highest)
        if net > 0 and not full and ceiling < min(net, TAIL_AMPERE):
            full, drawn = True, 0.0
            full_times.append(index)
        ampere = net if net <= 0 else 0.0 if full else min(net, ceiling)

        # as many samples in one step as the current stays the same and no limit is near
        if ampere > 0:
            longest = 1 if highest > 3.40 else 6
        elif ampere < 0:
            longest = 1 if lowest < 3.00 else 3 if lowest < 3.10 else 30
        else:
            longest = 30
        samples = 1
        while (
            samples < min(longest, count - index)
            and solar[index + samples] == solar[index]
            and load[index + samples] == load[index]
        ):
            samples += 1

        span = samples * CADENCE_S
        at = list(range(0, span + 1, CADENCE_S))
        for column, simulated in enumerate(string):
            volts[index : index + samples, column] = simulated.step(ampere, span, at)[1:]
        amperes[index : index + samples] = ampere
        index += samples

        highest, lowest = volts[index - 1].max(), volts[index - 1].min()
        moved = ampere * span / 3600
        if full:
            drawn -= moved
            full = drawn < RECHARGE_AH
        if disconnected:
            restored += moved
            disconnected = restored < RECONNECT_AH
        elif lowest < CUTOFF_VOLT and ampere < 0:
            disconnected, restored = True, 0.0
            cutoff_times.append(index)

    print(f"{run.label}: full at day+hour", [clock(i) for i in full_times])
    print(f"{run.label}: cut-off at day+hour", [clock(i) for i in cutoff_times])
    print(f"{run.label}: highest {volts.max():.3f} V, lowest {volts.min():.3f} V")
    error = float((np.round(amperes, 1) - amperes).sum() * CADENCE_S / 3600)
    total = float(np.abs(amperes).sum() * CADENCE_S / 3600)
    print(f"{run.label}: {total:.1f} Ah moved, logged minus true {error:+.3f} Ah")
    return volts, amperes


def clock(index):
    day, sample = divmod(index, SAMPLES_PER_DAY)
    return f"{day + 1}+{sample * CADENCE_S / 3600:.2f}"


# --- the files -------------------------------------------------------------------------------


def write_log(run, volts, amperes):
    """The log as a meter writes it: noisy voltages to 1 mV, current to 0.1 A."""
    random = np.random.default_rng(run.seed + 1)
    read = volts + random.normal(0.0, NOISE_VOLT, volts.shape)
    cells = range(1, len(CELLS) + 1)
    text = io.StringIO()
    names = ["time"]
    names += [f"v{n:02d}" for n in cells] + ["current_a"] + [f"t{n:02d}" for n in cells]
    text.write(",".join(names) + "\n")
    start = int(run.start.timestamp())
    temperatures = ",".join([f"{run.celsius:.1f}"] * len(CELLS))
    for index in range(len(amperes)):
        row = ",".join(f"{volt:.3f}" for volt in read[index])
        ampere = f"{amperes[index] + 0.0:.1f}".replace("-0.0", "0.0")
        text.write(f"{start + index * CADENCE_S},{row},{ampere},{temperatures}\n")
    with open(OUT / f"log_{run.label}.csv.gz", "wb") as file:
        with gzip.GzipFile("", "wb", 9, file, mtime=0) as packed:  # as gzip -9 -n
            packed.write(text.getvalue().encode("ascii"))


def write_truth(name, balances, celsius):
    lines = ["cell,capacity_ah,r10_mohm,r30_mohm,r60_mohm,charge_offset_percent,finding"]
    for cell, balance in zip(CELLS, balances):
        r10, r30, r60 = pulse_resistance(cell, balance, celsius)
        lines.append(
            f"{cell.name},{balance.capacity:.3f},{r10:.4f},{r30:.4f},{r60:.4f},"
            f"{cell.offset:.1f},{cell.finding}"
        )
    (OUT / name).write_text("\n".join(lines) + "\n", encoding="ascii")
    print("\n".join([name] + lines))


def write_resistances(balances):
    """How resistance depends on temperature, charge, current and direction, for each cell."""
    lines = ["cell,temperature_c,charge_percent,current_a,r10_mohm,r30_mohm,r60_mohm"]
    for celsius in (RUN_25C.celsius, RUN_10C.celsius):
        for percent in (20, 50, 80):
            for ampere in (-40.0, -20.0, -10.0, 10.0, 20.0):
                for cell, balance in zip(CELLS, balances):
                    r = pulse_resistance(cell, balance, celsius, percent / 100, ampere)
                    lines.append(
                        f"{cell.name},{celsius:.0f},{percent},{ampere:.0f},"
                        f"{r[0]:.4f},{r[1]:.4f},{r[2]:.4f}"
                    )
    (OUT / "resistance.csv").write_text("\n".join(lines) + "\n", encoding="ascii")


def write_pack():
    lines = [
        "[pack]",
        'name = "Simulated string"',
        'chemistry = "lfp"',
        f"series_cells = {len(CELLS)}",
        f"nominal_capacity_ah = {NOMINAL_AH:.0f}",
        'timezone = "Etc/UTC"',
    ]
    (OUT / "pack.toml").write_text("\n".join(lines) + "\n", encoding="ascii")


def main():
    balances = [Balance(cell) for cell in CELLS]
    write_pack()
    write_truth("truth.csv", balances, RUN_25C.celsius)
    write_truth("truth_10c.csv", balances, RUN_10C.celsius)
    write_resistances(balances)
    for run in (RUN_25C, RUN_10C):
        write_log(run, *simulate(run, balances))


if __name__ == "__main__":
    main()
