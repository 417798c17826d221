/** What a person may choose about how the window looks. */
export interface Appearance {
  readonly theme: 'system' | 'light' | 'dark';
  /** Body text in CSS px. */
  readonly textSize: number;
  readonly tiles: 'normal' | 'large';
}

/** The smallest and largest body text, in CSS px. */
export const TEXT_SIZES = { least: 16, most: 32, usual: 18 } as const;

/** Applies an appearance to a page; through the style object, which the content policy allows. */
export function applyAppearance(appearance: Appearance, root: HTMLElement = document.documentElement): void {
  if (appearance.theme === 'system') delete root.dataset['theme'];
  else root.dataset['theme'] = appearance.theme;
  root.dataset['tiles'] = appearance.tiles;
  root.style.setProperty('--text-size', `${clampTextSize(appearance.textSize)}px`);
}

/** A text size within the limits, in whole px. */
export function clampTextSize(px: number): number {
  return Math.min(TEXT_SIZES.most, Math.max(TEXT_SIZES.least, Math.round(px)));
}
