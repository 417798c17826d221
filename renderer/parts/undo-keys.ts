/** What a key says of the last step: Control or Command with Z takes it back, with Shift too does it again. */
export function undoKey(event: KeyboardEvent): 'undo' | 'redo' | null {
  const wanted = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z';
  if (!wanted) return null;
  return event.shiftKey ? 'redo' : 'undo';
}
