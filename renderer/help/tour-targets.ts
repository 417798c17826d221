/** Where the steps of the tour point: paths of selectors, each within what the one before it holds. The first that is there counts. */
export const TOUR_TARGETS: readonly (readonly (readonly string[])[])[] = [
  [
    ['wr-table-place', 'wr-deal-panel', '.entry'],
    ['wr-table-place', 'wr-rack-panel', '.rack'],
  ],
  [['wr-table-place', 'wr-reading-panel', '.reading']],
  [
    ['wr-table-place', 'wr-give-panel', '.band'],
    ['wr-table-place', 'wr-receive-panel', '.band'],
    ['wr-table-place', 'wr-advice-panel', '.band'],
  ],
  [['wr-places', 'a[href$=journal]']],
  [['wr-places', 'a[href$=card]']],
];

/** The element of the window at the end of the first path that leads to one; null while there is none. */
export function findTarget(paths: readonly (readonly string[])[], shell: Element | null): Element | null {
  for (const path of paths) {
    const found = path.reduce<Element | null>(
      (within, selector) => within?.shadowRoot?.querySelector(selector) ?? null,
      shell,
    );
    if (found !== null) return found;
  }
  return null;
}
