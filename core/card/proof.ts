import type { Fields } from '../base/json.ts';
import { type CardDocument, LINE_DEFAULTS, type LineDocument, type LinePlace } from './document.ts';

/**
 * Proof-reading: which lines a person has compared with the printed card. A tick belongs to what
 * the line says, so that an edited line loses it, and a line that is moved or put back keeps it.
 */
export interface ProofState {
  /** What the confirmed lines say, sorted; see `lineContent`. */
  readonly confirmed: readonly string[];
}

export interface ProofProgress {
  readonly confirmed: number;
  readonly lines: number;
  /** The first line not yet confirmed, if there is one. */
  readonly next?: LinePlace;
}

const PRINTED_FIELDS = ['id', 'pattern', 'slide', 'slide2', 'concealed', 'points', 'note'] as const;
const LATER_FIELDS = ['or', 'distinct'] as const;

/** All that a printed line says, as one text: two lines that differ in any of it have different texts. */
export function lineContent(line: LineDocument): string {
  const defaults: Fields = LINE_DEFAULTS;
  // Fields that came later are said only where a line has them, so that older ticks keep their text.
  const later = LATER_FIELDS.filter((field) => line[field] !== undefined && line[field] !== defaults[field]);
  return JSON.stringify([
    ...PRINTED_FIELDS.map((field) => line[field] ?? defaults[field]),
    ...later.map((field) => [field, line[field]]),
  ]);
}

export function isConfirmed(proof: ProofState, line: LineDocument): boolean {
  return proof.confirmed.includes(lineContent(line));
}

export function confirmLine(proof: ProofState, line: LineDocument): ProofState {
  return isConfirmed(proof, line) ? proof : { confirmed: [...proof.confirmed, lineContent(line)].sort() };
}

export function unconfirmLine(proof: ProofState, line: LineDocument): ProofState {
  const content = lineContent(line);
  return { confirmed: proof.confirmed.filter((other) => other !== content) };
}

/** How far proof-reading has come; `after` asks for the next line behind a place. */
export function proofProgress(proof: ProofState, card: CardDocument, after?: LinePlace): ProofProgress {
  const confirmed = new Set(proof.confirmed);
  const lines = card.sections.flatMap(({ lines: own }, section) =>
    own.map((line, index) => ({ place: { section, line: index }, done: confirmed.has(lineContent(line)) })),
  );
  const open = lines.filter(({ done }) => !done).map(({ place }) => place);
  const next = open.find((place) => after === undefined || isBehind(place, after)) ?? open[0];
  const progress = { confirmed: lines.length - open.length, lines: lines.length };
  return next === undefined ? progress : { ...progress, next };
}

/** Forgets ticks of lines that the card no longer has. */
export function pruneProof(proof: ProofState, card: CardDocument): ProofState {
  const present = new Set(card.sections.flatMap(({ lines }) => lines.map(lineContent)));
  return { confirmed: proof.confirmed.filter((content) => present.has(content)) };
}

function isBehind(place: LinePlace, after: LinePlace): boolean {
  return place.section > after.section || (place.section === after.section && place.line > after.line);
}
