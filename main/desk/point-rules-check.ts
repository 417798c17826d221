import * as v from 'valibot';
import type { PointRules } from '../../core/game/point-rules.ts';

const amount = v.pipe(v.number(), v.minValue(0), v.maxValue(1_000_000));

/** How a table pays, as it comes in from a window or lies in the settings. */
export const pointRules: v.GenericSchema<PointRules> = v.strictObject({
  scheme: v.picklist(['hand', 'fixed', 'none']),
  stake: amount,
  discarderPays: amount,
  othersPay: amount,
  drawPays: amount,
  jokerlessTimes: amount,
  jokerlessAlsoPairs: v.boolean(),
  limit: v.nullable(amount),
});
