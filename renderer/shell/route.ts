/** The place named by a hash such as `#/journal`; empty when none is. */
export function placeOfHash(hash: string): string {
  return /^#\/([a-z-]+)/.exec(hash)?.[1] ?? '';
}

/** The link to a place. */
export function hashOf(place: string): string {
  return `#/${place}`;
}
