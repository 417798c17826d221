import type { Page } from '@playwright/test';
import { alikeInGrey, wordlessVerdicts } from './screens/grey.ts';
import { focused, hiddenFocus } from './screens/focus.ts';
import { type Measured, measure } from './screens/facts.ts';
import { unexplained } from './screens/explained.ts';
import { JOURNEYS } from './screens/journeys.ts';
import { cutOff, hoverOnly, leftEmpty, tooClose, tooFine, tooLively, tooSmall, wordless } from './screens/judge.ts';
import { dialogsOpen, elementsSeen } from './screens/seen.ts';
import { textColours } from './screens/colours.ts';
import { statesByHueAlone } from './screens/screen-states.ts';
import { settle, watchAgain, watchPlaces } from './screens/stillness.ts';
import { stirred } from './screens/stirred.ts';
import { setTextSize, spaceOutText } from './screens/text.ts';
import { violations, WCAG } from './violations.ts';
import { expect, test } from './windrow.ts';

/** Window and text sizes, in CSS px, at which every screen must fit; CR-W6. */
const SIZES = [
  { width: 1440, height: 900, text: 18 },
  { width: 1024, height: 700, text: 32 },
  { width: 390, height: 800, text: 18 },
  { width: 320, height: 640, text: 32 },
] as const;
const USUAL = SIZES[0];

/** A folder for pictures of every screen; without one, none are taken. */
const PICTURES = process.env['WINDROW_PICTURES'];

for (const { name, place, screens, shows, dialogs } of JOURNEYS) {
  test(`CR-K8, CR-W2, CR-W3, CR-W6, CR-W8, CR-O1, CR-O2, CR-O3, CR-O7: every screen of ${name}`, async ({
    windrow,
    page,
  }) => {
    test.setTimeout(60_000 * (screens.length + 1));
    await windrow.open();
    await page.evaluate((to) => void (window.location.hash = to), `#/${place}`);
    await watchPlaces(page);
    const known = new Set<string>();
    const seen = { elements: new Set<string>(), dialogs: new Set<string>() };
    for (const screen of screens) {
      await test.step(screen.name, async () => {
        await screen.reach(windrow);
        await windrow.quiet();
        await settle(page);
        expect.soft(await stirred(page, `${name}: ${screen.name}`), `CR-O7, stillness: ${screen.name}`).toEqual([]);
        await watchAgain(page, false);
        for (const element of await elementsSeen(page)) seen.elements.add(element);
        for (const dialog of await dialogsOpen(page)) seen.dialogs.add(dialog);
        expect.soft(await focused(page), `CR-K3, the focus: ${screen.name}`).not.toBe('body');
        expect.soft(await troubles(page, `${name}, ${screen.name}`, known), screen.name).toEqual([]);
        await watchAgain(page, true);
      });
    }
    expect
      .soft(
        shows.filter((element) => !seen.elements.has(element)),
        'said to be seen, but is not',
      )
      .toEqual([]);
    expect.soft([...seen.dialogs].toSorted()).toEqual(dialogs.toSorted());
  });
}

/** All that is wrong with a screen, in words. What gives the focus about comes last: it scrolls. */
async function troubles(page: Page, name: string, known: Set<string>): Promise<string[]> {
  const found = [...(await violations(page)), ...(await statesByHueAlone(page)).map((one) => `hue alone: ${one}`)];
  found.push(...(await unexplained(page)));
  found.push(...(await alikeInGrey(page)), ...(await wordlessVerdicts(page)));
  const usual = await measure(page);
  found.push(...judged(usual), ...tooFine(usual), ...wordless(usual), ...hoverOnly(usual), ...tooLively(usual));
  found.push(...(await inOtherColours(page, name, known)));
  found.push(...(await inOtherSizes(page, name)));
  found.push(...(await hiddenFocus(page)));
  return found;
}

function judged(measured: Measured): string[] {
  return [...tooSmall(measured), ...tooClose(measured), ...cutOff(measured), ...leftEmpty(measured)];
}

/** In the dark only what looks otherwise than all that was judged before is judged once more. */
async function inOtherColours(page: Page, name: string, known: Set<string>): Promise<string[]> {
  await picture(page, `${name}, light`);
  await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
  const fresh = (await textColours(page)).filter((colours) => !known.has(colours));
  for (const colours of fresh) known.add(colours);
  const contrast = fresh.length === 0 ? [] : await violations(page, ['cat.color'], WCAG);
  const found = [...contrast, ...tooLively(await measure(page), 0)].map((one) => `dark: ${one}`);
  await picture(page, `${name}, dark`);
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'active' });
  found.push(...(await statesByHueAlone(page)).map((one) => `forced colours: ${one}`));
  await picture(page, `${name}, forced`);
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none', reducedMotion: 'no-preference' });
  return found;
}

async function inOtherSizes(page: Page, name: string): Promise<string[]> {
  const found: string[] = [];
  for (const { width, height, text } of SIZES) {
    if (width === USUAL.width) continue;
    await page.setViewportSize({ width, height });
    await setTextSize(page, text);
    // What follows the size, as the ring of the tour, is drawn a frame later.
    await settle(page, 2);
    found.push(...judged(await measure(page)).map((one) => `${width} px, text ${text}: ${one}`));
    await picture(page, `${name}, ${width}`);
  }
  found.push(...(await hiddenFocus(page)).map((one) => `${page.viewportSize()?.width} px: ${one}`));
  await setTextSize(page, USUAL.text);
  const close = await spaceOutText(page);
  found.push(...cutOff(await measure(page)).map((one) => `spaced out: ${one}`));
  await close();
  await page.setViewportSize(USUAL);
  return found;
}

async function picture(page: Page, name: string): Promise<void> {
  if (PICTURES === undefined) return;
  await page.screenshot({ path: `${PICTURES}/${name.replaceAll(/[^\w,]+/g, '-')}.png` });
}
