import { describe, expect, test, vi } from 'vitest';
import { expectValue, failure, type Result } from '../../core/base/result.ts';
import type { GameEvent, TimedEvent } from '../../core/game/events.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { DEFAULT_PREFERENCES } from '../../main/desk/preferences.ts';
import { kindOf } from '../../core/tiles/kinds.ts';
import { openAtTable } from '../../renderer/places/journal/routes.ts';
import { SheetBook } from '../../renderer/places/warmup/sheet-book.ts';
import type { AppContext } from '../../renderer/shell/app-context.ts';
import { GameSession } from '../../renderer/session/game-session.ts';
import { addTile } from '../../renderer/session/layout.ts';
import { PreferenceStore } from '../../renderer/session/preference-store.ts';
import { openOn } from '../main/support/desks.ts';
import { MemoryDisk } from '../main/support/memory-disk.ts';
import { DEMO_TEXT } from '../warmup/demo.ts';

/* What the desk refuses, or what it did though its answer was lost: against the real desk, on a disk in memory. */

const CARD: unknown = JSON.parse(DEMO_TEXT);
const AT = '2026-11-25T19:00:00Z';
const GAVE: GameEvent = { type: 'gave', step: 'right', tiles: '13b N' };
const RECEIVED: GameEvent = { type: 'received', step: 'right', tiles: '9d' };
const ENDED: GameEvent = { type: 'ended', result: 'wall' };
const TOO_LARGE = failure('too-large', 'This game is as large as Windrow can read again.');
const GONE = failure('host-gone', 'Windrow is not running behind this window any more.');

const settled = async (): Promise<void> => await new Promise((resume) => setTimeout(resume, 60));

interface AtWork {
  readonly session: GameSession;
  readonly desk: Desk;
}

/** A session on a desk, some calls of which are changed. */
async function begin(change: (desk: Desk) => Partial<Desk> = () => ({})): Promise<AtWork> {
  const desk = await openOn(new MemoryDisk());
  let games = 0;
  const session = new GameSession(
    {
      desk: { ...desk, ...change(desk) },
      appVersion: '0',
      zone: 'UTC',
      now: () => AT,
      newId: () => `game-${(games += 1)}`,
    },
    CARD,
  );
  return { session, desk };
}

async function enter(session: GameSession, ...events: readonly GameEvent[]): Promise<void> {
  for (const event of events) {
    expectValue(session.apply(event));
    await settled();
  }
}

const DEALT: GameEvent = { type: 'dealt', seat: 'South', tiles: 'FF N 0 13b 4578c 22d J' };

/** A desk that takes no passes. */
function refusesPasses(desk: Desk): Partial<Desk> {
  const appendEvent: Desk['appendEvent'] = async (id, place, event, layout) =>
    ['gave', 'received'].includes(event.type) ? TOO_LARGE : await desk.appendEvent(id, place, event, layout);
  return { appendEvent };
}

async function onDisk(desk: Desk, id: string): Promise<readonly string[]> {
  return expectValue(await desk.openGame(id)).events.map(({ type }) => type);
}

describe('steps that the desk refuses', () => {
  test.each([
    ['with the rack laid out anew after it', [GAVE], true],
    ['two of them', [GAVE, RECEIVED], false],
  ] as const)('are undone, and what comes then is saved: %s', async (_, events, laid) => {
    const { session, desk } = await begin(refusesPasses);
    await enter(session, DEALT, ...events);
    if (laid) {
      session.lay({ ...session.layout, rack: session.layout.rack.toReversed() });
    }
    await settled();
    expect(session.saved.status).toBe('failed');
    while (session.events.length > 1) session.undo();
    await settled();
    expect(session.saved.status).toBe('saved');
    await enter(session, ENDED);
    expect(await onDisk(desk, session.id)).toEqual(['dealt', 'ended']);
  });

  test('may be undone before the answer has come', async () => {
    const { session, desk } = await begin((whole) => ({
      appendEvent: async (id, place, event, layout) => {
        await settled();
        return event.type === 'gave' ? TOO_LARGE : await whole.appendEvent(id, place, event, layout);
      },
    }));
    await enter(session, DEALT);
    expectValue(session.apply(GAVE));
    session.undo();
    await settled();
    await settled();
    expect(session.saved.status).toBe('saved');
    await enter(session, ENDED);
    await settled();
    expect(await onDisk(desk, session.id)).toEqual(['dealt', 'ended']);
  });

  test('are not asked for again once a new game was begun, as the words advise', async () => {
    const { session } = await begin(refusesPasses);
    await enter(session, DEALT, GAVE);
    expect(session.unsaved?.events).toHaveLength(2);
    session.begin(CARD);
    await enter(session, DEALT);
    expect(session.saved.status).toBe('saved');
  });

  test('of a game that another window changed go on from there, once it is opened again', async () => {
    const { session, desk } = await begin();
    await enter(session, DEALT);
    const { id } = session;
    const timed = (event: GameEvent): TimedEvent => ({ ...event, at: '2026-11-25T19:00:05Z' });
    expectValue(await desk.appendEvent(id, 1, timed(GAVE)));
    expectValue(await desk.appendEvent(id, 2, timed(RECEIVED)));
    await enter(session, { type: 'gave', step: 'right', tiles: '78c N' });
    expect(session.saved).toMatchObject({ status: 'failed', problem: { code: 'out-of-step' } });
    const app = { desk, session, go: () => undefined } as unknown as AppContext;
    expectValue(await openAtTable(app, id));
    expect(session.events).toHaveLength(3);
    await enter(session, ENDED);
    expect(session.saved.status).toBe('saved');
    expect(await onDisk(desk, id)).toEqual(['dealt', 'gave', 'received', 'ended']);
  });
});

describe('what could not be saved for now', () => {
  test('of a game that was left is what is saved elsewhere, and what opens from the Journal', async () => {
    let full = true;
    const { session, desk } = await begin((whole) => ({
      appendEvent: async (id, place, event, layout) =>
        full ? failure('disk-full', 'The disk is full.') : await whole.appendEvent(id, place, event, layout),
    }));
    await enter(session, DEALT, GAVE);
    const { id } = session;
    session.begin(CARD);
    await enter(session, DEALT);
    expect(session.saved).toMatchObject({ status: 'failed', of: id });
    expect(session.unsaved).toMatchObject({ id, events: [{ type: 'dealt' }, { type: 'gave' }] });
    const app = { desk, session, go: () => undefined } as unknown as AppContext;
    expectValue(await openAtTable(app, id));
    full = false;
    await enter(session, RECEIVED);
    expect(session.saved.status).toBe('saved');
    expect(await onDisk(desk, id)).toEqual(['dealt', 'gave', 'received']);
  });

  test('of a game that was saved before it was left nothing is kept here: the Journal may change it', async () => {
    const { session, desk } = await begin();
    await enter(session, DEALT);
    const { id } = session;
    session.begin(CARD);
    expect(session.waiting(id)).toBeNull();
    expectValue(await desk.changeGame(id, { place: 'Elsewhere' }));
    expectValue(await openAtTable({ desk, session, go: () => undefined } as unknown as AppContext, id));
    expect(session.place).toBe('Elsewhere');
  });

  test('an older draft never comes over a newer one', async () => {
    let fails = true;
    let answer = (): void => undefined;
    const { session, desk } = await begin((whole) => ({
      keepDraft: async (record): Promise<Result<null>> => {
        if (!fails) return await whole.keepDraft(record);
        await new Promise<void>((go) => (answer = go));
        fails = false;
        return GONE;
      },
    }));
    session.lay(addTile(session.layout, kindOf('3b')));
    session.begin(CARD);
    session.lay(addTile(session.layout, kindOf('5b')));
    await settled();
    answer();
    await settled();
    session.retrySaving();
    await settled();
    expect(session.saved.status).toBe('saved');
    expect(expectValue(await desk.readDraft())?.id).toBe(session.id);
  });

  test('a game whose first answer was lost is begun once, and goes on', async () => {
    let lost = true;
    const { session, desk } = await begin((whole) => ({
      startGame: async (record) => {
        const started = await whole.startGame(record);
        if (!lost) return started;
        lost = false;
        return GONE;
      },
    }));
    await enter(session, DEALT, GAVE);
    expect(session.saved.status).toBe('saved');
    expect(await onDisk(desk, session.id)).toEqual(['dealt', 'gave']);
    const other = { ...expectValue(await desk.openGame(session.id)), place: 'Elsewhere', events: [] };
    expect(await desk.startGame(other)).toMatchObject({ problem: { code: 'taken' } });
  });

  test('a sheet holds up no other one, and does not come back once it was removed', async () => {
    vi.stubGlobal('navigator', { language: 'en-US' });
    const desk = await openOn(new MemoryDisk());
    let full = true;
    const keepSheet: Desk['keepSheet'] = async (text) =>
      full && text.includes('changed') ? failure('disk-full', 'The disk is full.') : await desk.keepSheet(text);
    const preferences = new PreferenceStore(desk, DEFAULT_PREFERENCES);
    const app = { desk: { ...desk, keepSheet }, about: expectValue(await desk.about()), preferences };
    const room = { card: { document: CARD }, changed: () => undefined, fail: () => undefined };
    const book = new SheetBook(app, room as unknown as ConstructorParameters<typeof SheetBook>[1], () => undefined);
    book.create('One');
    await settled();
    const { id = '' } = book.sheet ?? {};
    if (book.sheet !== null) book.change({ ...book.sheet, title: 'One, changed' });
    await settled();
    expect(book.saved.status).toBe('failed');
    await book.close();
    book.create('Two');
    await settled();
    const titles = async (): Promise<string[]> => expectValue(await desk.listSheets()).map(({ title }) => title);
    expect(await titles()).toContain('Two');
    await book.remove(id);
    full = false;
    book.retrySaving();
    await settled();
    expect(await titles()).toEqual(['Two']);
    expect(book.saved.status).toBe('saved');
  });

  test('a sheet from a file takes the place of no other one, however slow the disk is', async () => {
    vi.stubGlobal('navigator', { language: 'en-US' });
    const desk = await openOn(new MemoryDisk());
    const slow: string[] = [];
    let go = (): void => undefined;
    const gate = new Promise<void>((done) => (go = done));
    const keepSheet: Desk['keepSheet'] = async (text) => {
      slow.push(text);
      await gate;
      return await desk.keepSheet(text);
    };
    const preferences = new PreferenceStore(desk, DEFAULT_PREFERENCES);
    const app = { desk: { ...desk, keepSheet }, about: expectValue(await desk.about()), preferences };
    const room = { card: { document: CARD }, changed: () => undefined, fail: () => undefined };
    const book = new SheetBook(app, room as unknown as ConstructorParameters<typeof SheetBook>[1], () => undefined);
    book.create('One');
    const { id } = book.sheet ?? {};
    const text = book.fileText;
    const closed = book.close();
    const brought = book.bring(text);
    await settled();
    expect(slow, 'the first is still being saved').toHaveLength(1);
    go();
    await closed;
    expect(expectValue(await brought).id).not.toBe(id);
    await book.close();
    expect(book.entries.map(({ title }) => title)).toEqual(['One', 'One']);
    // One that was removed, and could be brought back, keeps its id for that.
    await book.remove(String(id));
    expect(expectValue(await book.bring(text)).id).not.toBe(id);
    await book.bringBack();
    expect(book.entries.filter((entry) => entry.id === id)).toHaveLength(1);
    expect(book.entries).toHaveLength(3);
  });
});
