/** The passes of the exchange, in order (common practice). */
export const PASS_STEPS = ['right', 'across', 'left', 'left2', 'across2', 'right2', 'courtesy'] as const;
export type PassStep = (typeof PASS_STEPS)[number];

/** Seats in order of play; East deals. */
export const SEATS = ['East', 'South', 'West', 'North'] as const;
export type Seat = (typeof SEATS)[number];
