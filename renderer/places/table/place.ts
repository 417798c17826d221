import { html } from 'lit';
import type { Place } from '../../shell/place.ts';
import { shellWords } from '../../words/shell.ts';

export const tablePlace: Place = {
  id: 'table',
  title: shellWords.places.table,
  shape: 'sheet',
  load: async () => {
    await import('./wr-table-place.ts');
    return (app) => html`<wr-table-place .app=${app}></wr-table-place>`;
  },
};
