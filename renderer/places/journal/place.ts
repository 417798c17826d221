import { html } from 'lit';
import type { Place } from '../../shell/place.ts';
import { shellWords } from '../../words/shell.ts';

export const journalPlace: Place = {
  id: 'journal',
  title: shellWords.places.journal,
  shape: 'page',
  load: async () => {
    await import('./wr-journal-place.ts');
    return (app) => html`<wr-journal-place .app=${app}></wr-journal-place>`;
  },
};
