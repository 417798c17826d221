import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readSheetFile, writeSheetFile } from '../../core/warmup/sheet-file.ts';
import { callDesk } from '../../main/desk/calls.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { FOLDER, MISS, openOn, sheetText } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const SHEET = `${FOLDER}/practice/sheets/thursday.sheet.json`;
const HISTORY = `${FOLDER}/practice/history.jsonl`;

async function titles(desk: DeskService): Promise<string[]> {
  return expectValue(await desk.listSheets()).map(({ title }) => title);
}

async function ids(desk: DeskService): Promise<string[]> {
  const entries = expectValue(await desk.practiceHistory());
  return entries.map(({ id }) => id);
}

describe('sheets', () => {
  test('a sheet is found again after a restart, as it was written', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.keepSheet(sheetText('Thursday')));
    await desk.close();
    const again = await openOn(disk);
    expect(await titles(again)).toEqual(['Thursday']);
    expect(expectValue(await again.openSheet('thursday'))).toBe(sheetText('Thursday'));
  });

  test('the sheet that was made last stands first', async () => {
    const desk = await openOn(new MemoryDisk());
    for (const day of [24, 26, 25]) {
      const sheet = expectValue(readSheetFile(sheetText(`The ${day}th`)));
      expectValue(
        await desk.keepSheet(writeSheetFile({ ...sheet, id: `s-${day}`, madeAt: `2026-11-${day}T10:00:00Z` })),
      );
    }
    expect(await titles(desk)).toEqual(['The 26th', 'The 25th', 'The 24th']);
  });

  test('what is no sheet is refused with words, and nothing is written', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const before = [...disk.texts()];
    expect(await desk.keepSheet('{"kind":"windrow.game"}')).toMatchObject({ ok: false });
    expect([...disk.texts()]).toEqual(before);
  });

  test('CR-J4: a damaged sheet is set aside and told of, never written over', async () => {
    const disk = new MemoryDisk();
    disk.put(SHEET, '{"kind": "windrow.sh');
    const desk = await openOn(disk);
    expect(await titles(desk)).toEqual([]);
    expect(expectValue(await desk.notices()).join()).toMatch(/thursday is damaged/);
    const kept = [...disk.texts()].find(([path]) => path.startsWith(`${SHEET}.damaged-`));
    expect(kept?.[1]).toBe('{"kind": "windrow.sh');
  });

  test('CR-V4: a sheet of a newer Windrow is neither listed, opened nor written over', async () => {
    const disk = new MemoryDisk();
    const newer = sheetText('Later').replace('"schemaVersion": 1', '"schemaVersion": 2');
    disk.put(SHEET, newer);
    const desk = await openOn(disk);
    expect(await titles(desk)).toEqual([]);
    expect(await desk.openSheet('thursday')).toMatchObject({ problem: { code: 'newer-version' } });
    expect(await desk.keepSheet(sheetText('Mine'))).toMatchObject({
      problem: { code: 'newer-version' },
    });
    expect(disk.texts().get(SHEET)).toBe(newer);
  });

  test('a sheet that was taken away is back when its text is kept again', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.keepSheet(sheetText('Thursday')));
    expectValue(await desk.removeSheet('thursday'));
    expect(await titles(desk)).toEqual([]);
    expect(await desk.openSheet('thursday')).toMatchObject({ problem: { code: 'not-found' } });
    expectValue(await desk.keepSheet(sheetText('Thursday')));
    expect(await titles(desk)).toEqual(['Thursday']);
  });
});

describe('the practice history', () => {
  test('entries are there after a restart, in order', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.notePractice([MISS]));
    expectValue(await desk.notePractice([{ ...MISS, id: 'm2' }]));
    await desk.close();
    expect(await ids(await openOn(disk))).toEqual(['m1', 'm2']);
  });

  test('an entry that is sent twice is kept once', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.notePractice([MISS]));
    expectValue(await desk.notePractice([MISS, { ...MISS, id: 'm2' }]));
    expect(await ids(desk)).toEqual(['m1', 'm2']);
  });

  test('a torn last line is passed over; lines of a newer Windrow stay in the file', async () => {
    const disk = new MemoryDisk();
    disk.put(HISTORY, `${JSON.stringify(MISS)}\n{"type":"dream","day":3}\n{"type":"mi`);
    const desk = await openOn(disk);
    expect(await ids(desk)).toEqual(['m1']);
    expectValue(await desk.notePractice([{ ...MISS, id: 'm2' }]));
    expect(await ids(desk)).toEqual(['m1', 'm2']);
    expect(disk.texts().get(HISTORY)).toContain('{"type":"dream","day":3}\n');
  });
});

describe('17: the call is checked before it is made', () => {
  test.each([
    ['openSheet'],
    ['removeSheet', { do: 'erase' }],
    ['openSheet', '../games'],
    ['listSheets', 'x'],
    ['notePractice', [{ ...MISS, cost: 7 }]],
    ['notePractice', Array(101).fill(MISS)],
    ['keepSheet', 'x'.repeat(900_001)],
  ])('refuses what has not its shape (%#)', async (call, ...given) => {
    const desk = await openOn(new MemoryDisk());
    expect(await callDesk(desk, call, given)).toMatchObject({ ok: false, problem: { code: 'wrong-arguments' } });
  });
});
