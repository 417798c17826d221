import { JOKER, type Kind } from '../tiles/kinds.ts';
import { nameOf, pluralNameOf } from '../tiles/names.ts';
import { lineName } from './targets.ts';
import type { TileVerdict } from './verdict.ts';

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
  if (first !== undefined) return `Spare: of your near hands only ${lineName(first.line)} wants the ${name}.`;
  if (worth > 0) return `Spare: only far hands want the ${name}.`;
  return `Spare: no hand that you can still reach wants the ${name}.`;
}

function keepSentence({ kind, copies, wantedBy, runsWith }: Omit<TileVerdict, 'sentence'>): string {
  const what = copies > 1 ? `your ${GROUP_WORDS[copies] as string} of ${pluralNameOf(kind)}` : `the ${nameOf(kind)}`;
  const run = runsWith.length > 0 ? `, and it runs with ${runsWith.map(nameOf).join(' and ')}` : '';
  const [first] = wantedBy;
  if (first === undefined) return `Keep: many hands want ${what}${run}.`;
  if (wantedBy.length === 1) return `Keep: ${lineName(first.line)} wants ${what}${run}.`;
  return `Keep: ${wantedBy.length} near hands want ${what}${run}; first ${lineName(first.line)}.`;
}

function strainSentence({ strain }: Omit<TileVerdict, 'sentence'>): string {
  if (strain === null) return '';
  const [one, other] = strain;
  return ` Strain: you can't keep all tiles for both ${lineName(one.line)} and ${lineName(other.line)}.`;
}

function ordinal(copy: number): string {
  return ['first', 'second', 'third', 'fourth'][copy - 1] ?? `${copy}th`;
}

/** Tiles in words: "one bam, two north winds and a flower". */
export function tileWords(kinds: readonly Kind[]): string {
  const parts = [...new Set(kinds)].map((kind) => {
    const count = kinds.filter((other) => other === kind).length;
    return count === 1 ? nameOf(kind) : `${['', '', 'two', 'three'][count] ?? count} ${pluralNameOf(kind)}`;
  });
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) as string}`;
}
