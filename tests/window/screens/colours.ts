import type { Page } from '@playwright/test';

/**
 * The colours in which text is seen now, each with what lies behind it, its opacity, size and weight: all that a judgement
 * of its contrast depends on.
 */
export async function textColours(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const found = new Set<string>();
    const around = (node: Node): Node | null => {
      if (node instanceof Element && node.assignedSlot !== null) return node.assignedSlot;
      return node.parentNode instanceof ShadowRoot ? node.parentNode.host : node.parentNode;
    };
    const keyOf = (element: Element): string => {
      const { color, fontSize, fontWeight } = getComputedStyle(element);
      const behind: string[] = [];
      let opacity = 1;
      for (let node: Node | null = element; node !== null; node = around(node)) {
        if (!(node instanceof Element)) continue;
        const style = getComputedStyle(node);
        opacity *= Number(style.opacity);
        const isClear = style.backgroundColor === 'rgba(0, 0, 0, 0)' && style.backgroundImage === 'none';
        if (!isClear) behind.push(`${style.backgroundColor} ${style.backgroundImage}`);
        if (style.backgroundColor.startsWith('rgb(')) break;
      }
      return [color, behind.join(' over '), opacity, fontSize, fontWeight].join('; ');
    };
    const visit = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot !== null) visit(element.shadowRoot);
        const hasText = [...element.childNodes].some((child) => child instanceof Text && child.data.trim() !== '');
        if (hasText && element.checkVisibility({ visibilityProperty: true })) found.add(keyOf(element));
      }
    };
    visit(document);
    return [...found];
  });
}
