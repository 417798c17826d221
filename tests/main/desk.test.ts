import type { TimedEvent } from '../../core/game/events.ts';
import { describe, expect, test } from 'vitest';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { createDeskService, type DeskService } from '../../main/desk/service.ts';
import { cardText, contentOf, event, EVENTS, FOLDER, gameRecord, openOn, optionsOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const GAME = `${FOLDER}/games/2026/11/g-1.json`;

async function startedGame(disk: MemoryDisk, events = EVENTS.length): Promise<DeskService> {
  const desk = await openOn(disk);
  expectValue(await desk.startGame(gameRecord('g-1')));
  for (let place = 0; place < events; place += 1) expectValue(await desk.appendEvent('g-1', place, event(place)));
  return desk;
}

async function notices(desk: DeskService): Promise<string> {
  return expectValue(await desk.notices()).join('\n');
}

describe('games', () => {
  test('a game is found again after a restart, event by event', async () => {
    const disk = new MemoryDisk();
    const desk = await startedGame(disk);
    const before = await contentOf(desk);
    await desk.close();
    expect(await contentOf(await openOn(disk))).toBe(before);
  });

  test('one file for each game under its year and month; the log is gone once the game is folded', async () => {
    const disk = new MemoryDisk();
    const desk = await startedGame(disk);
    expect([...disk.texts().keys()]).toContain(`${FOLDER}/open/g-1.jsonl`);
    await desk.close();
    expect([...disk.texts().keys()].sort()).toEqual([GAME, `${FOLDER}/index.jsonl`]);
  });

  test('a repeated call does nothing twice; one from another time is refused', async () => {
    const desk = await startedGame(new MemoryDisk(), 2);
    expectValue(await desk.appendEvent('g-1', 1, event(1)));
    expect(await desk.appendEvent('g-1', 0, event(1))).toMatchObject({ ok: false, problem: { code: 'out-of-step' } });
    expect(await desk.appendEvent('g-1', 3, event(2))).toMatchObject({ ok: false, problem: { code: 'out-of-step' } });
    expectValue(await desk.dropEvent('g-1', 1));
    expectValue(await desk.dropEvent('g-1', 1));
    expect(await desk.dropEvent('g-1', 5)).toMatchObject({ ok: false, problem: { code: 'out-of-step' } });
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(1);
  });

  test('an event in the middle is corrected: those after it stay, a restart finds it, and a repeated call does nothing twice', async () => {
    const disk = new MemoryDisk();
    const desk = await startedGame(disk, 4);
    const deal = { ...event(0), tiles: 'FF N 0 13b 4578c 12d1d', at: '2026-11-25T18:30:00Z' };
    expectValue(await desk.changeGame('g-1', { corrected: { place: 0, event: deal }, arrangement: 'FF | 3b' }));
    expectValue(await desk.changeGame('g-1', { corrected: { place: 0, event: deal }, arrangement: 'FF | 3b' }));
    expect(await desk.changeGame('g-1', { corrected: { place: 4, event: deal } })).toMatchObject({
      ok: false,
      problem: { code: 'out-of-step' },
    });
    const { events, arrangement } = expectValue(await desk.openGame('g-1'));
    expect(events).toEqual([deal, event(1), event(2), event(3)]);
    expect(arrangement).toBe('FF | 3b');
    expect(expectValue(await desk.listGames())[0]?.lastEventAt).toBe('2026-11-25T18:30:00Z');
    const content = await contentOf(desk);
    expect(await contentOf(await openOn(disk.crashed(randomFromSeed(1))))).toBe(content);
  });

  test('a correction that makes a later event impossible is refused with a reason and nothing is lost', async () => {
    const desk = await startedGame(new MemoryDisk(), 4);
    const before = await contentOf(desk);
    const refused = await desk.changeGame('g-1', {
      corrected: { place: 0, event: { ...event(0), tiles: 'FF S 0 13b 4578c 22d1d' } as TimedEvent },
    });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'later-impossible' } });
    expect(await contentOf(desk)).toBe(before);
  });

  test('a correction of a game that is not there, or with an event that there is not, is refused with a reason', async () => {
    const desk = await startedGame(new MemoryDisk(), 4);
    const before = await contentOf(desk);
    const deal = event(0);
    expect(await desk.changeGame('g-2', { corrected: { place: 0, event: deal } })).toMatchObject({ ok: false });
    for (const spoiled of [{ tiles: 'Q' }, { seat: 'Nowhere' }, { type: 'flown' }]) {
      const event = { ...deal, ...spoiled } as TimedEvent;
      expect(await desk.changeGame('g-1', { corrected: { place: 0, event } })).toMatchObject({ ok: false });
    }
    expect(await contentOf(desk)).toBe(before);
  });

  test('an illegal event is refused with a reason and nothing is lost', async () => {
    const desk = await startedGame(new MemoryDisk(), 1);
    const before = await contentOf(desk);
    const joker = await desk.appendEvent('g-1', 1, {
      type: 'gave',
      step: 'right',
      tiles: 'J F F',
      at: EVENTS[0]?.at ?? '',
    });
    expect(joker).toMatchObject({ ok: false, problem: { message: expect.stringMatching(/joker/i) } });
    expect(await contentOf(desk)).toBe(before);
  });

  test('a damaged game that comes in whole is refused', async () => {
    const desk = await openOn(new MemoryDisk());
    const { at } = event(0);
    const twelve = gameRecord('g-1', { events: [{ type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 22d', at }] });
    expect((await desk.startGame(twelve)).ok).toBe(false);
    expect(expectValue(await desk.listGames())).toEqual([]);
  });

  test('newest games come first, and the list tells where each stands', async () => {
    const desk = await startedGame(new MemoryDisk(), 3);
    expectValue(await desk.startGame(gameRecord('g-0', { startedAt: '2026-12-01T10:00:00Z', place: 'Elsewhere' })));
    const list = expectValue(await desk.listGames());
    expect(list.map(({ id }) => id)).toEqual(['g-0', 'g-1']);
    expect(list[1]).toMatchObject({
      seat: 'South',
      events: 3,
      cardTitle: 'Played',
      season: 'Test',
      stage: expect.stringContaining('to come'),
    });
  });

  test('CR-F2: without the index, or with a damaged one, the list is the same', async () => {
    const disk = new MemoryDisk();
    const desk = await startedGame(disk);
    await desk.close();
    const wanted = await contentOf(await openOn(disk));
    const index = disk.texts().get(`${FOLDER}/index.jsonl`) ?? '';
    for (const text of [
      '',
      'nonsense\n',
      index.slice(0, -20),
      `${index}{"id":"ghost"}\n`,
      index.replace('g-1', 'g-7'),
    ]) {
      disk.put(`${FOLDER}/index.jsonl`, text);
      disk.now += 100_000;
      const again = await openOn(disk);
      expect(await contentOf(again)).toBe(wanted);
      await again.close();
      expect(disk.texts().get(`${FOLDER}/index.jsonl`)).toBe(index);
    }
  });

  test('CR-V4: fields that this version does not know survive logging and folding', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    const withMood = { ...gameRecord('g-1'), mood: { tea: 'green' } };
    expectValue(await desk.startGame(withMood));
    expectValue(await desk.appendEvent('g-1', 0, event(0)));
    await desk.close();
    expect(JSON.parse(disk.texts().get(GAME) ?? '')).toMatchObject({ mood: { tea: 'green' }, events: [event(0)] });
  });

  test('how the rack lies is no edit of a person: it leaves the time of the last one; a place is one', async () => {
    const desk = await startedGame(new MemoryDisk());
    expectValue(await desk.changeGame('g-1', { arrangement: '1b 2b' }));
    expect(expectValue(await desk.openGame('g-1'))).not.toHaveProperty('editedAt');
    expectValue(await desk.changeGame('g-1', { place: 'Kitchen table', arrangement: '2b 1b' }));
    expect(expectValue(await desk.openGame('g-1'))).toMatchObject({
      editedAt: expect.any(String),
      arrangement: '2b 1b',
    });
  });

  test('an event that is illegal here, or none at all, is refused with a sentence, and nothing is kept of it', async () => {
    const desk = await startedGame(new MemoryDisk(), 2);
    const { events } = expectValue(await desk.openGame('g-1'));
    const again = await desk.appendEvent('g-1', 2, { ...(events[0] as TimedEvent), at: event(2).at });
    const damaged = await desk.appendEvent('g-1', 2, { type: 'gave', step: 'nowhere', at: event(2).at } as never);
    for (const refused of [again, damaged]) {
      expect(refused).toMatchObject({ ok: false, problem: { message: expect.stringMatching(/^[A-Z"].*\.$/) } });
    }
    expect(expectValue(await desk.openGame('g-1')).events).toEqual(events);
  });

  test('a removed game can be brought back for a month, then it is gone', async () => {
    const disk = new MemoryDisk();
    const desk = await startedGame(disk);
    const before = await contentOf(desk);
    expectValue(await desk.removeGame('g-1'));
    expect(expectValue(await desk.listGames())).toEqual([]);
    expect(await desk.openGame('g-1')).toMatchObject({ problem: { code: 'not-found' } });
    expectValue(await desk.restoreGame('g-1'));
    expect(await contentOf(desk)).toBe(before);
    expectValue(await desk.removeGame('g-1'));
    await desk.close();
    disk.now += 31 * 86_400_000;
    const later = await openOn(disk);
    expect((await later.restoreGame('g-1')).ok).toBe(false);
    expect([...disk.texts().keys()].some((path) => path.includes('g-1'))).toBe(false);
  });
});

describe('damaged, newer and foreign files', () => {
  async function opened(text: string): Promise<{ disk: MemoryDisk; desk: DeskService }> {
    const disk = new MemoryDisk();
    await (await startedGame(disk)).close();
    disk.put(GAME, text);
    disk.put(`${FOLDER}/index.jsonl`, '');
    return { disk, desk: await openOn(disk) };
  }

  test.each([
    ['empty', ''],
    ['cut short', '{"kind":"windrow.game","schemaVersion":1'],
    ['zeros', '\0'.repeat(500)],
    ['a wrong field', JSON.stringify({ ...gameRecord('g-1'), tags: 'none' })],
  ])('CR-J4: a damaged game (%s) is set aside, never overwritten, and told of in one sentence', async (_name, text) => {
    const { disk, desk } = await opened(text);
    expect(expectValue(await desk.listGames())).toEqual([]);
    const aside = [...disk.texts()].filter(([path]) => path.startsWith(`${GAME}.damaged-2026-11-25T`));
    expect(aside.map(([, kept]) => kept)).toEqual([text]);
    expect(await notices(desk)).toContain('g-1');
    expect(await notices(desk)).toContain('.damaged-');
    expectValue(await desk.startGame(gameRecord('g-1')));
    expect([...disk.texts().values()]).toContain(text);
  });

  test('CR-J4: a game with a bad event opens up to it; the file as it was is kept', async () => {
    const bad = JSON.stringify(gameRecord('g-1', { events: [event(0), event(2)] }));
    const { disk, desk } = await opened(bad);
    expect(expectValue(await desk.openGame('g-1')).events).toEqual([event(0)]);
    expect(await notices(desk)).toMatch(/event 1.*kept as/i);
    expect([...disk.texts()].find(([path]) => path.includes('.damaged-'))?.[1]).toBe(bad);
  });

  test('CR-V4: a game of a newer version is refused, told of and untouched', async () => {
    const newer = JSON.stringify({ ...gameRecord('g-1'), schemaVersion: 99 });
    const { disk, desk } = await opened(newer);
    expect(expectValue(await desk.listGames())).toEqual([]);
    expect(await notices(desk)).toMatch(/newer Windrow/);
    await desk.close();
    expect(disk.texts().get(GAME)).toBe(newer);
  });

  test('a foreign file is left alone', async () => {
    const { disk, desk } = await opened('{"kind":"shopping list"}');
    expect(expectValue(await desk.listGames())).toEqual([]);
    await desk.close();
    expect(disk.texts().get(GAME)).toBe('{"kind":"shopping list"}');
  });

  test('a torn last line of the log costs only that line', async () => {
    const disk = new MemoryDisk();
    await startedGame(disk, 3);
    const log = `${FOLDER}/open/g-1.jsonl`;
    disk.put(log, `${disk.texts().get(log)}{"add":{"type":"rec`);
    const desk = await openOn(disk);
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(3);
    expect(await notices(desk)).toBe('');
  });

  test('CR-J4: a log damaged in the middle gives what came before; the rest is kept and told of', async () => {
    const disk = new MemoryDisk();
    await startedGame(disk, 4);
    const log = `${FOLDER}/open/g-1.jsonl`;
    const lines = (disk.texts().get(log) ?? '').split('\n');
    const damaged = lines.with(2, '{"oops').join('\n');
    disk.put(log, damaged);
    const desk = await openOn(disk);
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(2);
    expect(await notices(desk)).toMatch(/kept as g-1\.jsonl\.damaged-/);
    expect([...disk.texts().values()]).toContain(damaged);
  });

  test('CR-J4: a step of the log with an arrangement that is none ends what can be read of it', async () => {
    const disk = new MemoryDisk();
    await startedGame(disk, 3);
    const log = `${FOLDER}/open/g-1.jsonl`;
    const lines = (disk.texts().get(log) ?? '').trimEnd().split('\n');
    const last = JSON.stringify({ ...JSON.parse(lines.at(-1) ?? ''), arrangement: 5 });
    disk.put(log, `${lines.with(lines.length - 1, last).join('\n')}\n`);
    const desk = await openOn(disk);
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(2);
    expect(await notices(desk)).toMatch(/It stands at step 2; the rest is kept as g-1\.jsonl\.damaged-/);
  });

  test('CR-J4: a log that is none at all is set aside; the game stands as in its file', async () => {
    const disk = new MemoryDisk();
    await (await startedGame(disk, 2)).close();
    disk.put(`${FOLDER}/open/g-1.jsonl`, 'not a log\n');
    const desk = await openOn(disk);
    expect(expectValue(await desk.openGame('g-1')).events).toHaveLength(2);
    expect(await notices(desk)).toMatch(/could not be read/);
  });

  test('a game file changed by another program meanwhile is kept beside ours', async () => {
    const disk = new MemoryDisk();
    const desk = await startedGame(disk, 3);
    const theirs = JSON.stringify(gameRecord('g-1', { place: 'From another computer' }));
    disk.put(GAME, theirs);
    await desk.close();
    expect(JSON.parse(disk.texts().get(GAME) ?? '').events).toHaveLength(3);
    expect([...disk.texts()].find(([path]) => path.includes('.other-'))?.[1]).toBe(theirs);
  });
});

describe('cards', () => {
  test('the demo card is always there and fixed', async () => {
    const desk = await openOn(new MemoryDisk());
    const demo = { id: 'demo', title: 'Demo', season: 'Test', lines: 1, savedAt: '', fixed: true };
    expect(expectValue(await desk.listCards())).toEqual([demo]);
    expect(expectValue(await desk.openCard('demo')).text).toBe(cardText('Demo'));
    expect(await desk.saveCard('demo', cardText('Mine'))).toMatchObject({ problem: { code: 'fixed' } });
    expect(await desk.removeCard('demo')).toMatchObject({ problem: { code: 'fixed' } });
  });

  test('after the demo card the others stand, what was saved last first', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    for (const title of ['Spring', 'Summer', 'Autumn', 'Summer']) {
      disk.now += 60_000;
      expectValue(await desk.saveCard(title.toLowerCase(), cardText(title)));
    }
    const titles = expectValue(await desk.listCards()).map(({ title }) => title);
    expect(titles).toEqual(['Demo', 'Summer', 'Autumn', 'Spring']);
  });

  test('a card is kept word for word, and a new one gets a name of its own', async () => {
    const desk = await openOn(new MemoryDisk());
    const text = cardText('Spring Card').replace('{', '{ "unknown": [1, 2], ');
    const { id } = expectValue(await desk.saveCard(null, text));
    expect(id).toMatch(/^spring-card-test-/);
    expect(expectValue(await desk.openCard(id)).text).toBe(text);
    const other = expectValue(await desk.saveCard(null, text));
    expect(other.id).not.toBe(id);
  });

  test.each(['', 'no card', '{"format":"windrow.card","version":99}', '{"format":"other"}'])(
    'what is no card is refused and nothing is written: %j',
    async (text) => {
      const disk = new MemoryDisk();
      const desk = await openOn(disk);
      expectValue(await desk.saveCard('mine', cardText('Mine')));
      const before = [...disk.texts()];
      expect((await desk.saveCard('mine', text)).ok).toBe(false);
      expect([...disk.texts()]).toEqual(before);
    },
  );

  test('CR-J5: a dated backup before the first write of each session, the newest ten kept, restored in one call', async () => {
    const disk = new MemoryDisk();
    for (let session = 0; session < 13; session += 1) {
      const desk = await openOn(disk);
      expectValue(await desk.saveCard('mine', cardText(`Version ${session}`)));
      expectValue(await desk.saveCard('mine', cardText(`Version ${session}, mended`)));
      await desk.close();
      disk.now += 86_400_000;
    }
    const desk = await openOn(disk);
    const backups = expectValue(await desk.listBackups('mine'));
    expect(backups).toHaveLength(10);
    expect(backups.map(({ savedAt }) => savedAt)).toEqual(
      backups
        .map(({ savedAt }) => savedAt)
        .sort()
        .reverse(),
    );
    const newest = backups[0]?.name ?? '';
    expect(expectValue(await desk.restoreCard('mine', newest)).title).toBe('Version 11, mended');
    expect(expectValue(await desk.listBackups('mine'))).toHaveLength(10);
    expect(await desk.restoreCard('mine', '../../g-1.json')).toMatchObject({ problem: { code: 'not-found' } });
  });

  test('a removed card can be brought back from its backup', async () => {
    const desk = await openOn(new MemoryDisk());
    expectValue(await desk.saveCard('mine', cardText('Mine')));
    expectValue(await desk.removeCard('mine'));
    expect(expectValue(await desk.listCards())).toHaveLength(1);
    const [backup] = expectValue(await desk.listBackups('mine'));
    expect(expectValue(await desk.restoreCard('mine', backup?.name ?? '')).title).toBe('Mine');
  });

  test('CR-J4: a damaged card is set aside and its newest good backup is in use', async () => {
    const disk = new MemoryDisk();
    const first = await openOn(disk);
    expectValue(await first.saveCard('mine', cardText('Old')));
    await first.close();
    const second = await openOn(disk);
    expectValue(await second.saveCard('mine', cardText('New')));
    await second.close();
    disk.put(`${FOLDER}/cards/mine.card.json`, cardText('New').slice(0, 50));
    const desk = await openOn(disk);
    expect(expectValue(await desk.openCard('mine')).entry.title).toBe('Old');
    expect(await notices(desk)).toMatch(/damaged.*backup of 2026-11-25.*kept as mine\.card\.json\.damaged-/);
    expect([...disk.texts().values()]).toContain(cardText('New').slice(0, 50));
  });
});

describe('preferences', () => {
  test('they are kept, each within its bounds, and fields of others stay', async () => {
    const disk = new MemoryDisk();
    disk.put(`${FOLDER}/preferences.json`, '{"window":{"x":5},"textSize":99,"theme":"dark"}');
    const desk = await openOn(disk);
    expect(expectValue(await desk.readPreferences())).toMatchObject({ theme: 'dark', textSize: 18 });
    expectValue(await desk.changePreferences({ textSize: 30 }));
    expect(disk.texts().get(`${FOLDER}/preferences.json`)).toBe(
      '{\n\t"window": {\n\t\t"x": 5\n\t},\n\t"textSize": 30,\n\t"theme": "dark"\n}',
    );
  });

  test.each(['', '{', '5', 'null', '[]', '\0\0\0'])(
    'CR-J4: a file that holds %j is set aside, and the usual ones are in use',
    async (text) => {
      const disk = new MemoryDisk();
      disk.put(`${FOLDER}/preferences.json`, text);
      const desk = await openOn(disk);
      expect(expectValue(await desk.readPreferences())).toMatchObject({ theme: 'system', textSize: 18 });
      expect(await notices(desk)).toContain('settings');
      expect([...disk.texts()].find(([path]) => path.includes('preferences.json.damaged-'))?.[1]).toBe(text);
    },
  );
});

describe('CR-J6: a second running copy cannot write', () => {
  test('the folder is taken by one copy at a time', async () => {
    const disk = new MemoryDisk();
    const first = await openOn(disk);
    const second = {
      ...optionsOn(disk, 200),
      running: {
        process: 200,
        computer: 'here',
        isAlive: () => true,
        startOf: async () => undefined,
        held: new Set<string>(),
      },
    };
    expect(await createDeskService(second)).toMatchObject({ ok: false, problem: { code: 'in-use' } });
    await first.close();
    expect((await createDeskService(second)).ok).toBe(true);
  });

  test('the lock of a copy that crashed, or has been silent for long, is taken over; then the old copy no longer writes', async () => {
    const disk = new MemoryDisk();
    let beat = (): void => undefined;
    const first = await openOn(disk, {
      every: (_milliseconds, call) => {
        beat = call;
        return () => undefined;
      },
    });
    const alive = {
      process: 200,
      computer: 'here',
      isAlive: () => true,
      startOf: async () => undefined,
      held: new Set<string>(),
    };
    disk.now += 60_000;
    beat();
    await first.about();
    disk.now += 60_000;
    expect((await createDeskService({ ...optionsOn(disk, 200), running: alive })).ok).toBe(false);
    disk.now += 60_000;
    expect((await createDeskService({ ...optionsOn(disk, 200), running: alive })).ok).toBe(true);
    beat();
    expect(await first.saveCard('mine', cardText('Mine'))).toMatchObject({ problem: { code: 'in-use' } });
    const dead = {
      process: 300,
      computer: 'here',
      isAlive: () => false,
      startOf: async () => undefined,
      held: new Set<string>(),
    };
    expect((await createDeskService({ ...optionsOn(disk, 300), running: dead })).ok).toBe(true);
  });

  test('after the close nothing is done any more', async () => {
    const disk = new MemoryDisk();
    const desk = await openOn(disk);
    await desk.close();
    await desk.close();
    expect(await desk.saveCard('mine', cardText('Mine'))).toMatchObject({ problem: { code: 'closed' } });
    expect([...disk.texts().keys()]).not.toContain(`${FOLDER}/in-use.json`);
  });
});
