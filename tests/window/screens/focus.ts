import type { Page } from '@playwright/test';

/** The element that has the focus, inside all shadows. */
export async function focused(page: Page): Promise<string> {
  return await page.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    return at?.localName ?? 'body';
  });
}

/**
 * Gives the focus to everything that Tab comes to, one after the other, and tells where its ring is
 * thinner than 2 px, or where something lies over its middle (WCAG 2.4.7, 2.4.11, 2.4.13).
 */
export async function hiddenFocus(page: Page): Promise<string[]> {
  // A key pressed before tells the browser to show the focus of what is focused by a script.
  await page.keyboard.press('Shift');
  return await page.evaluate(() => {
    const found: string[] = [];
    const deepest = (start: Element | null, next: (root: ShadowRoot) => Element | null): Element | null => {
      let at = start;
      for (;;) {
        const inside = at?.shadowRoot ? next(at.shadowRoot) : null;
        if (inside === null || inside === at) return at;
        at = inside;
      }
    };
    // Out of slots and shadows to what one sees it in.
    const around = (node: Node | null): Node | null => {
      if (node instanceof ShadowRoot) return node.host;
      return node instanceof Element && node.assignedSlot !== null ? node.assignedSlot : (node?.parentNode ?? null);
    };
    const isIn = (inner: Node | null, fits: (outer: Node) => boolean): boolean => {
      for (let at = inner; at !== null; at = around(at)) if (fits(at)) return true;
      return false;
    };
    const holds = (outer: Element, inner: Node | null): boolean => isIn(inner, (node) => node === outer);
    const isOpened = (element: Element): boolean =>
      isIn(element, (node) => node instanceof Element && node.matches(':popover-open, ul[role=listbox]'));
    const ringOf = (element: Element): number => {
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      return outlineStyle === 'none' ? 0 : Number.parseFloat(outlineWidth);
    };
    const stops: HTMLElement[] = [];
    let rings = 0;
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        if (!element.checkVisibility() && getComputedStyle(element).display !== 'contents') continue;
        if (element.tabIndex >= 0 && !element.shadowRoot?.delegatesFocus) stops.push(element);
        if (element.shadowRoot !== null) visit(element.shadowRoot);
      }
    };
    visit(document);
    const before = deepest(document.activeElement, (root) => root.activeElement);
    for (const stop of stops) {
      stop.focus();
      const at = deepest(document.activeElement, (root) => root.activeElement);
      // What is inert behind a dialog, or hands the focus on, is no stop of its own.
      if (at !== stop || !(at instanceof HTMLElement)) continue;
      const host = at.getRootNode();
      const owner = host instanceof ShadowRoot ? host.host : at;
      const words = (at.textContent?.trim() || owner.textContent?.trim() || '').slice(0, 30);
      const name = `${owner.localName} ${at.localName}.${at.className} "${words}"`;
      const labelled = at.closest('label, .bar') ?? at;
      if (at.matches(':focus-visible')) rings += 1;
      if (at.matches(':focus-visible') && ringOf(at) < 2 && ringOf(labelled) < 2) found.push(`no ring: ${name}`);
      const { left, top, width, height } = at.getBoundingClientRect();
      const [x, y] = [left + width / 2, top + Math.min(height, window.innerHeight) / 2];
      const over = deepest(document.elementFromPoint(x, y), (root) => root.elementFromPoint(x, y));
      // An explanation moves with its number, which other stops may have scrolled away.
      if (over === null && isOpened(at)) continue;
      const near = over === null || [holds(at, over), holds(labelled, over), holds(over, at)].includes(true);
      // What a person opened may cover what lies below, as long as Escape closes it.
      if (over !== null && (near || isOpened(over))) continue;
      found.push(`covered: ${name} by ${over?.localName ?? 'nothing, it is out of sight'}`);
    }
    if (before instanceof HTMLElement) before.focus();
    if (rings === 0) found.push('no ring at all was seen');
    return found;
  });
}
