/** What a person may choose about the look of the window. */
export interface Look {
  readonly theme: 'system' | 'light' | 'dark';
  /** Body text in CSS px. */
  readonly textSize: number;
  readonly tiles: 'normal' | 'large';
}

/** The smallest and largest body text, in CSS px. */
export const TEXT_SIZES = { least: 16, most: 32, usual: 18 } as const;

/** Puts a look on a page; through the style object, which the content policy allows. */
export function applyLook(look: Look, root: HTMLElement = document.documentElement): void {
  if (look.theme === 'system') delete root.dataset['theme'];
  else root.dataset['theme'] = look.theme;
  root.dataset['tiles'] = look.tiles;
  root.style.setProperty('--text-size', `${clampTextSize(look.textSize)}px`);
}

/** A text size within the limits, in whole px. */
export function clampTextSize(px: number): number {
  return Math.min(TEXT_SIZES.most, Math.max(TEXT_SIZES.least, Math.round(px)));
}
