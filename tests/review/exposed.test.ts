import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { markedCard } from '../../core/card/mark.ts';
import type { ReadingDocument, TilesDocument } from '../../core/engine/documents.ts';
import { read } from '../../core/engine/reading-questions.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { figuresOf } from '../../core/journal/figures.ts';
import { finish } from '../../core/base/steps.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import { type PlayChoice, playChoices } from '../../core/review/play-choices.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { play } from '../game/helpers.ts';
import { review, TWICE_CARD, yardstickOf } from './helpers.ts';

/*
 * A hand with groups laid open, as a person meets it: in the look-back, the advice and the reading.
 * The tiles of an open group stay in it, so what else the hand needs comes from the rack alone.
 */

const YARDSTICK = yardstickOf(TWICE_CARD);

const deal = (tiles: string): GameEvent => ({ type: 'dealt', seat: 'South', tiles });
const drew = (tile: string): GameEvent => ({ type: 'drew', tile });
const threw = (seat: 'East' | 'South' | 'West', tile: string): GameEvent => ({ type: 'discarded', seat, tile });
const called = (tile: string, group: string): GameEvent => ({ type: 'called', seat: 'South', tile, group });
const swapped = (seat: 'East' | 'South', owner: 'East' | 'South', tile: string): GameEvent => ({
  type: 'swapped',
  seat,
  owner,
  tile,
});

/** All four one bams lie in the open kong, so that there is none for the pair. */
const DEAD: readonly GameEvent[] = [
  deal('J 111b 2222c 3333d 9d'),
  threw('West', '1b'),
  called('1b', '1111b'),
  threw('South', '9d'),
  drew('J'),
];

/** The same kong with two jokers in it: the pair can still be made. */
const ALIVE: readonly GameEvent[] = [
  deal('JJ 1b 2222c 3333d 99d'),
  threw('West', '1b'),
  called('1b', '11b JJ'),
  threw('South', '9d'),
];

function adviceOf(events: readonly GameEvent[]): readonly PlayChoice[] {
  const measure = { table: makeTableCard(YARDSTICK.compiled), chance: provisionalChance('quick') };
  return finish(playChoices(measure, play(...events), events)).choices;
}

/** The line that is won now. */
function wonBy(events: readonly GameEvent[]): string | undefined {
  return adviceOf(events).find(({ action }) => action === 'win')?.hand?.line.id;
}

function readingOf(events: readonly GameEvent[]): ReadingDocument & TilesDocument {
  const steps = read({ card: markedCard(TWICE_CARD), at: { events } });
  const hands = steps.next().value as ReadingDocument;
  return { ...hands, ...expectValue(finish(steps)) };
}

describe('a look-back', () => {
  test('the call that takes the last tile of a pair away is costly, and leaves nothing', () => {
    const call = review(DEAD, YARDSTICK).decisions.find(({ kind }) => kind === 'call');
    expect(call?.chosen).toMatchObject({ worth: 0 });
    expect(call?.best.tiles).not.toBe('1111b');
    expect(call?.verdict).toBe('costly');
  });

  test('a dead hand is worth nothing to the end, whatever is drawn and thrown', () => {
    const { decisions, ledger } = review([...DEAD, threw('South', 'J')], YARDSTICK);
    const discards = decisions.filter(({ kind }) => kind === 'discard');
    expect(discards.map(({ chosen, best }) => [chosen.worth, best.worth])).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(ledger.end).toBe(0);
  });

  test('how far away it was at the end counts the open group too; not for groups that no hand holds', () => {
    const ended: GameEvent = { type: 'ended', result: 'wall' };
    const none = [deal('JJ 1b 2222c 3333d 99d'), threw('West', '9d'), called('9d', '999d'), ended];
    expect(figuresOf([...DEAD, ended], YARDSTICK.compiled).aways.at(-1)).toEqual({ moment: 'end', away: 2 });
    expect(figuresOf([...ALIVE, ended], YARDSTICK.compiled).aways.at(-1)).toEqual({ moment: 'end', away: 2 });
    expect(figuresOf(none, YARDSTICK.compiled).aways.map(({ moment }) => moment)).toEqual(['deal']);
  });
});

describe('advice', () => {
  test('four in a kong, and all the rest: no hand is left, and nothing is won', () => {
    const choices = adviceOf(DEAD);
    expect(choices).toHaveLength(3);
    for (const choice of choices) expect(choice).toMatchObject({ action: 'discard', chance: 0, hand: null });
  });

  test('a natural goes into its own pair only, not into the open kong; the pair wins', () => {
    const waiting = [...ALIVE, drew('1b'), threw('South', '9d'), threw('West', '1b')];
    expect(wonBy([...ALIVE, drew('1b')])).toBeUndefined();
    expect(wonBy(waiting)).toBe('twice');
  });

  test('an open joker stays in its group until it is swapped; then the natural stays there', () => {
    const before = [...ALIVE, drew('1b')];
    const [best] = adviceOf(before);
    expect(best).toMatchObject({ action: 'discard', hand: { away: 1 } });
    expect(formatTiles(best?.tiles ?? play().rack)).toBe('9d');
    // Three naturals lie there now: one is unseen, and the joker in the rack fills no pair.
    expect(adviceOf([...before, swapped('South', 'South', '1b')])[0]).toMatchObject({ hand: null });
  });

  test('a concealed hand is no longer one once a group lies open', () => {
    const state = [deal('111b 22c 44c 3333d 55d'), threw('West', '1b')];
    expect(wonBy(state)).toBe('inside');
    expect(wonBy([...state, called('1b', '1111b')])).toBeUndefined();
  });
});

describe('a reading', () => {
  test('a dead hand is struck out', () => {
    const { hands, struck, verdicts } = readingOf(DEAD);
    expect(hands).toEqual([]);
    expect(struck.map(({ line, why }) => [line, why])).toEqual([
      ['twice', 'gone'],
      ['inside', 'concealed'],
    ]);
    expect(verdicts).toHaveLength(10);
  });

  test('the open group is drawn as it lies, and the rack fills the other places', () => {
    const { away, hands } = readingOf([...ALIVE, drew('J')]);
    expect(away).toBe(2);
    const [hand] = hands;
    expect(hand?.groups).toEqual(['11b', '1111b', '2222c', '3333d']);
    expect(hand?.places.map((places) => places.map(({ held }) => held[0]).join(''))).toEqual([
      'mm',
      'nnjj',
      'nnnn',
      'nnnn',
    ]);
    expect(hand?.missing).toEqual(['1b', '1b']);
    expect(hand?.drawReach).toBeGreaterThan(0);
  });

  test('a natural in the rack is wanted for the pair', () => {
    const { hands, verdicts } = readingOf([...ALIVE, drew('1b')]);
    expect(hands[0]?.places[0]?.map(({ held }) => held)).toEqual(['natural', 'missing']);
    const pair = verdicts.filter(({ sentence }) => /one bam/.test(sentence));
    expect(pair).toEqual([expect.objectContaining({ copy: 1, verdict: 'keep' })]);
  });
});
