import { PASS_STEPS, type PassStep } from '../exchange/steps.ts';
import { faceOf, JOKER, type Kind, KINDS } from '../tiles/kinds.ts';

/** Classes of tile that players treat differently when they pass. Jokers are never passed. */
export const INCOMING_CLASSES = ['flower', 'wind', 'dragon', 'end number', 'inner number'] as const;
export type IncomingClass = (typeof INCOMING_CLASSES)[number];

/** The class of a kind; ends are 1 and 9. Undefined for the joker. */
export function incomingClassOf(kind: Kind): IncomingClass | undefined {
  const face = faceOf(kind);
  if (face.class === 'joker') return undefined;
  if (face.class !== 'number') return face.class;
  return face.number === 1 || face.number === 9 ? 'end number' : 'inner number';
}

/**
 * What came in by passes, against what would have come if every unseen tile were as likely. A cell
 * is a class together with the number of copies of the kind that the receiver could not see.
 */
export interface IncomingCell {
  readonly step: PassStep;
  readonly class: IncomingClass;
  /** Copies unseen by the receiver before the tiles came, 1 to 4 (to 8 for flowers). */
  readonly copies: number;
  readonly received: number;
  /** The mean number under equal chances. */
  readonly expected: number;
}

const MOST_COPIES = 8;
const NATURALS: readonly Kind[] = KINDS.filter((kind) => kind !== JOKER);

/** Adds up what comes in; one for any number of games. */
export class IncomingCount {
  readonly #received = new Float64Array(PASS_STEPS.length * INCOMING_CLASSES.length * (MOST_COPIES + 1));
  readonly #expected = new Float64Array(this.#received.length);

  /** Notes what a seat received at a step. `unseen` are 36 counts: all but its rack and what it has just given. */
  note(step: PassStep, unseen: ArrayLike<number>, tiles: readonly Kind[]): void {
    const total = NATURALS.reduce((sum, kind) => sum + (unseen[kind] as number), 0);
    for (const kind of NATURALS) {
      const copies = unseen[kind] as number;
      add(this.#expected, cellOf(step, kind, copies), (tiles.length * copies) / total);
    }
    for (const kind of tiles) add(this.#received, cellOf(step, kind, unseen[kind] as number), 1);
  }

  /** The cells that could occur, by step, class and copies. */
  cells(): IncomingCell[] {
    return PASS_STEPS.flatMap((step, stepPlace) =>
      INCOMING_CLASSES.flatMap((kindClass, classPlace) =>
        Array.from({ length: MOST_COPIES }, (_, place) => place + 1).map((copies) => {
          const cell = placeOf(stepPlace, classPlace, copies);
          const received = this.#received[cell] as number;
          return { step, class: kindClass, copies, received, expected: this.#expected[cell] as number };
        }),
      ),
    ).filter(({ expected }) => expected > 0);
  }
}

function add(cells: Float64Array, cell: number, more: number): void {
  cells[cell] = (cells[cell] as number) + more;
}

function cellOf(step: PassStep, kind: Kind, copies: number): number {
  const kindClass = incomingClassOf(kind);
  if (kindClass === undefined) throw new Error('a joker is never passed (T4)');
  return placeOf(PASS_STEPS.indexOf(step), INCOMING_CLASSES.indexOf(kindClass), copies);
}

function placeOf(step: number, kindClass: number, copies: number): number {
  return (step * INCOMING_CLASSES.length + kindClass) * (MOST_COPIES + 1) + copies;
}
