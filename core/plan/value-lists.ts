/**
 * Many short lists of values of ways, largest value first, one after another in arrays that grow: each entry is the place of a
 * multiset of incoming tiles (multisets.ts) and the value that a way has with it.
 */
export class ValueLists {
  #length = 0;
  #places = new Uint16Array(1 << 12);
  #values = new Float64Array(1 << 12);
  readonly #starts: number[] = [0];

  /** Entries of all lists. */
  get length(): number {
    return this.#length;
  }

  /** Forgets all lists; numbers begin anew. */
  clear(): void {
    this.#length = 0;
    this.#starts.length = 1;
  }

  /** Puts an entry into the current list, in its order. */
  add(place: number, value: number): void {
    if (this.#length === this.#places.length) this.#grow();
    const places = this.#places;
    const values = this.#values;
    const start = this.#starts[this.#starts.length - 1] as number;
    let at = this.#length;
    for (; at > start && (values[at - 1] as number) < value; at -= 1) {
      places[at] = places[at - 1] as number;
      values[at] = values[at - 1] as number;
    }
    places[at] = place;
    values[at] = value;
    this.#length += 1;
  }

  /** Ends the current list and returns its number. */
  close(): number {
    this.#starts.push(this.#length);
    return this.#starts.length - 2;
  }

  /** The largest value of a list; 0 if it is empty. */
  largest(list: number): number {
    const start = this.#starts[list] as number;
    return start === this.#starts[list + 1] ? 0 : (this.#values[start] as number);
  }

  /** Raises the table to the values of one list that are over the floor. */
  raise(table: Float64Array, list: number, floor: number): void {
    const places = this.#places;
    const values = this.#values;
    const end = this.#starts[list + 1] as number;
    for (let entry = this.#starts[list] as number; entry < end; entry += 1) {
      const value = values[entry] as number;
      if (value <= floor) return;
      const place = places[entry] as number;
      if (value > (table[place] as number)) table[place] = value;
    }
  }

  #grow(): void {
    const places = new Uint16Array(2 * this.#places.length);
    const values = new Float64Array(2 * this.#values.length);
    places.set(this.#places);
    values.set(this.#values);
    this.#places = places;
    this.#values = values;
  }
}
