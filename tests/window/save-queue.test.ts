import { expect, test } from 'vitest';
import { failure, type Result, success } from '../../core/base/result.ts';
import { SaveQueue } from '../../renderer/session/save-queue.ts';

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
