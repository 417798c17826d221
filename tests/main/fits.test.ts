import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { CHANCE_VERSION } from '../../core/chance/card-chance.ts';
import { DEMO_FITS } from '../../core/chance/demo-fit.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import { callDesk } from '../../main/desk/calls.ts';
import { FOLDER, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const FILE = `${FOLDER}/findings/cards.jsonl`;
const MARK = '0123456789abcdef';
const plain = (fit: unknown): CardFit => JSON.parse(JSON.stringify(fit)) as CardFit;
const [QUICK, CLUB] = (['quick', 'club'] as const).map((kind) => plain(DEMO_FITS.find((fit) => fit.kind === kind)));

test('the games of a card are found again after a restart, apart by card and kind of table', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  expect(expectValue(await desk.readFit(MARK, 'club'))).toBeNull();
  expectValue(await desk.keepFit(MARK, CLUB!));
  expectValue(await desk.keepFit(MARK, QUICK!));
  expectValue(await desk.keepFit(MARK, CLUB!));
  await desk.close();
  const again = await openOn(disk);
  expect(expectValue(await again.readFit(MARK, 'club'))).toEqual(CLUB);
  expect(expectValue(await again.readFit(MARK, 'quick'))).toEqual(QUICK);
  expect(expectValue(await again.readFit(MARK, 'relaxed'))).toBeNull();
  expect(expectValue(await again.readFit('fedcba9876543210', 'club'))).toBeNull();
  expect(disk.texts().get(FILE)?.trimEnd().split('\n')).toHaveLength(2);
});

test('only the newest are kept', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  const marks = Array.from({ length: 61 }, (_, place) => place.toString(16).padStart(16, '0'));
  for (const mark of marks) expectValue(await desk.keepFit(mark, CLUB!));
  expect(expectValue(await desk.readFit(marks[0]!, 'club'))).toBeNull();
  expect(expectValue(await desk.readFit(marks[1]!, 'club'))).toEqual(CLUB);
  expect(expectValue(await desk.readFit(marks[60]!, 'club'))).toEqual(CLUB);
});

test('CR-J4: what another version wrote, or somebody has changed, counts as not there', async () => {
  const row = { version: CHANCE_VERSION, mark: MARK, fit: CLUB! };
  const spoiled: readonly unknown[] = [
    { ...row, version: CHANCE_VERSION + 1 },
    { ...row, mark: '../../x' },
    { ...row, fit: { ...CLUB!, games: 0 } },
    { ...row, fit: { ...CLUB!, correction: [...(CLUB!.correction as number[]).slice(1), null] } },
    { ...row, fit: { ...CLUB!, correction: (CLUB!.correction as number[]).slice(1) } },
    { ...row, fit: { ...CLUB!, table: { ...CLUB!.table, wallGames: 1.5 } } },
    { ...row, fit: { ...CLUB!, table: { ...CLUB!.table, incoming: {} } } },
    'no row at all',
  ];
  for (const each of spoiled) {
    const disk = new MemoryDisk();
    disk.put(FILE, `${JSON.stringify(each)}\n{"torn`);
    const desk = await openOn(disk);
    expect(expectValue(await desk.readFit(MARK, 'club')), JSON.stringify(each).slice(0, 200)).toBeNull();
    expect(expectValue(await desk.notices())).toEqual([]);
  }
  const disk = new MemoryDisk();
  disk.put(FILE, `${JSON.stringify(row)}\n`);
  expect(expectValue(await (await openOn(disk)).readFit(MARK, 'club'))).toEqual(CLUB);
});

test('a window can keep nothing else there', async () => {
  const desk = await openOn(new MemoryDisk());
  for (const given of [
    [MARK, {}],
    [MARK, { ...CLUB!, kind: 'other' }],
    ['x/../y', CLUB],
    [MARK, CLUB, 1],
  ]) {
    expect(await callDesk(desk, 'keepFit', given)).toMatchObject({ ok: false, problem: { code: 'wrong-arguments' } });
  }
  expect(await callDesk(desk, 'keepFit', [MARK, CLUB])).toMatchObject({ ok: true });
});
