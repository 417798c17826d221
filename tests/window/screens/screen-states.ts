import type { Page } from '@playwright/test';

/**
 * Things that are chosen, pressed or current but differ from their neighbours by hue alone. Colours
 * count by their lightness: a difference of 3:1 is seen in grey, less is not. With forced colours
 * on, the same finds states that the computer's own colours have taken away.
 */
export async function statesByHueAlone(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const ATTRIBUTES = ['aria-pressed', 'aria-selected', 'aria-current', 'aria-checked'];
    const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
    if (canvas === null) throw new Error('no canvas');
    const lightness = (colour: string): number => {
      canvas.clearRect(0, 0, 1, 1);
      canvas.fillStyle = getComputedStyle(document.body).backgroundColor;
      canvas.fillRect(0, 0, 1, 1);
      canvas.fillStyle = colour;
      canvas.fillRect(0, 0, 1, 1);
      const [red = 0, green = 0, blue = 0] = [...canvas.getImageData(0, 0, 1, 1).data].map((part) => {
        const share = part / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const apart = (one: number, other: number): boolean =>
      (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05) >= 3;
    const shapeOf = (element: Element): string => {
      const style = getComputedStyle(element);
      const marks = ['::before', '::after'].map((pseudo) => {
        const { content, width, height, backgroundImage } = getComputedStyle(element, pseudo);
        return content === 'none' ? '' : `${content} ${width} ${height} ${backgroundImage}`;
      });
      const text = [...element.childNodes].map((node) => (node instanceof Text ? '' : node.nodeName)).join();
      const outline = element.matches(':focus') ? '' : `${style.outlineStyle} ${style.outlineWidth}`;
      return [
        style.borderWidth,
        style.borderStyle,
        style.boxShadow.replaceAll(/rgba?\([^)]*\)|color\([^)]*\)/g, ''),
        outline,
      ]
        .concat([style.textDecorationLine, style.fontWeight, style.backgroundImage, style.translate, style.transform])
        .concat(marks, text)
        .join('|');
    };
    const isOn = (element: Element, attribute: string): boolean =>
      !['false', '', null].includes(element.getAttribute(attribute));
    const found: string[] = [];
    const compare = (root: Document | ShadowRoot, attribute: string): void => {
      const all = [...root.querySelectorAll(`[${attribute}]`)].filter((element) => element.checkVisibility());
      // A link that is not current does not bear the attribute at all.
      const peers = all
        .flatMap((one) => [...root.querySelectorAll(one.localName)])
        .filter((one) => one.checkVisibility());
      for (const on of all.filter((element) => isOn(element, attribute))) {
        const off = peers.find((peer) => !isOn(peer, attribute) && peer.className === on.className);
        if (off === undefined || shapeOf(on) !== shapeOf(off)) continue;
        const [one, other] = [on, off].map((element) => getComputedStyle(element));
        const differs = (['backgroundColor', 'borderBottomColor', 'color'] as const).some((name) =>
          apart(lightness(one?.[name] ?? ''), lightness(other?.[name] ?? '')),
        );
        if (!differs)
          found.push(`${on.localName}.${on.className} [${attribute}] "${on.textContent?.trim().slice(0, 30)}"`);
      }
    };
    const visit = (root: Document | ShadowRoot): void => {
      for (const attribute of ATTRIBUTES) compare(root, attribute);
      for (const element of root.querySelectorAll('*')) if (element.shadowRoot !== null) visit(element.shadowRoot);
    };
    visit(document);
    return found;
  });
}
