import { html } from 'lit';
import type { Place } from '../../shell/place.ts';
import { shellWords } from '../../words/shell.ts';

export const settingsPlace: Place = {
  id: 'settings',
  title: shellWords.places.settings,
  shape: 'page',
  load: async () => {
    await import('./wr-settings-place.ts');
    return (app) => html`<wr-settings-place .app=${app}></wr-settings-place>`;
  },
};
