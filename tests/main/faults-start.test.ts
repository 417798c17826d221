import { beforeAll, describe, expect, test, vi } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { createDeskService } from '../../main/desk/service.ts';
import { cardText, contentOf, event, FOLDER, gameRecord, MISS, openOn, optionsOn, sheetText } from './support/desks.ts';
import { FAULTS, type Fault, faultAt } from './support/faults.ts';
import { MemoryDisk } from './support/memory-disk.ts';

// Hundreds of starts: slow on a machine that does other things too.
vi.setConfig({ testTimeout: 180_000 });

/** What a crash left, with one damaged file of each kind, leftovers, and what another computer put there. */
async function wornFolder(): Promise<ReadonlyMap<string, string>> {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  for (const title of ['Mine', 'Mine, mended']) {
    expectValue(await desk.saveCard('mine', cardText(title)));
    expectValue(await desk.saveCard('torn', cardText(title)));
    expectValue(await desk.removeCard('torn'));
  }
  expectValue(await desk.saveCardProgress('mine', { confirmed: ['a'], answers: [] }));
  expectValue(await desk.keepSheet(sheetText('Thursday')));
  expectValue(await desk.notePractice([MISS]));
  expectValue(await desk.changePreferences({ theme: 'dark' }));
  for (const id of ['g-1', 'g-2', 'g-3']) expectValue(await desk.startGame(gameRecord(id)));
  expectValue(await desk.removeGame('g-3'));
  for (const place of [0, 1, 2]) expectValue(await desk.appendEvent('g-2', place, event(place)));
  const torn = disk.texts().get(`${FOLDER}/open/g-2.jsonl`) ?? '';
  disk.put(`${FOLDER}/open/g-2.jsonl`, `${torn}{"add":{"type":"rec`);
  disk.put(`${FOLDER}/open/g-9.jsonl`, 'no log');
  disk.put(`${FOLDER}/games/2026/11/g-8.json`, '{"kind":"windrow.ga');
  disk.put(`${FOLDER}/games/2026/11/g-7.json`, JSON.stringify(gameRecord('g-7', { events: [event(0), event(2)] })));
  disk.put(`${FOLDER}/cards/torn.card.json`, cardText('Mine').slice(0, 40));
  disk.put(`${FOLDER}/cards/progress/torn.json`, '{"kin');
  disk.put(`${FOLDER}/practice/sheets/torn.sheet.json`, '{"kin');
  disk.put(`${FOLDER}/games/2026/11/g-1.json.n1.unfinished`, 'half');
  return disk.texts();
}

function diskWith(texts: ReadonlyMap<string, string>): MemoryDisk {
  const disk = new MemoryDisk();
  for (const [path, text] of texts) disk.put(path, text);
  disk.now += 30 * 3_600_000;
  return disk;
}

/** Starts and looks at everything, as the window does; a failure is a sentence, and a second start goes on. */
async function startAndLook(disk: MemoryDisk): Promise<void> {
  const opened = await createDeskService(optionsOn(disk));
  if (!opened.ok) {
    expect(opened.problem.message).toMatch(/^[A-Z].*\.$/);
    return;
  }
  const desk = opened.value;
  for (const answer of [
    await desk.readPreferences(),
    await desk.listCards(),
    await desk.openCard('torn'),
    await desk.readCardProgress('torn'),
    await desk.listGames(),
    await desk.openGame('g-2'),
    await desk.listSheets(),
    await desk.restoreGame('g-3'),
    await desk.importGames([gameRecord('g-1', { place: 'Elsewhere', editedAt: '2026-12-01T00:00:00Z' })]),
  ]) {
    if (!answer.ok) expect(answer.problem.message).toMatch(/^[A-Z].*\.$/);
  }
  await desk.close();
}

describe('CR-D2: the start after a crash, with damaged files to set aside, every file call made to fail in turn', () => {
  let worn: ReadonlyMap<string, string> = new Map();
  let wanted = '';
  let calls = 0;

  beforeAll(async () => {
    worn = await wornFolder();
    const disk = diskWith(worn);
    await startAndLook(disk);
    calls = disk.calls.length;
    await startAndLook(disk);
    wanted = await contentOf(await openOn(disk));
  });

  test('the start does all that it may have to do', () => {
    expect(calls).toBeGreaterThan(150);
    expect(wanted).toContain('Elsewhere');
  });

  test.each(FAULTS)('%s: nothing is lost, and the next start brings all in order', async (fault: Fault) => {
    let seen = 0;
    for (let at = 0; at < calls; at += 1) {
      const disk = diskWith(worn);
      const { watch, failed } = faultAt(at, fault);
      disk.watch = watch;
      await startAndLook(disk);
      if (failed()) seen += 1;
      disk.watch = () => undefined;
      disk.now += 30 * 3_600_000;
      await startAndLook(disk);
      await startAndLook(disk);
      expect(await contentOf(await openOn(disk)), `call ${at}`).toBe(wanted);
      const unfinished = [...disk.texts().keys()].filter((path) => path.endsWith('.unfinished'));
      expect(unfinished, `call ${at}`).toEqual([]);
      expectKept(disk);
    }
    expect(seen).toBe(calls);
  });

  /** The damaged files' texts are all still there, and no copy of them is a part of one. */
  function expectKept(disk: MemoryDisk): void {
    const known = new Set(worn.values());
    for (const [path, text] of disk.texts()) if (path.includes('.damaged-')) expect(known.has(text), path).toBe(true);
    const now = new Set(disk.texts().values());
    const damaged = [...worn].filter(([path]) => /g-[789]|torn\./.test(path));
    expect(damaged.length).toBeGreaterThan(5);
    for (const [path, text] of damaged) expect(now.has(text), path).toBe(true);
  }
});
