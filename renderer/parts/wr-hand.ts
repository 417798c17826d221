import { css, html } from 'lit';
import type { HandGroup } from '../../core/reading/hand.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { nameOf, pluralNameOf } from '../../core/tiles/names.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { comparedBy, data, element, text } from './element.ts';
import { drawTile, tileStyles } from './tile/drawing.ts';

const words = partWords.hand;

/** One of a hand's 14 places: its tile, and how it is held. */
export type HandPlace = HandGroup['places'][number];

/** A hand's groups, each its places from left to right. */
type HandGroups = readonly (readonly HandPlace[])[];

const Base = element({
  groups: comparedBy(
    sameGroups,
    data<HandGroups>(() => []),
  ),
  /** Spoken before the places, for instance the hand's name. */
  label: text(),
});

/** A hand of the card drawn as its 14 places, group by group: filled, held by a joker, or missing. */
export class WrHand extends Base {
  static override styles = [
    sharedStyles,
    tileStyles,
    css`
      :host {
        display: block;
        --tile-width: clamp(36px, 2rem, 48px);
      }

      .hand {
        display: flex;
        flex-wrap: wrap;
        gap: 8px clamp(8px, 0.75rem, 18px);
      }

      .group {
        display: inline-flex;
        flex-wrap: wrap;
        gap: 3px;
      }
    `,
  ];

  protected override render(): unknown {
    return html`<div class="hand" role="img" aria-label=${this.#words()}>
      ${this.groups.map((group) => html`<span class="group" aria-hidden="true">${group.map(drawPlace)}</span>`)}
    </div>`;
  }

  #words(): string {
    const spoken = this.groups.map(wordsOfGroup).join('; ');
    return this.label ? `${this.label}: ${spoken}` : spoken;
  }
}

const DRAWN = { natural: 'whole', joker: 'joker-held', missing: 'missing' } as const;

function drawPlace({ kind, held }: HandPlace): unknown {
  return drawTile(kind, DRAWN[held]);
}

/** Whether two hands are drawn alike; a new reading draws only what it changed. */
function sameGroups(one: HandGroups, other: HandGroups | undefined): boolean {
  if (one.length !== other?.length) return false;
  return one.every((group, at) => {
    const beside = other[at] ?? [];
    return group.length === beside.length && group.every((place, index) => samePlace(place, beside[index]));
  });
}

function samePlace({ kind, held }: HandPlace, other: HandPlace | undefined): boolean {
  return kind === other?.kind && held === other.held;
}

/** "kong of five bams, 2 here and 1 by joker and 1 missing"; short when all are here or none. */
function wordsOfGroup(group: readonly HandPlace[]): string {
  const runs = new Map<Kind, HandPlace['held'][]>();
  for (const { kind, held } of group) runs.set(kind, [...(runs.get(kind) ?? []), held]);
  return [...runs].map(([kind, places]) => wordsOfRun(kind, places)).join(', ');
}

function wordsOfRun(kind: Kind, places: readonly HandPlace['held'][]): string {
  const count = (held: HandPlace['held']): number => places.filter((other) => other === held).length;
  const size = places.length;
  const name = size === 1 ? nameOf(kind) : words.run(words.sizes[size] ?? String(size), pluralNameOf(kind));
  const counts = [
    [count('natural'), words.here],
    [count('joker'), words.byJoker],
    [count('missing'), words.missing],
  ] as const;
  const parts = counts.filter(([many]) => many > 0);
  return `${name}, ${parts.length === 1 ? parts[0]?.[1] : parts.map((part) => part.join(' ')).join(words.and)}`;
}

customElements.define('wr-hand', WrHand);
