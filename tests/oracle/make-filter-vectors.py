"""Prints filter-vectors.json: what SciPy makes of some signals with the zero-lag filter's own section.

    python3 tests/oracle/make-filter-vectors.py > tests/oracle/filter-vectors.json
    npx biome format --write tests/oracle/filter-vectors.json
"""

import json

import numpy as np
import scipy
from scipy import signal

PADDING = 9


def single_pass_cutoff(rate_hz, cutoff_hz):
    """Cut-off for one of two passes, corrected on the warped frequency (Winter 2009, p 69)."""
    correction = (2 ** (1 / 2) - 1) ** 0.25
    return rate_hz / np.pi * np.arctan(np.tan(np.pi * cutoff_hz / rate_hz) / correction)


def signals():
    """Name, rate in hertz, cut-off in hertz, values."""
    noise = np.random.Generator(np.random.PCG64(7))
    time = np.arange(400) / 1000
    yield "constant", 1000, 50, np.full(60, 686.465)
    yield "ramp", 1000, 50, 3.0 * np.arange(60)
    yield "step", 1000, 50, np.where(np.arange(120) < 60, 0.0, 700.0)
    yield "noise around standing", 1000, 50, 700 + noise.normal(0, 5, 200)
    yield "jump-like", 1000, 50, np.maximum(0, 700 + 900 * np.sin(2 * np.pi * 3 * time)) + noise.normal(0, 1.5, 400)
    yield "low cut-off", 2000, 20, 700 + 300 * np.sin(2 * np.pi * 2 * np.arange(300) / 2000)
    yield "near half the rate", 200, 90, noise.normal(0, 100, 80)
    yield "ten samples", 1000, 50, noise.normal(0, 100, 10)
    yield "four samples", 1000, 50, noise.normal(0, 100, 4)


def main():
    cases = []
    for name, rate_hz, cutoff_hz, values in signals():
        sos = signal.butter(2, single_pass_cutoff(rate_hz, cutoff_hz), fs=rate_hz, output="sos")
        padding = min(PADDING, len(values) - 1)
        filtered = signal.sosfiltfilt(sos, values, padtype="odd", padlen=padding)
        cases.append(
            {
                "name": name,
                "rateHz": rate_hz,
                "cutoffHz": cutoff_hz,
                "section": sos[0].tolist(),
                "input": values.tolist(),
                "expected": filtered.tolist(),
            }
        )
    document = {
        "from": "scipy.signal.sosfiltfilt(scipy.signal.butter(2, corrected, fs=rate, output='sos'), x, "
        "padtype='odd', padlen=min(9, n - 1))",
        "scipy": scipy.__version__,
        "numpy": np.__version__,
        "cases": cases,
    }
    print(json.dumps(document, indent=1))


main()
