/**
 * A map from whole numbers (0 to 2^30) to whole numbers (0 to 2^31 - 1) that only grows: open
 * addressing with linear probing (Knuth, TAOCP 3, 6.4) and Fibonacci hashing. Several times as
 * fast as `Map` in the inner loops of a reading.
 */
export class PlaceMap {
  #size = 0;
  #bits: number;
  /** Keys plus one; 0 marks an empty place. */
  #keys: Int32Array;
  #values: Int32Array;

  constructor(bits = 10) {
    this.#bits = bits;
    this.#keys = new Int32Array(1 << bits);
    this.#values = new Int32Array(1 << bits);
  }

  /** The value of a key, or -1. */
  get(key: number): number {
    const place = this.#placeOf(key);
    return this.#keys[place] === 0 ? -1 : (this.#values[place] as number);
  }

  set(key: number, value: number): void {
    if (2 * this.#size >= this.#keys.length) this.#grow();
    const place = this.#placeOf(key);
    if (this.#keys[place] === 0) this.#size += 1;
    this.#keys[place] = key + 1;
    this.#values[place] = value;
  }

  /** Where a key is, or the empty place where it would be. */
  #placeOf(key: number): number {
    const keys = this.#keys;
    const last = keys.length - 1;
    let place = Math.imul(key, GOLDEN) >>> (32 - this.#bits);
    while (keys[place] !== 0 && keys[place] !== key + 1) place = (place + 1) & last;
    return place;
  }

  #grow(): void {
    const keys = this.#keys;
    const values = this.#values;
    this.#bits += 1;
    this.#keys = new Int32Array(1 << this.#bits);
    this.#values = new Int32Array(1 << this.#bits);
    for (let from = 0; from < keys.length; from += 1) {
      const key = keys[from] as number;
      if (key === 0) continue;
      const place = this.#placeOf(key - 1);
      this.#keys[place] = key;
      this.#values[place] = values[from] as number;
    }
  }
}

/** 2^32 over the golden ratio, as a signed number. */
const GOLDEN = 0x9e3779b9 | 0;
