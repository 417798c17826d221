import { html, type TemplateResult } from 'lit';
import type { PreferenceStore } from '../../session/preference-store.ts';
import type { CardRoom } from './card-room.ts';
import './wr-card-lines.ts';
import './wr-card-shelf.ts';

/** The views of the Card place, in the order of their tabs. */
export const VIEWS = ['cards', 'lines'] as const;
export type View = (typeof VIEWS)[number];

export function isView(name: string): name is View {
  return VIEWS.some((view) => view === name);
}

/** What a view shows of the room. */
export function viewContent(view: View, room: CardRoom, preferences: PreferenceStore): TemplateResult {
  switch (view) {
    case 'cards':
      return html`<wr-card-shelf .room=${room} .preferences=${preferences}></wr-card-shelf>`;
    case 'lines':
      return html`<wr-card-lines .room=${room}></wr-card-lines>`;
  }
}
