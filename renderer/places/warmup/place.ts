import { html } from 'lit';
import type { Place } from '../../shell/place.ts';
import { shellWords } from '../../words/shell.ts';

export const warmUpPlace: Place = {
  id: 'warm-up',
  title: shellWords.places.warmup,
  shape: 'page',
  load: async () => {
    await import('./wr-warm-up-place.ts');
    return (app) => html`<wr-warm-up-place .app=${app}></wr-warm-up-place>`;
  },
};
