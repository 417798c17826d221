/** A section's part of the lean. */
export interface LeanShare {
  readonly section: string;
  /** 0 to 1; all together 1. */
  readonly share: number;
}

/** "42 %"; what is there but rounds to nothing is "under 1 %". */
export function percent(share: number): string {
  const whole = Math.round(share * 100);
  return whole === 0 && share > 0 ? 'under 1 %' : `${whole} %`;
}
