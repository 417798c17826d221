import * as v from 'valibot';
import { SEATS } from '../../core/exchange/steps.ts';
import { ADVICE_TIMES, USUAL_ADVICE } from '../../core/game/advice.ts';
import { USUAL_SWAP_AFTER_CALL } from '../../core/game/house-rules.ts';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import { TABLE_KINDS, USUAL_KIND } from '../../core/table/kinds.ts';
import { pointRules } from './checks.ts';
import type { Kept } from './context.ts';
import type { Preferences } from './desk.ts';

/** Each preference: what it may be, and what it is until a person chooses. */
const FIELDS = {
  theme: v.exactOptional(v.picklist(['system', 'light', 'dark']), 'system'),
  textSize: v.exactOptional(v.pipe(v.number(), v.minValue(16), v.maxValue(32)), 18),
  tiles: v.exactOptional(v.picklist(['normal', 'large']), 'normal'),
  rackTiers: v.exactOptional(v.picklist([1, 2]), 1),
  seat: v.exactOptional(v.picklist(SEATS), 'East'),
  cardId: v.exactOptional(v.pipe(v.string(), v.minLength(1), v.maxLength(80)), 'demo'),
  table: v.exactOptional(v.picklist(TABLE_KINDS), USUAL_KIND),
  advice: v.exactOptional(v.picklist(ADVICE_TIMES), USUAL_ADVICE),
  adviceAsked: v.exactOptional(v.boolean(), false),
  swapAfterCall: v.exactOptional(v.boolean(), USUAL_SWAP_AFTER_CALL),
  weighs: v.exactOptional(v.picklist(['at-once', 'when-asked']), 'at-once'),
  payment: v.exactOptional(pointRules, DEFAULT_POINT_RULES),
  cautionsSeen: v.exactOptional(v.pipe(v.array(v.picklist(['entry', 'import', 'export'])), v.maxLength(3)), []),
  paper: v.exactOptional(v.picklist(['region', 'letter', 'a4']), 'region'),
  sheetParts: v.exactOptional(v.picklist(['questions', 'answers', 'both']), 'both'),
  tourOffered: v.exactOptional(v.boolean(), false),
  tourStep: v.exactOptional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(9)), 0),
};
const preferences = v.strictObject(FIELDS);

/** What holds until a person chooses otherwise. */
export const DEFAULT_PREFERENCES: Preferences = v.parse(preferences, {});

/** Any of the preferences and nothing else. */
export const preferenceChange = v.custom<Partial<Preferences>>((value) => v.is(preferences, value));

/** The preferences in a kept document; a field that is missing or makes no sense has its default. */
export function preferencesIn(kept: Kept): Preferences {
  const good = Object.entries(FIELDS).filter(([name, schema]) => v.is(schema, kept[name]));
  return v.parse(preferences, Object.fromEntries(good.map(([name]) => [name, kept[name]])));
}
