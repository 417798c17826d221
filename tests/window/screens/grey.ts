import type { Page } from '@playwright/test';
import { warmUpWords } from '../../../renderer/words/warmup.ts';

/** A thing to be told from its like by sight: a tile, or the swatch of a series in the key of a chart. */
interface Seen {
  /** Those of one group are compared with each other. */
  readonly group: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Two things are told apart where so large a share of their pixels ... (the nearest two tiles: 9 %) */
const LEAST_SHARE = 0.05;
/** ... differ in lightness by so much (0: none, 1: black and white). */
const LEAST_STEP = 0.2;

/** The pairs on the screen that a person who sees no colours could not tell apart, in words. */
export async function alikeInGrey(page: Page): Promise<string[]> {
  const seen = await things(page);
  if (seen.length < 2) return [];
  const picture = (await page.screenshot()).toString('base64');
  const sheet = await page.context().newPage();
  const shares = await sheet.evaluate(compare, { picture, seen, step: LEAST_STEP });
  await sheet.close();
  return shares
    .filter(({ share }) => share < LEAST_SHARE)
    .map(({ one, other, share }) => `alike in grey: ${one} and ${other}, ${(100 * share).toFixed(1)} % apart`);
}

/** What a choice of a game cost, in words: a size, or that it was right. */
const SIZES = ['nothing was better', 'as good as the best', 'nothing else to do', 'games in 100', 'game in 100'];
const VERDICTS = [warmUpWords.verdict('best', 0), warmUpWords.verdict('equal', 0), ...SIZES];

/** The verdicts on the screen that only the colour of their edge tells. */
export async function wordlessVerdicts(page: Page): Promise<string[]> {
  const told = await page
    .locator(['best', 'equal', 'slip', 'costly'].map((each) => `.verdict.${each}`).join())
    .allInnerTexts();
  const words = VERDICTS.map((each) => each.toLowerCase());
  // A verdict in a closed fold is not on the screen.
  return told
    .filter((text) => text !== '')
    .filter((text) => !words.some((each) => text.toLowerCase().includes(each)))
    .map((text) => `a verdict without its words: "${text.slice(0, 60)}"`);
}

/** Tiles of the rack and the tray, one of each kind, and the swatches of each chart, where they are wholly in view. */
async function things(page: Page): Promise<Seen[]> {
  return await page.evaluate(() => {
    const found = new Map<string, Seen>();
    const holds = (outer: Element, inner: Element | null): boolean => {
      for (let node: Node | null = inner; node !== null;) {
        if (node === outer) return true;
        node = node.parentNode instanceof ShadowRoot ? node.parentNode.host : node.parentNode;
      }
      return false;
    };
    const deepest = (x: number, y: number): Element | null => {
      let at = document.elementFromPoint(x, y);
      while (at?.shadowRoot) {
        const inside = at.shadowRoot.elementFromPoint(x, y);
        if (inside === null || inside === at) break;
        at = inside;
      }
      return at;
    };
    const isWhole = (element: Element, { x, y, width, height }: DOMRect): boolean =>
      width > 8 &&
      height > 8 &&
      [
        [x + 3, y + 3],
        [x + width - 3, y + height - 3],
      ].every(([left = 0, top = 0]) => holds(element, deepest(left, top)));
    const add = (element: Element, group: string, name: string): void => {
      const box = element.getBoundingClientRect();
      if (found.has(`${group} ${name}`) || !isWhole(element, box)) return;
      const { x, y, height } = box;
      // The drawing of a key may be wider than its swatch.
      const width = Math.min(box.width, 2 * height);
      found.set(`${group} ${name}`, { group, name, x, y, width, height });
    };
    let charts = 0;
    const visit = (root: Document | ShadowRoot): void => {
      const host = root instanceof ShadowRoot ? root.host.localName : '';
      for (const element of root.querySelectorAll('*')) {
        if (element.localName === 'wr-tile' && (host === 'wr-rack' || host === 'wr-tray'))
          add(element, `tiles of ${host}`, String(Reflect.get(element, 'kind')));
        if (element.localName === 'ul') {
          charts += 1;
          for (const key of element.querySelectorAll(':scope > li'))
            for (const swatch of key.querySelectorAll(':scope > svg'))
              add(swatch, `key ${charts} of ${host}`, key.textContent?.trim() ?? '');
        }
        if (element.shadowRoot !== null) visit(element.shadowRoot);
      }
    };
    visit(document);
    return [...found.values()];
  });
}

/** Runs in a page of its own: the share of pixels that differ, for each pair of a group. */
async function compare({
  picture,
  seen,
  step,
}: {
  picture: string;
  seen: readonly Seen[];
  step: number;
}): Promise<{ one: string; other: string; share: number }[]> {
  const bytes = Uint8Array.from(atob(picture), (letter) => letter.charCodeAt(0));
  const image = await createImageBitmap(new Blob([bytes]));
  const canvas = document.createElement('canvas');
  canvas.width = 40;
  canvas.height = 50;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('no canvas');
  const greys = seen.map(({ x, y, width, height }) => {
    context.drawImage(image, x, y, width, height, 0, 0, canvas.width, canvas.height);
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    const at = (pixel: number, part: number): number => (data[4 * pixel + part] ?? 0) / 255;
    // Lightness as the filter "grayscale" of CSS has it (Filter Effects, W3C).
    return Float32Array.from(
      { length: canvas.width * canvas.height },
      (_, pixel) => 0.2126 * at(pixel, 0) + 0.7152 * at(pixel, 1) + 0.0722 * at(pixel, 2),
    );
  });
  return seen.flatMap((one, place) =>
    seen.slice(place + 1).flatMap((other, further) => {
      const [left, right] = [greys[place], greys[place + 1 + further]];
      if (one.group !== other.group || left === undefined || right === undefined) return [];
      const apart = left.reduce((sum, grey, pixel) => sum + Number(Math.abs(grey - (right[pixel] ?? 0)) >= step), 0);
      return [{ one: `${one.group}: ${one.name}`, other: other.name, share: apart / left.length }];
    }),
  );
}
