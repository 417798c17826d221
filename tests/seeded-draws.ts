import { fingerprint } from '../core/base/fingerprint.ts';

/** The seed of a test: its name in figures, so that the same test draws the same in every run. */
export function seedOf(title: string): number {
  return Number.parseInt(fingerprint(title).slice(0, 8), 16);
}

/**
 * Lets `crypto.getRandomValues`, from which the app takes the seeds of its questions, give the same draws in every run:
 * those of SplitMix32 for a seed. It needs nothing around it, so that it can run in a window as well. Of those that run
 * there one after another, the highest turn is heard, in whatever order. Ids are `crypto.randomUUID`'s, which stays as it is.
 */
export function seedDraws({ seed, turn }: { readonly seed: number; readonly turn: number }): void {
  if ((Reflect.get(crypto, 'turn') ?? -1) > turn) return;
  let mixed = (seed + Math.imul(turn, 0x85ebca6b)) | 0;
  const byte = (): number => {
    mixed = (mixed + 0x9e3779b9) | 0;
    let word = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    word = Math.imul(word ^ (word >>> 15), 0x735a2d97);
    return (word ^ (word >>> 15)) & 0xff;
  };
  const draw = <Into extends ArrayBufferView>(into: Into): Into => {
    const bytes = new Uint8Array(into.buffer, into.byteOffset, into.byteLength);
    for (let at = 0; at < bytes.length; at += 1) bytes[at] = byte();
    return into;
  };
  Object.defineProperty(crypto, 'turn', { value: turn, configurable: true });
  Object.defineProperty(crypto, 'getRandomValues', { value: draw, configurable: true });
}
