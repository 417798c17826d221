/** Keeps keys from the Table's own: in a field of words, undo means the words. */
export function keepKeys(event: KeyboardEvent): void {
  event.stopPropagation();
}
