import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const CSS = readFileSync(join(import.meta.dirname, '../../../renderer/tokens/tokens.css'), 'utf8');
const THEMES = ['light', 'dark'] as const;
type Theme = (typeof THEMES)[number];

/** The colour of a token in a theme, from its `light-dark()` pair or its one value. */
function colour(name: string, theme: Theme): string {
  const pair = new RegExp(`--${name}: light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\);`).exec(CSS);
  const single = new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(CSS);
  const found = pair?.[theme === 'light' ? 1 : 2] ?? single?.[1];
  if (found === undefined) throw new Error(`no colour --${name}`);
  return found;
}

/** Relative luminance and contrast, WCAG 2.2, definitions of terms. */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const channel = parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].toSorted((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

function expectContrast(theme: Theme, front: string, back: string, least: number): void {
  const found = contrast(colour(front, theme), colour(back, theme));
  expect(found, `${front} on ${back}, ${theme}: ${found.toFixed(2)}`).toBeGreaterThanOrEqual(least);
}

const SURFACES = ['paper', 'sheet', 'well'];
const WASHES = ['accent-wash', 'good-wash', 'warn-wash', 'bad-wash'];

it('measures contrast as published: #767676 on white is the known 4.54 to 1 (WebAIM)', () => {
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  expect(contrast('#000000', '#ffffff')).toBe(21);
});

// The greys next to the thresholds of WCAG 2.2, 1.4.3, 1.4.6 and 1.4.11, as contrast checkers print them.
it.each([
  ['#777777', 4.48],
  ['#595959', 7.0],
  ['#949494', 3.03],
])('measures contrast as published: %s on white is %d to 1', (grey, known) => {
  expect(contrast(grey, '#ffffff').toFixed(2)).toBe(known.toFixed(2));
});

describe.each(THEMES)('in the %s theme', (theme) => {
  it('CR-W4: body text has 7:1 on every surface and in every message', () => {
    for (const back of [...SURFACES, ...WASHES]) expectContrast(theme, 'ink', back, 7);
  });

  it('CR-W4: all other text has 4.5:1 where it stands', () => {
    for (const back of SURFACES) {
      for (const front of ['ink-soft', 'accent', 'bad', 'good', 'warn']) expectContrast(theme, front, back, 4.5);
    }
    expectContrast(theme, 'on-accent', 'accent', 4.5);
    expectContrast(theme, 'on-accent', 'accent-deep', 4.5);
    expectContrast(theme, 'accent', 'accent-wash', 4.5);
    for (const tone of ['good', 'warn', 'bad']) expectContrast(theme, tone, `${tone}-wash`, 4.5);
  });

  it('CR-W5: edges, the focus ring and chart lines have 3:1 against what is beside them', () => {
    for (const back of SURFACES) {
      for (const front of ['edge', 'focus', 'chart']) expectContrast(theme, front, back, 3);
    }
  });

  it('CR-W5: a tile stands out from every surface, by its edge or by its enamel', () => {
    for (const back of SURFACES) {
      const edge = contrast(colour('enamel-edge', theme), colour(back, theme));
      expect(edge, `tile on ${back}`).toBeGreaterThanOrEqual(3);
    }
  });

  it('CR-W4, CR-W5: what is drawn on enamel can be read: ink 7:1, marks and suit colours 4.5:1', () => {
    expectContrast(theme, 'enamel-ink', 'enamel', 7);
    expectContrast(theme, 'enamel-mark', 'enamel', 4.5);
    for (const suit of ['#27673c', '#ab3b25', '#1c5a91', '#86346f', '#575043']) {
      expect(contrast(suit, colour('enamel', theme)), suit).toBeGreaterThanOrEqual(4.5);
    }
  });
});

it('every colour is a light-dark pair, save those of the enamel', () => {
  const root = CSS.slice(CSS.indexOf(':root {'), CSS.indexOf('}'));
  const singles = [...root.matchAll(/--([a-z-]+): #[0-9a-f]{6};/g)].map(([, name]) => name);
  expect(singles).toEqual(['enamel-ink', 'enamel-mark', 'enamel-hatch']);
});

it('forced colours replace every colour but those of the enamel', () => {
  const pairs = [...CSS.matchAll(/--([a-z-]+): light-dark/g)].map(([, name]) => name);
  const forced = CSS.slice(CSS.indexOf('forced-colors'));
  const missing = pairs.filter((name) => !forced.includes(`--${name}:`));
  expect(missing).toEqual(['enamel']);
});

it('CR-O1, CR-O2: text is 18 px, targets 44 px, main buttons 48 px, tiles 60 px and large 76 px wide, and more where the text is larger', () => {
  expect(CSS).toContain('--text-size: 18px');
  expect(CSS).toContain('--target: max(44px');
  expect(CSS).toContain('--target-main: max(48px');
  expect(CSS).toMatch(/--tile-usual: min\(max\(60px, /);
  expect(CSS).toMatch(/\[data-tiles='large'\] \{\s*--tile-usual: min\(max\(76px, /);
  expect(CSS).toMatch(/--text-small: max\(16px/);
});

it('CR-W8: no motion lasts over 200 ms, and none is left for those who ask for none', () => {
  expect(Number(/--quick: (\d+)ms/.exec(CSS)?.[1])).toBeLessThanOrEqual(200);
  expect(CSS).toMatch(/prefers-reduced-motion: reduce\) \{\s*:root \{\s*--quick: 0ms/);
});
