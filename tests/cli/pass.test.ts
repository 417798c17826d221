import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { refusal, windrow } from './run-windrow.ts';

const RACK = 'FF N 0 13b 4578c 22d1d';
let folder = '';
let oneHand = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'windrow-pass-'));
  oneHand = join(folder, 'one.card.json');
  const lines = [{ id: 'a', pattern: 'FF 2222bam 4444crak 6666dot', slide: 0 }];
  await writeFile(oneHand, JSON.stringify({ format: 'windrow.card', version: 1, sections: [{ name: 'One', lines }] }));
}, 120_000);
afterAll(async () => {
  await rm(folder, { recursive: true });
});

interface Plan {
  readonly step: string;
  readonly exact: boolean;
  readonly options: readonly { give: string[]; expectedAway: number; reach: number; cost: number; gift: number }[];
}

async function plan(args: readonly string[]): Promise<Plan> {
  const { code, out, err } = await windrow(['pass', ...args, '--json']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out);
}

describe('pass', () => {
  test('it answers with one document of exactly the fields of the contract, the first step if none is named', async () => {
    const answer = await plan(['--rack', RACK]);
    expect(Object.keys(answer)).toEqual(['step', 'options', 'exact']);
    expect(answer).toMatchObject({ step: 'right', exact: true });
    expect(answer.options).toHaveLength(10);
    for (const option of answer.options) {
      expect(Object.keys(option)).toEqual(['give', 'expectedAway', 'reach', 'cost', 'gift']);
      expect(option.give).toHaveLength(3);
    }
    expect(answer.options[0]?.cost).toBe(0);
  });

  test('best reach first, or least expected away with --by expectedAway; --top 0 gives all', async () => {
    const all = await plan(['--rack', RACK, '--top', '0']);
    // Passes of three from FF N 0 1b 3b 4c 5c 7c 8c 1d 22d: 3 of 11 kinds, or two of a pair and one of 10 others.
    expect(all.options).toHaveLength(165 + 2 * 10);
    const reaches = all.options.map(({ reach }) => reach);
    expect(reaches).toEqual([...reaches].sort((one, other) => other - one));
    const byAway = await plan(['--rack', RACK, '--top', '0', '--by', 'expectedAway']);
    const aways = byAway.options.map(({ expectedAway }) => expectedAway);
    expect(aways).toEqual([...aways].sort((one, other) => one - other));
    expect(byAway.options).toHaveLength(all.options.length);
  });

  test('expectedAway of a card of one hand is 4 - 3 · 4/131: the mean of the hypergeometric distribution', async () => {
    const { options } = await plan(['--card', oneHand, '--rack', 'FF 2222b 4444c NES', '--give', 'NES']);
    // 131 unseen tiles are no jokers, four of them sixes of dots; three come in, each counts.
    expect(options).toHaveLength(1);
    expect(options[0]).toMatchObject({ give: ['N', 'E', 'S'] });
    expect(options[0]?.expectedAway).toBeCloseTo(4 - (3 * 4) / 131, 12);
  });

  test('--give answers for that pass alone, with the same numbers as in the whole plan', async () => {
    const { options } = await plan(['--rack', RACK, '--step', 'across', '--top', '0']);
    const wanted = options.find(({ give }) => give.join(' ') === 'N 0 1b');
    expect(await plan(['--rack', RACK, '--step', 'across', '--give', '1b N 0'])).toEqual({
      step: 'across',
      options: [wanted],
      exact: true,
    });
  });

  describe('--advice: the window’s list', () => {
    type Advised = Plan['options'][number] & {
      chance: number;
      costs: number;
      error: number;
      verdict: string;
      stop?: true;
    };
    const advice = async (...args: string[]): Promise<readonly Advised[]> => {
      const { step, exact, options } = await plan(['--rack', RACK, '--advice', ...args]);
      expect({ step: typeof step, exact }).toEqual({ step: 'string', exact: true });
      return options as readonly Advised[];
    };

    test('each option has the fields of the contract; the first is the best, costs are whole games', async () => {
      const options = await advice();
      const fields = ['give', 'expectedAway', 'reach', 'cost', 'gift', 'chance', 'costs', 'error', 'verdict'];
      for (const option of options) {
        expect(Object.keys(option)).toEqual(fields);
        expect(Number.isInteger(option.costs)).toBe(true);
        expect(option.costs > 0).toBe(option.verdict === 'costs');
        expect(option.chance).toBeGreaterThan(0);
        expect(option.chance).toBeLessThan(1);
      }
      expect(options[0]).toMatchObject({ verdict: 'best', costs: 0, error: 0 });
      expect(options.slice(1).every(({ verdict }) => verdict !== 'best')).toBe(true);
      const { options: exact } = await plan(['--rack', RACK, '--top', '0']);
      const same = exact.find(({ give }) => give.join() === options[0]?.give.join());
      expect(options[0]?.gift).toBe(same?.gift);
    });

    test('the stop, blind passes and every number of the courtesy stand in the same list', async () => {
      const second = await advice('--step', 'left2', '--top', '0');
      expect(second.filter(({ stop }) => stop)).toHaveLength(1);
      const left = await advice('--step', 'left', '--top', '0');
      expect(new Set(left.map(({ give }) => give.length))).toEqual(new Set([0, 1, 2, 3]));
      const courtesy = await advice('--step', 'courtesy', '--top', '0');
      expect(new Set(courtesy.map(({ give }) => give.length))).toEqual(new Set([0, 1, 2, 3]));
    });

    test('--give is judged among the best and answered alone; an order by number is refused', async () => {
      const [one, ...others] = await advice('--give', 'FF N');
      expect(others).toEqual([]);
      expect(one?.give).toEqual(['F', 'F', 'N']);
      expect(await windrow(['pass', '--rack', RACK, '--advice', '--by', 'reach'])).toEqual(
        refusal(/--by has no meaning/),
      );
    });
  });

  test('in the courtesy none to three tiles may be given', async () => {
    for (const give of ['', 'N', 'N 0', 'N 0 1b']) {
      const { step, options } = await plan(['--rack', RACK, '--step', 'courtesy', '--give', give]);
      expect({ step, size: options[0]?.give.length }).toEqual({
        step: 'courtesy',
        size: give.replaceAll(/[ b]/g, '').length,
      });
    }
  });

  test('--rack - answers one document a line', async () => {
    const racks = [RACK, 'J FF N 0 13b 4578c 22d'];
    const { code, out } = await windrow(['pass', '--rack', '-', '--top', '2'], `${racks.join('\n')}\n`);
    expect(code).toBe(0);
    const lines = out.trimEnd().split('\n');
    expect(lines.map((line) => JSON.parse(line))).toEqual([
      await plan(['--rack', racks[0] ?? '', '--top', '2']),
      await plan(['--rack', racks[1] ?? '', '--top', '2']),
    ]);
    const mixed = await windrow(['pass', '--rack', '-', '--give', '1d'], `${racks.join('\n')}\n`);
    expect(mixed).toEqual(refusal(/^Line 1: This pass takes 3 tiles/));
  });

  test('for people: the passes in a table, and why for the best', async () => {
    const { out } = await windrow(['pass', '--rack', RACK, '--top', '3']);
    expect(out).toMatch(/^FF N 0 13b 4578c 122d, first right pass\n/);
    expect(out).toMatch(/Give .*Expected away .*Reach .*Cost .*Gift/);
    expect(out).not.toMatch(/ \n/);
    const nothing = await windrow(['pass', '--rack', RACK, '--step', 'courtesy', '--give', '']);
    expect(nothing.out).toMatch(/nothing .*\n\nNothing given: /);
  });

  test.each([
    [['--give', 'N 0'], /takes 3 tiles, but 2 are given\. Give three tiles, or name a --step that takes fewer: /],
    [['--give', 'N 0 1b 3b', '--advice'], /takes 3 tiles, but 4 are given\. Give three tiles, or /],
    [['--give', 'N 0', '--step', 'right2'], /Give three tiles, or with --advice fewer, the rest unseen\./],
    [['--give', 'N 0 1b 3b', '--step', 'courtesy'], /Give three tiles or fewer\./],
  ])('a pass %j of a number that is not possible is refused with what to do', async (args, sentence) => {
    expect(await windrow(['pass', '--rack', RACK, ...args])).toEqual(refusal(sentence));
  });

  test.each([
    [['--rack', RACK, '--step', 'up'], /--step must be one of right, across, left, left2, across2, right2, courtesy/],
    [['--rack', RACK, '--give', 'J N 0'], /joker is never passed/],
    [['--rack', RACK, '--give', 'S N 0'], /too few S \(south wind\)/],
    [['--rack', RACK, '--give', 'N 0'], /takes 3 tiles, but 2/],
    [['--rack', RACK, '--step', 'courtesy', '--give', 'N 0 1b 3b'], /takes at most 3 tiles, but 4/],
    [['--rack', RACK, '--give', 'x'], /--give: /],
    [['--rack', 'FF N 0 13b 4578c 22d', '--json'], /12/],
    [['--rack', RACK, '--by', 'away'], /--by must be one of reach, expectedAway/],
    [['--rack', RACK, '--draws', '3'], /--draws is no option of pass/],
  ])('bad input %j is refused in one line', async (args, sentence) => {
    expect(await windrow(['pass', ...args])).toEqual(refusal(sentence));
  });
});
