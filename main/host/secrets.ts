import { randomBytes, timingSafeEqual } from 'node:crypto';

/** Bytes of chance in each secret: 256 bits. */
const SECRET_BYTES = 32;

export function newSecret(): string {
  return randomBytes(SECRET_BYTES).toString('hex');
}

/** Compares in a time that tells nothing about where two texts differ. */
export function isSame(given: string, secret: string): boolean {
  const [one, other] = [Buffer.from(given), Buffer.from(secret)];
  return one.length === other.length && timingSafeEqual(one, other);
}
