import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCollection } from '../../core/journal/collection.ts';
import { DEFAULT_PREFERENCES } from '../../main/desk/preferences.ts';
import { bringIn } from '../../renderer/backup/bring-in.ts';
import { gatherEverything } from '../../renderer/backup/gather.ts';
import { PreferenceStore } from '../../renderer/session/preference-store.ts';
import { cardText, FOLDER, gameRecord, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const told = (): void => undefined;

/** As Microsoft lists them in "Naming Files, Paths, and Namespaces". */
const DEVICES = [
  'con',
  'nul',
  'prn',
  'aux',
  ...Array.from({ length: 9 }, (_, at) => [`com${at + 1}`, `lpt${at + 1}`]).flat(),
];

describe('names that Windows keeps for devices', () => {
  test('are refused for new cards in any case and with anything behind a dot, in a sentence', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    for (const device of DEVICES) {
      for (const id of [device, device.toUpperCase(), `${device}.2026`]) {
        expect(await desk.saveCard(id, cardText('Mine'))).toEqual({
          ok: false,
          problem: {
            code: 'bad-name',
            message: `Windows keeps the name "${id}" for itself, so nothing was saved. Choose another name.`,
          },
        });
      }
    }
    expect([...disk.texts().keys()].filter((path) => path.includes('/cards/'))).toEqual([]);
    for (const id of ['console', 'com10', 'com0', 'my con', 'con-2026']) {
      expectValue(await desk.saveCard(id, cardText('Mine')));
    }
  });

  test('are refused for games that are started', async () => {
    const desk = await openOn(new MemoryDisk());
    for (const id of ['con', 'LPT9']) {
      const refused = await desk.startGame(gameRecord(id));
      expect(refused).toMatchObject({ problem: { code: 'bad-name', message: expect.stringContaining(`"${id}"`) } });
    }
    expect(expectValue(await desk.listGames())).toEqual([]);
  });

  test('of games that are brought in give way to a name of our own, the same each time, and end no import', async () => {
    const desk = await openOn(new MemoryDisk());
    const games = [gameRecord('con'), gameRecord('LPT9'), gameRecord('g-1')];
    expect(expectValue(await desk.importGames(games))).toEqual({ added: 3, copied: 0, same: 0 });
    expect(expectValue(await desk.importGames(games))).toEqual({ added: 0, copied: 0, same: 3 });
    const ids = expectValue(await desk.listGames()).map(({ id }) => id);
    expect(ids.toSorted()).toEqual([
      expect.stringMatching(/^LPT9-[0-9a-z]+$/),
      expect.stringMatching(/^con-[0-9a-z]+$/),
      'g-1',
    ]);
    for (const id of ids) expectValue(await desk.openGame(id));
  });

  test('of a card that is there already do not keep its changes from being saved', async () => {
    const disk = new MemoryDisk();
    disk.put(`${FOLDER}/cards/con.card.json`, cardText('From elsewhere'));
    const desk = await openOn(disk);
    expectValue(await desk.saveCard('con', cardText('Changed')));
  });

  test('of a card in a backup give way to a name of our own', async () => {
    const disk = new MemoryDisk();
    disk.put(`${FOLDER}/cards/aux.card.json`, cardText('From elsewhere'));
    const backup = expectValue(await gatherEverything(await openOn(disk), '0.1.0', told));
    const desk = await openOn(new MemoryDisk());
    const preferences = new PreferenceStore(desk, DEFAULT_PREFERENCES);
    expect(expectValue(await bringIn({ desk, preferences }, expectValue(readCollection(backup)), told)).cards).toBe(1);
    const [, card] = expectValue(await desk.listCards());
    expect(card).toMatchObject({ title: 'From elsewhere', id: expect.stringMatching(/^from-elsewhere-/) });
  });
});

describe('names that are one on a disk that does not tell capitals apart', () => {
  const ALIKE = { code: 'bad-name', message: expect.stringMatching(/differs from "\S+" only in capital letters/) };

  test('are refused for a second card, on every computer', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.saveCard('Mine', cardText('Mine')));
    expect(await desk.saveCard('mine', cardText('Other'))).toEqual({ ok: false, problem: ALIKE });
    expectValue(await desk.saveCard('Émile', cardText('One')));
    expect(await desk.saveCard('e\u0301mile', cardText('Other'))).toEqual({ ok: false, problem: ALIKE });
    expectValue(await desk.saveCard('Mine', cardText('Mine, mended')));
  });

  test('are refused for a second game that is started or brought back; one that is brought in gets another', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.startGame(gameRecord('G-1')));
    expectValue(await desk.removeGame('G-1'));
    expectValue(await desk.startGame(gameRecord('g-1', { startedAt: '2026-12-25T18:00:00Z' })));
    for (const refused of [await desk.startGame(gameRecord('G-1')), await desk.restoreGame('G-1')]) {
      expect(refused).toEqual({ ok: false, problem: ALIKE });
    }
    expect(expectValue(await desk.importGames([gameRecord('G-1')]))).toMatchObject({ added: 1 });
    const ids = expectValue(await desk.listGames()).map(({ id }) => id);
    expect(ids).toEqual(['g-1', expect.stringMatching(/^G-1-[0-9a-z]+$/)]);
    expectValue(await desk.removeGame('g-1'));
    expect(expectValue(await desk.importGames([gameRecord('G-1')]))).toMatchObject({ added: 0, same: 1 });
    expectValue(await desk.restoreGame('G-1'));
  });
});
