import { html, type TemplateResult } from 'lit';
import { shellWords } from '../words/shell.ts';
import type { AppContext } from './app-context.ts';

/** One of the window's five places. */
export interface WindowPlace {
  /** Its name in the address: `#/table`. */
  readonly id: string;
  /** Its name in the navigation. */
  readonly title: string;
  /** `sheet`: fills the window and scrolls inside, where there is room; `page`: scrolls as a whole. */
  readonly shape: 'sheet' | 'page';
  /** Fetches what the place needs, the first time that it is opened, and says how it is drawn. */
  readonly load: () => Promise<(app: AppContext) => TemplateResult>;
}

const titles = shellWords.places;

/** The places in the order of the navigation. A new place is one more entry here. */
export const PLACES: readonly [WindowPlace, ...WindowPlace[]] = [
  {
    id: 'table',
    title: titles.table,
    shape: 'sheet',
    load: async () => {
      await import('../places/table/wr-table-place.ts');
      return (app) => html`<wr-table-place .app=${app}></wr-table-place>`;
    },
  },
  {
    id: 'card',
    title: titles.card,
    shape: 'sheet',
    load: async () => {
      await import('../places/card/wr-card-place.ts');
      return (app) => html`<wr-card-place .app=${app}></wr-card-place>`;
    },
  },
  {
    id: 'journal',
    title: titles.journal,
    shape: 'page',
    load: async () => {
      await import('../places/journal/wr-journal-place.ts');
      return (app) => html`<wr-journal-place .app=${app}></wr-journal-place>`;
    },
  },
  {
    id: 'warm-up',
    title: titles.warmup,
    shape: 'sheet',
    load: async () => {
      await import('../places/warmup/wr-warm-up-place.ts');
      return (app) => html`<wr-warm-up-place .app=${app}></wr-warm-up-place>`;
    },
  },
  {
    id: 'settings',
    title: titles.settings,
    shape: 'page',
    load: async () => {
      await import('../places/settings/wr-settings-place.ts');
      return (app) => html`<wr-settings-place .app=${app}></wr-settings-place>`;
    },
  },
];

/** The place named by a hash such as `#/journal`; empty when none is. */
export function placeOfHash(hash: string): string {
  return /^#\/([a-z-]+)/.exec(hash)?.[1] ?? '';
}

/** The link to a place. */
export function hashOf(place: string): string {
  return `#/${place}`;
}
