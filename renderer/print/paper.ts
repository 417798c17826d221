import type { Paper } from '../../core/warmup/sheet.ts';
import type { Preferences } from '../../main/desk/desk.ts';

/** The paper of new sheets: the one chosen, or what is usual where the window's language is spoken. */
export function usualPaper(chosen: Preferences['paper']): Paper {
  if (chosen !== 'region') return chosen;
  return /-(US|CA)$/.test(navigator.language) ? 'letter' : 'a4';
}

/** The paper that a choice names. */
export function paperOf(value: string): Paper {
  return value === 'letter' ? 'letter' : 'a4';
}
