import type { Page } from '@playwright/test';

/** What can be measured of one element that is seen; those inside shadows are measured too. */
export interface Facts {
  /** Tag, class and the beginning of its words, for a person to find it. */
  readonly name: string;
  readonly tag: string;
  /** Can be pressed, typed into or chosen. */
  readonly isTarget: boolean;
  /** A tile that can be moved. */
  readonly isTile: boolean;
  /** A picture of a tile is its label; the tile bears its letter. */
  readonly showsTile: boolean;
  /** From the upper left corner of the page. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Stands in a frame that scrolls sideways, as a wide table may. */
  readonly isFramed: boolean;
  /** Holds more than it shows, and cuts that off or lets one scroll sideways to it. */
  readonly cutsSideways: boolean;
  /** Cuts off what is below. */
  readonly cutsBelow: boolean;
  /** In px, of elements with text of their own; else null. */
  readonly textSize: number | null;
  /** The words that are seen on it, those slotted in too. */
  readonly words: string;
  /** The longest transition or animation, in ms. */
  readonly motion: number;
  /** What only a resting mouse shows. */
  readonly title: string;
}

/** The facts of all that is seen, and of window and page. */
export interface Measured {
  readonly windowWidth: number;
  readonly windowHeight: number;
  /** Of the page, in px. */
  readonly textSize: number;
  /** How far the page can be scrolled on below the last thing on it. */
  readonly emptyBelow: number;
  /** How high the document is around the page; no higher than its window, or what lies below can come into view by chance. */
  readonly documentHeight: number;
  /** The boxes that hold a table and are no wider than a hair. */
  readonly flatBoxes: readonly string[];
  readonly facts: readonly Facts[];
}

/** Measures everything that is seen now. A wide table may go on sideways in a frame of class `scroll`. */
export async function measure(page: Page): Promise<Measured> {
  return await page.evaluate(() => {
    const targets =
      'button, a[href], select, summary, textarea, input:not([type=radio], [type=file]), [role=option], [role=gridcell], label:has(input[type=radio])';
    const scroller = document.querySelector('wr-shell') ?? document.scrollingElement ?? document.documentElement;
    // What has no box of its own is drawn if what is in it is.
    const isDrawn = (element: Element): boolean =>
      element.checkVisibility() || getComputedStyle(element).display === 'contents';
    const wordsOf = (node: Node): string => {
      if (node instanceof Text) return node.data;
      if (!(node instanceof Element) || !isDrawn(node) || node.matches('.unseen')) return '';
      const slotted = node instanceof HTMLSlotElement ? node.assignedNodes() : [];
      return [...(slotted.length > 0 ? slotted : (node.shadowRoot ?? node).childNodes)].map(wordsOf).join(' ');
    };
    const hasTextOf = (element: Element): boolean =>
      [...element.childNodes].some((node) => node instanceof Text && /\S/.test(node.data));
    const longest = (times: string): number =>
      Math.max(...times.split(',').map((time) => Number.parseFloat(time) * (time.trim().endsWith('ms') ? 1 : 1000)));
    const factsOf = (element: Element, host: string, isFramed: boolean): Facts => {
      const { left, top, width, height } = element.getBoundingClientRect();
      const style = getComputedStyle(element);
      const words = wordsOf(element).replaceAll(/\s+/g, ' ').trim();
      const more = element.scrollWidth > element.clientWidth + 1 && style.display !== 'inline';
      return {
        name: `${host} ${element.localName}.${element.className} "${words.slice(0, 30)}"`,
        tag: element.localName,
        isTarget: element.matches(targets),
        isTile: element.matches('[role=option]') && /^wr-(?:rack|slots)$/.test(host),
        showsTile: element.querySelector('wr-tile') !== null,
        x: left + scroller.scrollLeft,
        y: top + scroller.scrollTop,
        width,
        height,
        isFramed,
        cutsSideways: !isFramed && more && style.overflowX !== 'visible' && !element.matches('input, textarea, select'),
        cutsBelow: element.scrollHeight > element.clientHeight + 2 && /hidden|clip/.test(style.overflowY),
        textSize: hasTextOf(element) ? Number.parseFloat(style.fontSize) : null,
        words,
        motion: Math.max(longest(style.transitionDuration), longest(style.animationDuration)),
        title: element.getAttribute('title') ?? '',
      };
    };
    const isSeen = (element: Element): boolean => {
      if (element instanceof SVGElement || element.closest('.unseen, .wr-unseen, .skip') !== null) return false;
      const { width, height } = element.getBoundingClientRect();
      // What is only spoken takes one px.
      return width > 1 && height > 1 && element.checkVisibility();
    };
    const facts: Facts[] = [];
    const flatBoxes: string[] = [];
    const holdsFlatTable = (element: Element): boolean =>
      element.querySelector(':scope > table') !== null &&
      element.checkVisibility() &&
      element.getBoundingClientRect().width <= 1 &&
      element.closest('.unseen, .wr-unseen') === null;
    const visit = (root: Document | ShadowRoot, inFrame: boolean): void => {
      const host = root instanceof ShadowRoot ? root.host.localName : '';
      for (const element of root.querySelectorAll('*')) {
        const isFramed = inFrame || element.closest('.scroll') !== null;
        if (isSeen(element)) facts.push(factsOf(element, host, isFramed));
        if (holdsFlatTable(element)) flatBoxes.push(`${host} ${element.localName}.${element.className}`);
        if (element.shadowRoot !== null && isDrawn(element)) visit(element.shadowRoot, isFramed);
      }
    };
    /** The lower edge of the lowest thing, from the upper edge of the window. */
    const lowestIn = (root: Document | ShadowRoot): number =>
      [...root.querySelectorAll('*')].reduce((lowest, element) => {
        const isThing = element.matches('wr-hand') || element.matches(targets) || hasTextOf(element);
        const own = isThing && isSeen(element) ? element.getBoundingClientRect().bottom : -Infinity;
        const inside = element.shadowRoot !== null && isDrawn(element) ? lowestIn(element.shadowRoot) : -Infinity;
        return Math.max(lowest, own, inside);
      }, -Infinity);
    visit(document, false);
    // What sticks to an edge of the window comes to its own place at the end only.
    const { scrollTop } = scroller;
    scroller.scrollTop = scroller.scrollHeight;
    const emptyBelow = scroller.scrollHeight - Math.max(scroller.clientHeight, scroller.scrollTop + lowestIn(document));
    scroller.scrollTop = scrollTop;
    const { innerWidth: windowWidth, innerHeight: windowHeight } = window;
    const textSize = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    const { scrollHeight: documentHeight } = document.documentElement;
    return { windowWidth, windowHeight, textSize, documentHeight, emptyBelow, flatBoxes, facts };
  });
}
