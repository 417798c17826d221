/**
 * Linear algebra over GF(2) for the 128-bit state of xoshiro128**, written apart from the
 * generator: a vector is a BigInt of 128 bits, a matrix its 128 columns.
 */
export type BitMatrix = readonly bigint[];

const SIZE = 128;
const WORD = 0xffff_ffffn;

/** One step of the linear engine, from the published C code (Blackman and Vigna 2018). */
export function step(state: bigint): bigint {
  let [a, b, c, d] = words(state);
  const shifted = (b << 9n) & WORD;
  c ^= a;
  d ^= b;
  b ^= c;
  a ^= d;
  c ^= shifted;
  d = ((d << 11n) | (d >> 21n)) & WORD;
  return a | (b << 32n) | (c << 64n) | (d << 96n);
}

export function words(state: bigint): [bigint, bigint, bigint, bigint] {
  return [state & WORD, (state >> 32n) & WORD, (state >> 64n) & WORD, (state >> 96n) & WORD];
}

export function stepMatrix(): BitMatrix {
  return Array.from({ length: SIZE }, (_, bit) => step(1n << BigInt(bit)));
}

export function times(matrix: BitMatrix, vector: bigint): bigint {
  let sum = 0n;
  for (let bit = 0; bit < SIZE; bit += 1) {
    if ((vector >> BigInt(bit)) & 1n) sum ^= matrix[bit] as bigint;
  }
  return sum;
}

export function squared(matrix: BitMatrix): BitMatrix {
  return matrix.map((column) => times(matrix, column));
}

/** The vector x with `equations[i]` · x = bit i of `right`, by Gauss's elimination; undefined when it is not unique. */
export function solve(equations: readonly bigint[], right: readonly bigint[]): bigint | undefined {
  const rows = equations.map((row, index) => row | ((right[index] as bigint) << BigInt(SIZE)));
  for (let bit = 0; bit < SIZE; bit += 1) {
    const mask = 1n << BigInt(bit);
    const pivot = rows.findIndex((row, index) => index >= bit && (row & mask) !== 0n);
    if (pivot < 0) return undefined;
    [rows[bit], rows[pivot]] = [rows[pivot] as bigint, rows[bit] as bigint];
    for (let index = 0; index < rows.length; index += 1) {
      if (index !== bit && ((rows[index] as bigint) & mask) !== 0n) {
        rows[index] = (rows[index] as bigint) ^ (rows[bit] as bigint);
      }
    }
  }
  return rows.slice(0, SIZE).reduce((x, row, bit) => x | ((row >> BigInt(SIZE)) << BigInt(bit)), 0n);
}
