import { css, html, LitElement } from 'lit';
import type { Kind } from '../../core/tiles/kinds.ts';
import { nameOf, pluralNameOf } from '../../core/tiles/names.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { drawTile, tileStyles } from './tile/drawing.ts';

const words = partWords.hand;

/** How one of a hand's 14 places stands. */
export type PlaceStanding = 'filled' | 'joker' | 'missing';

export interface HandPlace {
  readonly kind: Kind;
  readonly standing: PlaceStanding;
}

/** A hand's groups, each its places from left to right. */
export type HandGroups = readonly (readonly HandPlace[])[];

/** A hand of the card drawn as its 14 places, group by group: filled, held by a joker, or missing. */
export class WrHand extends LitElement {
  static override properties = {
    groups: { attribute: false, hasChanged: (now: HandGroups, before: HandGroups) => !sameGroups(now, before) },
    label: {},
  };

  declare groups: HandGroups;
  /** Spoken before the places, for instance the hand's name. */
  declare label: string;

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

  constructor() {
    super();
    this.groups = [];
    this.label = '';
  }

  protected override render(): unknown {
    return html`<div class="hand" role="img" aria-label=${this.#words()}>
      ${this.groups.map((group) => html`<span class="group" aria-hidden="true">${group.map(drawPlace)}</span>`)}
    </div>`;
  }

  #words(): string {
    const told = this.groups.map(wordsOfGroup).join('; ');
    return this.label ? `${this.label}: ${told}` : told;
  }
}

const DRAWN = { filled: 'whole', joker: 'joker-held', missing: 'missing' } as const;

function drawPlace({ kind, standing }: HandPlace): unknown {
  return drawTile(kind, DRAWN[standing]);
}

/** Whether two hands are drawn alike; a new reading draws only what it changed. */
function sameGroups(one: HandGroups, other: HandGroups | undefined): boolean {
  if (one.length !== other?.length) return false;
  return one.every((group, at) => {
    const beside = other[at] ?? [];
    return group.length === beside.length && group.every((place, index) => samePlace(place, beside[index]));
  });
}

function samePlace({ kind, standing }: HandPlace, other: HandPlace | undefined): boolean {
  return kind === other?.kind && standing === other.standing;
}

/** "kong of five bams, 2 here and 1 by joker and 1 missing"; short when all are here or none. */
function wordsOfGroup(group: readonly HandPlace[]): string {
  const runs = new Map<Kind, PlaceStanding[]>();
  for (const { kind, standing } of group) runs.set(kind, [...(runs.get(kind) ?? []), standing]);
  return [...runs].map(([kind, standings]) => wordsOfRun(kind, standings)).join(', ');
}

function wordsOfRun(kind: Kind, standings: readonly PlaceStanding[]): string {
  const count = (standing: PlaceStanding): number => standings.filter((other) => other === standing).length;
  const size = standings.length;
  const name = size === 1 ? nameOf(kind) : words.run(words.sizes[size] ?? String(size), pluralNameOf(kind));
  const held = [
    [count('filled'), words.here],
    [count('joker'), words.byJoker],
    [count('missing'), words.missing],
  ] as const;
  const parts = held.filter(([many]) => many > 0);
  return `${name}, ${parts.length === 1 ? parts[0]?.[1] : parts.map((part) => part.join(' ')).join(words.and)}`;
}

customElements.define('wr-hand', WrHand);

declare global {
  interface HTMLElementTagNameMap {
    'wr-hand': WrHand;
  }
}
