import * as v from 'valibot';
import { PASS_STEPS } from '../exchange/steps.ts';
import { INCOMING_CLASSES } from '../table/incoming-rates.ts';
import { TABLE_KINDS } from '../table/kinds.ts';
import { KIND_COUNT } from '../tiles/kinds.ts';
import { CORRECTIONS } from './state.ts';
import type { CardFit } from './table-figures.ts';

/* The shape of a fit in a file that anybody may have touched, and of one that comes in from a window. */

const number = v.pipe(v.number(), v.finite());
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const positive = v.pipe(number, v.minValue(0));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000));
const atEachStep = <Item extends v.GenericSchema>(item: Item) => v.object(v.entriesFromList(PASS_STEPS, item));

const INCOMING = v.looseObject({
  source: v.literal('table'),
  passes: positive,
  classes: v.pipe(
    v.array(v.looseObject({ class: v.picklist(INCOMING_CLASSES), rate: positive, error: positive })),
    v.maxLength(INCOMING_CLASSES.length),
  ),
  weights: atEachStep(v.pipe(v.array(positive), v.length(KIND_COUNT))),
  returned: atEachStep(positive),
});

const OUTLINE = v.looseObject({
  kind: v.picklist(TABLE_KINDS),
  games: v.pipe(count, v.minValue(1)),
  seed: count,
  bestReach: v.optional(share),
  correction: v.pipe(v.array(number), v.length(CORRECTIONS)),
  table: v.looseObject({
    othersStop: share,
    offers: v.pipe(v.array(share), v.length(4)),
    wallGames: share,
    draws: v.pipe(v.number(), v.minValue(0), v.maxValue(152)),
    incoming: INCOMING,
  }),
});

/** What the games of a card brought, as it is kept; all numbers in it can be computed with. */
export const CARD_FIT = v.custom<CardFit>((value) => v.is(OUTLINE, value));
