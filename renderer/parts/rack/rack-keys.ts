import { codeOf, type Kind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';

/** A key as a browser reports it; a subset of KeyboardEvent. */
export interface KeyPress {
  readonly key: string;
  readonly altKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

/** What a key means on the rack (CR-K2 and its kin); null when it is not the rack's key. */
export type RackKey =
  | { readonly means: 'walk' | 'climb' | 'step' | 'tier'; readonly by: -1 | 1 }
  | { readonly means: 'end'; readonly side: 'first' | 'last' }
  | { readonly means: 'select' | 'send' | 'recall' | 'cancel' | 'gap' }
  | { readonly means: 'jump'; readonly to: string };

const PLAIN: Readonly<Record<string, RackKey>> = {
  ArrowLeft: { means: 'walk', by: -1 },
  ArrowRight: { means: 'walk', by: 1 },
  ArrowUp: { means: 'climb', by: -1 },
  ArrowDown: { means: 'climb', by: 1 },
  Home: { means: 'end', side: 'first' },
  End: { means: 'end', side: 'last' },
  ' ': { means: 'select' },
  Enter: { means: 'send' },
  Delete: { means: 'recall' },
  Backspace: { means: 'recall' },
  Escape: { means: 'cancel' },
  ',': { means: 'gap' },
};

const WITH_ALT: Readonly<Record<string, RackKey>> = {
  ArrowLeft: { means: 'step', by: -1 },
  ArrowRight: { means: 'step', by: 1 },
  ArrowUp: { means: 'tier', by: -1 },
  ArrowDown: { means: 'tier', by: 1 },
};

/** The shortcuts as `aria-keyshortcuts` wants them. */
export const RACK_SHORTCUTS = 'Alt+ArrowLeft Alt+ArrowRight Alt+ArrowUp Alt+ArrowDown Enter Delete Escape ,';

export function rackKey({ key, altKey, ctrlKey, metaKey }: KeyPress): RackKey | null {
  if (ctrlKey || metaKey) return null;
  if (altKey) return WITH_ALT[key] ?? null;
  const plain = PLAIN[key];
  if (plain) return plain;
  return /^[a-z0-9]$/i.test(key) ? { means: 'jump', to: key.toLowerCase() } : null;
}

/** Whether a letter or digit calls a tile: its code or its spoken name starts so, or it is a letter of its suit. */
export function answersTo(kind: Kind, symbol: string): boolean {
  const code = codeOf(kind).toLowerCase();
  return code.startsWith(symbol) || code.slice(1) === symbol || nameOf(kind).startsWith(symbol);
}
