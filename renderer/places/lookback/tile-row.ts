import { html, nothing, type TemplateResult } from 'lit';
import type { GameEvent } from '../../../core/game/events.ts';
import type { Decision } from '../../../core/review/decision.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { tileWords } from '../../../core/tiles/names.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { lookbackWords } from '../../words/lookback.ts';

const words = lookbackWords.choices;

/** The tiles of a choice, drawn; said in words where there are none. */
export function choiceTiles(text: string): TemplateResult {
  const kinds = kindsOf(text);
  if (kinds.length === 0) return html`<span>${words.nothing}</span>`;
  return tileRow(kinds, { name: tileWords(kinds) });
}

/** The rack as it was, the tiles of the choice raised; beside it the discard that the choice was about. */
export function rackThen(decision: Decision, events: readonly GameEvent[]): TemplateResult {
  const kinds = kindsOf(decision.rack);
  const raised = raisedIn(decision);
  const tiles = kinds.map((kind) => {
    const place = raised.indexOf(kind);
    if (place >= 0) raised.splice(place, 1);
    return html`<wr-tile class=${place >= 0 ? 'raised' : ''} .kind=${kind} aria-hidden="true"></wr-tile>`;
  });
  const offered = offeredIn(decision, events);
  return html`<span class="rack" role="img" aria-label=${words.rackWords(tileWords(kinds))}
    >${tiles}${
      offered.length === 0
        ? nothing
        : html`<span class="offered"
            >${offered.map((kind) => html`<wr-tile .kind=${kind} aria-hidden="true"></wr-tile>`)}</span
          >`
    }</span
  >`;
}

/** The tiles of the rack that the choice used, or could have used for a call. */
function raisedIn({ kind, chosen, best }: Decision): Kind[] {
  if (kind === 'second-round') return [];
  return [...kindsOf(kind === 'let-go' ? best.tiles : chosen.tiles)];
}

/** The discard that was called or let go. */
function offeredIn({ kind, place }: Decision, events: readonly GameEvent[]): readonly Kind[] {
  const event = events[place];
  if (kind === 'call') return event?.type === 'called' ? kindsOf(event.tile) : [];
  return kind === 'let-go' && event?.type === 'discarded' ? kindsOf(event.tile) : [];
}
