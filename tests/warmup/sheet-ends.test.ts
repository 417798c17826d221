import { describe, expect, test } from 'vitest';
import { cardMark } from '../../core/card/mark.ts';
import { expectValue } from '../../core/base/result.ts';
import { FIRST_REACH_MODEL } from '../../core/reading/reach-model.ts';
import { passDocument } from '../../core/engine/documents.ts';
import { positionBefore } from '../../core/future/known-deal.ts';
import type { Ahead } from '../../core/review/ahead.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import { answerSteps } from '../../core/warmup/answer.ts';
import { knownOfItem } from '../../core/warmup/item.ts';
import { readSheetFile, writeSheetFile } from '../../core/warmup/sheet-file.ts';
import { problemOf, type SheetProblem } from '../../core/warmup/sheet.ts';
import {
  endCostOf,
  endsKey,
  keepingEnds,
  keptEnds,
  choicesWithoutCost,
  withBest,
  withChoice,
} from '../../core/warmup/sheet-ends.ts';
import { judgedPasses } from '../../renderer/print/judged.ts';
import { formatTileList } from '../../core/tiles/text.ts';
import { classSheet, yardstick, finish, tiles } from './demo.ts';
import { lookAheadFrom } from '../review/helpers.ts';

const PROBLEM: SheetProblem = {
  ...problemOf({ rack: 'J FF N 0 13b 4578c 22d', gone: '', step: 'right', seat: 'South' }),
  answers: [
    { give: 'N 0 1b', people: 5 },
    { give: 'FF 2d', people: 3 },
  ],
};
const SHEET = classSheet({ problems: [PROBLEM] });
const KEY = endsKey(cardMark(SHEET.card), PROBLEM, FIRST_REACH_MODEL);
const OPTIONS = finish(answerSteps(yardstick, { known: expectValue(knownOfItem(PROBLEM)), step: 'right' })).options;

const TABLE = makeTableCard(yardstick.compiled);

/** A choice looked ahead from, exactly as a warm-up does. */
function ahead(give: string): Ahead {
  const passes = OPTIONS.map((option) => option.give);
  const position = positionBefore(tiles(PROBLEM.rack), tiles(''), 'South', 'right');
  return lookAheadFrom(TABLE, {
    position,
    passes,
    chosen: { type: 'give', tiles: tiles(give).toKinds() },
  });
}

/** By the end of the exchange another pass may be the best than by the exact table. */
const { best } = ahead(formatTileList(OPTIONS[0]?.give ?? []));
const BEST = ahead(formatTileList(best.choice.type === 'give' ? best.choice.tiles : []));
/** Of equals the smaller gift stands first, so that the next one may be ahead of it by less than nothing. */
const NEXT = { loss: Math.max(0, BEST.next?.loss ?? NaN), halfWidth: BEST.next?.halfWidth };
const ENDS = PROBLEM.answers.reduce((ends, { give }) => withChoice(ends, ahead(give)), withBest(KEY, BEST));

describe('what a sheet says of a choice', { timeout: 60_000 }, () => {
  test('CR-G2: a pass of the class has the same cost, interval and verdict as in a warm-up', () => {
    for (const { give } of PROBLEM.answers) {
      const { chosen } = ahead(give);
      expect(endCostOf(ENDS, tiles(give))).toMatchObject({
        cost: chosen.loss,
        halfWidth: chosen.halfWidth,
        verdict: chosen.verdict,
      });
      expect(chosen.halfWidth).toBeGreaterThan(0);
    }
    expect(ENDS.rows[0]).toMatchObject({ cost: 0, verdict: 'best', next: NEXT });
    expect(choicesWithoutCost(ENDS, PROBLEM)).toEqual([]);
    const more = { ...PROBLEM, answers: [...PROBLEM.answers, { give: '2d 2d 3b', people: 1 }] };
    expect(choicesWithoutCost(ENDS, more).map(String)).toHaveLength(1);
    const answers = [...more.answers, ...more.answers.map((each) => ({ ...each, keeps: 'J' }))];
    const stopped = [...answers, { give: '', people: 1, stops: true as const }];
    expect(choicesWithoutCost(ENDS, { ...more, answers: stopped })).toEqual([expect.anything(), null]);
  });

  test('a class that chose the best pass has the same row of it, with how far the next one is behind', () => {
    const alone = withChoice({ key: KEY, rows: [] }, BEST);
    expect(alone.rows).toEqual([ENDS.rows[0]]);
    expect(alone.rows[0]?.next).toEqual(NEXT);
  });

  test('stopping before the second round has a cost too, apart from that of giving nothing', () => {
    const passes = OPTIONS.slice(0, 2).map((option) => option.give);
    const position = positionBefore(tiles(PROBLEM.rack), tiles('EEE'), 'South', 'left2');
    const stop = lookAheadFrom(TABLE, { position, passes, chosen: { type: 'stop' } });
    const ends = withChoice(withBest(KEY, stop), stop);
    expect(endCostOf(ends, null)).toMatchObject({ give: null, verdict: stop.chosen.verdict });
    expect(ends.rows.filter(({ give }) => give === null)).toHaveLength(2);
    expect(endCostOf(ends, tiles(''))).toBeUndefined();
    const best = tiles(formatTileList(passes[0] ?? []));
    expect(endCostOf(ends, best)?.give).not.toBeNull();
    expect(keptEnds(keepingEnds(PROBLEM, ends), KEY)).toEqual(ends);
  });

  test('where only one pass can be made, nothing is behind it', () => {
    const rack = tiles('JJJJJJJJ FFFFF');
    const [flower] = tiles('F').toKinds();
    const pass = [flower!, flower!, flower!];
    const request = { position: positionBefore(rack, tiles(''), 'South', 'right'), passes: [pass] };
    const ends = withBest(KEY, lookAheadFrom(TABLE, { ...request, chosen: { type: 'give', tiles: pass } }));
    expect(ends.rows).toEqual([{ give: 'FFF', cost: 0, halfWidth: 0, verdict: 'best' }]);
  });

  test('the best in the end is named first, with the cost for now beside it', () => {
    const view = { options: OPTIONS.map(passDocument) } as unknown as Parameters<typeof judgedPasses>[0]['answer'];
    const [first, ...others] = judgedPasses({ answer: view, ends: ENDS });
    expect(first?.verdict).toBe('best');
    expect(tiles(first?.give ?? '').equals(tiles(ENDS.rows[0]?.give ?? ''))).toBe(true);
    const chosen = others.find(({ give }) => tiles(give).equals(tiles('N 0 1b')));
    expect(chosen?.halfWidth).toBeGreaterThan(0);
    // Without a look ahead no cost has an interval.
    expect(judgedPasses({ answer: view, ends: null }).every(({ halfWidth }) => halfWidth === null)).toBe(true);
  });

  test('kept with the set it comes back as it was; for another card, rack or step it does not count', () => {
    const kept = { ...SHEET, problems: [keepingEnds(PROBLEM, ENDS)] };
    const [problem] = expectValue(readSheetFile(writeSheetFile(kept))).problems as [SheetProblem];
    expect(keptEnds(problem, KEY)).toEqual(ENDS);
    expect(keepingEnds(problem, null)).toEqual(PROBLEM);
    const mark = cardMark(SHEET.card);
    const others = [
      endsKey(cardMark({ title: 'another' }), PROBLEM, FIRST_REACH_MODEL),
      endsKey(mark, { ...PROBLEM, rack: 'J FF N 0 13b 4578c 23d' }, FIRST_REACH_MODEL),
      endsKey(mark, { ...PROBLEM, step: 'across' }, FIRST_REACH_MODEL),
      endsKey(mark, { ...PROBLEM, gone: 'E' }, FIRST_REACH_MODEL),
      endsKey(mark, PROBLEM, { ...FIRST_REACH_MODEL, source: 'another' }),
    ];
    expect(new Set([KEY, ...others]).size).toBe(others.length + 1);
    for (const key of others) expect(keptEnds(problem, key)).toBeNull();
  });

  test.each([
    ['rows that are no list', { key: KEY, rows: 'none' }],
    ['a cost that can’t be', { key: KEY, rows: [{ ...ENDS.rows[0], cost: 7 }] }],
    ['tiles that can’t be', { key: KEY, rows: [{ ...ENDS.rows[0], give: '5z' }] }],
    ['a verdict of another kind', { key: KEY, rows: [{ ...ENDS.rows[0], verdict: 'splendid' }] }],
    ['a next one that is no loss', { key: KEY, rows: [{ ...ENDS.rows[0], next: 3 }] }],
    ['more rows than a class has passes', { key: KEY, rows: Array.from({ length: 500 }, () => ENDS.rows[0]) }],
    ['nothing at all', null],
  ])('CR-J4: %s is worked out anew, and the sheet opens', (_, ends) => {
    const text = writeSheetFile({ ...SHEET, problems: [Object.assign({ ...PROBLEM }, { ends })] });
    const [problem] = expectValue(readSheetFile(text)).problems as [SheetProblem];
    expect(problem.rack).toBe(PROBLEM.rack);
    expect(keptEnds(problem, KEY)).toBeNull();
  });
});
