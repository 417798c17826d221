import type { TemplateResult } from 'lit';
import type { AppContext } from './app-context.ts';
import { journalPlace } from '../places/journal/place.ts';
import { settingsPlace } from '../places/settings/place.ts';
import { tablePlace } from '../places/table/place.ts';

/** One of the window's five places. */
export interface Place {
  /** Its name in the address: `#/table`. */
  readonly id: string;
  /** Its name in the navigation. */
  readonly title: string;
  /** Fetches what the place needs, the first time that it is opened, and says how it is drawn. */
  readonly load: () => Promise<(app: AppContext) => TemplateResult>;
}

/** The places in the order of the navigation. A new place is one more line here. */
export const PLACES: readonly [Place, ...Place[]] = [tablePlace, journalPlace, settingsPlace];
