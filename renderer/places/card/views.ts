import { html, type TemplateResult } from 'lit';
import type { PreferenceStore } from '../../session/preference-store.ts';
import type { CardRoom } from './card-room.ts';
import './wr-card-check.ts';
import './wr-card-grid.ts';
import './wr-card-lines.ts';
import './wr-card-proof.ts';
import './wr-card-shelf.ts';
import './wr-card-study.ts';

/** The views of the Card place, in the order of their tabs. */
export const VIEWS = ['cards', 'lines', 'grid', 'check', 'proof', 'study'] as const;
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
    case 'grid':
      return html`<wr-card-grid .room=${room}></wr-card-grid>`;
    case 'check':
      return html`<wr-card-check .room=${room}></wr-card-check>`;
    case 'proof':
      return html`<wr-card-proof .room=${room}></wr-card-proof>`;
    case 'study':
      return html`<wr-card-study .room=${room}></wr-card-study>`;
  }
}
