/** The name under which a tab keeps its key; each tab has a store of its own, gone when the tab is. */
const KEPT = 'windrow-key';
const HANDED_OVER = /^#key=([0-9a-f]{64})$/;

/**
 * The key of this tab, which the host wants with every call: handed over in the part of the start
 * address that browsers send to nobody, taken out of the address bar at once, and kept for a reload.
 * Undefined in a tab that was opened otherwise.
 */
export function takeKey(): string | undefined {
  const handedOver = HANDED_OVER.exec(window.location.hash)?.[1];
  if (handedOver !== undefined) {
    sessionStorage.setItem(KEPT, handedOver);
    history.replaceState(null, '', window.location.pathname);
  }
  return sessionStorage.getItem(KEPT) ?? undefined;
}
