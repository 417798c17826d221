import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { success } from '../../core/base/result.ts';
import { SavingWatch } from '../../renderer/session/saving-watch.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const FULL = 'The disk is full.';

it('the desk is asked every three seconds while it can not save, and no more once it can', async () => {
  let trouble: string | null = FULL;
  const whyOnlyReading = vi.fn(async () => success(trouble));
  const watch = new SavingWatch({ whyOnlyReading }, FULL);
  const saves = vi.fn();
  watch.whenItSaves(saves);
  await vi.advanceTimersByTimeAsync(2999);
  expect(whyOnlyReading).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(1);
  expect(whyOnlyReading).toHaveBeenCalledTimes(1);
  expect(watch.trouble).toBe(FULL);
  expect(saves).not.toHaveBeenCalled();
  trouble = null;
  await vi.advanceTimersByTimeAsync(3000);
  expect(whyOnlyReading).toHaveBeenCalledTimes(2);
  expect(watch.trouble).toBeNull();
  expect(saves).toHaveBeenCalledTimes(1);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(whyOnlyReading).toHaveBeenCalledTimes(2);
});

it('a desk that can save is not asked; a trouble that stands at the top is not said again', async () => {
  const whyOnlyReading = vi.fn(async () => success(null));
  const well = new SavingWatch({ whyOnlyReading }, null);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(whyOnlyReading).not.toHaveBeenCalled();
  const problem = { code: 'disk-full', message: FULL };
  expect(well.unsaid(problem)).toBe(problem);
  expect(new SavingWatch({ whyOnlyReading }, FULL).unsaid(problem)).toBeNull();
});
