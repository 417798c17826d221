/**
 * Sends a typed event from an element to whoever listens above it. Parts send events only for
 * what a person did. It crosses shadow roots, and can be refused with `preventDefault`.
 */
export function emit<Detail>(from: HTMLElement, type: string, detail: Detail): boolean {
  return from.dispatchEvent(new CustomEvent<Detail>(type, { detail, bubbles: true, composed: true, cancelable: true }));
}
