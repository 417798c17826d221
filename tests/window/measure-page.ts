import type { Page } from '@playwright/test';

/** What is wider than the window, as its tags; empty when nothing is. */
export async function tooWide(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const wide: string[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        const { right, width } = element.getBoundingClientRect();
        const scrolls =
          element.scrollWidth > element.clientWidth + 1 && /auto|scroll/.test(getComputedStyle(element).overflowX);
        const unseen = getComputedStyle(element).clipPath !== 'none' || !element.checkVisibility();
        if (!unseen && width > 0 && (right > window.innerWidth + 1 || scrolls))
          wide.push(`${element.localName}.${element.className}`);
        if (element.shadowRoot) visit(element.shadowRoot);
      }
    };
    visit(document);
    return wide;
  });
}

/** Buttons, links, fields and tiles that are smaller than they should be, with their sizes. */
export async function tooSmall(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const small: string[] = [];
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) visit(element.shadowRoot);
        if (!element.matches('button, a[href], input:not([type=radio]), summary, [role=option]')) continue;
        if (element.matches('.skip') || getComputedStyle(element).clipPath !== 'none') continue;
        const { width, height } = element.getBoundingClientRect();
        const [least, tall] = element.matches('[role=option]') ? [48, 64] : [44, 44];
        if (width > 0 && (width < least - 0.5 || height < tall - 0.5)) {
          small.push(
            `${element.localName} "${element.textContent?.trim().slice(0, 30)}" ${Math.round(width)}x${Math.round(height)}`,
          );
        }
      }
    };
    visit(document);
    return small;
  });
}
