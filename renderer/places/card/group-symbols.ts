import { type GroupDraft, type GroupSymbol, NUMBER_SYMBOLS, withSymbol } from '../../../core/card/draft.ts';
import { FLOWER, type Kind, kindOf } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { cardWords } from '../../words/card.ts';

const words = cardWords.group;

/** Something that may stand in a group, as a button: a drawn tile, or words. */
export interface SymbolButton {
  readonly symbol: GroupSymbol;
  /** For `D`: the dragon of a suit rather than any one dragon. */
  readonly ofSuit: boolean;
  readonly label: string;
  readonly kind: Kind | null;
  /** Shown when there is no tile to draw. */
  readonly text: string;
}

/** Rows of buttons: flower and numbers, winds, dragons. */
export const SYMBOL_ROWS: readonly (readonly SymbolButton[])[] = [
  NUMBER_SYMBOLS.map((symbol) => ({ ...plain(symbol), label: words.number(symbol), text: symbol })),
  [
    { ...plain('F'), label: words.flower, kind: FLOWER },
    ...(['N', 'E', 'W', 'S'] as const).map(tile),
    ...(['G', 'R', '0'] as const).map(tile),
  ],
  [
    { ...plain('D'), label: words.openDragon, text: words.openDragon },
    { ...plain('D'), ofSuit: true, label: words.suitDragon, text: words.suitDragon },
    { ...plain('w'), label: words.anyWind, text: words.anyWind },
    { ...plain('x'), label: words.otherWind, text: words.otherWind },
    { ...plain('NEWS'), label: words.news, text: words.news },
  ],
];

function plain(symbol: GroupSymbol): SymbolButton {
  return { symbol, ofSuit: false, label: '', kind: null, text: '' };
}

function tile(symbol: 'N' | 'E' | 'W' | 'S' | 'G' | 'R' | '0'): SymbolButton {
  const kind = kindOf(symbol);
  return { ...plain(symbol), kind, label: nameOf(kind) };
}

/** A group with what a button stands for in it; `suit` is used where the group had none. */
export function withButton(draft: GroupDraft, { symbol, ofSuit }: SymbolButton, suit: GroupDraft['suit']): GroupDraft {
  const next = withSymbol(draft, symbol);
  if (symbol !== 'D') return next.suit === 'none' || draft.suit !== 'none' ? next : { ...next, suit };
  if (!ofSuit) return { ...next, suit: 'none' };
  return { ...next, suit: draft.suit === 'none' ? suit : draft.suit };
}

/** Whether a button shows what stands in a group. */
export function isShown(draft: GroupDraft, { symbol, ofSuit }: SymbolButton): boolean {
  return draft.symbol === symbol && (symbol !== 'D' || ofSuit === (draft.suit !== 'none'));
}
