import { fullCardJourney, newCardJourney } from './card.ts';
import { helpJourney, settingsJourney } from './frame.ts';
import { journalJourney } from './journal.ts';
import type { Journey } from './journey.ts';
import { playJourney } from './play.ts';
import { exchangeJourney } from './table.ts';
import { warmUpJourney } from './warmup.ts';

/** Every screen of the window. A new state of it belongs into one of these, a new place into a journey of its own. */
export const JOURNEYS: readonly Journey[] = [
  exchangeJourney,
  playJourney,
  newCardJourney,
  fullCardJourney,
  journalJourney,
  warmUpJourney,
  helpJourney,
  settingsJourney,
];
