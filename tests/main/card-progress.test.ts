import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { lineContent } from '../../core/card/proof.ts';
import type { CardProgress } from '../../main/desk/desk.ts';
import { callDesk } from '../../main/desk/calls.ts';
import { FOLDER, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const PROGRESS: CardProgress = {
  confirmed: ['["weather-1"]'],
  answers: [{ lineId: 'weather-1', ask: 'points', right: false, day: 20_000 }],
};
const FILE = `${FOLDER}/cards/progress/demo.json`;

describe('proof-reading and study of a card', () => {
  test('are empty at first, and found again after a restart', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expect(expectValue(await desk.readCardProgress('demo'))).toEqual({ confirmed: [], answers: [] });
    expectValue(await desk.saveCardProgress('demo', PROGRESS));
    await desk.close();
    expect(expectValue(await (await openOn(disk)).readCardProgress('demo'))).toEqual(PROGRESS);
  });

  test('what was meant so is kept, also by a window that does not know of it', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    expectValue(await desk.saveCardProgress('demo', { ...PROGRESS, meant: ['not-moving []'] }));
    expectValue(await desk.saveCardProgress('demo', PROGRESS));
    expect(expectValue(await desk.readCardProgress('demo'))).toEqual({ ...PROGRESS, meant: ['not-moving []'] });
    expectValue(await desk.saveCardProgress('demo', { ...PROGRESS, meant: [] }));
    expect(expectValue(await desk.readCardProgress('demo')).meant).toEqual([]);
  });

  test('CR-J4: a damaged file is set aside, never written over, and the person is told', async () => {
    const disk = new MemoryDisk();
    disk.put(FILE, '{"confirmed": 5}');
    const desk = await openOn(disk);
    expect(expectValue(await desk.readCardProgress('demo'))).toEqual({ confirmed: [], answers: [] });
    const aside = [...disk.texts()].filter(([path]) => path.startsWith(`${FILE}.damaged-`));
    expect(aside.map(([, text]) => text)).toEqual(['{"confirmed": 5}']);
    expect(expectValue(await desk.notices()).join()).toContain('proof-read');
  });

  test('CR-V4: a file of a newer version is refused and left as it is', async () => {
    const disk = new MemoryDisk();
    const newer = '{"schemaVersion": 2, "confirmed": [], "answers": []}';
    disk.put(FILE, newer);
    const desk = await openOn(disk);
    expect(await desk.readCardProgress('demo')).toMatchObject({ problem: { code: 'newer-version' } });
    expect(await desk.saveCardProgress('demo', PROGRESS)).toMatchObject({ problem: { code: 'newer-version' } });
    expect(disk.texts().get(FILE)).toBe(newer);
  });

  test('CR-V1: the example of the format page is read as it stands', async () => {
    const page = readFileSync(new URL('../../main/desk/FORMAT.md', import.meta.url), 'utf8');
    const example = /```json\n(\{\s*"kind": "windrow\.card-progress"[\s\S]*?)```/.exec(page)?.[1] ?? '';
    const disk = new MemoryDisk();
    disk.put(FILE, example);
    const { confirmed, answers } = expectValue(await (await openOn(disk)).readCardProgress('demo'));
    const line = { id: 'runs-1', pattern: 'FF 111a 222a 333b 444b', slide: 1 };
    expect(confirmed).toEqual([lineContent(line)]);
    expect(answers).toHaveLength(1);
  });

  test('are not listed as cards', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.saveCardProgress('demo', PROGRESS));
    expect(expectValue(await desk.listCards()).map(({ id }) => id)).toEqual(['demo']);
  });

  test('17: what is no progress is refused at the door', async () => {
    const desk = await openOn(new MemoryDisk());
    for (const wrong of [
      null,
      {},
      { ...PROGRESS, confirmed: [1] },
      { ...PROGRESS, answers: [{ lineId: 'a', ask: 'age', right: true, day: 1 }] },
      { ...PROGRESS, confirmed: Array(301).fill('x') },
    ]) {
      expect(await callDesk(desk, 'saveCardProgress', ['demo', wrong])).toMatchObject({
        problem: { code: 'wrong-arguments' },
      });
    }
    expect(await callDesk(desk, 'saveCardProgress', ['../x', PROGRESS])).toMatchObject({ ok: false });
  });
});
