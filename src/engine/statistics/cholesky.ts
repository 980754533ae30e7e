/**
 * The triangular root of a symmetric matrix of which every direction is positive (A.-L. Cholesky; G. H.
 * Golub, C. F. Van Loan, "Matrix computations", 4.2). Matrices are square, row by row. O(side^3).
 */
export type Cholesky = { readonly side: number; readonly root: Float64Array };

/** Undefined where some direction is not clearly positive: at no maximum, or where nothing tells it. */
export function cholesky(matrix: Float64Array, side: number): Cholesky | undefined {
  const root = new Float64Array(side * side);
  for (let row = 0; row < side; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let left = matrix[row * side + column]!;
      for (let k = 0; k < column; k += 1) left -= root[row * side + k]! * root[column * side + k]!;
      if (row > column) root[row * side + column] = left / root[column * side + column]!;
      else if (left > 1e-12 * matrix[row * side + row]!) root[row * side + row] = Math.sqrt(left);
      else return undefined;
    }
  }
  return { side, root };
}

/** The x for which matrix times x is `right`. */
export function solved({ side, root }: Cholesky, right: Float64Array): Float64Array {
  const x = right.slice();
  for (let row = 0; row < side; row += 1) {
    for (let k = 0; k < row; k += 1) x[row]! -= root[row * side + k]! * x[k]!;
    x[row]! /= root[row * side + row]!;
  }
  for (let row = side - 1; row >= 0; row -= 1) {
    for (let k = row + 1; k < side; k += 1) x[row]! -= root[k * side + row]! * x[k]!;
    x[row]! /= root[row * side + row]!;
  }
  return x;
}

/** The inverse of the matrix. */
export function inverse(factor: Cholesky): Float64Array {
  const { side } = factor;
  const columns = new Float64Array(side * side);
  for (let at = 0; at < side; at += 1) {
    const unit = new Float64Array(side);
    unit[at] = 1;
    columns.set(solved(factor, unit), at * side);
  }
  return columns;
}
