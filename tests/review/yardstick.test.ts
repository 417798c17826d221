import { describe, expect, test } from 'vitest';
import { finish } from '../../core/base/steps.ts';
import { expectValue } from '../../core/base/result.ts';
import { lookBack } from '../../core/engine/game-questions.ts';
import { likelyDrawn } from '../../core/game/stage.ts';
import type { GameEvent } from '../../core/game/events.ts';
import { stateOf } from '../../core/game/state.ts';
import { BASE_MODELS, BASE_STAGES } from '../../core/reading/base-model.ts';
import { FIRST_REACH_MODEL, type StageTerms } from '../../core/reading/reach-model.ts';
import { PLAY_RULE } from '../../core/future/play-costs.ts';
import { isJudged, type PlayChoice } from '../../core/review/play-choices.ts';
import { playedOut } from '../../core/review/play-games.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { FIRST_STAGES, gameYardstick } from '../../core/review/yardstick.ts';
import { gameChance, lookedBack, recordOf, review, SMALL } from './helpers.ts';

/** The other three win ever sooner: three stages, far apart. */
const STAGES: StageTerms = [99, 89, 79].map((wallLeft, stage) => ({
  wallLeft,
  ends: [20, 30, 40, 50, 60].map((end) => end - 9 * stage),
  source: 'three stages far apart',
}));

const turn = (drawn: string, discarded: string): GameEvent[] => [
  { type: 'drew', tile: drawn },
  { type: 'discarded', seat: 'South', tile: discarded },
];
/** A rack that stays within reach, and five own turns: by then sixteen tiles are drawn. */
const PLAY: GameEvent[] = [
  { type: 'dealt', seat: 'South', tiles: 'JJ FF 11122233b 5c' },
  ...turn('G', '5c'),
  ...turn('9d', 'G'),
  ...turn('N', '9d'),
  ...turn('8c', 'N'),
  ...turn('E', '8c'),
];

describe('the look-back measures each moment with the model that held then, as the Table does', () => {
  const whole = review(PLAY, SMALL, STAGES);
  const placesOfDiscards = PLAY.flatMap(({ type }, place) => (type === 'discarded' ? [place] : []));

  test('the game passes through two stages of play', () => {
    const drawn = placesOfDiscards.map((place) => likelyDrawn(expectValue(stateOf(PLAY.slice(0, place + 1)))));
    expect(drawn.map((count) => Math.floor(count / 10))).toEqual([0, 0, 0, 1, 1]);
  });

  test.each(placesOfDiscards)('the discard at event %i leaves the chance that the Table said of it', (place) => {
    const before = expectValue(stateOf(PLAY.slice(0, place)));
    const decision = whole.decisions.find((each) => each.place === place);
    const asked = ({ tiles }: PlayChoice): boolean => formatTiles(tiles) === decision?.chosen.tiles;
    const { choices } = finish(
      playedOut(gameChance(SMALL, PLAY_RULE).measure, before, PLAY.slice(0, place), { asked }),
    );
    const { verdict, best, chosen, top } = decision!;
    const known = choices.filter(isJudged).toSorted((one, other) => other.chance - one.chance);
    expect(top.map(({ worth }) => worth)).toEqual(known.slice(0, 5).map(({ chance }) => chance));
    expect(best.worth).toBe(verdict === 'best' ? chosen.worth : choices[0]?.chance);
  });

  test('CR-G5: the ledger adds up within 1e-9 and stands at the chance to win, whatever the terms of reach are', () => {
    const { start, parts, end } = whole.ledger;
    expect(Math.abs(parts.reduce((sum, { amount }) => sum + amount, start) - end)).toBeLessThan(1e-9);
    expect(end).toBe(gameChance().at(expectValue(stateOf(PLAY)), PLAY));
    expect(review(PLAY).ledger.end).toBe(end);
  });

  test("MD-C8: the base model is that of the game's stage, not of its beginning", () => {
    const { at } = gameYardstick(SMALL.compiled, BASE_STAGES);
    expect(at(expectValue(stateOf(PLAY.slice(0, 1)))).model).toEqual(BASE_MODELS[0]);
    expect(at(expectValue(stateOf(PLAY))).model).toEqual(BASE_MODELS[1]);
  });

  test('the first model is the same at every stage', () => {
    const { at } = gameYardstick(SMALL.compiled, FIRST_STAGES);
    expect(at(expectValue(stateOf(PLAY))).model).toEqual(FIRST_REACH_MODEL);
  });
});

describe("the card's own model is kept with the look-back", { timeout: 180_000 }, () => {
  const record = recordOf([
    PLAY[0] as GameEvent,
    { type: 'gave', step: 'right', tiles: '5c 3b 1b' },
    { type: 'received', step: 'right', tiles: '9d G N' },
  ]);
  const inCommand = expectValue(lookedBack(record));

  test('which one it was is told, with the terms that make the numbers again', () => {
    expect(inCommand.model).toBe('how soon others win: 800 simulated games with this card');
    expect(inCommand.stages).toHaveLength(10);
    expect(lookedBack(record, inCommand.stages)).toEqual({ ok: true, value: inCommand });
  });

  test('window and command give the same document for the same file', () => {
    const exact = expectValue(finish(lookBack({ record, rule: null })));
    expect(exact).toMatchObject({ lookedAhead: false, ledger: inCommand.ledger });
    expect(expectValue(finish(lookBack({ record, exact })))).toEqual(inCommand);
  });

  test('another card has another mark', () => {
    const other = recordOf([PLAY[0] as GameEvent], { ...(record.card as object), title: 'Another year' });
    expect(expectValue(lookedBack(other, FIRST_STAGES)).card).not.toBe(inCommand.card);
  });
});
