"""Prints integration-vectors.json: what SciPy makes of the integrals of some forces joined by straight lines.

    python3 tests/oracle/make-integration-vectors.py > tests/oracle/integration-vectors.json
    npx biome format --write tests/oracle/integration-vectors.json

Three routes that do not know of each other: the trapezoid rule (exact for straight lines), Simpson's rule over values
at samples and half-way between them (exact for parabolas), and the antiderivatives of a spline of degree one.
"""

import json

import numpy as np
import scipy
from scipy import integrate, interpolate

WEIGHT = 686.4655
GRAVITY = 9.80665


def forces():
    """Name, rate in hertz, newtons at the samples."""
    noise = np.random.Generator(np.random.PCG64(11))
    time = np.arange(180) / 500
    yield "constant", 1000, np.full(40, WEIGHT)
    yield "ramp", 1000, 25.0 * np.arange(50)
    yield "noise around standing", 1000, WEIGHT + noise.normal(0, 5, 120)
    yield "jump-like", 500, np.maximum(0, 700 + 900 * np.sin(2 * np.pi * 3 * time)) + noise.normal(0, 1.5, 180)
    yield "rough and fast", 2000, noise.uniform(0, 3000, 90)


def main():
    cases = []
    for name, rate_hz, force in forces():
        step = 1 / rate_hz
        time = np.arange(len(force)) * step
        spline = interpolate.make_interp_spline(time, force, k=1)
        once = spline.antiderivative()
        twice = spline.antiderivative(2)
        impulse = integrate.cumulative_trapezoid(force, dx=step, initial=0)
        # The impulse at samples and half-way, for Simpson's rule over each sample.
        halves = np.empty(2 * len(force) - 1)
        halves[::2] = impulse
        halves[1::2] = impulse[:-1] + (3 * force[:-1] + force[1:]) * step / 8
        double = [integrate.simpson(halves[: 2 * k + 1], dx=step / 2) if k > 0 else 0.0 for k in range(len(force))]
        # Fractional samples: velocity and position of W/g under the net force, from rest.
        samples = np.array([0.25, 0.5, 3.7, len(force) / 2 + 0.1, len(force) - 1.3])
        at = samples * step
        velocity = GRAVITY * (once(at) / WEIGHT - at)
        position = GRAVITY * (twice(at) / WEIGHT - at**2 / 2)
        cases.append(
            {
                "name": name,
                "rateHz": rate_hz,
                "force": force.tolist(),
                "impulse": impulse.tolist(),
                "doubleImpulse": [float(value) for value in double],
                "samples": samples.tolist(),
                "velocity": velocity.tolist(),
                "position": position.tolist(),
            }
        )
    document = {
        "from": "impulse: scipy.integrate.cumulative_trapezoid(force, dx=1/rate, initial=0); doubleImpulse: "
        "scipy.integrate.simpson of the impulse at samples and half-way; velocity and position at samples: "
        "scipy.interpolate.make_interp_spline(time, force, k=1).antiderivative(1 and 2)",
        "scipy": scipy.__version__,
        "numpy": np.__version__,
        "weightNewtons": WEIGHT,
        "gravity": GRAVITY,
        "cases": cases,
    }
    print(json.dumps(document, indent=1))


main()
