/** The largest amount that a rule of payment may name. */
const LARGEST = 1_000_000;

/** A number from 0 to 1000000 with at most two decimals, as a person writes it; undefined for anything else. */
export function amountOf(text: string): number | undefined {
  const written = text.trim().replace(',', '.');
  if (!/^\d{1,7}(\.\d{1,2})?$/.test(written)) return undefined;
  const amount = Number(written);
  return amount <= LARGEST ? amount : undefined;
}

/** The same where nothing written means no limit: null. */
export function limitOf(text: string): number | null | undefined {
  return text.trim() === '' ? null : amountOf(text);
}
