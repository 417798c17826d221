import type { Page } from '@playwright/test';

/** What is computed, as the window says it: a chance, a cost, a distance. */
const COMPUTED =
  /\d+ %|about \d+ in \d+|\d games? in 100|(?<!take )\d (?:tiles )?away\b|games? in a hundred|\d ± \d|give or take \d|reach \d/;

/**
 * Computed numbers that nothing on the screen explains: neither are they a button that opens an explanation, nor
 * has the section that they stand in one. Whole points are those of cards and payments; the help explains itself.
 */
export async function unexplained(page: Page): Promise<string[]> {
  return await page.evaluate((source) => {
    const computed = new RegExp(source);
    const parentOf = (node: Node): Node | null =>
      (node instanceof Element ? node.assignedSlot : null) ??
      node.parentNode ??
      (node instanceof ShadowRoot ? node.host : null);
    const explains = (node: Node): boolean => {
      if (!(node instanceof Element) && !(node instanceof ShadowRoot)) return false;
      if (node instanceof Element && node.localName === 'wr-explain') return node.checkVisibility();
      const slotted = node instanceof HTMLSlotElement ? node.assignedElements() : [];
      const inside = node instanceof Element && node.shadowRoot !== null ? [node.shadowRoot] : [];
      return [...slotted, ...inside, ...node.children].some(explains);
    };
    const isSection = (node: Node): boolean =>
      node instanceof Element && node.matches('section, dialog, main, wr-warm-up-run, wr-help, wr-tour');
    const isFree = (node: Node): boolean =>
      node instanceof Element &&
      node.matches('wr-explain, wr-help, wr-tour, wr-payment-rules, [role=alert], .unseen, label, option, textarea');
    const isExplained = (text: Node): boolean => {
      const around: Node[] = [];
      for (let node: Node | null = text; node !== null; node = parentOf(node)) around.push(node);
      const section = around.find(isSection);
      return around.some(isFree) || (section !== undefined && explains(section));
    };
    const found: string[] = [];
    const visit = (node: Node, host: string): void => {
      if (node instanceof Element && !node.checkVisibility() && getComputedStyle(node).display !== 'contents') return;
      if (node instanceof Text && computed.test(node.data) && !isExplained(node)) {
        found.push(`unexplained: ${host} "${node.data.trim().slice(0, 60)}"`);
      }
      if (node instanceof Element && node.shadowRoot !== null) visit(node.shadowRoot, node.localName);
      for (const child of node.childNodes) visit(child, host);
    };
    visit(document.body, '');
    return found;
  }, COMPUTED.source);
}
