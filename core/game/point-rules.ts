import type { ValueOf } from '../base/schema.ts';
import type { POINT_RULES } from './file/record-fields.ts';

/** How a table pays. */
export type PointRules = ValueOf<typeof POINT_RULES>;

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
