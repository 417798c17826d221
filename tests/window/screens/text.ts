import type { Page } from '@playwright/test';

/** Sets the text size as the window itself does (`applyAppearance`), also where a dialog keeps one from pressing A+. */
export async function setTextSize(page: Page, px: number): Promise<void> {
  await page.evaluate((size) => document.documentElement.style.setProperty('--text-size', `${size}px`), px);
}

/** Spaces out lines, paragraphs, letters and words as WCAG 1.4.12 has it; what it gives back takes that away. */
export async function spaceOutText(page: Page): Promise<() => Promise<void>> {
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }',
    );
    const visit = (root: Document | ShadowRoot): void => {
      root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet];
      for (const element of root.querySelectorAll('*')) if (element.shadowRoot !== null) visit(element.shadowRoot);
    };
    visit(document);
    Reflect.set(window, 'spacedOut', sheet);
  });
  return async () =>
    await page.evaluate(() => {
      const sheet: unknown = Reflect.get(window, 'spacedOut');
      const visit = (root: Document | ShadowRoot): void => {
        root.adoptedStyleSheets = root.adoptedStyleSheets.filter((each) => each !== sheet);
        for (const element of root.querySelectorAll('*')) if (element.shadowRoot !== null) visit(element.shadowRoot);
      };
      visit(document);
    });
}
