import type { Settings } from "../settings/settings.ts";
import { cholesky, inverseCholesky, logDeterminant, type Matrix, solveCholesky } from "./cholesky.ts";

/** One weighing, or an entered mass, as the model takes it. */
export interface ModelRow {
  /** Natural logarithm of the weight in newtons. */
  readonly logWeight: number;
  /** Standard uncertainty of the weighing as a part of it. */
  readonly uncertainty: number;
  /** Part of the load on each plate of the session, in the model's order; all zero for an entered mass. */
  readonly shares: readonly number[];
  /** False for an entered mass: it is no standing, so the scatter between trials is not in it. */
  readonly scatters: boolean;
}

/** Logarithm of a weight as a plate, or several together, would read it, with its variance. */
export interface LogPrediction {
  readonly logWeight: number;
  readonly variance: number;
}

/** Gains of the session's plates: the logarithm of each and the covariance of all, from prior and standing together. */
export interface GainPosterior {
  readonly estimates: readonly number[];
  readonly covariance: Matrix;
}

/** The posterior at one scatter. */
interface Solved {
  readonly mean: readonly number[];
  readonly covariance: Matrix;
  readonly scatter: number;
  readonly logEvidence: number;
}

/**
 * Session model of weight (METHODS §2): ln M = ln W + Σ share·ln gain + e, with Var e = u² + τ². The gains have a normal
 * prior of `plateGainTolerance` and the scatter τ between trials a log-normal one, over which everything is averaged on a
 * fixed grid: a single best τ would make few trials look surer than they are. A gain common to all plates is never seen.
 */
export class SessionModel {
  readonly #rows: readonly ModelRow[];
  /** Logarithms are counted from here, so that their differences keep their digits. */
  readonly #origin: number;
  readonly #grid: readonly Solved[];

  /** @param rows at least one; each with as many shares as there are plates */
  constructor(rows: readonly ModelRow[], plates: number, settings: Settings) {
    this.#rows = rows;
    this.#origin = rows[0]?.logWeight ?? 0;
    const { weightScatterLeast: least, weightScatterMost: most } = settings;
    this.#grid = Array.from({ length: settings.weightScatterSteps }, (_, step) =>
      this.#solve(least * (most / least) ** (step / (settings.weightScatterSteps - 1)), plates, settings),
    );
  }

  /** The weight that plates loaded with these shares would read in one more trial. */
  predict(shares: readonly number[]): LogPrediction {
    const at = [1, ...shares];
    return this.#averaged(
      this.#grid.map(({ mean, covariance, scatter, logEvidence }) => ({
        logEvidence,
        value: dot(at, mean),
        variance: quadratic(covariance, at) + scatter ** 2,
      })),
    );
  }

  /**
   * What all other rows say about the weight of one row; there must be another. By the rank-one identity: the others
   * leave r/(1 − w·h) of its residual r and h/(1 − w·h) of its leverage h, and their evidence is that of all over the
   * density they give the row.
   */
  predictLeavingOut(index: number): LogPrediction {
    const row = this.#rows[index]!;
    const at = [1, ...row.shares];
    const value = row.logWeight - this.#origin;
    return this.#averaged(
      this.#grid.map(({ mean, covariance, scatter, logEvidence }) => {
        const own = varianceOf(row, scatter);
        const leverage = quadratic(covariance, at);
        const left = 1 - leverage / own;
        const residual = (value - dot(at, mean)) / left;
        const spread = leverage / left + own;
        return {
          logEvidence: logEvidence + (Math.log(spread) + residual ** 2 / spread) / 2,
          value: value - residual,
          variance: leverage / left + scatter ** 2,
        };
      }),
    );
  }

  /** Gains of the plates by all rows. */
  gains(): GainPosterior {
    const parts = partsOf(this.#grid);
    const mean = this.#grid[0]!.mean.map((_, index) =>
      sumOf(this.#grid, (each, step) => parts[step]! * each.mean[index]!),
    );
    const estimates = mean.slice(1);
    const covariance = estimates.map((own, row) =>
      estimates.map((other, column) =>
        sumOf(
          this.#grid,
          ({ mean: here, covariance: within }, step) =>
            parts[step]! * (within[row + 1]![column + 1]! + (here[row + 1]! - own) * (here[column + 1]! - other)),
        ),
      ),
    );
    return { estimates, covariance };
  }

  #averaged(
    steps: readonly { readonly logEvidence: number; readonly value: number; readonly variance: number }[],
  ): LogPrediction {
    const parts = partsOf(steps);
    const mean = sumOf(steps, ({ value }, step) => parts[step]! * value);
    const variance = sumOf(steps, (each, step) => parts[step]! * (each.variance + (each.value - mean) ** 2));
    return { logWeight: this.#origin + mean, variance };
  }

  /** Weighted least squares with the prior of the gains, at one scatter. */
  #solve(scatter: number, plates: number, settings: Settings): Solved {
    const size = plates + 1;
    const precision = Array.from({ length: size }, (_, row) =>
      Array.from({ length: size }, (__, column) => (row === column && row > 0 ? settings.plateGainTolerance ** -2 : 0)),
    );
    const right = new Array<number>(size).fill(0);
    let squares = 0;
    let logVariances = 0;
    for (const row of this.#rows) {
      const variance = varianceOf(row, scatter);
      const value = row.logWeight - this.#origin;
      const at = [1, ...row.shares];
      for (const [index, entry] of at.entries()) {
        right[index]! += (entry * value) / variance;
        for (const [other, factor] of at.entries()) precision[index]![other]! += (entry * factor) / variance;
      }
      squares += (value * value) / variance;
      logVariances += Math.log(variance);
    }
    const lower = cholesky(precision);
    if (lower === undefined) throw new RangeError("A session's weight needs at least one weighing.");
    const mean = solveCholesky(lower, right);
    const z = Math.log(scatter / settings.weightScatterTypical) / settings.weightScatterLogSd;
    const misfit = squares - dot(right, mean);
    return {
      mean,
      covariance: inverseCholesky(lower),
      scatter,
      logEvidence: -(z * z + logVariances + logDeterminant(lower) + misfit) / 2,
    };
  }
}

function varianceOf({ uncertainty, scatters }: ModelRow, scatter: number): number {
  return uncertainty ** 2 + (scatters ? scatter ** 2 : 0);
}

/** The part of each step in the whole. */
function partsOf(steps: readonly { readonly logEvidence: number }[]): readonly number[] {
  const most = Math.max(...steps.map((each) => each.logEvidence));
  const raw = steps.map((each) => Math.exp(each.logEvidence - most));
  const total = sumOf(raw, (each) => each);
  return raw.map((each) => each / total);
}

function dot(first: readonly number[], second: readonly number[]): number {
  return sumOf(first, (each, index) => each * second[index]!);
}

function quadratic(matrix: Matrix, at: readonly number[]): number {
  return dot(
    at,
    matrix.map((row) => dot(row, at)),
  );
}

function sumOf<Item>(items: readonly Item[], value: (item: Item, index: number) => number): number {
  return items.reduce((sum, each, index) => sum + value(each, index), 0);
}
