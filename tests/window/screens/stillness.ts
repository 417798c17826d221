import type { Page } from '@playwright/test';

/** Something that did not stay in its place though nobody scrolled. */
interface Moved {
  readonly what: string;
  /** From and to: left and top in CSS px. */
  readonly path: string;
  /** How far, in CSS px. */
  readonly by: number;
  /** How many frames the page has drawn since the last key, press or change of address. */
  readonly frames: number;
  /** A button of the look `main`: the next step of a screen. */
  readonly isMain: boolean;
}

/** Everything in which a person types, presses or chooses. */
const CONTROLS =
  'wr-button, wr-entry, wr-rack, wr-tray, wr-choice, wr-field, wr-slots, wr-tabs, summary, a[href]:not(.skip)';
/** So many frames must something have stood still to have a place at all. */
const SETTLED = 10;

/** What moved since it was asked last. */
export interface Stillness {
  readonly controls: readonly Moved[];
  /** The sum of the layout shifts that the browser saw without an input shortly before (Layout Instability, W3C). */
  readonly shifts: number;
}

/**
 * Watches where the controls are, frame by frame, from now on, and in every document that is loaded later. Scrolling is
 * no move, nor is to come or to go. Frames are counted and not milliseconds, so that a busy computer sees the same.
 */
export async function watchPlaces(page: Page): Promise<void> {
  const watched = { controls: CONTROLS, settled: SETTLED };
  await page.addInitScript(watch, watched);
  await page.evaluate(watch, watched);
}

/** Runs in the page: keeps what moves in `window.stillness`. */
function watch({ controls, settled }: { readonly controls: string; readonly settled: number }): void {
  const seen: { controls: Moved[]; shifts: number } = { controls: [], shifts: 0 };
  Reflect.set(window, 'stillness', seen);
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries())
      if (Reflect.get(entry, 'hadRecentInput') === false) seen.shifts += Number(Reflect.get(entry, 'value'));
  }).observe({ type: 'layout-shift' });
  let frames = 0;
  const restart = (): void => void (frames = 0);
  window.addEventListener('resize', () => before.clear());
  for (const type of ['pointerdown', 'pointerup', 'keydown', 'input', 'focusout', 'toggle', 'hashchange'])
    window.addEventListener(type, restart, { capture: true });

  const above = (node: Node): Node | null => {
    if (node instanceof Element && node.assignedSlot !== null) return node.assignedSlot;
    return node.parentNode instanceof ShadowRoot ? node.parentNode.host : node.parentNode;
  };
  const stuck = new WeakMap<Element, boolean>();
  const sticks = (element: Element): boolean => {
    const known = stuck.get(element) ?? getComputedStyle(element).position === 'sticky';
    stuck.set(element, known);
    return known;
  };
  /** Where it is on its page, however that is scrolled; undefined where it is not seen. */
  const placeOf = (element: Element): { x: number; y: number } | undefined => {
    const { x, y, width, height } = element.getBoundingClientRect();
    if (width === 0 || height === 0 || !element.checkVisibility({ visibilityProperty: true })) return undefined;
    const place = { x, y };
    for (let node: Node | null = element; node !== null; node = above(node)) {
      if (!(node instanceof Element)) continue;
      // What sticks stays where it is seen, however its page is scrolled.
      if (sticks(node)) break;
      place.x += node.scrollLeft;
      place.y += node.scrollTop;
    }
    return place;
  };
  const wordsOf = (element: Element): string => {
    const words = element.textContent?.trim().replaceAll(/\s+/g, ' ') || Reflect.get(element, 'label') || '';
    return `${element.localName} "${String(words).slice(0, 40)}"`;
  };
  const visit = (root: Document | ShadowRoot, found: Element[]): Element[] => {
    for (const element of root.querySelectorAll('*')) {
      if (element.matches(controls)) found.push(element);
      if (element.shadowRoot !== null) visit(element.shadowRoot, found);
    }
    return found;
  };

  let before = new Map<Element, { x: number; y: number; since: number }>();
  let drawn = 0;
  const look = (): void => {
    requestAnimationFrame(look);
    if (Reflect.get(window, 'stillnessRests') === true) return before.clear();
    const now: typeof before = new Map();
    drawn += 1;
    frames += 1;
    for (const element of visit(document, [])) {
      const place = placeOf(element);
      if (place === undefined) continue;
      const was = before.get(element);
      const stays = was !== undefined && Math.abs(was.x - place.x) < 1 && Math.abs(was.y - place.y) < 1;
      now.set(element, { ...place, since: stays ? was.since : drawn });
      if (stays || was === undefined || drawn - was.since < settled) continue;
      const by = Math.max(Math.abs(was.x - place.x), Math.abs(was.y - place.y));
      const path = [was, place].map(({ x, y }) => `${Math.round(x)},${Math.round(y)}`).join(' > ');
      seen.controls.push({
        what: wordsOf(element),
        path,
        by,
        frames,
        isMain: element.getAttribute('look') === 'main',
      });
    }
    before = now;
  };
  requestAnimationFrame(look);
}

/**
 * Waits until everything has stood long enough to have a place, as it has for a person who looks before she presses:
 * on a fast computer the next key would come before, and its moves would not be seen.
 */
export async function settle(page: Page, frames = SETTLED + 2): Promise<void> {
  await page.evaluate(async (count) => {
    for (let frame = 0; frame < count; frame += 1) await new Promise((drawn) => requestAnimationFrame(drawn));
  }, frames);
}

/** Stops watching, or begins anew, where a test itself changes what is seen. */
export async function watchAgain(page: Page, watching: boolean): Promise<void> {
  await page.evaluate((rests) => void Reflect.set(window, 'stillnessRests', rests), !watching);
  if (!watching) return;
  await settle(page);
  await stillness(page);
}

/** What has moved since this was asked last. */
export async function stillness(page: Page): Promise<Stillness> {
  return await page.evaluate(() => {
    const seen: { controls: Moved[]; shifts: number } = Reflect.get(window, 'stillness');
    const told = { controls: seen.controls.splice(0), shifts: seen.shifts };
    seen.shifts = 0;
    return told;
  });
}
