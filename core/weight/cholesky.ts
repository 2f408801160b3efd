/** A symmetric matrix as rows; only small ones are meant. */
export type Matrix = readonly (readonly number[])[];

/**
 * The lower triangle L with L·Lᵀ = `matrix`, in a fixed order of operations so that results are the same bit for bit.
 * @returns undefined where the matrix is not positive definite
 */
export function cholesky(matrix: Matrix): Matrix | undefined {
  const lower: number[][] = [];
  for (const [row, entries] of matrix.entries()) {
    const own: number[] = [];
    for (let column = 0; column <= row; column += 1) {
      const above = lower[column] ?? own;
      let sum = entries[column]!;
      for (let index = 0; index < column; index += 1) sum -= own[index]! * above[index]!;
      if (column < row) own.push(sum / above[column]!);
      else if (sum > 0) own.push(Math.sqrt(sum));
      else return undefined;
    }
    lower.push(own);
  }
  return lower;
}

/** x with L·Lᵀ·x = `right`. */
export function solveCholesky(lower: Matrix, right: readonly number[]): readonly number[] {
  const size = lower.length;
  const forward: number[] = [];
  for (let row = 0; row < size; row += 1) {
    let sum = right[row]!;
    for (let index = 0; index < row; index += 1) sum -= lower[row]![index]! * forward[index]!;
    forward.push(sum / lower[row]![row]!);
  }
  const solution = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = forward[row]!;
    for (let index = row + 1; index < size; index += 1) sum -= lower[index]![row]! * solution[index]!;
    solution[row] = sum / lower[row]![row]!;
  }
  return solution;
}

/** The inverse of L·Lᵀ. */
export function inverseCholesky(lower: Matrix): Matrix {
  return lower.map((_, column) =>
    solveCholesky(
      lower,
      lower.map((__, row) => (row === column ? 1 : 0)),
    ),
  );
}

/** Natural logarithm of the determinant of L·Lᵀ. */
export function logDeterminant(lower: Matrix): number {
  return 2 * lower.reduce((sum, row, index) => sum + Math.log(row[index]!), 0);
}
