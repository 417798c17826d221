import { stateOf } from '../../core/game/state.ts';
import { givenTiles } from '../../core/exchange/state.ts';
import { SEATS } from '../../core/exchange/steps.ts';
import { type BlockSums, blockSteps, type Contest } from '../../core/plan/race.ts';
import type { CompiledCard } from '../../core/reading/compiled.ts';
import { exchangeContest, gamesContest } from '../../core/table/future-contest.ts';
import { USUAL_TERMS } from '../../core/table/future.ts';
import { USUAL_EXCHANGE } from '../../core/table/future-usual.ts';
import { bestOfSizes } from '../../core/table/future-sizes.ts';
import type { Position } from '../../core/table/future-world.ts';
import { tableRatesSteps } from '../../core/table/incoming-rates-table.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import type { Answered } from './calls.ts';
import { compiledCard } from './card-cache.ts';
import type { FuturesRequest, LookCalls, LookMoment } from './look-calls.ts';
import type { Handlers } from './serve.ts';
import { modelFor } from './terms-model.ts';

const TABLE_CARDS = new WeakMap<CompiledCard, TableCard>();

/** How each call of the look ahead is answered. */
export const lookHandlers: Handlers<LookCalls> = {
  *sizes(request) {
    yield undefined;
    const moment = momentOf(request);
    if (!moment.ok) return moment;
    const { card, position } = moment.value;
    const { rack } = position.exchange;
    const gone = givenTiles(position.exchange);
    const known = { rack, gone, unseen: Tiles.fullSet.minus(rack.plus(gone)) };
    return { ok: true, value: bestOfSizes(card.compiled, known, modelFor(request.terms), request.sizes) };
  },

  *futures(request) {
    const moment = momentOf(request);
    if (!moment.ok) return moment;
    const { alive, blocks } = request;
    const contest = contestOf(moment.value.card, moment.value.position, request);
    const sums: BlockSums[] = [];
    for (const block of blocks) {
      sums.push(yield* blockSteps(contest, request, block, alive));
      yield sums.length * request.blockSize;
    }
    return { ok: true, value: sums };
  },

  *rates({ card }) {
    const compiled = compiledCard(card);
    if (!compiled.ok) return { ok: false, message: compiled.problem.message };
    return { ok: true, value: yield* tableRatesSteps(compiled.value) };
  },
};

function contestOf(
  card: TableCard,
  position: Position,
  { depth, choices, weights, offered, terms }: FuturesRequest,
): Contest {
  const known = offered === null ? {} : { offered };
  if (depth === 'game') return gamesContest(card, position, choices, { ...USUAL_TERMS, ...known });
  const incoming = weights === null ? {} : { weights };
  return exchangeContest(card, position, choices, { ...USUAL_EXCHANGE, model: modelFor(terms), ...incoming, ...known });
}

function momentOf({ card, events }: LookMoment): Answered<{ readonly card: TableCard; readonly position: Position }> {
  const compiled = compiledCard(card);
  if (!compiled.ok) return { ok: false, message: compiled.problem.message };
  const state = stateOf(events);
  if (!state.ok) return { ok: false, message: state.problem.message };
  const { exchange, seat } = state.value;
  if (exchange === null || seat === null) throw new Error('a look ahead begins while a pass is due');
  return { ok: true, value: { card: tableCard(compiled.value), position: { seat: SEATS.indexOf(seat), exchange } } };
}

function tableCard(compiled: CompiledCard): TableCard {
  const known = TABLE_CARDS.get(compiled) ?? makeTableCard(compiled);
  TABLE_CARDS.set(compiled, known);
  return known;
}
