import type { Page } from '@playwright/test';

/** The names of Windrow's elements that are seen now: they, or something in them, take room. */
export async function elementsSeen(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const names = new Set<string>();
    const takesRoom = (node: Element): boolean => {
      const drawn = node.checkVisibility() || getComputedStyle(node).display === 'contents';
      if (!drawn) return false;
      const { width, height } = node.getBoundingClientRect();
      if (width > 0 && height > 0) return true;
      const slotted = node instanceof HTMLSlotElement ? node.assignedElements() : [];
      return [...slotted, ...(node.shadowRoot ?? node).children].some(takesRoom);
    };
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.localName.startsWith('wr-') && takesRoom(element)) names.add(element.localName);
        if (element.shadowRoot !== null) visit(element.shadowRoot);
      }
    };
    visit(document);
    return [...names];
  });
}

/** The dialogs that are open, as "element that asks: heading". */
export async function dialogsOpen(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const open: string[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.localName === 'wr-dialog' && element.matches('[open]')) {
          const asking = root instanceof ShadowRoot ? root.host.localName : '';
          open.push(`${asking}: ${element.shadowRoot?.querySelector('h2')?.textContent?.trim()}`);
        }
        if (element.shadowRoot !== null) visit(element.shadowRoot);
      }
    };
    visit(document);
    return open;
  });
}
