import type { SectionShare } from '../reading/lean.ts';
import { nameWithin, type Target } from '../reading/targets.ts';
import { nameOf } from '../tiles/names.ts';
import type { Turn } from './turn.ts';

/** What a teacher says of a rack before any pass is spoken of, in sentences for a player. */
export interface Lesson {
  /** What the rack leans to. */
  readonly leans: string;
  /** What else it could become, and by which tile. */
  readonly also: string;
}

/** From this part of the whole on one section has it all, and from this one on it leads. */
const CLEARLY = 0.6;
const LEADS = 0.35;

export function lessonOf(lean: readonly SectionShare[], turn: Turn): Lesson {
  const [best] = turn.hands;
  if (best === undefined) return { leans: 'No hand of the card can be made with this rack any more.', also: '' };
  const nearest = `Its best hand is ${best.line.name}, ${awayWords(best.away)}.`;
  return { leans: `${leanWords(best.line.section, lean)} ${nearest}`, also: alsoWords(turn) };
}

function leanWords(section: string, lean: readonly SectionShare[]): string {
  const share = lean.find((each) => each.section === section)?.share ?? 0;
  if (share >= CLEARLY) return `This rack clearly leans to ${section}.`;
  if (share >= LEADS) return `This rack leans to ${section}.`;
  return `This rack is open: ${section} is a little ahead of the others.`;
}

/** The second hand, and the tile that would turn the rack to another section. */
function alsoWords({ hands: [first, second], by }: Turn): string {
  const other = second === undefined ? '' : otherWords(first as Target, second);
  const better = by !== null && by.line !== second?.line ? nameWithin(by.line) : 'it';
  const turning = by === null ? '' : `If ${withArticle(nameOf(by.kind))} came, ${better} would be the better hand.`;
  return [other, turning].filter((each) => each !== '').join(' ') || 'No other section comes near.';
}

/** A hand may be nearer and yet win less often. */
function otherWords(first: Target, { line, away }: Target): string {
  if (away >= first.away) return `It could also become ${line.name}, ${awayWords(away)}.`;
  return `It is nearer to ${line.name}, ${awayWords(away)}, but that hand is harder to finish.`;
}

function awayWords(away: number): string {
  if (away === 0) return 'complete';
  return away === 1 ? '1 tile away' : `${away} tiles away`;
}

function withArticle(name: string): string {
  return `${/^(?!one)[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
}
