import { expect, type Locator, type Page } from '@playwright/test';
import type { KEYS, KeyPhrase } from '../../../renderer/help/keys.ts';
import type { Windrow } from '../windrow.ts';

type Places = typeof KEYS;

/** One key of the list of keys, to be pressed once in a window where it has something to do. */
export interface KeyPress {
  readonly windrow: Windrow;
  readonly page: Page;
  readonly phrase: KeyPhrase;
  /** Where arrows lead: 1 for right, down and on, −1 for left, up and back. */
  readonly by: 1 | -1;
  /** Presses the key; for one that stands for any letter or digit, the one that is named. */
  press(symbol?: string): Promise<void>;
}

/** Brings about what a key needs, presses it, and expects what its line in the help says. */
export type KeyTest = (key: KeyPress) => Promise<void>;

/** The test of each command of some places: one that the list gains must be tested here, or the types do not fit. */
export type KeyTests<Place extends keyof Places> = {
  readonly [Each in Place]: Readonly<Record<keyof Places[Each], KeyTest>>;
};

const BACKWARDS = /Left|Up|Home|Shift\+Tab$/;

export function keyPress(windrow: Windrow, phrase: KeyPhrase, pressed: (key: KeyPhrase) => void): KeyPress {
  const { page } = windrow;
  const anyOf = /^(?:a-z|1-9)$/.test(phrase);
  return {
    windrow,
    page,
    phrase,
    by: BACKWARDS.test(phrase) ? -1 : 1,
    press: async (symbol) => {
      if (anyOf !== (symbol !== undefined))
        throw new Error(`${phrase} stands for ${anyOf ? 'several keys' : 'itself'}`);
      if (symbol !== undefined && !new RegExp(`^[${phrase}]$`).test(symbol))
        throw new Error(`${symbol} is no ${phrase}`);
      pressed(phrase);
      await page.keyboard.press(symbol ?? phrase.replace(/ $/, 'Space'));
    },
  };
}

/** Expects the focus to go from one of several things to another. */
async function expectStep(key: KeyPress, things: Locator, from: number, to: number): Promise<void> {
  await things.nth(from).focus();
  await expect(things.nth(from)).toBeFocused();
  await key.press();
  await expect(things.nth(to)).toBeFocused();
}

/** Expects a key that leads one thing on or back to do so from the middle of several. */
export async function expectWalk(key: KeyPress, things: Locator, from = 1): Promise<void> {
  await expectStep(key, things, from, from + key.by);
}

/** Expects a key that leads to the first or last of several things to do so from the middle. */
export async function expectEnd(key: KeyPress, things: Locator): Promise<void> {
  await things.nth(2).waitFor();
  const last = (await things.count()) - 1;
  await expectStep(key, things, 1, key.by < 0 ? 0 : last);
}

/** Expects a key to lead from a thing to one in the row below, or from there to one in the row above. */
export async function expectClimb(key: KeyPress, things: Locator, from: { up: number; down: number }): Promise<void> {
  const start = things.nth(key.by < 0 ? from.up : from.down);
  await start.focus();
  await key.press();
  await expect(start).not.toBeFocused();
  // Both are measured afterwards: the focus may scroll the page.
  const [before, after] = [await start.boundingBox(), await things.and(key.page.locator(':focus')).boundingBox()];
  expect(Math.sign((after?.y ?? Number.NaN) - (before?.y ?? Number.NaN))).toBe(key.by);
}
