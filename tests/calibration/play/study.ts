import { finish } from '../../../core/base/steps.ts';
import type { SeatMoment } from '../../../core/chance/lay.ts';
import { RackAways } from '../../../core/others/rack-aways.ts';
import { countPairs, criticalLead, gapOf, PLAY_RULE, PlayDuels } from '../../../core/future/play-costs.ts';
import { PlayFutures } from '../../../core/future/play-futures.ts';
import type { TableKind } from '../../../core/table/kinds.ts';
import { type PlayOption, sameValue } from '../../../core/table/play-option.ts';
import { PlayRanking } from '../../../core/table/play-ranking.ts';
import { PLAYERS_AT, simulate } from '../../../core/table/simulate.ts';
import { playerAt, SEAT_COUNT, type Table } from '../../../core/table/table.ts';
import type { TableCard } from '../../../core/table/table-card.ts';

/** A seat on turn in a simulated game: what games from there won, and whether it won. */
export interface MomentCheck {
  readonly drawn: number;
  /** Groups that the seat has exposed, and the others together. */
  readonly own: number;
  readonly others: number;
  /** The share of games from there that the seat won. */
  readonly said: number;
  readonly won: boolean;
}

/** Plays games of a card, and `futures` games from one seat's turn in every other ten tiles drawn of each. */
export function checkMoments(
  card: TableCard,
  kind: TableKind,
  { games, futures, seed }: { readonly games: number; readonly futures: number; readonly seed: number },
): MomentCheck[] {
  const aways = RackAways.of(card, kind);
  const checks: MomentCheck[] = [];
  let open: { readonly check: MomentCheck; readonly seat: number }[] = [];
  let tens = -1;
  let game = 0;
  const beforeDiscard = (table: Table, seat: number, drawn: number): void => {
    const ten = Math.floor(drawn / 10);
    if (ten <= tens || (ten + game) % 2 === 1) return;
    tens = ten;
    const moment = momentOf(table, seat, drawn);
    const future = new PlayFutures(card, kind, aways, { moment, discarded: null });
    let wins = 0;
    for (let number = 0; number < futures; number += 1) wins += Number(future.wins(null, game, number));
    const others = moment.exposures.reduce((sum, groups, other) => sum + (other === seat ? 0 : groups.length), 0);
    open.push({ check: { drawn, own: moment.groups.length, others, said: wins / futures, won: false }, seat });
  };
  const afterGame = (_: Table, { winner }: { readonly winner: number }): void => {
    checks.push(...open.map(({ check, seat }) => ({ ...check, won: seat === winner })));
    open = [];
    tens = -1;
    game += 1;
  };
  simulate({ compiled: card.compiled, seed, games, policies: PLAYERS_AT[kind] }, { beforeDiscard, afterGame });
  return checks;
}

/** A choice that games put before the first of its list: what they said that it gains, and what as many fresh games said. */
export interface LeadCheck {
  readonly said: number;
  readonly fresh: number;
}

/** Games that a lead is tested on, and their seed. */
const FRESH = 2000;
const FRESH_SEED = 2;

/** Asks the advice at one turn of each game, and tests each choice that games put before the first one. */
export function checkLeads(card: TableCard, kind: TableKind, games: number, seed: number): readonly LeadCheck[] {
  const aways = RackAways.of(card, kind);
  const ranking = new PlayRanking(card);
  const leads: LeadCheck[] = [];
  let game = 0;
  let asked = -1;
  const beforeDiscard = (table: Table, seat: number, drawn: number): void => {
    if (asked === game || drawn < (game * 13) % 75) return;
    asked = game;
    const options = ranking.onTurn(playerAt(table, seat).view);
    const position = { moment: momentOf(table, seat, drawn), discarded: null };
    const lead = leadOf(new PlayFutures(card, kind, aways, position), options);
    if (lead !== null) leads.push(lead);
  };
  const afterGame = (): void => {
    game += 1;
  };
  simulate({ compiled: card.compiled, seed, games, policies: PLAYERS_AT[kind] }, { beforeDiscard, afterGame });
  return leads;
}

function leadOf(futures: PlayFutures, options: readonly PlayOption[]): LeadCheck | null {
  const [first] = options;
  const others = [...options.keys()].filter((place) => first && !sameValue(first, options[place] as PlayOption));
  const duels = new PlayDuels(others.slice(0, 3));
  for (let due = duels.due; due !== null; due = duels.due) duels.take(due, [finish(countPairs(futures, options, due))]);
  const leads = [...duels.counts].filter(([, count]) => {
    const { mean, error } = gapOf(count);
    return mean <= -PLAY_RULE.smallest && mean + criticalLead(PLAY_RULE) * error < 0;
  });
  const [best] = leads.toSorted(([, one], [, other]) => gapOf(one).mean - gapOf(other).mean);
  if (best === undefined) return null;
  const due = { others: [best[0]], from: 0, to: FRESH };
  const [fresh] = finish(countPairs(futures, options, due, { ...PLAY_RULE, seed: FRESH_SEED }));
  return fresh === undefined ? null : { said: -gapOf(best[1]).mean, fresh: -gapOf(fresh).mean };
}

/** What a seat of a simulated game knows while it is on turn. */
export function momentOf(table: Table, seat: number, drawn: number): SeatMoment {
  const { hand, given } = playerAt(table, seat);
  return {
    seat,
    rack: hand.counts.slice(),
    groups: hand.exposures,
    given: given.slice(),
    shown: table.gone.slice(),
    exposures: Array.from({ length: SEAT_COUNT }, (_, other) => playerAt(table, other).hand.exposures),
    drawn,
  };
}
