const PRIME = 0x100000001b3n;
const BASIS = 0xcbf29ce484222325n;

/** 64 bits of a text as 16 letters: FNV-1a by Fowler, Noll and Vo, with its published constants, over UTF-16 units. */
export function fingerprint(text: string): string {
  let hash = BASIS;
  for (let at = 0; at < text.length; at += 1) hash = BigInt.asUintN(64, (hash ^ BigInt(text.charCodeAt(at))) * PRIME);
  return hash.toString(16).padStart(16, '0');
}
