import { keyWords } from '../words/help.ts';

/** Keys as `KeyboardEvent.key` names them, joined by `+` where they are held together; `a-z` is any letter, `1-9` any digit. */
export type KeyPhrase = string;

type Names<Place extends keyof typeof keyWords> = Exclude<keyof (typeof keyWords)[Place], 'title'>;

/** Each place's commands and the keys that give them; one of several keys is enough. */
type KeyTable = { readonly [Place in keyof typeof keyWords]: Readonly<Record<Names<Place>, readonly KeyPhrase[]>> };

const BESIDE = ['ArrowLeft', 'ArrowRight'] as const;
const ENDS = ['Home', 'End'] as const;

/**
 * The one table of keys: the help lists it, and tests press what it says. Words stand in
 * `words/help.ts` under the same names.
 */
export const KEYS: KeyTable = {
  everywhere: {
    help: ['F1'],
    on: ['Tab'],
    back: ['Shift+Tab'],
    press: ['Enter', ' '],
    close: ['Escape'],
    undo: ['Control+z'],
    redo: ['Control+Shift+z', 'Control+y'],
  },
  rack: {
    walk: BESIDE,
    climb: ['ArrowUp', 'ArrowDown'],
    ends: ENDS,
    jump: ['a-z', '1-9'],
    select: [' '],
    step: ['Alt+ArrowLeft', 'Alt+ArrowRight'],
    tier: ['Alt+ArrowUp', 'Alt+ArrowDown'],
    gap: [','],
    send: ['Enter'],
    recall: ['Delete'],
    cancel: ['Escape'],
  },
  slots: { walk: BESIDE, takeBack: ['Delete', 'Enter'], takeAll: ['Escape'] },
  tray: { walk: BESIDE, climb: ['ArrowUp', 'ArrowDown'], ends: ENDS, add: ['Enter', ' '] },
  tabs: { walk: BESIDE, ends: ENDS },
  picker: { walk: BESIDE, climb: ['ArrowUp', 'ArrowDown'], ends: ENDS, choose: ['Enter', ' '] },
  groups: { walk: BESIDE, move: ['Alt+ArrowLeft', 'Alt+ArrowRight'], remove: ['Delete'] },
  grid: {
    line: ['Enter'],
    cell: ['Tab'],
    back: ['Shift+Tab'],
    walk: ['ArrowUp', 'ArrowDown'],
    move: ['Alt+ArrowUp', 'Alt+ArrowDown'],
    moves: ['0', '1', '2', '3'],
    side: ['c', 'x'],
    offers: ['Control+ '],
    leave: ['Escape'],
  },
  whole: { walk: ['ArrowUp', 'ArrowDown'], ends: ENDS, show: ['Enter'], empty: ['Escape'] },
  projector: { on: ['ArrowRight', 'PageDown'], back: ['ArrowLeft', 'PageUp'] },
};

/** A line of the list as it is shown. */
export interface KeyLine {
  readonly does: string;
  readonly keys: readonly KeyPhrase[];
}

/** The table with its words, place by place, in order. */
export function keyList(): readonly { readonly title: string; readonly lines: readonly KeyLine[] }[] {
  return Object.entries(KEYS).map(([place, commands]) => {
    const { title = '', ...words }: Readonly<Record<string, string>> = wordsOf(place);
    const lines = Object.entries<readonly KeyPhrase[]>(commands);
    return { title, lines: lines.map(([name, keys]) => ({ does: words[name] ?? '', keys })) };
  });
}

function wordsOf(place: string): Readonly<Record<string, string>> {
  const words: Readonly<Record<string, Readonly<Record<string, string>>>> = keyWords;
  return words[place] ?? {};
}
