import { readFileSync } from 'node:fs';
import { expectValue, type Result } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { readCardFile } from '../../core/card/file.ts';
import { provisionalChance } from '../../core/chance/card-chance.ts';
import { lookBack } from '../../core/engine/game-questions.ts';
import { exchangeContest } from '../../core/future/exchange-futures.ts';
import { PLAY_RULE, type PlayRule } from '../../core/future/play-costs.ts';
import type { Position } from '../../core/future/known-deal.ts';
import { type PassChoice, rivalsOf } from '../../core/future/rivals.ts';
import type { GameEvent, TimedEvent } from '../../core/game/events.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { type RaceRule, USUAL_RULE } from '../../core/plan/race.ts';
import { raceSteps } from '../../core/plan/race-run.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { FIRST_REACH_MODEL, type StageTerms } from '../../core/reading/reach-model.ts';
import { type Ahead, aheadOf } from '../../core/review/ahead.ts';
import { GameChance } from '../../core/review/game-chance.ts';
import { type Yardstick, FIRST_STAGES, type GameYardstick, gameYardstick } from '../../core/review/yardstick.ts';
import { PlayedGame } from '../../core/review/played-game.ts';
import { type Review, reviewSteps } from '../../core/review/review.ts';
import { makeTableCard, type TableCard } from '../../core/table/table-card.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { demoTerms } from '../table/cards.ts';

const CARD = JSON.parse(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8')) as object;

/** A card of four lines, small enough for plain enumeration. */
export const SMALL_CARD = {
  format: 'windrow.card',
  version: 1,
  title: 'Four lines',
  season: '2026',
  sections: [
    {
      name: 'Stairs',
      lines: [
        { id: 's1', pattern: 'FF 1111a 2222a 3333a', slide: 1, points: 30 },
        { id: 's2', pattern: '11a 22a 33a 44a 55a 66a 77a', points: 50, concealed: true },
      ],
    },
    {
      name: 'Compass',
      lines: [
        { id: 'c1', pattern: 'NNNN EE WW SSSS FF', points: 30 },
        { id: 'c2', pattern: 'FFFF 888a 888b DDDa 0', slide: 1, points: 25 },
      ],
    },
  ],
};

/** A pair and a kong of one kind in a line: a group laid open must not fill both. */
export const TWICE_CARD = {
  format: 'windrow.card',
  version: 1,
  title: 'A pair and a kong of one kind',
  season: '',
  sections: [
    {
      name: 'Twice',
      lines: [
        { id: 'twice', pattern: '11bam 1111bam 2222crak 3333dot', points: 30 },
        { id: 'inside', pattern: '1111bam 22crak 44crak 3333dot 55dot', points: 40, concealed: true },
      ],
    },
  ],
};

/** A decision of the exchange, looked ahead from. */
interface AheadRequest {
  readonly position: Position;
  readonly passes: readonly (readonly Kind[])[];
  readonly chosen: PassChoice;
  readonly rule?: RaceRule;
}

/** Looks ahead with the demo card from a decision to the end of the exchange, in one go. */
export function lookAheadFrom(card: TableCard, request: AheadRequest): Ahead {
  const { position, passes, chosen, rule = USUAL_RULE } = request;
  const choices = rivalsOf({ step: position.exchange.step!, passes, chosen });
  const contest = exchangeContest(card, position, choices, demoTerms);
  return aheadOf(finish(raceSteps(contest, rule)), choices, chosen);
}

export function yardstickOf(card: object): Yardstick {
  return { compiled: compileCard(expectValue(readCardFile(JSON.stringify(card))).card), model: FIRST_REACH_MODEL };
}

export const SMALL = yardstickOf(SMALL_CARD);
export const DEMO = yardstickOf(CARD);
export const SMALL_GAMES: GameYardstick = gameYardstick(SMALL.compiled, FIRST_STAGES);
/** The chance to win at a club table, for any card. */
export const ANY_CHANCE = provisionalChance('club');

export function recordOf(events: readonly GameEvent[], card: object = SMALL_CARD): GameRecord {
  return {
    kind: 'windrow.game',
    schemaVersion: 1,
    appVersion: '0.1.0',
    id: 'game-1',
    startedAt: '2026-11-19T19:00:00Z',
    zone: 'America/Chicago',
    place: 'lakeside library',
    tags: [],
    demo: false,
    card,
    events: events.map((event): TimedEvent => ({ ...event, at: '2026-11-19T19:00:00Z' })),
  };
}

export function playedGame(events: readonly GameEvent[], games: GameYardstick = SMALL_GAMES): PlayedGame {
  return expectValue(PlayedGame.of(events, games));
}

export function review(
  events: readonly GameEvent[],
  yardstick: Yardstick = SMALL,
  stages: StageTerms = FIRST_STAGES,
  rule: PlayRule = PLAY_RULE,
): Review {
  const game = playedGame(events, gameYardstick(yardstick.compiled, stages));
  return finish(reviewSteps(recordOf(events), game, gameChance(yardstick, rule)));
}

/** Few games, where it doesn't matter how well costs are known. */
export const FEW_GAMES: PlayRule = { ...PLAY_RULE, looks: [16] };

/** The chance to win in the states of games with a card. */
export function gameChance({ compiled }: Pick<Yardstick, 'compiled'> = SMALL, rule: PlayRule = FEW_GAMES): GameChance {
  return new GameChance(makeTableCard(compiled), ANY_CHANCE, { rule });
}

/** The whole look-back of a game, as the command and the window make it. */
export function lookedBack(record: GameRecord, stages: StageTerms | null = null): Result<Review> {
  return finish(lookBack({ record, stages }));
}

/** Both rounds as far as the first pass of the second one: tables of 1, 1, 4 and 1 sizes. */
export const TWO_ROUNDS: readonly GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'JJ FF 11b 22b 69d N E W' },
  { type: 'gave', step: 'right', tiles: 'N E W' },
  { type: 'received', step: 'right', tiles: 'S S G' },
  { type: 'gave', step: 'across', tiles: 'S S G' },
  { type: 'received', step: 'across', tiles: '445d' },
  { type: 'gave', step: 'left', tiles: '445d' },
  { type: 'received', step: 'left', tiles: '6c 7c 9c' },
  { type: 'gave', step: 'left2', tiles: '69d 6c' },
];
