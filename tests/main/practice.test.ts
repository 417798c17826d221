import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { callDesk } from '../../main/desk/calls.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { FOLDER, MISS, openOn, sheetText } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const SHEET = `${FOLDER}/practice/sheets/thursday.sheet.json`;
const HISTORY = `${FOLDER}/practice/history.jsonl`;

async function titles(desk: DeskService): Promise<string[]> {
  return expectValue(await desk.practice({ do: 'list' })).sheets.map(({ title }) => title);
}

async function ids(desk: DeskService): Promise<string[]> {
  const { entries } = expectValue(await desk.practice({ do: 'history' }));
  return entries.map(({ id }) => id);
}

describe('sheets', () => {
  test('a sheet is found again after a restart, as it was written', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.practice({ do: 'keep', text: sheetText('Thursday') }));
    await desk.close();
    const again = await openOn(disk);
    expect(await titles(again)).toEqual(['Thursday']);
    expect(expectValue(await again.practice({ do: 'open', id: 'thursday' })).text).toBe(sheetText('Thursday'));
  });

  test('what is no sheet is refused with words, and nothing is written', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const before = [...disk.texts()];
    expect(await desk.practice({ do: 'keep', text: '{"kind":"windrow.game"}' })).toMatchObject({ ok: false });
    expect([...disk.texts()]).toEqual(before);
  });

  test('J4: a damaged sheet is set aside and told of, never written over', async () => {
    const disk = new MemoryDisk();
    disk.put(SHEET, '{"kind": "windrow.sh');
    const desk = await openOn(disk);
    expect(await titles(desk)).toEqual([]);
    expect(expectValue(await desk.notices()).join()).toMatch(/thursday is damaged/);
    const kept = [...disk.texts()].find(([path]) => path.startsWith(`${SHEET}.damaged-`));
    expect(kept?.[1]).toBe('{"kind": "windrow.sh');
  });

  test('V4: a sheet of a newer Windrow is neither listed, opened nor written over', async () => {
    const disk = new MemoryDisk();
    const newer = sheetText('Later').replace('"schemaVersion": 1', '"schemaVersion": 2');
    disk.put(SHEET, newer);
    const desk = await openOn(disk);
    expect(await titles(desk)).toEqual([]);
    expect(await desk.practice({ do: 'open', id: 'thursday' })).toMatchObject({ problem: { code: 'newer-version' } });
    expect(await desk.practice({ do: 'keep', text: sheetText('Mine') })).toMatchObject({
      problem: { code: 'newer-version' },
    });
    expect(disk.texts().get(SHEET)).toBe(newer);
  });

  test('a sheet that was taken away is back when its text is kept again', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.practice({ do: 'keep', text: sheetText('Thursday') }));
    expectValue(await desk.practice({ do: 'remove', id: 'thursday' }));
    expect(await titles(desk)).toEqual([]);
    expect(await desk.practice({ do: 'open', id: 'thursday' })).toMatchObject({ problem: { code: 'not-found' } });
    expectValue(await desk.practice({ do: 'keep', text: sheetText('Thursday') }));
    expect(await titles(desk)).toEqual(['Thursday']);
  });
});

describe('the practice history', () => {
  test('entries are there after a restart, in order', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.practice({ do: 'note', entries: [MISS] }));
    expectValue(await desk.practice({ do: 'note', entries: [{ ...MISS, id: 'm2' }] }));
    await desk.close();
    expect(await ids(await openOn(disk))).toEqual(['m1', 'm2']);
  });

  test('an entry that is sent twice is kept once', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.practice({ do: 'note', entries: [MISS] }));
    expectValue(await desk.practice({ do: 'note', entries: [MISS, { ...MISS, id: 'm2' }] }));
    expect(await ids(desk)).toEqual(['m1', 'm2']);
  });

  test('a torn last line is passed over; lines of a newer Windrow stay in the file', async () => {
    const disk = new MemoryDisk();
    disk.put(HISTORY, `${JSON.stringify(MISS)}\n{"type":"dream","day":3}\n{"type":"mi`);
    const desk = await openOn(disk);
    expect(await ids(desk)).toEqual(['m1']);
    expectValue(await desk.practice({ do: 'note', entries: [{ ...MISS, id: 'm2' }] }));
    expect(await ids(desk)).toEqual(['m1', 'm2']);
    expect(disk.texts().get(HISTORY)).toContain('{"type":"dream","day":3}\n');
  });
});

describe('17: the call is checked before it is made', () => {
  test.each([
    [],
    [{ do: 'erase' }],
    [{ do: 'open', id: '../games' }],
    [{ do: 'list', id: 'x' }],
    [{ do: 'note', entries: [{ ...MISS, cost: 7 }] }],
    [{ do: 'note', entries: Array(101).fill(MISS) }],
    [{ do: 'keep', text: 'x'.repeat(900_001) }],
  ])('refuses what has not its shape (%#)', async (...given) => {
    const desk = await openOn(new MemoryDisk());
    expect(await callDesk(desk, 'practice', given)).toMatchObject({ ok: false, problem: { code: 'wrong-arguments' } });
  });
});
