import { expect, test } from 'vitest';
import { failure, type Result, success } from '../../core/base/result.ts';
import type { Preferences } from '../../main/desk/desk.ts';
import { DEFAULT_PREFERENCES } from '../../main/desk/preferences.ts';
import { PreferenceStore } from '../../renderer/session/preference-store.ts';
import { SaveQueue } from '../../renderer/session/save-queue.ts';
import { SavingWatch } from '../../renderer/session/saving-watch.ts';

/** A save whose answer comes when the test gives it. */
function held(): { run: () => Promise<Result<null>>; answer: (result: Result<null>) => void } {
  let answer: (result: Result<null>) => void = () => undefined;
  const answered = new Promise<Result<null>>((resolve) => (answer = resolve));
  return { run: () => answered, answer };
}

const turn = async (): Promise<void> => await new Promise((resolve) => setTimeout(resolve));

test('CR-J3: the window says "saved" only after the desk has answered for everything that was entered', async () => {
  const said: string[] = [];
  const queue = new SaveQueue(({ status }) => said.push(status));
  const [first, second] = [held(), held()];
  queue.add(first);
  queue.add(second);
  await turn();
  expect(said).toEqual(['saving']);
  first.answer(success(null));
  await turn();
  expect(said).toEqual(['saving']);
  second.answer(success(null));
  await turn();
  expect(said).toEqual(['saving', 'saved']);
});

test('CR-J3: after a refusal it says so, and what waits behind it is not called saved', async () => {
  const said: string[] = [];
  const queue = new SaveQueue(({ status }) => said.push(status));
  let tries = 0;
  queue.add({ run: async () => ((tries += 1) === 1 ? failure('disk-full', 'The disk is full.') : success(null)) });
  queue.add({ run: async () => success(null) });
  await turn();
  expect(said).toEqual(['saving', 'failed']);
  queue.retry();
  await turn();
  expect(said).toEqual(['saving', 'failed', 'saving', 'saved']);
});

test('what is refused for one game holds up the further steps of that game alone', async () => {
  const saved: string[] = [];
  const queue = new SaveQueue(() => undefined);
  const refused = failure('too-large', 'This game is full.');
  queue.add({ of: 'one', run: async () => refused });
  queue.add({ of: 'one', run: async () => success(saved.push('behind it')) });
  queue.add({ of: 'other', run: async () => success(saved.push('other game')) });
  await turn();
  expect(saved).toEqual(['other game']);
  expect(queue.status).toEqual({ status: 'failed', problem: refused.problem, of: 'one' });
});

test('what is undone before it was done is not asked for, nor what was done on it; what stays is', async () => {
  const done: string[] = [];
  const queue = new SaveQueue(() => undefined);
  const does = (name: string): { name: string; of: string; run: () => Promise<Result<unknown>> } => ({
    of: 'one',
    name,
    run: async () => success(done.push(name)),
  });
  const refused = held();
  queue.add({ of: 'one', name: 'step 3', run: refused.run });
  queue.add(does('layout'));
  queue.add({ ...does('a word on the game'), stays: true });
  queue.add(does('step 4'));
  queue.add({ ...does('undo of 4'), undoes: 'step 4' });
  queue.add({ ...does('undo of 3'), undoes: 'step 3' });
  refused.answer(failure('too-large', 'This game is full.'));
  await turn();
  expect(done).toEqual(['a word on the game', 'undo of 3']);
  expect(queue.status).toEqual({ status: 'saved' });
});

test('a step that was done is undone by one that says so', async () => {
  const done: string[] = [];
  const queue = new SaveQueue(() => undefined);
  const running = held();
  queue.add({ of: 'one', name: 'step 3', run: running.run });
  queue.add({ of: 'one', undoes: 'step 3', run: async () => success(done.push('undo of 3')) });
  running.answer(success(null));
  await turn();
  expect(done).toEqual(['undo of 3']);
});

test('what is let go is not asked for again, and nothing else is held up by it', async () => {
  const done: string[] = [];
  const queue = new SaveQueue(() => undefined);
  queue.add({ of: 'one', run: async () => failure('out-of-step', 'Open it again.') });
  queue.add({ of: 'one', stays: true, run: async () => success(done.push('a word on the game')) });
  await turn();
  expect(queue.problemOf('one')?.code).toBe('out-of-step');
  queue.letGo('one');
  await turn();
  expect(queue.problemOf('one')).toBeNull();
  expect(done).toEqual(['a word on the game']);
  expect(queue.status).toEqual({ status: 'saved' });
});

test('jobs of one name are one only where they are of the same thing', async () => {
  const saved: string[] = [];
  const queue = new SaveQueue(() => undefined);
  const first = held();
  queue.add(first);
  queue.add({ of: 'one', name: 'layout', run: async () => success(saved.push('one')) });
  queue.add({ of: 'other', name: 'layout', run: async () => success(saved.push('other')) });
  first.answer(success(null));
  await turn();
  expect(saved).toEqual(['one', 'other']);
});

test('what is let go while it is being done is not held against anything when it fails', async () => {
  const said: string[] = [];
  const queue = new SaveQueue(({ status }) => said.push(status));
  const draft = held();
  queue.add({ of: 'draft', run: draft.run });
  await turn();
  queue.letGo('draft');
  queue.add({ of: 'game', run: async () => success(null) });
  draft.answer(failure('disk-full', 'The disk is full.'));
  await turn();
  expect(queue.waitsFor('draft')).toBe(false);
  expect(said).toEqual(['saving', 'saved']);
});

test('CR-D7: once the desk can save again, what waited is saved, and the window is told once', async () => {
  const answers = ['full', 'full', null];
  let asked = 0;
  const watch = new SavingWatch({ whyOnlyReading: async () => success(answers[asked++] ?? null) }, 'full', 1);
  const queue = new SaveQueue(() => undefined);
  let told = 0;
  watch.whenItSaves(() => {
    told += 1;
    queue.retry();
  });
  queue.add({ run: async () => (watch.trouble === null ? success(null) : failure('disk-full', 'The disk is full.')) });
  await turn();
  expect(queue.status.status).toBe('failed');
  await expect.poll(() => queue.status.status).toBe('saved');
  expect([watch.trouble, told, asked]).toEqual([null, 1, 3]);
  queue.retry();
  expect(queue.status.status).toBe('saved');
});

test('a setting that could not be kept is kept with the next one that can', async () => {
  const kept: object[] = [];
  let isFull = true;
  const desk = {
    changePreferences: async (change: Partial<Preferences>) => {
      if (isFull) return failure('disk-full', 'The disk is full.');
      kept.push(change);
      return success(DEFAULT_PREFERENCES);
    },
  };
  const store = new PreferenceStore(desk, DEFAULT_PREFERENCES);
  await store.change({ theme: 'dark' });
  await store.change({ textSize: 24 });
  expect(store.problem).toMatchObject({ code: 'disk-full' });
  isFull = false;
  await store.retrySaving();
  await store.retrySaving();
  expect(kept).toEqual([{ theme: 'dark', textSize: 24 }]);
  await store.change({ theme: 'light' });
  expect(kept.at(-1)).toEqual({ theme: 'light' });
});

test('settings that came in from a file are not overridden by what could not be kept before; a refused value is not sent again', async () => {
  const kept: unknown[] = [];
  let answer: Result<Preferences> = failure('disk-full', 'The disk is full.');
  const desk = {
    changePreferences: async (change: Partial<Preferences>) => {
      kept.push(change);
      return answer;
    },
  };
  const store = new PreferenceStore(desk, DEFAULT_PREFERENCES);
  let told = 0;
  store.subscribe(() => (told += 1));
  await store.change({ theme: 'dark' });
  expect(told).toBe(2);
  store.adopt({ ...DEFAULT_PREFERENCES, theme: 'light' });
  expect(store.problem).toBeNull();
  answer = success(DEFAULT_PREFERENCES);
  await store.change({ textSize: 24 });
  expect(kept.at(-1)).toEqual({ textSize: 24 });
  answer = failure('wrong-arguments', 'Windrow could not make sense of this.');
  await store.change({ textSize: 999 });
  await store.change({ theme: 'dark' });
  expect(kept.at(-1)).toEqual({ theme: 'dark' });
  // That all is well again is told, too.
  answer = success(DEFAULT_PREFERENCES);
  const before = told;
  await store.change({ theme: 'light' });
  expect(told).toBe(before + 2);
  expect(store.problem).toBeNull();
});
