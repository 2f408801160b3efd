"""Prints weight-model-vectors.json: the session model of weight in its covariance form, by NumPy and SciPy.

The core solves normal equations with a prior on the gains. Here nothing is solved for: the weighings are one normal
vector whose covariance holds gains, scatter and their own uncertainty, with a flat level; the rest is conditioning.

    python3 tests/oracle/make-weight-model-vectors.py > tests/oracle/weight-model-vectors.json
    npx biome format --write tests/oracle/weight-model-vectors.json
"""

import json

import numpy as np
import scipy
from scipy import linalg

GAIN, TYPICAL, LOG_SD, LEAST, MOST, STEPS = 0.005, 0.0005, 0.8, 0.0001, 0.006, 25


def at_scatter(tau, y, u, shares, scatters, new):
    """Log evidence, prediction of a new standing and gains at one scatter."""
    own = np.diag(u**2 + np.where(scatters, tau**2, 0.0))
    covariance = GAIN**2 * shares @ shares.T + own
    factor = linalg.cho_factor(covariance, lower=True)
    ones = np.ones(len(y))
    weights = linalg.cho_solve(factor, ones)
    precision = ones @ weights
    level = weights @ y / precision
    residual = y - level
    solved = linalg.cho_solve(factor, residual)
    evidence = -0.5 * (2 * np.log(np.diag(factor[0])).sum() + np.log(precision) + residual @ solved)
    # Gains and the new standing, conditioned on the weighings; the level's own doubt is added (universal kriging).
    cross = GAIN**2 * shares.T
    gains = cross @ solved
    gain_cov = (
        GAIN**2 * np.eye(shares.shape[1])
        - cross @ linalg.cho_solve(factor, cross.T)
        + np.outer(cross @ weights, cross @ weights) / precision
    )
    k = GAIN**2 * shares @ new
    left = 1 - k @ weights
    mean = level + k @ solved
    variance = GAIN**2 * new @ new - k @ linalg.cho_solve(factor, k) + left**2 / precision + tau**2
    return evidence, mean, variance, gains, gain_cov


def model(y, u, shares, scatters, new):
    taus = LEAST * (MOST / LEAST) ** (np.arange(STEPS) / (STEPS - 1))
    each = [at_scatter(tau, y, u, shares, scatters, new) for tau in taus]
    logs = np.array([e[0] for e in each]) - 0.5 * (np.log(taus / TYPICAL) / LOG_SD) ** 2
    parts = np.exp(logs - logs.max())
    parts /= parts.sum()
    mean = sum(p * e[1] for p, e in zip(parts, each))
    variance = sum(p * (e[2] + (e[1] - mean) ** 2) for p, e in zip(parts, each))
    gains = sum(p * e[3] for p, e in zip(parts, each))
    gain_cov = sum(p * (e[4] + np.outer(e[3] - gains, e[3] - gains)) for p, e in zip(parts, each))
    return mean, variance, gains, gain_cov


def cases():
    left, right, both = [1, 0], [0, 1], [0.47, 0.53]
    yield "three a leg", [left] * 3 + [right] * 3, [True] * 6
    yield "one a leg", [left, right], [True, True]
    yield "two legs and one", [both] * 4 + [left] * 2, [True] * 6
    yield "two legs alone", [both] * 4, [True] * 4
    yield "with an entered mass", [left] * 3 + [right] * 2 + [[0, 0]], [True] * 5 + [False]
    yield "three plates", [[1, 0, 0]] * 2 + [[0, 1, 0]] * 2 + [[0, 0.5, 0.5]] * 3, [True] * 7


def main():
    noise = np.random.Generator(np.random.PCG64(13))
    out = []
    for name, shares, scatters in cases():
        shares, scatters = np.array(shares, float), np.array(scatters)
        u = np.where(scatters, 10 ** noise.uniform(-4, -2.7, len(shares)), 0.007)
        gains = noise.normal(0, GAIN, shares.shape[1])
        y = np.log(700) + shares @ gains + noise.normal(0, 0.0004, len(shares)) + u * noise.normal(0, 1, len(shares))
        new = shares[0]
        mean, variance, found, cov = model(y, u, shares, scatters, new)
        rest = slice(1, None)
        loo = model(y[rest], u[rest], shares[rest], scatters[rest], new)
        out.append(
            {
                "name": name,
                "rows": [
                    {"logWeight": a, "uncertainty": b, "shares": list(c), "scatters": bool(d)}
                    for a, b, c, d in zip(y, u, shares, scatters)
                ],
                "predicted": {"logWeight": mean, "variance": variance},
                "leavingOutFirst": {"logWeight": loo[0], "variance": loo[1]},
                "gains": list(found),
                "gainCovariance": [list(row) for row in cov],
            }
        )
    print(json.dumps({"from": "make-weight-model-vectors.py", "scipy": scipy.__version__, "cases": out}, indent=2))


main()
