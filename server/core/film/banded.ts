// Owns the direct solution of a symmetric, positive definite system whose rows couple only to near neighbours.
// Knows nothing of films: the rows are numbered by its caller so that the band is narrow.

/** The lower band of a symmetric matrix: entry (row, row − offset) stands at row·(band + 1) + offset. */
export interface SymmetricBand {
  readonly rows: number;
  /** The largest distance of a coupled neighbour. */
  readonly band: number;
  readonly entries: Float64Array;
}

/** A matrix of zeros, to be filled in. */
export function emptyBand(rows: number, band: number): SymmetricBand {
  return { rows, band, entries: new Float64Array(rows * (band + 1)) };
}

/**
 * Solves A·x = b by the root-free Cholesky factors L·D·Lᵀ of a banded matrix (rows·band² operations). Writes the
 * factors over the matrix and the answer over `b`. False, with both spoiled, where the matrix isn't positive
 * definite. Source: the factorisation's definition.
 */
export function solveInPlace(matrix: SymmetricBand, b: Float64Array): boolean {
  const { rows, band, entries } = matrix;
  const width = band + 1;
  for (let row = 0; row < rows; row++) {
    const start = Math.max(0, row - band);
    const base = row * width + row; // entry (row, column) stands at base − column
    for (let column = start; column < row; column++) {
      const other = column * width + column;
      let sum = at(entries, base - column);
      for (let k = Math.max(start, column - band); k < column; k++)
        sum -= at(entries, base - k) * at(entries, other - k);
      // holds L·D of this row until the row is finished, so that each product above is taken once
      entries[base - column] = sum;
    }
    let pivot = at(entries, base - row);
    for (let column = start; column < row; column++) {
      const scaled = at(entries, base - column);
      const factor = scaled / at(entries, column * width);
      pivot -= scaled * factor;
      entries[base - column] = factor;
    }
    if (!(0 < pivot)) return false;
    entries[base - row] = pivot;
  }
  for (let row = 0; row < rows; row++) {
    let sum = at(b, row);
    for (let k = Math.max(0, row - band); k < row; k++)
      sum -= at(entries, row * width + row - k) * at(b, k);
    b[row] = sum;
  }
  for (let row = rows - 1; 0 <= row; row--) {
    let sum = at(b, row) / at(entries, row * width);
    const last = Math.min(rows - 1, row + band);
    for (let k = row + 1; k <= last; k++)
      sum -= at(entries, k * width + k - row) * at(b, k);
    b[row] = sum;
  }
  return true;
}

/** An element that exists: the loops above never leave the array. */
function at(array: Float64Array, index: number): number {
  return array[index] ?? NaN;
}
