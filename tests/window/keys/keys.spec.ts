import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { KEYS, type KeyPhrase } from '../../../renderer/help/keys.ts';
import { expect, test, Windrow } from '../windrow.ts';
import { cardKeys } from './card-keys.ts';
import { keyPress, type KeyTest, type KeyTests } from './key-press.ts';
import { tableKeys } from './table-keys.ts';

/** The types ask for a test of every command that the list of keys in the help has, and of none besides. */
const TESTS: KeyTests<keyof typeof KEYS> = { ...tableKeys, ...cardKeys };

function testOf(place: string, command: string): KeyTest {
  const tests: Readonly<Record<string, Readonly<Record<string, KeyTest>>>> = TESTS;
  const found = tests[place]?.[command];
  if (found === undefined) throw new Error(`no test presses the key of ${command} (${place})`);
  return found;
}

/** Does something in a window with a folder of its own, so that no key finds what another one left. */
async function inFreshWindow(page: Page, work: (windrow: Windrow) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'windrow-key-'));
  await writeFile(join(folder, 'preferences.json'), JSON.stringify({ weighs: 'when-asked' }));
  const windrow = new Windrow(page, folder);
  await work(windrow);
  await page.goto('about:blank');
  await windrow.close();
  await rm(folder, { recursive: true, force: true });
}

for (const [place, commands] of Object.entries(KEYS)) {
  test(`CR-K1: each key that the help lists is pressed and does what its line says: ${place}`, async ({ page }) => {
    test.setTimeout(400_000);
    for (const [command, phrases] of Object.entries<readonly KeyPhrase[]>(commands)) {
      for (const phrase of phrases) {
        await test.step(`${command}: ${phrase}`, async () => {
          const pressed: KeyPhrase[] = [];
          await inFreshWindow(page, async (windrow) => {
            await testOf(place, command)(keyPress(windrow, phrase, (key) => pressed.push(key)));
          });
          expect(pressed, `${phrase} was pressed`).toContain(phrase);
        });
      }
    }
  });
}
