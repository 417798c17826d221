import { expand, type Expansion, writeOut } from './expand.ts';
import { parsePattern, type PatternProblem, type ScannedGroup, scanPattern } from './parse.ts';
import { HAND_SIZE, type Pattern, type Slide, tilesInAll } from './pattern.ts';
import type { Way } from './way.ts';

/** How the numbers of a line move, in all its forms. */
export interface Movements {
  readonly slide: Slide;
  readonly slide2: Slide;
  /** Whether a number that moves with the second slide is never equal to one that moves with the first. */
  readonly distinct: boolean;
}

/** One printed form of a line, whole or half written: a line with "or" has several. */
export class FormReading {
  /** The pattern as it is written. */
  readonly text: string;
  /** Its groups, those that can be read and others. */
  readonly groups: readonly ScannedGroup[];
  /** The groups that can be read: all of them if the form is `whole`. */
  readonly pattern: Pattern;
  /** Tiles in these groups, to be counted up to 14. */
  readonly tiles: number;
  readonly problems: readonly PatternProblem[];
  readonly #movements: Movements;
  #expansion: Expansion | undefined;
  #isPossible: boolean | undefined;
  #ways: readonly Way[] | undefined;

  constructor(text: string, movements: Movements) {
    this.text = text;
    this.#movements = movements;
    this.groups = scanPattern(text);
    this.pattern = this.groups.flatMap(({ group }) => (group.ok ? [group.value] : []));
    this.tiles = tilesInAll(this.pattern);
    const parsed = parsePattern(text, this.groups);
    this.problems = parsed.ok ? [] : parsed.problem.all;
  }

  /** Whether the pattern has 14 tiles and no problem, so that the ways are the form's. */
  get whole(): boolean {
    return this.problems.length === 0;
  }

  /** How many ways there are; they are counted without being written out. */
  get wayCount(): number {
    return this.#ways?.length ?? this.#expanded?.count ?? 0;
  }

  /** Whether there is any way; most forms show it as they are printed, which spares counting all. */
  get isPossible(): boolean {
    if (this.tiles === 0 || this.tiles > HAND_SIZE) return false;
    return (this.#isPossible ??= expand(this.pattern, 0, 0, this.#movements.distinct).count > 0 || this.wayCount > 0);
  }

  /** Ways of the groups that can be read, so that an example can be drawn from the first group on. */
  get ways(): readonly Way[] {
    if (this.#ways === undefined) {
      const expanded = this.#expanded;
      this.#ways = expanded === undefined ? [] : writeOut(expanded);
      this.#expansion = undefined;
    }
    return this.#ways;
  }

  get #expanded(): Expansion | undefined {
    if (this.tiles === 0 || this.tiles > HAND_SIZE) return undefined;
    const { slide, slide2, distinct } = this.#movements;
    return (this.#expansion ??= expand(this.pattern, slide, slide2, distinct));
  }
}
