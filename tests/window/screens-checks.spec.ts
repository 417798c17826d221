import type { Page } from '@playwright/test';
import { textColours } from './screens/colours.ts';
import { copyDemo, view } from './card-evening.ts';
import { measure } from './screens/facts.ts';
import { alikeInGrey, wordlessVerdicts } from './screens/grey.ts';
import { focused, hiddenFocus } from './screens/focus.ts';
import { cutOff, hoverOnly, leftEmpty, tooClose, tooFine, tooLively, tooSmall, wordless } from './screens/judge.ts';
import { statesByHueAlone } from './screens/screen-states.ts';
import { dialogsOpen, elementsSeen } from './screens/seen.ts';
import { spaceOutText } from './screens/text.ts';
import { expect, test } from './windrow.ts';

/** A page that does all that a screen of Windrow must not. */
const FAULTY = `
  <style>
    * { margin: 0; box-sizing: border-box; }
    .bar { position: fixed; inset: 0 0 auto 0; height: 60px; background: white; z-index: 2; }
    .tight { width: 100px; height: 20px; overflow: hidden; line-height: 20px; font-size: 18px; }
    button { width: 60px; height: 60px; font-size: 18px; }
    [aria-pressed=true] { background: #d8e8e6; }
    [aria-pressed=false] { background: #e8d8e6; }
  </style>
  <div class="bar"></div>
  <button id="under">Under</button>
  <button id="small" style="width: 30px; height: 30px">Ok</button>
  <button id="bare" title="Only by mouse"></button>
  <button id="ringless" style="outline: none">Ring</button>
  <button aria-pressed="true">On</button><button aria-pressed="false">Off</button>
  <p id="fine" style="font-size: 12px">fine print</p>
  <p id="slow" style="font-size: 18px; transition: opacity 1s">slow</p>
  <p class="tight">spaced text that is far longer than its box</p>
  <div id="wide" style="width: 3000px; font-size: 18px">wide</div>
  <wr-drawn style="display: contents"><span style="font-size: 18px">seen</span></wr-drawn><wr-gone hidden>gone</wr-gone>`;

async function open(page: Page): Promise<void> {
  await page.setContent(FAULTY);
  await page.evaluate(() => {
    const rack = document.createElement('wr-rack');
    const shadow = rack.attachShadow({ mode: 'open' });
    const tile = 'style="display: inline-block; width: 50px; height: 70px"';
    shadow.innerHTML = `<div role="option" ${tile}></div><div role="option" ${tile}></div><div role="option" style="display: inline-block; width: 40px; height: 70px"></div>`;
    document.body.append(rack);
  });
}

test.describe('the checks of the screens find what they look for', () => {
  test.beforeEach(async ({ page }) => await open(page));

  test('sizes, distances, words, motion', async ({ page }) => {
    const measured = await measure(page);
    const only = (found: readonly string[]): string => found.join('\n');
    expect(only(tooSmall(measured))).toMatch(/"Ok" 30x30\n.*wr-rack.* 40x70$/s);
    expect(tooClose(measured)).toHaveLength(2);
    expect(only(tooFine(measured))).toMatch(/^text of 12 px: .*"fine print"/);
    expect(only(wordless(measured))).toMatch(/^without words: .*button/);
    expect(only(hoverOnly(measured))).toContain('Only by mouse');
    expect(only(tooLively(measured))).toMatch(/^moves 1000 ms: .*"slow"/);
    expect(only(cutOff(measured))).toMatch(/outside: .*"wide" 3000x/);
    expect(only(cutOff(measured))).toMatch(/cut off below: .*tight/);
  });

  test('a page that goes on where nothing is, and a table in a box without width', async ({ page }) => {
    expect(leftEmpty(await measure(page))).toEqual([]);
    await page.evaluate(() => {
      document.body.insertAdjacentHTML('beforeend', '<div id="below" style="height: 2000px"></div>');
    });
    const [empty, beyond] = leftEmpty(await measure(page));
    expect(empty).toMatch(/^empty below: \d{4} px$/);
    expect(beyond).toMatch(/^a document of \d{4} px$/);
    await page.evaluate(() => {
      document.body.insertAdjacentHTML(
        'afterbegin',
        '<div class="flat" style="width: 0; overflow: auto"><table><tr><td>1</td></tr></table></div>',
      );
    });
    expect(leftEmpty(await measure(page)).join()).toContain('no width: ');
  });

  test('text that is spaced out, and is as it was afterwards', async ({ page }) => {
    const width = async (): Promise<number> =>
      await page.locator('#slow').evaluate((text) => {
        const range = document.createRange();
        range.selectNodeContents(text);
        return range.getBoundingClientRect().width;
      });
    const before = await width();
    const close = await spaceOutText(page);
    expect(await width()).toBeGreaterThan(before);
    await close();
    expect(await width()).toBe(before);
  });

  test('focus that is hidden or has no ring, and what has it', async ({ page }) => {
    expect(await focused(page)).toBe('body');
    const found = (await hiddenFocus(page)).join('\n');
    expect(found).toMatch(/no ring: .*"Ring"/);
    expect(found).toMatch(/covered: .*"Under" by div/);
    await page.locator('#small').focus();
    expect(await focused(page)).toBe('button');
  });

  test('states that differ by hue alone, and those that do not', async ({ page }) => {
    expect((await statesByHueAlone(page)).join()).toMatch(/aria-pressed.*"On"/);
    await page.addStyleTag({ content: '[aria-pressed=true] { border: 5px double }' });
    expect(await statesByHueAlone(page)).toEqual([]);
  });

  test('CR-W3: what is alike in grey, and verdicts that only a colour tells', async ({ page }) => {
    // A red and a green of the same lightness; the same red with stripes.
    const swatch = (name: string, inside: string): string =>
      `<li><svg width="30" height="20"><rect width="30" height="20" ${inside}</svg>${name}</li>`;
    const stripes = '<path d="M3 0V20M9 0V20M15 0V20M21 0V20" stroke="white" stroke-width="3" />';
    await page.setContent(`<ul>${swatch('red', 'fill="red" />')}${swatch('green', 'fill="rgb(0 76 0)" />')}</ul>
      <p class="verdict slip">red</p>`);
    expect((await alikeInGrey(page)).join()).toMatch(/^alike in grey: .* 0\.0 % apart$/);
    expect(await wordlessVerdicts(page)).toEqual(['a verdict without its words: "red"']);
    await page.setContent(`<ul>${swatch('red', 'fill="red" />')}${swatch('striped', `fill="red" />${stripes}`)}</ul>
      <p class="verdict slip">About 2 games in 100</p>`);
    expect(await alikeInGrey(page)).toEqual([]);
    expect(await wordlessVerdicts(page)).toEqual([]);
  });

  test('which elements are seen, and which dialogs are open', async ({ page }) => {
    expect(await elementsSeen(page)).toEqual(['wr-drawn', 'wr-rack']);
    expect(await dialogsOpen(page)).toEqual([]);
  });

  test('the colours of text, by what lies behind it', async ({ page }) => {
    await page.setContent('<p style="color: red">one</p><p style="color: red">two</p>');
    const [one, ...more] = await textColours(page);
    expect([one?.startsWith('rgb(255, 0, 0)'), more]).toEqual([true, []]);
    await page.setContent(
      '<p style="color: red">one</p><div style="background: blue"><p style="color: red">two</p></div>',
    );
    expect(await textColours(page)).toHaveLength(2);
    await page.setContent(
      '<p style="color: red">one</p><p style="color: red; opacity: 0.5">two</p><p hidden>three</p>',
    );
    expect(await textColours(page)).toHaveLength(2);
  });
});

test('what comes only with a late answer of the desk is waited for', async ({ windrow, page }) => {
  await windrow.open('Card');
  await copyDemo(windrow);
  await view(page, 'Cards');
  await page.route('**/desk/listBackups', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 400));
    await route.continue();
  });
  await page
    .getByRole('button', { name: /^Earlier versions/ })
    .first()
    .click();
  await windrow.quiet();
  expect(await dialogsOpen(page)).toHaveLength(1);
});
