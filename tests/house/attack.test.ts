import { expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { type Attack, exitCode, tableText, type Tally, tallyOf, Trials, type Troubles } from '../attack/table.ts';

const withstood = async (): Promise<Troubles> => [];

/** The tally of an attack that runs so, with time for it. */
async function tally(run: Attack['run'], milliseconds = 60_000): Promise<Tally> {
  const trials = new Trials('doors', randomFromSeed(1), milliseconds);
  return await tallyOf({ name: 'doors', share: 1, run }, trials, '/nowhere');
}

test('a trial that finds trouble, one that throws and an attack that breaks off have failed: the exit code is 1', async () => {
  const found = await tally(async (trials) => {
    expect(await trials.try('a', withstood)).toBe(true);
    expect(await trials.try('b', async () => ['it was taken', 'nothing was said'])).toBe(false);
    await trials.try('c', async () => {
      throw new Error('nobody answered');
    });
    throw new Error('no disk');
  });
  expect(found).toMatchObject({
    tried: 4,
    failures: ['b: it was taken; nothing was said', 'c: nobody answered', 'the attack broke off: no disk'],
  });
  expect(exitCode([found])).toBe(1);
  expect(tableText([found])).toMatch(/^doors +\| +4 \| +3$/m);
  expect(tableText([found])).toMatch(/^FAILED in "doors": c: nobody answered$/m);
});

test('an attack that withstood all it tried is well, beside others', async () => {
  const well = await tally(async (trials) => void (await trials.try('a', withstood)));
  const bad = await tally(async (trials) => void (await trials.try('a', async () => ['lost'])));
  expect(exitCode([well])).toBe(0);
  expect(exitCode([well, bad])).toBe(1);
  expect(tableText([well, bad]).split('\n').at(-1)).toBe('2 tried, 1 failed, 0 skipped');
});

test('what tried nothing has failed, unless it says why; nothing at all is never well', async () => {
  const idle = await tally(async () => undefined);
  const skipped = await tally(async (trials) => trials.skip('all disks', 'nobody may mount here'));
  const well = await tally(async (trials) => void (await trials.try('a', withstood)));
  expect(exitCode([well, idle])).toBe(1);
  expect(tableText([idle])).toContain('FAILED: "doors" tried nothing.');
  expect(exitCode([well, skipped])).toBe(0);
  expect(tableText([skipped])).toMatch(/^doors +\| +0 \| +0$/m);
  expect(tableText([skipped])).toContain('Skipped in "doors": all disks: nobody may mount here.');
  expect(exitCode([skipped])).toBe(1);
  expect(exitCode([])).toBe(1);
});

test('each form is tried once, in an order by chance; where time is up the rest is said to be missing', async () => {
  const seen: number[] = [];
  const forms = [1, 2, 3, 4, 5, 6, 7, 8];
  const run: Attack['run'] = async (trials) =>
    await trials.each(forms, String, async (form) => (seen.push(form), form === 3 ? ['three'] : []));
  expect(await tally(run)).toMatchObject({ tried: 8, failures: ['3: three'], notes: [] });
  expect(seen.toSorted((one, other) => one - other)).toEqual(forms);
  expect(seen).not.toEqual(forms);
  expect(await tally(run, 0)).toMatchObject({ tried: 1, notes: [expect.stringMatching(/^1 of 8 forms/)] });
});

test('trials that go on as long as the time do so at least once, and stop at the third that failed', async () => {
  const again = (troubles: Troubles) => async (trials: Trials) => await trials.again('a kill', async () => troubles);
  expect(await tally(again([]), 0)).toMatchObject({ tried: 1, failures: [] });
  expect(await tally(again(['lost']))).toMatchObject({
    tried: 3,
    failures: ['a kill, turn 1: lost', 'a kill, turn 2: lost', 'a kill, turn 3: lost'],
  });
});
