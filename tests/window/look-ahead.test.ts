import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { markedCard } from '../../core/card/mark.ts';
import { questionNamed } from '../../core/engine/questions.ts';
import { expectValue, success } from '../../core/base/result.ts';
import type { PassChoice } from '../../core/future/rivals.ts';
import type { GameEvent, TimedEvent } from '../../core/game/events.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { stateOf } from '../../core/game/state.ts';
import { givenTiles } from '../../core/exchange/state.ts';
import { planPass } from '../../core/plan/plan.ts';
import { type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import { knownTiles } from '../../core/reading/known.ts';
import { exchangeContest } from '../../core/future/exchange-futures.ts';
import { gamesContest } from '../../core/future/game-futures.ts';
import { GameSession } from '../../renderer/session/game-session.ts';
import { fillTray } from '../../renderer/session/layout.ts';
import { CardFits } from '../../renderer/session/card-fits.ts';
import { IncomingChoice, passLogReader } from '../../renderer/session/incoming.ts';
import type { Compared } from '../../renderer/session/compare-passes.ts';
import { LookAhead, type LookParts } from '../../renderer/session/look-ahead.ts';
import type { WorkerLine } from '../../renderer/worker/client.ts';
import { planDocument } from '../../core/engine/documents.ts';
import { PassDraft } from '../../renderer/session/pass-draft.ts';
import { Pool } from '../../renderer/worker/pool.ts';
import { lineInThisThread } from './line-in-this-thread.ts';
import { NO_KEPT_FITS } from './no-kept-fits.ts';
import type { GameEntry } from '../../main/desk/desk.ts';
import { PASSES_NEEDED, PassLog } from '../../core/table/incoming-rates.ts';
import { bytesOf, raceOf } from '../plan/race-problems.ts';
import { demoCard, demoTable, demoTerms } from '../table/cards.ts';
import { tiles } from '../table/positions.ts';

const RULE = { ...USUAL_RULE, looks: [1, 3, 6], blockSize: 16 };
const GAMES = { ...USUAL_RULE, looks: [1, 3], blockSize: 4 };
const AT = '2026-11-25T19:00:00Z';
const DOCUMENT: unknown = JSON.parse(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8'));

const startWorker = (): WorkerLine => lineInThisThread(questionNamed);
const FITS = new CardFits(NO_KEPT_FITS, startWorker);

const NONE = { status: 'none', value: null, late: false, progress: null, message: '' } as const;

/** Plans at once whatever pass is due. */
function plansOf(session: GameSession): LookParts['plans'] {
  return {
    get plan(): LookParts['plans']['plan'] {
      const { rack, exchange } = session.state;
      if (exchange?.phase !== 'giving' || exchange.step === null) return NONE;
      const known = expectValue(knownTiles(rack, givenTiles(exchange)));
      const plan = planPass(demoCard, known, exchange.step, { giftRacks: 2 });
      return { ...NONE, status: 'done', value: planDocument(plan.step, plan.options) };
    },
    subscribe: () => () => undefined,
  };
}

function begin(
  gamesRule: RaceRule = GAMES,
  log = new PassLog(),
  preferences?: LookParts['preferences'],
): { session: GameSession; incoming: IncomingChoice; lookAhead: LookAhead } {
  const kept = (): Promise<ReturnType<typeof success<null>>> => Promise.resolve(success(null));
  const session = new GameSession(
    {
      desk: {
        keepDraft: kept,
        startGame: kept,
        appendEvent: kept,
        dropEvent: kept,
        changeGame: kept,
      },
      appVersion: '0',
      zone: 'UTC',
      now: () => AT,
      newId: () => 'game-1',
    },
    DOCUMENT,
  );
  const readLog = (): Promise<PassLog> => Promise.resolve(log);
  const incoming = new IncomingChoice({ session, fits: FITS, readLog });
  const rules = { rule: RULE, gamesRule };
  const lookAhead = new LookAhead({
    session,
    plans: plansOf(session),
    draft: new PassDraft(session),
    cardGames: { said: {}, key: '', subscribe: () => () => undefined },
    incoming,
    pool: new Pool(startWorker),
    ...(preferences === undefined ? {} : { preferences }),
    ...rules,
  });
  return { session, incoming, lookAhead };
}

/** Waits until something holds of a store. */
function told(store: Pick<IncomingChoice, 'subscribe'>, holds: () => boolean): Promise<void> {
  return new Promise((resolve) => {
    const check = (): void => {
      if (!holds()) return;
      stop();
      resolve();
    };
    const stop = store.subscribe(check);
    check();
  });
}

/** A log of so many passes: the first two of the same exchange, again and again. */
function logOf(passes: number): PassLog {
  const log = new PassLog();
  const { exchange } = expectValue(stateOf(FIRST_ROUND));
  while (log.passes < passes) log.note(exchange!);
  return log;
}

/** Waits until the look has ended. */
function ended(lookAhead: LookAhead): Promise<Compared & Pick<LookAhead['look'], 'message'>> {
  return new Promise((resolve) => {
    const stop = lookAhead.subscribe(() => check());
    const check = (): void => {
      const { look } = lookAhead;
      if (look.status !== 'done' && look.status !== 'failed') return;
      stop();
      resolve({ ...look.value!, message: look.message });
    };
  });
}

const DEALT: GameEvent = { type: 'dealt', seat: 'South', tiles: 'J FF N 0 13b 4578c 22d' };
const FIRST_ROUND: readonly GameEvent[] = [
  DEALT,
  { type: 'gave', step: 'right', tiles: 'N 0 1b' },
  { type: 'received', step: 'right', tiles: '9d 3c F' },
  { type: 'gave', step: 'across', tiles: '9d 3b 3c' },
  { type: 'received', step: 'across', tiles: '6c 2d E' },
];

describe('the look ahead of the window', { timeout: 120_000 }, () => {
  it('begins when the plan is there, and finds what one worker alone would find, byte for byte (CR-G7)', async () => {
    const { session, incoming, lookAhead } = begin();
    incoming.choose(false);
    expect(lookAhead.look.status).toBe('none');
    expectValue(session.apply(DEALT));
    const look = await ended(lookAhead);
    expect(look.message).toBe('');
    expect(look.choices).toHaveLength(6);
    const position = { seat: 1, exchange: session.state.exchange! };
    const alone = raceOf(exchangeContest(demoTable, position, look.choices, demoTerms), RULE);
    expect(bytesOf(look.result!)).toBe(bytesOf(alone));
  });

  it('keeps what was compared, in its order, while one of its passes lies in the tray, and while another is looked at', async () => {
    const { session, incoming, lookAhead } = begin();
    incoming.choose(false);
    expectValue(session.apply(DEALT));
    const first = await ended(lookAhead);
    const { ranked } = lookAhead;
    expect(ranked).toHaveLength(first.choices.length);
    expect(ranked![0]!.choice).toEqual(first.choices[first.result!.best]);
    expect(ranked![0]!.reasons.join(' ')).toMatch(/nearest hands/);
    const inList = ranked!.map(({ choice }) => choice).find((choice) => choice.type === 'give');
    session.lay(fillTray(session.layout, inList!.tiles));
    expect(lookAhead.look.status).toBe('done');
    expect(lookAhead.look.value!.result).toBe(first.result);
    session.lay(fillTray(session.layout, tiles('FF 1b').toKinds()));
    expect(lookAhead.look.status).toBe('pending');
    expect(lookAhead.ranked).toBe(ranked);
    const own: PassChoice = { type: 'give', tiles: tiles('FF 1b').toKinds() };
    expect(lookAhead.judged(own)).toBe(null);
    await ended(lookAhead);
    expect(lookAhead.ranked).toBe(ranked);
    expect(lookAhead.judged(own)?.standing.verdict).toBe('costs');
    session.lay(fillTray(session.layout, []));
    expect(lookAhead.ranked).toBe(ranked);
  });

  it('looks anew with the tray’s pass, and forgets when no pass is due', async () => {
    const { session, incoming, lookAhead } = begin();
    incoming.choose(false);
    expectValue(session.apply(DEALT));
    const first = await ended(lookAhead);
    session.lay(fillTray(session.layout, tiles('FF 1b').toKinds()));
    const second = await ended(lookAhead);
    expect(second.choices).toHaveLength(first.choices.length + 1);
    expect(second.choices.at(-1)).toEqual({ type: 'give', tiles: tiles('FF 1b').toKinds() });
    expect(second.result!.standings.at(-1)!.deciding.loss.mean).toBeGreaterThan(0.01);
    expectValue(session.apply({ type: 'gave', step: 'right', tiles: 'FF 1b' }));
    expect(lookAhead.look.status).toBe('none');
  });

  it('waits until it is asked for where the person wants that, and at the next pass again', async () => {
    const preferences = { values: { weighs: 'when-asked' as const }, subscribe: () => () => undefined };
    const { session, incoming, lookAhead } = begin(GAMES, new PassLog(), preferences);
    expect(lookAhead.waits).toBe(false);
    session.apply(DEALT);
    expect([lookAhead.waits, lookAhead.look.status]).toEqual([true, 'none']);
    lookAhead.weigh();
    expect(lookAhead.waits).toBe(false);
    // What is known of the tiles that come in may change meanwhile: she need not ask again.
    incoming.choose(false);
    expect([lookAhead.waits, lookAhead.look.status]).toEqual([false, 'pending']);
    await ended(lookAhead);
    expect(lookAhead.ranked?.length).toBeGreaterThan(1);
    session.apply(FIRST_ROUND[1]!);
    session.apply(FIRST_ROUND[2]!);
    expect([lookAhead.waits, lookAhead.look.status, lookAhead.ranked]).toEqual([true, 'none', null]);
  });

  it('compares other numbers of tiles where they may go unseen, and weighs what comes in when asked', async () => {
    const { session, incoming, lookAhead } = begin();
    incoming.choose(false);
    for (const event of FIRST_ROUND) expectValue(session.apply(event));
    const even = await ended(lookAhead);
    const sizes = even.choices.map((choice) => (choice.type === 'give' ? choice.tiles.length : -1));
    // Fewer own tiles help their receiver less, so that they come first of equals.
    expect(sizes).toEqual([0, 1, 2, 3, 3, 3, 3, 3, 3]);
    expect(even.rates).toBeNull();
    incoming.choose(true);
    await told(incoming, () => incoming.rates !== null);
    const weighed = await ended(lookAhead);
    expect(weighed.rates?.source).toBe('table');
    expect(bytesOf(weighed.result!)).not.toBe(bytesOf(even.result!));
  });
});

describe('FU-9: whole games', { timeout: 120_000 }, () => {
  it('are played with the choices that are as good so far, and say what one worker alone would find (CR-G7)', async () => {
    const { session, incoming, lookAhead } = begin();
    incoming.choose(false);
    expectValue(session.apply(DEALT));
    const look = await ended(lookAhead);
    expect(lookAhead.played.status).toBe('none');
    const open = look.result!.standings.filter(({ verdict }) => verdict !== 'costs');
    expect(open.length).toBeGreaterThan(1);
    await lookAhead.playOut();
    const { status, value } = lookAhead.played;
    const { choices, result } = value!;
    expect(status).toBe('done');
    expect(choices).toEqual(open.map(({ candidate }) => look.choices[candidate]));
    const position = { seat: 1, exchange: session.state.exchange! };
    expect(bytesOf(result!)).toBe(bytesOf(raceOf(gamesContest(demoTable, position, choices), GAMES)));
    expect(bytesOf(lookAhead.look.value!.result!)).toBe(bytesOf(look.result!));
  });

  it('go on while the look is made anew, and can be stopped; what they said stays until a pass is given', async () => {
    const { session, incoming, lookAhead } = begin({ ...GAMES, looks: [1, 10_000] });
    incoming.choose(false);
    expectValue(session.apply(DEALT));
    await ended(lookAhead);
    const games = lookAhead.playOut();
    await told(lookAhead, () => lookAhead.played.value !== null && lookAhead.played.value.result !== null);
    incoming.choose(true);
    await told(incoming, () => incoming.rates !== null);
    expect(lookAhead.look.status).toBe('pending');
    expect(lookAhead.played.status).toBe('pending');
    lookAhead.stopPlaying();
    await games;
    expect(lookAhead.played.status).toBe('stopped');
    expect(lookAhead.played.value?.result?.standings[0]?.samples).toBe(GAMES.blockSize);
    expectValue(session.apply({ type: 'gave', step: 'right', tiles: 'N 0 1b' }));
    expect(lookAhead.played.status).toBe('none');
  });
});

describe('FU-18: what is taken to come in', { timeout: 120_000 }, () => {
  it('is what the simulated table shows while few passes are logged, until the player chooses otherwise', async () => {
    const { session, incoming } = begin(GAMES, logOf(PASSES_NEEDED - 2));
    expectValue(session.apply(DEALT));
    await told(incoming, () => incoming.rates !== null);
    expect(incoming.byRates).toBe(true);
    expect(incoming.rates?.source).toBe('table');
    incoming.choose(false);
    expect([incoming.byRates, incoming.rates]).toEqual([false, null]);
  });

  it('is counted in the own games once they hold enough passes, without being asked, and can be put off', async () => {
    const { session, incoming, lookAhead } = begin(GAMES, logOf(PASSES_NEEDED));
    expectValue(session.apply(DEALT));
    await told(incoming, () => incoming.rates !== null);
    expect(incoming.rates).toMatchObject({ source: 'journal', passes: PASSES_NEEDED });
    const look = await ended(lookAhead);
    expect(look.rates).toEqual(incoming.rates);
    incoming.choose(false);
    expect(incoming.rates).toBeNull();
    expect((await ended(lookAhead)).rates).toBeNull();
  });

  it('is the same for a look-back and the Warm-up, whose card may be another one', async () => {
    const { session, incoming } = begin(GAMES, logOf(PASSES_NEEDED));
    const card = markedCard(DOCUMENT);
    const { signal } = new AbortController();
    // Also before a pass is due at the Table.
    const games = expectValue(await FITS.fit({ card, table: 'club' }, { signal }));
    const rates = await incoming.ratesFor(games, signal);
    expect(rates).toMatchObject({ source: 'journal', passes: PASSES_NEEDED });
    expectValue(session.apply(DEALT));
    await told(incoming, () => incoming.rates !== null);
    expect(incoming.rates).toEqual(rates);
    incoming.choose(false);
    expect(await incoming.ratesFor(games, signal)).toBeNull();
  });
});

describe('the log of passes', () => {
  const record: Pick<GameRecord, 'events'> = {
    events: FIRST_ROUND.map((event): TimedEvent => ({ ...event, at: AT })),
  };
  const desk = (entries: readonly Pick<GameEntry, 'id' | 'demo'>[]): Parameters<typeof passLogReader>[0] => ({
    listGames: () => Promise.resolve(success(entries as readonly GameEntry[])),
    openGame: (id) =>
      Promise.resolve(
        id === 'spoilt'
          ? { ok: false, problem: { code: 'damaged', message: 'This game is damaged.' } }
          : success(record as GameRecord),
      ),
  });

  it('counts the passes of own games; invented and damaged ones do not count', async () => {
    const games = ['one', 'two', 'spoilt'].map((id) => ({ id, demo: false }));
    expect((await passLogReader(desk([...games, { id: 'three', demo: true }]))()).passes).toBe(4);
  });

  it('is that of the sixty games that stand first in the list, the newest', async () => {
    const entries = Array.from({ length: 62 }, (_, at) => ({ id: `g-${at}`, demo: at === 0 }));
    const opened: string[] = [];
    const whole = desk(entries);
    await passLogReader({
      listGames: () => whole.listGames(),
      openGame: (id) => {
        opened.push(id);
        return whole.openGame(id);
      },
    })();
    expect(opened).toEqual(entries.slice(1, 61).map(({ id }) => id));
  });

  it('opens a game again only when it has changed', async () => {
    const entries = ['one', 'two'].map((id) => ({ id, demo: false, events: 3, lastEventAt: AT }));
    const opened: string[] = [];
    const whole = desk(entries);
    const read = passLogReader({
      listGames: () => whole.listGames(),
      openGame: (id) => {
        opened.push(id);
        return whole.openGame(id);
      },
    });
    const before = (await read()).passes;
    expect((await read()).passes).toBe(before);
    expect(opened).toEqual(['one', 'two']);
    entries[1] = { id: 'two', demo: false, events: 4, lastEventAt: AT };
    await read();
    expect(opened).toEqual(['one', 'two', 'two']);
  });

  it('is empty when the games can’t be listed', async () => {
    const none = { ok: false as const, problem: { code: 'folder' as const, message: 'No folder.' } };
    const broken = { ...desk([]), listGames: () => Promise.resolve(none) };
    expect((await passLogReader(broken as Parameters<typeof passLogReader>[0])()).passes).toBe(0);
  });
});
