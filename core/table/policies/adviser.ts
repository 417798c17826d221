import type { Kind } from '../../tiles/kinds.ts';
import { type DiscardRisks, PlayRanking } from '../play-ranking.ts';
import type { Offer, Policy, PolicyMaker, SeatView } from '../policy.ts';
import type { TableCard } from '../table-card.ts';
import { planner } from './planner.ts';

/** Does in play what stands first by worth alone (`PlayRanking`), before the others are read; passes like the planner. */
export const adviser: PolicyMaker = (card) => adviserBy(card);

/** The same, where what others do with a discard is looked at: `risksOf` is asked before each decision. */
export function adviserBy(card: TableCard, risksOf?: (view: SeatView) => DiscardRisks): Policy {
  const passing = planner(card);
  const ranking = new PlayRanking(card);
  return {
    pass: (view, step, blind, out) => passing.pass(view, step, blind, out),
    goesOn: (view) => passing.goesOn(view),
    courtesy: (view, out) => passing.courtesy(view, out),
    discard: (view) => ranking.discards(view, { risks: risksOf?.(view) })[0]?.kind as Kind,
    call: (view, kind, offer) =>
      calls(ranking.offered(view, kind, { risks: risksOf?.(view) })[0]?.group ?? null, offer),
    swap: (view, kind) => {
      const best = ranking.onTurn(view, { risks: risksOf?.(view) })[0];
      return best?.action === 'swap' && best.kind === kind;
    },
  };
}

function calls(group: Readonly<Offer> | null, offer: Offer): boolean {
  if (group === null) return false;
  offer.size = group.size;
  offer.jokers = group.jokers;
  return true;
}
