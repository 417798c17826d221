import type { Way } from './way.ts';

/** A line of a card, ready for use: its pattern understood and its ways counted out. */
export interface Line {
  /** Unique within the card. */
  readonly id: string;
  /** The name of its section. */
  readonly section: string;
  /** Its name for a player: the section, and its place there as printed, "Weather, 4th line". */
  readonly name: string;
  /** The pattern as written. */
  readonly pattern: string;
  readonly concealed: boolean;
  readonly points: number;
  readonly note: string;
  readonly ways: readonly Way[];
}

export interface Section {
  readonly name: string;
  readonly lines: readonly Line[];
}

/** A card that other code may trust. Lines with problems are not in it. */
export interface Card {
  readonly title: string;
  readonly season: string;
  readonly sections: readonly Section[];
}

/** Every line of a card, in printed order. */
export function linesOf({ sections }: Card): readonly Line[] {
  return sections.flatMap(({ lines }) => lines);
}
