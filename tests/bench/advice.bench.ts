import { readFileSync } from 'node:fs';
import { finish } from '../../core/base/steps.ts';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { markedFile, readyCard } from '../../core/engine/cards.ts';
import type { GameMoment } from '../../core/engine/chance-questions.ts';
import { futures, rivals } from '../../core/engine/exchange-questions.ts';
import { openMoment, type OpenMoment } from '../../core/engine/moment.ts';
import { playGames } from '../../core/engine/play-questions.ts';
import { advise, plan, read } from '../../core/engine/reading-questions.ts';
import type { PassStep } from '../../core/exchange/steps.ts';
import { EXCHANGE_FIGURES } from '../../core/future/figures.ts';
import { PlayDuels } from '../../core/future/play-costs.ts';
import type { PassChoice } from '../../core/future/rivals.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { seatEvents } from '../../core/game/seat-log.ts';
import { distinctPasses } from '../../core/plan/pass-table.ts';
import { Race, type RaceResult } from '../../core/plan/race-run.ts';
import { USUAL_RULE } from '../../core/plan/race.ts';
import { readKnown } from '../../core/reading/reading.ts';
import { openChoices } from '../../core/review/play-costs.ts';
import { PLAYERS_AT, simulate, traceGame } from '../../core/table/simulate.ts';
import { draws } from '../reference/plain-plan.ts';
import { CLOCKS } from './clocks.mjs';
import type { Measure } from './measure.ts';

/**
 * What a person waits for: the first ranking of passes and the settled one at the first three passes, and in play the
 * list and what its choices cost, by the questions that the window asks. The plain ways: a full reading of every draw after
 * every pass, whole games instead of futures, a full reading after every discard, and games from the deal.
 */
const text = readFileSync(new URL('assets/demo.card.json', `file://${process.cwd()}/`), 'utf8');
const card = markedFile(expectValue(readCardFile(text)));
const { compiled } = expectValue(readyCard(card));
const { incoming } = expectValue(readyCard(card)).chanceAt('club').table;
const RACKS = 12;
const SEAT = 1;
/** Workers that share the futures and the games. */
const WORKERS = 2;
/** Choices whose costs are played for, beside the first. */
const COMPARED = 3;

/** South's log of some games, each up to the event that `due` names. */
function momentsBefore(due: (event: GameEvent) => boolean): GameMoment[] {
  const moments: GameMoment[] = [];
  for (let game = 0; moments.length < RACKS; game += 1) {
    const events = seatEvents(traceGame({ compiled, seed: 71, policies: PLAYERS_AT.club }, game), SEAT);
    const end = events.findIndex(due);
    if (end > 0) moments.push({ card, at: { events: events.slice(0, end) }, said: { rates: incoming } });
  }
  return moments;
}

/** Each of some moments in turn. */
function inTurn(moments: readonly GameMoment[]): () => GameMoment {
  let turn = 0;
  return () => moments[(turn += 1) % moments.length] as GameMoment;
}

function opened(moment: GameMoment): OpenMoment {
  return expectValue(openMoment(moment));
}

/** The list of passes as it stands first. */
function firstRanking(moment: GameMoment): readonly (readonly number[])[] {
  expectValue(finish(read(moment)));
  return expectValue(finish(plan(moment))).options.map(({ kinds }) => kinds);
}

/** The choices that the look ahead compares. */
function choicesOf(moment: GameMoment): readonly PassChoice[] {
  const passes = expectValue(finish(plan(moment))).options.map(({ kinds }) => kinds);
  return expectValue(finish(rivals({ ...moment, passes, chosen: null, size: 3 })));
}

/** The look ahead to its end, all of it counted here. */
function settled(moment: GameMoment, choices: readonly PassChoice[]): RaceResult {
  const { seed, blockSize } = USUAL_RULE;
  const race = new Race({ candidates: choices.length, figures: EXCHANGE_FIGURES }, USUAL_RULE);
  for (let due = race.due; due !== null; due = race.due) {
    race.take(expectValue(finish(futures({ ...moment, depth: 'exchange', choices, seed, blockSize, ...due }))));
  }
  return race.result();
}

/** Games from a moment of play, until no more would change what is said of the costs; how many of each choice. */
function costs(moment: GameMoment): number {
  const { choices } = expectValue(finish(advise(moment)));
  const duels = new PlayDuels(openChoices(choices).slice(0, COMPARED));
  for (let due = duels.due; due !== null; due = duels.due) {
    duels.take(due, [expectValue(finish(playGames({ ...moment, due })))]);
  }
  return [...duels.counts.values()].reduce((sum, { games }) => sum + 2 * games, 0);
}

/** The median of the processor's milliseconds over some moments. */
function medianMs(moments: readonly GameMoment[], work: (moment: GameMoment) => unknown): number {
  const times = moments.map((moment) => {
    const start = CLOCKS.cpu();
    work(moment);
    return CLOCKS.cpu() - start;
  });
  return times.toSorted((one, other) => one - other)[times.length >> 1] as number;
}

function rankingsAt(step: PassStep): Measure[] {
  const moments = momentsBefore((event) => event.type === 'gave' && event.step === step);
  const next = inTurn(moments);
  const [first] = moments as [GameMoment];
  const { known, model } = opened(first);
  const readings = distinctPasses(known.rack, 3).length * draws(known.unseen, 3).length;
  const choices = choicesOf(first);
  const { samples, ended } = settled(first, choices);
  const alive = choices.map((_, place) => place);
  let block = 0;
  return [
    {
      name: `the first ranking of passes at ${step}, against a full reading of every draw after every pass`,
      unit: 'ranking',
      referenceShare: readings,
      reference: () => readKnown(compiled, opened(next()).known, 0, model),
      candidate: () => firstRanking(next()),
      atLeast: 1_000,
      check: () => {
        if (firstRanking(first)[0]?.length !== 3) throw new Error('no pass is ranked first');
      },
      more: () => ({ 'median ms of one processor': medianMs(moments, firstRanking) }),
    },
    {
      name: `the settled ranking of passes at ${step}, ${samples} futures, against as many whole games`,
      unit: 'ranking',
      referenceShare: samples / choices.length,
      reference: () => {
        block += 1;
        return finish(futures({ ...first, depth: 'game', choices, seed: 1, blockSize: 1, blocks: [block], alive }));
      },
      candidate: () => settled(first, choices),
      atLeast: 4,
      check: () => {
        if (ended === null) throw new Error('the look ahead did not end');
      },
      more: () => ({
        'median ms from the rack to the end, with two workers':
          medianMs(moments, firstRanking) + medianMs(moments, (moment) => settled(moment, choicesOf(moment))) / WORKERS,
      }),
    },
  ];
}

function adviceInPlay(): Measure[] {
  let discards = 0;
  const moments = momentsBefore((event) => {
    if (event.type === 'dealt') discards = 0;
    if (event.type === 'discarded' && event.seat === 'South') discards += 1;
    return discards === 3;
  });
  const next = inTurn(moments);
  const [first] = moments as [GameMoment];
  const { model } = opened(first);
  const games = costs(first);
  let seed = 0;
  return [
    {
      name: 'the list of a discard, against a full reading after each',
      unit: 'list',
      reference: () => {
        const { known } = opened(next());
        return known.rack.distinct().map((kind) => {
          const after = { ...known, rack: known.rack.without(kind) };
          return readKnown(compiled, after, 0, model);
        });
      },
      candidate: () => finish(advise(next())),
      atLeast: 0.5,
      check: () => {
        if (expectValue(finish(advise(first))).choices.length < 2) throw new Error('there is nothing to choose');
      },
      more: () => ({ 'median ms of one processor': medianMs(moments, (moment) => finish(advise(moment))) }),
    },
    {
      name: `what the next ${COMPARED} discards cost, ${games} games from there, against as many from the deal`,
      unit: 'costs',
      referenceShare: games,
      reference: () => simulate({ compiled, seed: (seed += 1), games: 1, policies: PLAYERS_AT.club }),
      candidate: () => costs(first),
      atLeast: 0.5,
      check: () => {
        if (games === 0) throw new Error('no games were played');
      },
      more: () => ({ 'median ms with two workers': medianMs(moments, costs) / WORKERS }),
    },
  ];
}

export function measures(): Measure[] {
  return [...(['right', 'across', 'left'] as const).flatMap(rankingsAt), ...adviceInPlay()];
}
