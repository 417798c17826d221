import { html } from 'lit';
import type { Place } from '../../shell/place.ts';
import { shellWords } from '../../words/shell.ts';

export const cardPlace: Place = {
  id: 'card',
  title: shellWords.places.card,
  shape: 'page',
  load: async () => {
    await import('./wr-card-place.ts');
    return (app) => html`<wr-card-place .app=${app}></wr-card-place>`;
  },
};
