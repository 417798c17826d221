import type { SparseRow } from './state.ts';

/** Rows of a regression, one after another: row r owns the places `starts[r]` up to, not including, `starts[r + 1]`. */
export class RowList {
  readonly starts: number[] = [0];
  places = new Uint16Array(1024);
  values = new Float64Array(1024);

  get length(): number {
    return this.starts.length - 1;
  }

  add({ length, places, values }: SparseRow): void {
    const start = this.starts[this.length] as number;
    if (start + length > this.places.length) this.#grow();
    for (let entry = 0; entry < length; entry += 1) {
      this.places[start + entry] = places[entry] as number;
      this.values[start + entry] = values[entry] as number;
    }
    this.starts.push(start + length);
  }

  #grow(): void {
    const { places, values } = this;
    this.places = new Uint16Array(2 * places.length);
    this.values = new Float64Array(2 * values.length);
    this.places.set(places);
    this.values.set(values);
  }

  /** The linear score of row r. */
  score(row: number, coefficients: ArrayLike<number>): number {
    const { starts, places, values } = this;
    let sum = 0;
    const end = starts[row + 1] as number;
    for (let entry = starts[row] as number; entry < end; entry += 1) {
      sum += (values[entry] as number) * (coefficients[places[entry] as number] as number);
    }
    return sum;
  }
}

export interface LogisticTask {
  readonly rows: RowList;
  /** The rows that count; the lists that follow have an entry for each of them, `offsets` one for each row. */
  readonly places: Int32Array;
  /** What each came to: 0, 1, or a mean between. */
  readonly targets: ArrayLike<number>;
  /** What each counts for. */
  readonly weights: ArrayLike<number>;
  /** Added to a row's score. */
  readonly offsets: ArrayLike<number>;
  /** The precision (1 over variance) with which each coefficient is held to nought. */
  readonly held: ArrayLike<number>;
  /** The least that some coefficients may be, by place. */
  readonly floors: ReadonlyMap<number, number>;
  /** Where to begin; coefficients that no row touches stay so. */
  readonly start: Float64Array;
}

const MOST_ROUNDS = 30;
const SETTLED = 1e-5;

/**
 * Ridge logistic regression by Newton's method (iteratively reweighted least squares; McCullagh and Nelder,
 * "Generalized Linear Models", 2nd ed., 1989, 4.4; targets between 0 and 1 as quasi-likelihood). Coefficients
 * that come out below their floor are set to it, and the rest is fitted again.
 */
export function fitLogistic(task: LogisticTask): Float64Array {
  const free = touchedTerms(task);
  const found = Float64Array.from(task.start);
  for (;;) {
    newton(
      task,
      [...free].toSorted((one, other) => one - other),
      found,
    );
    const low = [...task.floors].filter(([term, floor]) => free.has(term) && (found[term] as number) < floor);
    if (low.length === 0) return found;
    for (const [term, floor] of low) {
      free.delete(term);
      found[term] = floor;
    }
  }
}

function touchedTerms({ rows, places, held }: LogisticTask): Set<number> {
  const touched = new Uint8Array(held.length);
  for (const row of places) {
    const end = rows.starts[row + 1] as number;
    for (let entry = rows.starts[row] as number; entry < end; entry += 1) touched[rows.places[entry] as number] = 1;
  }
  return new Set(Array.from(touched.keys()).filter((term) => touched[term] === 1));
}

export function logistic(score: number): number {
  return 1 / (1 + Math.exp(-score));
}

/** Improves the coefficients named by `free`. */
function newton(task: LogisticTask, free: readonly number[], coefficients: Float64Array): void {
  const { rows, places, targets, weights, offsets, held } = task;
  const size = free.length;
  const columnOf = new Int32Array(held.length).fill(-1);
  for (const [column, term] of free.entries()) columnOf[term] = column;
  const curvature = new Float64Array(size * size);
  const slope = new Float64Array(size);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    curvature.fill(0);
    for (const [column, term] of free.entries()) {
      curvature[column * size + column] = (held[term] as number) + 1e-9;
      slope[column] = -(held[term] as number) * (coefficients[term] as number);
    }
    for (let place = 0; place < places.length; place += 1) {
      const row = places[place] as number;
      const chance = logistic(rows.score(row, coefficients) + (offsets[row] as number));
      const weight = weights[place] as number;
      const residual = weight * ((targets[place] as number) - chance);
      addRow(rows, row, columnOf, residual, weight * chance * (1 - chance), slope, curvature);
    }
    const step = solve(curvature, slope, size);
    let most = 0;
    for (const [column, term] of free.entries()) {
      coefficients[term] = (coefficients[term] as number) + (step[column] as number);
      most = Math.max(most, Math.abs(step[column] as number));
    }
    if (most < SETTLED) break;
  }
}

/** Adds a row's part to the slope and to the lower half of the curvature. */
function addRow(
  { starts, places, values }: RowList,
  row: number,
  columnOf: Int32Array,
  residual: number,
  bend: number,
  slope: Float64Array,
  curvature: Float64Array,
): void {
  const size = slope.length;
  const [from, end] = [starts[row] as number, starts[row + 1] as number];
  for (let one = from; one < end; one += 1) {
    const place = columnOf[places[one] as number] as number;
    if (place < 0) continue;
    const value = values[one] as number;
    slope[place] = (slope[place] as number) + value * residual;
    for (let other = from; other < end; other += 1) {
      const column = columnOf[places[other] as number] as number;
      if (column < 0 || column > place) continue;
      const at = place * size + column;
      curvature[at] = (curvature[at] as number) + value * (values[other] as number) * bend;
    }
  }
}

/** Solves a symmetric positive definite system, given by its lower half, by Cholesky's method. The matrix is overwritten. */
function solve(matrix: Float64Array, right: Float64Array, size: number): Float64Array {
  const answer = Float64Array.from(right);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let sum = matrix[row * size + column] as number;
      for (let inner = 0; inner < column; inner += 1) {
        sum -= (matrix[row * size + inner] as number) * (matrix[column * size + inner] as number);
      }
      matrix[row * size + column] = row === column ? Math.sqrt(sum) : sum / (matrix[column * size + column] as number);
    }
  }
  for (let row = 0; row < size; row += 1) {
    let sum = answer[row] as number;
    for (let inner = 0; inner < row; inner += 1)
      sum -= (matrix[row * size + inner] as number) * (answer[inner] as number);
    answer[row] = sum / (matrix[row * size + row] as number);
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = answer[row] as number;
    for (let inner = row + 1; inner < size; inner += 1) {
      sum -= (matrix[inner * size + row] as number) * (answer[inner] as number);
    }
    answer[row] = sum / (matrix[row * size + row] as number);
  }
  return answer;
}
