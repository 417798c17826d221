import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectValue, failure, type Result, success } from '../../core/base/result.ts';
import { randomFromSeed } from '../../core/base/random.ts';
import type { GameEvent, TimedEvent } from '../../core/game/events.ts';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { type TableKind, USUAL_KIND } from '../../core/table/kinds.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { JOKER, kindOf, supplyOf } from '../../core/tiles/kinds.ts';
import { formatTileList, formatTiles } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import { GameSession, type SessionWorld } from '../../renderer/session/game-session.ts';
import { addTile, arranged, toTray, takeBack, formatLayout } from '../../renderer/session/layout.ts';

/** Keeps games in memory, by the contract's words: an event has its place, a drop names it. */
class MemoryDesk implements Pick<SessionWorld, 'desk'> {
  record: GameRecord | undefined;
  full = false;
  /** Events of this type are refused for good. */
  refused = '';
  readonly desk: SessionWorld['desk'] = {
    keepDraft: (record) => this.#answer(() => (this.record = record), null),
    startGame: (record) => this.#answer(() => (this.record = record), null),
    appendEvent: (_id, place, event, arrangement) =>
      event.type === this.refused
        ? Promise.resolve(failure('too-large', 'This game has as many steps as it can hold.'))
        : this.#inStep(place, () => this.#events([...this.#kept, event], arrangement)),
    dropEvent: (_id, place, arrangement) =>
      // One that is not there has been dropped.
      place === this.#kept.length
        ? this.#answer(() => undefined, null)
        : this.#inStep(place + 1, () => this.#events(this.#kept.slice(0, place), arrangement)),
    changeGame: (_id, change) =>
      this.#answer(() => {
        if (!('corrected' in change)) return this.#change(change);
        const { corrected, arrangement } = change;
        this.#events(this.#kept.with(corrected.place, corrected.event), arrangement);
      }, null),
  };

  get #kept(): readonly TimedEvent[] {
    return this.record?.events ?? [];
  }
  /** As the real desk: a step that does not follow on those that are kept is refused. */
  #inStep(place: number, act: () => void): Promise<Result<null>> {
    let isInStep = true;
    return this.#answer(() => {
      isInStep = place === this.#kept.length;
      if (isInStep) act();
    }, null).then((answer) =>
      isInStep ? answer : failure('out-of-step', 'This step does not follow on what is kept.'),
    );
  }
  #events(events: readonly TimedEvent[], arrangement: string | undefined): void {
    this.#change({ events, ...(arrangement === undefined ? {} : { arrangement }) });
  }
  #change(change: Partial<GameRecord>): void {
    if (this.record !== undefined) this.record = { ...this.record, ...change };
  }
  async #answer<Value>(act: () => void, value: Value): Promise<Result<Value>> {
    await Promise.resolve();
    if (this.full) return failure('disk-full', 'The disk is full.');
    act();
    return success(value);
  }
}

function begin(
  memory = new MemoryDesk(),
  usual: Pick<SessionWorld, 'advice' | 'swapAfterCall' | 'payment' | 'table'> = {},
): { session: GameSession; memory: MemoryDesk } {
  const world: SessionWorld = {
    desk: memory.desk,
    appVersion: '0',
    zone: 'UTC',
    now: () => '2026-11-25T19:00:00Z',
    newId: () => 'game-1',
    ...usual,
  };
  return { session: new GameSession(world, { format: 'windrow.card' }), memory };
}

const settled = (): Promise<void> => new Promise((resume) => setTimeout(resume, 0));

/** All that a person sees of a session, as text. */
const seen = (session: GameSession): string =>
  JSON.stringify([
    formatLayout(session.layout),
    session.events,
    formatTiles(session.state.rack),
    session.state.exchange?.step,
  ]);

/** The game of a session as it would be kept. */
function recordOf({ id, startedAt, card, events }: GameSession): GameRecord {
  const rest = { kind: 'windrow.game', schemaVersion: 1, appVersion: '0', zone: 'UTC', place: '', tags: [] } as const;
  return { ...rest, id, startedAt, demo: false, card, events };
}

const DEAL = 'FF N 0 13b 4578c 22d J';

function deal(session: GameSession): void {
  for (const kind of shuffledSet(randomFromSeed(7)).slice(0, 3)) session.lay(addTile(session.layout, kind));
  expectValue(session.apply({ type: 'dealt', seat: 'South', tiles: DEAL }));
}

type Command = { readonly pick: number; readonly way: number };
const commands = fc.array(fc.record({ pick: fc.nat(40), way: fc.nat(6) }), { maxLength: 40 });

/** Does something that may be done now: moves a tile, gives, takes in, stops. */
function act(session: GameSession, { pick, way }: Command): void {
  const { exchange } = session.state;
  const { layout } = session;
  if (way === 0) return session.lay(arranged(layout));
  if (way === 1) return session.lay(toTray(layout, [layout.rack[pick % 13]?.id ?? '']));
  if (way === 2)
    return session.lay(
      takeBack(
        layout,
        layout.tray.map((tile) => tile.id),
      ),
    );
  if (exchange === null || exchange.step === null) return;
  session.apply(nextEvent(session, pick));
}

function nextEvent(session: GameSession, pick: number): GameEvent {
  const { exchange, rack } = session.state;
  const step = exchange?.step ?? 'right';
  if (exchange?.phase === 'receiving') {
    const free = Tiles.fullSet.toKinds().filter((kind) => kind !== JOKER && rack.count(kind) < supplyOf(kind));
    return { type: 'received', step, tiles: formatTileList([free[pick % free.length] ?? JOKER]) };
  }
  if (step === 'left2' && pick % 4 === 0) return { type: 'stopped', before: 'left2' };
  const givable = rack.toKinds().filter((kind) => kind !== JOKER);
  return { type: 'gave', step, tiles: formatTileList(givable.slice(pick % 5, (pick % 5) + 3)) };
}

describe('the session', () => {
  it('undoing what was done brings back what was seen before, step by step, and redoing brings it back again', () => {
    fc.assert(
      fc.property(commands, (list) => {
        const { session } = begin();
        const views = [seen(session)];
        deal(session);
        for (const command of list) act(session, command);
        const after = [seen(session)];
        while (session.canUndo) {
          session.undo();
          after.push(seen(session));
        }
        expect(after.at(-1)).toBe(views[0]);
        for (const view of after.toReversed().slice(1)) {
          session.redo();
          expect(seen(session)).toBe(view);
        }
        expect(session.canRedo).toBe(false);
      }),
      { seed: 20261125, numRuns: 200 },
    );
  });

  it('after steps back, what is done next leaves nothing of what was undone', () => {
    fc.assert(
      fc.property(commands, fc.integer({ min: 1, max: 12 }), commands, (list, back, further) => {
        const { session } = begin();
        deal(session);
        for (const command of list) act(session, command);
        for (let step = 0; step < back; step += 1) session.undo();
        const fresh = begin().session;
        fresh.open({ ...recordOf(session), arrangement: formatLayout(session.layout) });
        const before = seen(session);
        for (const command of further) {
          act(session, command);
          act(fresh, command);
        }
        expect(seen(session)).toBe(seen(fresh));
        if (seen(session) !== before) expect(session.canRedo).toBe(false);
      }),
      { seed: 20261130, numRuns: 100 },
    );
  });

  it('what lies on disk is what is seen: a session opened from it shows the same', async () => {
    await fc.assert(
      fc.asyncProperty(commands, fc.nat(6), async (list, back) => {
        const { session, memory } = begin();
        deal(session);
        for (const command of list) act(session, command);
        for (let step = 0; step < back; step += 1) session.undo();
        await settled();
        expect(session.saved.status).toBe('saved');
        const again = begin().session;
        if (memory.record !== undefined) again.open(memory.record);
        expect(seen(again)).toBe(seen(session));
      }),
      { seed: 20261125, numRuns: 100 },
    );
  });

  it('after a restart the steps of the game can still be undone', async () => {
    const { session, memory } = begin();
    deal(session);
    expectValue(session.apply({ type: 'gave', step: 'right', tiles: '13b N' }));
    await settled();
    const again = begin().session;
    if (memory.record !== undefined) again.open(memory.record);
    again.undo();
    expect(formatTiles(again.state.rack)).toBe('J FF N 0 13b 4578c 22d');
  });

  it('CR-W7: after a restart 50 steps of a game and more are undone one by one, each exactly, and done again', async () => {
    const { session, memory } = begin();
    deal(session);
    while (session.state.exchange?.step !== 'left2') expectValue(session.apply(nextEvent(session, 5)));
    expectValue(session.apply({ type: 'stopped', before: 'left2' }));
    for (let note = session.events.length; note < 60; note += 1)
      expectValue(session.apply({ type: 'noted', text: `Remark ${note}` }));
    await settled();
    const again = begin(memory).session;
    if (memory.record !== undefined) again.open(memory.record);
    expect(again.events).toEqual(session.events);
    const states = [seen(again)];
    for (let step = 0; step < 60; step += 1) {
      again.undo();
      expect(again.events).toEqual(session.events.slice(0, 59 - step));
      states.unshift(seen(again));
    }
    for (const state of states.slice(1)) {
      again.redo();
      expect(seen(again)).toBe(state);
    }
  });

  it('tiles entered before the deal is complete are kept too', async () => {
    const { session, memory } = begin();
    for (const kind of shuffledSet(randomFromSeed(7)).slice(0, 5)) session.lay(addTile(session.layout, kind));
    await settled();
    const again = begin().session;
    if (memory.record !== undefined) again.open(memory.record);
    expect(again.layout.rack).toHaveLength(5);
  });

  it('nothing is written before something is entered', async () => {
    const { session, memory } = begin();
    await settled();
    expect(memory.record).toBeUndefined();
    expect(session.untouched).toBe(true);
  });

  it('a refused event changes nothing and says why', () => {
    const { session } = begin();
    deal(session);
    const before = seen(session);
    const refused = session.apply({ type: 'gave', step: 'right', tiles: 'J NW' });
    expect(refused.ok).toBe(false);
    expect(seen(session)).toBe(before);
  });

  it('a full disk is told, nothing is lost in the window, and trying again saves all of it in order', async () => {
    const { session, memory } = begin();
    deal(session);
    await settled();
    memory.full = true;
    expectValue(session.apply({ type: 'gave', step: 'right', tiles: '13b N' }));
    expectValue(session.apply({ type: 'received', step: 'right', tiles: '9d' }));
    await settled();
    expect(session.saved).toMatchObject({ status: 'failed', problem: { code: 'disk-full' } });
    expect(session.events).toHaveLength(3);
    memory.full = false;
    session.retrySaving();
    await settled();
    expect(session.saved.status).toBe('saved');
    expect(memory.record?.events).toEqual(session.events);
  });

  it('a step that the desk refuses for good is undone, and what follows is saved', async () => {
    const { session, memory } = begin();
    deal(session);
    await settled();
    memory.refused = 'gave';
    expectValue(session.apply({ type: 'gave', step: 'right', tiles: '13b N' }));
    await settled();
    expect(session.saved.status).toBe('failed');
    session.undo();
    await settled();
    expect(session.saved.status).toBe('saved');
    expectValue(session.apply({ type: 'ended', result: 'wall' }));
    await settled();
    expect(session.saved.status).toBe('saved');
    expect(memory.record?.events).toEqual(session.events);
  });

  it('tiles in the tray come back into the rack when the passes that are left go unlogged', async () => {
    const { session, memory } = begin();
    deal(session);
    session.lay(toTray(session.layout, [session.layout.rack[4]?.id ?? '', session.layout.rack[5]?.id ?? '']));
    session.leavePasses(true);
    expect(formatLayout(session.layout)).toBe('J FF N 0 13b 4578c 22d');
    expectValue(session.apply({ type: 'drew', tile: '9d' }));
    expect(session.layout).toMatchObject({ rack: { length: 14 }, tray: [] });
    await settled();
    expect(memory.record?.arrangement).toBe('J FF N 0 13b 4578c 229d');
    session.undo();
    expect(session.layout.rack).toHaveLength(13);
  });

  it('tiles in the tray come back into the rack at each step after which no pass is due', () => {
    const { session } = begin();
    deal(session);
    const give = (step: 'right' | 'across' | 'left', tiles: string): void => {
      expectValue(session.apply({ type: 'gave', step, tiles }));
      expectValue(session.apply({ type: 'received', step, tiles }));
    };
    give('right', '13b N');
    give('across', '13b N');
    give('left', '13b N');
    expectValue(session.apply({ type: 'stopped', before: 'left2' }));
    session.lay(toTray(session.layout, [session.layout.rack[4]?.id ?? '']));
    expect(session.layout.tray).toHaveLength(1);
    expectValue(session.apply({ type: 'stopped', before: 'courtesy' }));
    expect(session.layout).toMatchObject({ rack: { length: 13 }, tray: [] });
    session.undo();
    expectValue(session.apply({ type: 'ended', result: 'wall' }));
    expect(session.layout).toMatchObject({ rack: { length: 13 }, tray: [] });
    session.undo();
    expect(session.layout.tray).toHaveLength(1);
  });

  it('a game is played with advice as the person likes it, and keeps the most aid that it had', async () => {
    const { session, memory } = begin(new MemoryDesk(), { advice: () => 'after-choice' });
    expect(session.advice).toBe('after-choice');
    session.describe({ advice: 'at-once' });
    session.describe({ advice: 'none' });
    deal(session);
    await settled();
    expect([session.advice, memory.record?.advice]).toEqual(['none', 'none']);
    session.describe({ advice: 'after-choice' });
    session.describe({ advice: 'none' });
    await settled();
    expect([session.advice, memory.record?.advice]).toEqual(['none', 'after-choice']);
    const again = begin().session;
    if (memory.record !== undefined) again.open(memory.record);
    expect(again.advice).toBe('none');
  });

  it('advice that is asked for after the result was not part of the game', async () => {
    const { session, memory } = begin(new MemoryDesk(), { advice: () => 'none' });
    deal(session);
    expectValue(session.apply({ type: 'ended', result: 'wall' }));
    session.describe({ advice: 'at-once' });
    await settled();
    expect([session.advice, memory.record?.advice]).toEqual(['none', 'none']);
  });

  it('a wrong tile of an earlier pass is corrected in one step that is kept and can be undone', async () => {
    const { session, memory } = begin();
    deal(session);
    expectValue(session.apply({ type: 'gave', step: 'right', tiles: 'N 0 1b' }));
    expectValue(session.apply({ type: 'received', step: 'right', tiles: '9d 3c 6c' }));
    expectValue(session.apply({ type: 'gave', step: 'across', tiles: '9d 3b 3c' }));
    await settled();
    const before = seen(session);
    const was = session.events;
    expectValue(session.correct({ of: { type: 'received', step: 'right' }, wrong: kindOf('6c'), right: kindOf('W') }));
    expect(formatTiles(session.state.rack)).toBe('J FF W 4578c 22d');
    await settled();
    expect(memory.record?.events).toEqual(session.events);
    const again = begin().session;
    if (memory.record !== undefined) again.open(memory.record);
    expect(seen(again)).toBe(seen(session));
    session.undo();
    expect(seen(session)).toBe(before);
    await settled();
    expect(memory.record?.events).toEqual(was);
    session.redo();
    expect(formatTiles(session.state.rack)).toBe('J FF W 4578c 22d');
    session.undo();
    session.undo();
    await settled();
    expect(memory.record?.events).toEqual(was.slice(0, -1));
  });

  it('a correction that would make a later step impossible is refused, and nothing changes', () => {
    const { session } = begin();
    deal(session);
    expectValue(session.apply({ type: 'gave', step: 'right', tiles: 'N 0 1b' }));
    const before = seen(session);
    const refused = session.correct({ of: { type: 'dealt' }, wrong: kindOf('N'), right: kindOf('W') });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'later-impossible' } });
    expect(seen(session)).toBe(before);
  });

  it('LG-3: the rule of the house on swaps is kept with a game where it is not the usual one, and holds for it', async () => {
    let isAllowed = false;
    const { session, memory } = begin(undefined, { swapAfterCall: () => isAllowed });
    deal(session);
    isAllowed = true;
    expectValue(session.apply({ type: 'called', seat: 'North', tile: '3b', group: '33bJ' }));
    expectValue(session.apply({ type: 'called', seat: 'South', tile: '2d', group: '222d' }));
    const swap = { type: 'swapped', seat: 'South', owner: 'North', tile: '3b' } as const;
    expect(session.apply(swap)).toMatchObject({ ok: false, problem: { code: 'house-rule' } });
    await settled();
    expect(memory.record?.swapAfterCall).toBe(false);
    session.describe({ swapAfterCall: true });
    expectValue(session.apply(swap));
    await settled();
    expect(memory.record?.swapAfterCall).toBe(true);
    const usual = begin(undefined, { swapAfterCall: () => true });
    deal(usual.session);
    await settled();
    expect(usual.memory.record).not.toHaveProperty('swapAfterCall');
  });

  it('a game is begun with the rules of payment and the kind of table of its day, which later settings do not change', async () => {
    let usual = { payment: { ...DEFAULT_POINT_RULES, stake: 50 }, table: 'quick' as TableKind };
    const { session, memory } = begin(undefined, { payment: () => usual.payment, table: () => usual.table });
    expect([session.payment.stake, session.table]).toEqual([50, 'quick']);
    deal(session);
    await settled();
    usual = { payment: { ...DEFAULT_POINT_RULES, stake: 75 }, table: 'relaxed' };
    expect([session.payment.stake, session.table]).toEqual([50, 'quick']);
    expect(memory.record).toMatchObject({ payment: { stake: 50 }, table: 'quick' });
    const { payment: _, table: __, ...older } = memory.record ?? recordOf(session);
    session.open(older);
    expect([session.payment, session.table]).toEqual([DEFAULT_POINT_RULES, USUAL_KIND]);
    session.begin({ format: 'windrow.card' });
    expect([session.payment.stake, session.table]).toEqual([75, 'relaxed']);
  });

  it('typed tiles that could not be kept are not asked for again once their game is kept', async () => {
    const { session, memory } = begin();
    const drafts = { count: 0 };
    Object.assign(memory.desk, {
      keepDraft: async () => {
        drafts.count += 1;
        return failure('disk-full', 'The disk is full.');
      },
    });
    session.lay(addTile(session.layout, kindOf('F')));
    await settled();
    expect(session.saved.status).toBe('failed');
    expectValue(session.apply({ type: 'dealt', seat: 'South', tiles: DEAL }));
    const before = drafts.count;
    await settled();
    expect(session.saved.status).toBe('saved');
    expect(drafts.count).toBe(before);
    expect(memory.record?.events).toHaveLength(1);
  });
});
