import { expect, test } from 'vitest';
import { questionNamed } from '../../core/engine/questions.ts';
import { expectValue, failure, success } from '../../core/base/result.ts';
import { FIRST_STAGES } from '../../core/review/yardstick.ts';
import { inTheEnd } from '../../core/review/decision.ts';
import { finish } from '../../core/base/steps.ts';
import { lookBack } from '../../core/engine/game-questions.ts';
import { checkPracticeEntry, type PracticeEntry } from '../../core/warmup/history-file.ts';
import { choiceCosts } from '../../core/journal/choice-costs.ts';
import { ownMisses } from '../../core/warmup/session.ts';
import { PracticeRoom } from '../../renderer/places/warmup/practice-room.ts';
import type { WarmUpRun } from '../../renderer/places/warmup/warm-up-run.ts';
import { fillTray } from '../../renderer/session/layout.ts';
import { CardOpener } from '../../renderer/session/card-opener.ts';
import { DEFAULT_PREFERENCES } from '../../main/desk/preferences.ts';
import { SavingWatch } from '../../renderer/session/saving-watch.ts';
import { CardFits } from '../../renderer/session/card-fits.ts';
import { PreferenceStore } from '../../renderer/session/preference-store.ts';
import type { WorkerLine } from '../../renderer/worker/client.ts';
import { Pool } from '../../renderer/worker/pool.ts';
import { serve } from '../../renderer/worker/serve.ts';
import { gameRecord, openOn } from '../main/support/desks.ts';
import { NO_KEPT_FITS } from '../window/no-kept-fits.ts';
import { MemoryDisk } from '../main/support/memory-disk.ts';
import { DEMO_TEXT, tiles } from './demo.ts';

/** A worker in this thread: a real message channel, and the real handlers on its far end. */
function startWorker(): WorkerLine {
  const { port1, port2 } = new MessageChannel();
  port1.start();
  port2.start();
  serve(port2, questionNamed, {
    clock: () => performance.now(),
    pause: () => new Promise((resume) => setImmediate(resume)),
  });
  return {
    postMessage: (message) => port1.postMessage(message),
    addEventListener: (type, listener) => port1.addEventListener(type, listener as EventListener),
    terminate: () => port1.close(),
  };
}

const AT = '2026-11-25T18:00:01Z';
/** Counts what a choice costs by the end of the exchange. */
const COUNTERS = {
  saving: new SavingWatch({ whyOnlyReading: async () => success(null) }, null),
  pool: new Pool(startWorker),
  fits: new CardFits(NO_KEPT_FITS, startWorker),
  incoming: { ratesFor: () => Promise.resolve(null) },
};
/** A pass that breaks up what the rack has. */
const GAME = gameRecord('g-1', {
  card: JSON.parse(DEMO_TEXT),
  events: [
    { type: 'dealt', seat: 'South', tiles: 'J FF G 88b 23c 14567d', at: AT },
    { type: 'gave', step: 'right', tiles: 'FF 8b', at: AT },
    { type: 'received', step: 'right', tiles: 'N 9c 9d', at: AT },
  ],
});

test('costly passes of games that were looked back at come into practice, each once; those of the demonstration not', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk, { demoCard: DEMO_TEXT });
  const review = expectValue(finish(lookBack({ record: GAME, stages: FIRST_STAGES })));
  const misses = ownMisses('g-1', review.decisions);
  expect(misses.map(({ rack, step }) => [rack, step])).toEqual([['J FF G 88b 23c 14567d', 'right']]);
  for (const [id, demo] of [
    ['g-1', false],
    ['g-2', true],
  ] as const) {
    expectValue(await desk.startGame({ ...GAME, id, demo }));
    expectValue(
      await desk.keepFindings([
        {
          id,
          key: 'as reviewed',
          figures: { aways: [], aimed: null },
          choices: choiceCosts(review),
          review: { ...review, id },
        },
      ]),
    );
  }
  const about = expectValue(await desk.about());
  const preferences = new PreferenceStore(desk, DEFAULT_PREFERENCES);
  const enter = async (): Promise<PracticeRoom> => {
    const room = new PracticeRoom({ desk, about, preferences, cards: new CardOpener(desk), ...COUNTERS }, startWorker);
    await room.enter();
    return room;
  };
  const room = await enter();
  const [miss] = misses;
  expect(room.history).toEqual([
    {
      type: 'miss',
      id: miss?.id,
      day: expect.any(Number),
      kind: 'one-joker',
      step: 'right',
      cost: miss?.cost,
      halfWidth: miss?.halfWidth,
      source: 'g-1',
    },
  ]);
  await expect.poll(async () => expectValue(await desk.practiceHistory())).toEqual(room.history);
  expect((await enter()).history).toEqual(room.history);
});

test('CR-D7: an answer that could not be saved waits, and is saved once the desk can save again', async () => {
  const desk = await openOn(new MemoryDisk(), { demoCard: DEMO_TEXT });
  let full = true;
  const refusal = failure('disk-full', 'The disk is full.');
  const notePractice: typeof desk.notePractice = async (entries) => (full ? refusal : await desk.notePractice(entries));
  const saving = new SavingWatch({ whyOnlyReading: async () => success(full ? 'full' : null) }, 'full', 1);
  const about = expectValue(await desk.about());
  const preferences = new PreferenceStore(desk, DEFAULT_PREFERENCES);
  const cards = new CardOpener(desk);
  const room = new PracticeRoom(
    { ...COUNTERS, desk: { ...desk, notePractice }, about, preferences, cards, saving },
    startWorker,
  );
  await room.enter();
  const answer: PracticeEntry = { type: 'guess', id: 'g-1', day: 1, what: 'lean', sure: 0.5, right: true };
  room.note(answer);
  await expect.poll(() => room.unsaved?.code).toBe('disk-full');
  // Coming back to the place forgets nothing.
  await room.enter();
  expect(room.history).toEqual([answer]);
  full = false;
  await expect.poll(() => room.unsaved).toBeNull();
  expect(expectValue(await desk.practiceHistory())).toEqual([answer]);
});

const OTHER = { rack: 'FF NE 0 1389b 25c 46d', gone: '', step: 'right', seat: 'South' } as const;

/** A room on the demo card, with a problem at hand whose last three tiles are to be given. */
async function roomAtAnswer(): Promise<{ readonly room: PracticeRoom; readonly run: WarmUpRun }> {
  const desk = await openOn(new MemoryDisk(), { demoCard: DEMO_TEXT });
  const about = expectValue(await desk.about());
  const preferences = new PreferenceStore(desk, DEFAULT_PREFERENCES);
  const room = new PracticeRoom({ desk, about, preferences, cards: new CardOpener(desk), ...COUNTERS }, startWorker);
  await room.enter();
  room.start({ rack: 'J FF N 0 13b 4578c 22d', gone: '', step: 'right', seat: 'South' }, { kind: 'one-joker' });
  const { run } = room;
  if (run === null) throw new Error('no problem was begun');
  const { layout } = run;
  run.lay(fillTray(layout, tiles('FF 2d').toKinds()));
  run.mark({ aims: ['section:Three Shores'], why: 'they go' });
  return { room, run };
}

test('CR-G2: what is kept of a decision is its cost to the end of the exchange, with its interval, as told', async () => {
  const { room, run } = await roomAtAnswer();
  expect(run.shown).toBeNull();
  await run.show();
  const { cost, halfWidth, verdict } = inTheEnd(run.shown!.ahead.chosen);
  expect(verdict).toBe('costly');
  expect(run.judged).toEqual([{ step: 'right', give: 'FF 2d', cost, halfWidth, verdict }]);
  const decision = { kind: 'one-joker', step: 'right', cost, halfWidth };
  expect(room.history).toMatchObject([
    { type: 'answer', miss: null, verdict, ...decision },
    { type: 'miss', source: 'warm-up', ...decision },
  ]);
});

test('an answer is opened again as it was given, with the same figures, and is not kept twice', async () => {
  const { room, run } = await roomAtAnswer();
  await run.show();
  const { shown, warmUp } = run;
  const [entry] = room.history;
  if (entry?.type !== 'answer') throw new Error('the first entry is no answer');
  expect(checkPracticeEntry(JSON.parse(JSON.stringify(entry)))).toEqual({ ok: true, value: entry });
  room.leave();
  expect(room.run).toBeNull();
  room.reopen(entry);
  await expect.poll(() => room.run?.shown ?? null, { timeout: 30_000 }).not.toBeNull();
  expect(room.run?.warmUp.attempt).toEqual(warmUp.attempt);
  expect(room.run?.shown?.ahead.chosen).toEqual(shown?.ahead.chosen);
  expect(room.history).toHaveLength(2);
});

test('who goes on to another problem at once loses nothing: the answer is judged and kept all the same', async () => {
  const { room, run } = await roomAtAnswer();
  const judged = run.show();
  room.start(OTHER, { kind: 'any' });
  expect(room.run).not.toBe(run);
  await judged;
  expect(room.history.map(({ type }) => type)).toEqual(['answer', 'miss']);
  room.back();
  expect(room.run).toBe(run);
  await room.next();
  expect(room.run?.item.rack).toBe(OTHER.rack);
});
