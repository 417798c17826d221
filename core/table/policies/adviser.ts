import type { Offer, Policy, PolicyMaker, SeatView } from '../policy.ts';
import { PlayRanking } from '../play-ranking.ts';
import type { Kind } from '../../tiles/kinds.ts';
import { planner } from './planner.ts';

/** Does in play what stands first in the list of advice (`PlayRanking`); passes like the planner. */
export const adviser: PolicyMaker = (card) => {
  const passing = planner(card);
  const ranking = new PlayRanking(card);
  return {
    pass: (view, step, blind, out) => passing.pass(view, step, blind, out),
    goesOn: (view) => passing.goesOn(view),
    courtesy: (view, out) => passing.courtesy(view, out),
    discard: (view) => ranking.discards(view)[0]?.kind as Kind,
    call: (view, kind, offer) => calls(ranking, view, kind, offer),
    swap: (view, kind) => {
      const best = ranking.onTurn(view)[0];
      return best?.action === 'swap' && best.kind === kind;
    },
  } satisfies Policy;
};

function calls(ranking: PlayRanking, view: SeatView, kind: Kind, offer: Offer): boolean {
  const group = ranking.offered(view, kind)[0]?.group ?? null;
  if (group === null) return false;
  offer.size = group.size;
  offer.jokers = group.jokers;
  return true;
}
