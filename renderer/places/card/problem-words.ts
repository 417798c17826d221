import { cardWords } from '../../words/card.ts';

const words = cardWords.check;

/** Problems of what is in the file alone, which nobody typed: a person is told so in plain words, without the id. */
const INNER_NAMES: Readonly<Record<string, string>> = {
  'duplicate-id': words.sameName,
  'missing-id': words.noName,
};

/** What is wrong with a line of a card, as a person is told. */
export function problemWords({ code, message }: { readonly code: string; readonly message: string }): string {
  return INNER_NAMES[code] ?? message;
}

/** Whether a problem is one of those: a fresh id puts it right. */
export function isInnerName(code: string): boolean {
  return Object.hasOwn(INNER_NAMES, code);
}
