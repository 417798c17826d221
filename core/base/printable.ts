/** A text without what would change a terminal or the order of its letters: only line breaks stay. */
export function printable(text: string): string {
  return text.replaceAll(/(?!\n)[\p{Cc}\p{Bidi_Control}]/gu, '');
}
