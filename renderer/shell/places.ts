import { cardPlace } from '../places/card/place.ts';
import { journalPlace } from '../places/journal/place.ts';
import { settingsPlace } from '../places/settings/place.ts';
import { tablePlace } from '../places/table/place.ts';
import { warmUpPlace } from '../places/warmup/place.ts';
import type { Place } from './place.ts';

/** The places in the order of the navigation. A new place is one more line here. */
export const PLACES: readonly [Place, ...Place[]] = [tablePlace, cardPlace, journalPlace, warmUpPlace, settingsPlace];
