import { fingerprint } from '../base/fingerprint.ts';
import { expectValue } from '../base/result.ts';
import type { Card } from '../card/card.ts';
import { mayBePassed, ownSizes, type PassStep, STEPS } from '../exchange/steps.ts';
import type { Kind } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { aimAtLine, aimAtSection } from './aims.ts';
import { knownOfItem, type WarmUpItem } from './item.ts';

/** The card that an answer's aim stands on. */
export type AnswerCard = Pick<Card, 'sections'>;

/** What may be done at a problem: tiles to give, or stopping before the second round. */
export interface AnswerChoice {
  readonly give: readonly Kind[];
  readonly stops: boolean;
}

/** All that can be answered to a problem: a choice, a part of the rack kept, and an aim on the card or none. */
export interface AnswerRoom {
  readonly rack: Tiles;
  readonly choices: readonly AnswerChoice[];
  /** As in an attempt: `section:Weather`, `line:weather-1`; in the order of the card. */
  readonly aims: readonly string[];
  /** How many parts the rack has. */
  readonly parts: bigint;
  /** Tells this problem on this card from others. */
  readonly print: bigint;
}

/** Enters the print, so that a code that means something else fits no problem. */
const VERSION = 0;

export function roomOf(item: WarmUpItem, card: AnswerCard): AnswerRoom {
  const { rack, gone } = expectValue(knownOfItem(item));
  const { step, seat } = item;
  const print = fingerprint(JSON.stringify([VERSION, String(rack), String(gone), step, seat, shapeOf(card)]));
  return {
    rack,
    choices: choicesOf(rack, step),
    aims: aimsOf(card),
    parts: partsOf(rack),
    print: BigInt(`0x${print}`),
  };
}

/** Every section of a card with its lines behind it. */
export function aimsOf({ sections }: AnswerCard): string[] {
  return sections.flatMap(({ name, lines }) => [aimAtSection(name), ...lines.map(({ id }) => aimAtLine(id))]);
}

/**
 * What tells one card from another for an answer: how many ways each line has, section by section. Two people who each
 * typed the same card have the same, whatever they call it and note on it.
 */
function shapeOf({ sections }: AnswerCard): number[][] {
  return sections.map(({ lines }) => lines.map(({ ways }) => ways.length));
}

/** The choices of a step, the largest passes first, each in order of its tiles; stopping comes last. */
function choicesOf(rack: Tiles, step: PassStep): AnswerChoice[] {
  const free = rack.toKinds().filter(mayBePassed);
  const passes = ownSizes(step).flatMap((size) => passesOf(free, size));
  const choices = passes.map((give): AnswerChoice => ({ give, stops: false }));
  const { mayStopBefore, round } = STEPS[step];
  return mayStopBefore && round === 'second' ? [...choices, { give: [], stops: true }] : choices;
}

/** All passes of so many of these tiles, each once; the tiles stand in canonical order. */
function passesOf(tiles: readonly Kind[], size: number): (readonly Kind[])[] {
  if (size === 0) return [[]];
  return tiles.flatMap((kind, at) => {
    if (at > 0 && tiles[at - 1] === kind) return [];
    return passesOf(tiles.slice(at + 1), size - 1).map((rest) => [kind, ...rest]);
  });
}

function partsOf(rack: Tiles): bigint {
  return rack.distinct().reduce((parts, kind) => parts * BigInt(rack.count(kind) + 1), 1n);
}

/** The place of a part among all parts of a rack: how many of each kind, in a mixed base. */
export function placeOfPart(rack: Tiles, part: Tiles): bigint {
  return rack
    .distinct()
    .reduceRight((place, kind) => place * BigInt(rack.count(kind) + 1) + BigInt(part.count(kind)), 0n);
}

export function partOfPlace(rack: Tiles, place: bigint): Tiles {
  let left = place;
  const kinds = rack.distinct().flatMap((kind) => {
    const base = BigInt(rack.count(kind) + 1);
    const count = Number(left % base);
    left /= base;
    return Array<Kind>(count).fill(kind);
  });
  return Tiles.of(kinds);
}
