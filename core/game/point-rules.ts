/**
 * How a table pays, every rule of it a setting. The default is `DEFAULT_POINT_RULES`: common
 * practice, from memory, no source; tables vary.
 */
export interface PointRules {
  /** `hand`: the winning hand's printed points; `fixed`: the same stake for every win; `none`: no payment. */
  readonly scheme: 'hand' | 'fixed' | 'none';
  /** The stake of a win in the `fixed` scheme. */
  readonly stake: number;
  /** What the discarder of the winning tile pays, in multiples of the hand's points. */
  readonly discarderPays: number;
  /** What the two others pay when the win is by discard. */
  readonly othersPay: number;
  /** What each of the three pays when the win is by own draw. */
  readonly drawPays: number;
  /** What a hand without jokers multiplies; 1 for no bonus. */
  readonly jokerlessTimes: number;
  /** True if a hand of only singles and pairs, which can hold no joker, earns that bonus too. */
  readonly jokerlessAlsoPairs: boolean;
  /** The most that one player pays for one game; null for no limit. */
  readonly limit: number | null;
}

export const DEFAULT_POINT_RULES: PointRules = {
  scheme: 'hand',
  stake: 25,
  discarderPays: 2,
  othersPay: 1,
  drawPays: 2,
  jokerlessTimes: 2,
  jokerlessAlsoPairs: false,
  limit: null,
};
