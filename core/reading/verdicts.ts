import { PASS_SIZE } from '../exchange/steps.ts';
import { JOKER, type Kind, KINDS } from '../tiles/kinds.ts';
import { nameOf, pluralNameOf } from '../tiles/names.ts';
import { largest, reachesAfter } from './one-tile.ts';
import type { Reading } from './reading.ts';
import { bestWayOfLines, nameWithin, type Target, targetsOf } from './targets.ts';

/** What one tile of the rack is to the reading. */
export interface TileVerdict {
  readonly kind: Kind;
  /** The first, second, … copy of its kind in the rack, counted from 1. */
  readonly copy: number;
  /** Copies of the kind in the rack. */
  readonly copies: number;
  readonly verdict: 'keep' | 'spare';
  /** The targets that want this copy, best first. */
  readonly wantedBy: readonly Target[];
  /** The part of the reach over all lines whose best way uses this copy, 0 to 1. */
  readonly worth: number;
  /** How much the best reach falls when one tile of the kind goes. */
  readonly loss: number;
  /** Rack neighbours in number that the best target wanting this copy uses as well. */
  readonly runsWith: readonly Kind[];
  /** Two targets that want this copy although their tiles can't all be kept when three are given. */
  readonly strain: readonly [Target, Target] | null;
  /** The verdict and why, for a player. */
  readonly sentence: string;
}

/** A tile is kept when the best target uses it, or lines with this part of the whole reach. */
const KEEP_WORTH = 0.25;

/** A verdict for every tile of the rack, in canonical order; copies of a kind one after another. */
export function tileVerdicts(reading: Reading): TileVerdict[] {
  const targets = targetsOf(reading);
  const lines = bestWayOfLines(reading);
  const best = largest(reading.reaches);
  return reading.known.rack.distinct().flatMap((kind) => {
    const copies = reading.known.rack.count(kind);
    const loss = kind === JOKER ? best : best - largest(reachesAfter(reading, kind, -1));
    return Array.from({ length: copies }, (_, place) => {
      const wantedBy = targets.filter((target) => uses(target, kind, place + 1));
      const worth = worthOf(lines, kind, place + 1);
      const kept = kind === JOKER || wantedBy[0] === targets[0] || worth >= KEEP_WORTH;
      const plain = {
        kind,
        copy: place + 1,
        copies,
        verdict: kept ? ('keep' as const) : ('spare' as const),
        wantedBy,
        worth,
        loss,
        runsWith: runsWith(wantedBy[0], kind),
        strain: kind === JOKER ? null : strainOf(wantedBy, reading.known.rack.size),
      };
      return { ...plain, sentence: verdictSentence(plain) };
    });
  });
}

function uses(target: Target, kind: Kind, copy: number): boolean {
  return (target.uses[kind] as number) >= copy;
}

function worthOf(lines: readonly Target[], kind: Kind, copy: number): number {
  const whole = lines.reduce((sum, line) => sum + line.reach, 0);
  if (whole === 0) return 0;
  return lines.filter((line) => uses(line, kind, copy)).reduce((sum, line) => sum + line.reach, 0) / whole;
}

/** Numbers of one suit stand side by side in canonical order; ends of suits are no neighbours. */
function runsWith(target: Target | undefined, kind: Kind): Kind[] {
  if (target === undefined) return [];
  return KINDS.filter((other) => areNeighbours(kind, other) && uses(target, other, 1));
}

const FIRST_NUMBER = 9;

function areNeighbours(one: Kind, other: Kind): boolean {
  const suit = (kind: Kind): number => Math.floor((kind - FIRST_NUMBER) / 9);
  return one >= FIRST_NUMBER && Math.abs(one - other) === 1 && suit(one) === suit(other);
}

/** The first two targets that want a tile and together want more of the rack than can be kept. */
function strainOf(wantedBy: readonly Target[], rackSize: number): [Target, Target] | null {
  for (const [place, one] of wantedBy.entries()) {
    const other = wantedBy.slice(place + 1).find((each) => wantedTogether(one, each) > rackSize - PASS_SIZE);
    if (other !== undefined) return [one, other];
  }
  return null;
}

function wantedTogether(one: Target, other: Target): number {
  return one.uses.reduce((sum, count, kind) => sum + Math.max(count, other.uses[kind] as number), 0);
}

const GROUP_WORDS = ['', 'single', 'pair', 'pung', 'kong', 'quint', 'sextet', 'seven', 'eight'] as const;

/** The verdict and why, in at most two short sentences. */
export function verdictSentence(verdict: Omit<TileVerdict, 'sentence'>): string {
  if (verdict.kind === JOKER) return 'Keep: a joker stands for any tile in a group of three or more.';
  if (verdict.verdict === 'spare') return spareSentence(verdict);
  return `${keepSentence(verdict)}${strainSentence(verdict)}`;
}

function spareSentence({ kind, copy, copies, wantedBy, worth }: Omit<TileVerdict, 'sentence'>): string {
  const name = copies > 1 ? `${ordinal(copy)} ${nameOf(kind)}` : nameOf(kind);
  const [first] = wantedBy;
  if (first !== undefined) return `Spare: of your nearest hands, only ${nameWithin(first.line)} needs the ${name}.`;
  if (worth > 0) return `Spare: only hands that are far need the ${name}.`;
  return `Spare: no hand that you can still reach needs the ${name}.`;
}

function keepSentence({ kind, copies, wantedBy, runsWith }: Omit<TileVerdict, 'sentence'>): string {
  const what = copies > 1 ? `your ${GROUP_WORDS[copies] as string} of ${pluralNameOf(kind)}` : `the ${nameOf(kind)}`;
  const run = runsWith.length > 0 ? `, and it runs with ${runsWith.map(nameOf).join(' and ')}` : '';
  const [first] = wantedBy;
  if (first === undefined) return `Keep: many hands need ${what}${run}.`;
  if (wantedBy.length === 1) return `Keep: ${nameWithin(first.line)} needs ${what}${run}.`;
  return `Keep: ${wantedBy.length} near hands need ${what}${run}; first ${first.line.name}.`;
}

function strainSentence({ strain }: Omit<TileVerdict, 'sentence'>): string {
  if (strain === null) return '';
  const [one, other] = strain;
  return ` Strain: you can't keep all tiles for both ${nameWithin(one.line)} and ${other.line.name}.`;
}

function ordinal(copy: number): string {
  return ['first', 'second', 'third', 'fourth'][copy - 1] ?? `${copy}th`;
}
