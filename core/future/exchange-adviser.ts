import { finish } from '../base/steps.ts';
import { expectValue } from '../base/result.ts';
import type { CardChance } from '../chance/card-chance.ts';
import { type PassStep, SEATS } from '../exchange/steps.ts';
import type { RaceRule } from '../plan/race.ts';
import { knownBesides } from '../reading/known.ts';
import type { SeatView } from '../table/policy.ts';
import type { TableCard } from '../table/table-card.ts';
import { type Kind, KINDS, SUPPLY } from '../tiles/kinds.ts';
import { Tiles } from '../tiles/tiles.ts';
import { positionBefore } from './known-deal.ts';
import { passAdviceSteps } from './pass-advice.ts';
import type { GiveChoice, PassChoice } from './rivals.ts';
import { USUAL_EXCHANGE } from './terms.ts';

/**
 * Does in the exchange what stands first in the list of advice (`passAdviceSteps`), as a person sees it at the default
 * setting. Deterministic: the same rack at the same step is answered alike.
 */
export class ExchangeAdviser {
  readonly #card: TableCard;
  readonly #fit: CardChance;
  readonly #rule: RaceRule | undefined;
  /** The list by which the second round was decided on; its best pass is the next thing to give. */
  #ofSecondRound: readonly PassChoice[] | null = null;

  constructor(card: TableCard, fit: CardChance, rule?: RaceRule) {
    this.#card = card;
    this.#fit = fit;
    this.#rule = rule;
  }

  pass(view: SeatView, step: PassStep, out: Kind[]): number {
    const list = (step === 'left2' ? this.#ofSecondRound : null) ?? this.#list(view, step);
    this.#ofSecondRound = null;
    const tiles = list.find(isGift)?.tiles ?? [];
    for (const [place, kind] of tiles.entries()) out[place] = kind;
    return tiles.length;
  }

  goesOn(view: SeatView): boolean {
    this.#ofSecondRound = this.#list(view, 'left2');
    return this.#ofSecondRound[0]?.type !== 'stop';
  }

  #list(view: SeatView, step: PassStep): readonly PassChoice[] {
    const rack = Tiles.fromCounts(KINDS.map((kind) => view.hand.counts[kind] as number));
    const gone = Tiles.fromCounts(KINDS.map((kind) => givenElsewhere(view, kind)));
    const known = expectValue(knownBesides(rack, gone));
    const seat = SEATS[view.seat];
    if (seat === undefined) throw new Error('a seat that is none');
    const position = positionBefore(known.rack, known.gone, seat, step);
    const terms = { ...USUAL_EXCHANGE, fit: this.#fit, rates: this.#fit.table.incoming };
    const task = { card: this.#card, position, known, terms };
    const advice = finish(passAdviceSteps(this.#rule === undefined ? task : { ...task, rule: this.#rule }));
    return advice.map(({ choice }) => choice);
  }
}

function isGift(choice: PassChoice): choice is GiveChoice {
  return choice.type === 'give';
}

/** Tiles given away that have not come back, so that no more are known than the set holds. */
function givenElsewhere({ given, hand }: SeatView, kind: Kind): number {
  const most = SUPPLY[kind] as number;
  return Math.min(given[kind] as number, most - (hand.counts[kind] as number));
}
