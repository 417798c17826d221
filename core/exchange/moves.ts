import { capital } from '../base/words.ts';
import { failure, type Result, success } from '../base/result.ts';
import { type Kind, supplyOf } from '../tiles/kinds.ts';
import { nameOf, pluralNameOf } from '../tiles/names.ts';
import { Tiles } from '../tiles/tiles.ts';
import {
  advance,
  blindLimit,
  type ExchangeProblem,
  type ExchangeState,
  outOfReach,
  stepAfter,
  stopDue,
} from './state.ts';
import { agreed, mayBePassed, PASS_SIZE, type PassStep, STEPS, type Stop } from './steps.ts';
import { NEVER_PASSED, STEP_NAMES, countWord, tileCount } from './words.ts';

type Moved = Result<ExchangeState, ExchangeProblem>;

/** A pass as the player makes it. */
export interface OwnPass {
  readonly step: PassStep;
  /** From the own rack. */
  readonly tiles: Tiles;
  /** Handed on unseen from those coming in, 0 to 3. */
  readonly blind?: number;
  /** Courtesy only: how many the player asked for, and the player across. */
  readonly asked?: number;
  readonly offered?: number;
}

/** Gives a pass; the tiles leave the rack, and as many are then to come in. */
export function give(state: ExchangeState, giving: OwnPass): Moved {
  const refused = stillToCome(state) ?? stepRefused(state, giving.step) ?? tilesRefused(state, giving);
  if (refused) return refused;
  const blind = giving.blind ?? 0;
  const pass = { step: giving.step, given: giving.tiles, blind, received: Tiles.none };
  const moved = { ...state, rack: state.rack.minus(giving.tiles), passes: [...state.passes, pass] };
  const toCome = giving.tiles.size;
  return success(toCome === 0 ? advance(moved, stepAfter(giving.step)) : { ...moved, phase: 'receiving', toCome });
}

/** Takes in one or more tiles of the step now under way; the last one makes the next step due. */
export function receive(state: ExchangeState, step: PassStep, tiles: Tiles): Moved {
  const refused = stepRefused(state, step) ?? incomingRefused(state, step, tiles);
  if (refused) return refused;
  const passes = state.passes.map((pass) =>
    pass.step === step ? { ...pass, received: pass.received.plus(tiles) } : pass,
  );
  const moved = { ...state, rack: state.rack.plus(tiles), passes, toCome: state.toCome - tiles.size };
  return success(moved.toCome === 0 ? advance(moved, stepAfter(step)) : moved);
}

/** Ends the second round or the courtesy before it starts. After a stop the courtesy is still open (EX-7, EX-8). */
export function stop(state: ExchangeState, before: Stop): Moved {
  const refused = stillToCome(state);
  if (refused) return refused;
  if (stopDue(state) !== before) return failure('no-stop', noStop(before));
  return success(advance({ ...state, stops: [...state.stops, before] }, before === 'left2' ? 'courtesy' : null));
}

/** The tiles of the rack that may be given now. */
export function givable(state: ExchangeState): Tiles {
  if (state.phase !== 'giving') return Tiles.none;
  return Tiles.of(state.rack.toKinds().filter(mayBePassed));
}

function stepRefused(state: ExchangeState, step: PassStep): Moved | undefined {
  if (state.step === step) return undefined;
  if (state.stops.includes('left2') && STEPS[step].round === 'second') {
    return failure('stopped', `The second round was stopped, so there is no ${STEP_NAMES[step]}: undo the stop first.`);
  }
  if (state.step === null) {
    return failure(
      'over',
      `The exchange is over, so there is no ${STEP_NAMES[step]}: undo the last step to change it.`,
    );
  }
  return failure('wrong-step', `The ${STEP_NAMES[state.step]} is due now, not the ${STEP_NAMES[step]}.`);
}

function stillToCome(state: ExchangeState): Moved | undefined {
  if (state.phase !== 'receiving' || state.step === null) return undefined;
  const verb = state.toCome === 1 ? 'is' : 'are';
  const words = `${capital(tileCount(state.toCome))} of the ${STEP_NAMES[state.step]} ${verb} still to come`;
  return failure('still-to-come', `${words}: enter what you received first.`);
}

function tilesRefused(state: ExchangeState, giving: OwnPass): Moved | undefined {
  return countRefused(state, giving) ?? jokerRefused(giving) ?? absentRefused(state, giving);
}

function countRefused(state: ExchangeState, giving: OwnPass): Moved | undefined {
  const blind = giving.blind ?? 0;
  if (STEPS[giving.step].size === 'agreed') return blind > 0 ? blindRefused() : courtesyRefused(giving);
  if (!isCount(blind)) return failure('no-blind', 'A blind pass hands on one, two or three tiles.');
  if (blind > blindLimit(state)) return blindRefused();
  if (giving.tiles.size + blind === PASS_SIZE) return undefined;
  const unseen = blind > 0 ? ` and ${blind} unseen` : '';
  return failure('wrong-count', `A pass has three tiles: you chose ${giving.tiles.size}${unseen}.`);
}

function blindRefused(): Moved {
  return failure(
    'no-blind',
    'A blind pass is only for the first left and the second right: choose three of your tiles.',
  );
}

function courtesyRefused({ tiles, asked = tiles.size, offered = tiles.size }: OwnPass): Moved | undefined {
  const tooMany = [asked, offered, tiles.size].find((count) => !isCount(count));
  if (tooMany !== undefined) {
    return failure('courtesy-count', `A courtesy pass has none to three tiles, not ${tooMany}.`);
  }
  const due = agreed(asked, offered);
  if (tiles.size === due) return undefined;
  const words = `You asked for ${asked} and the player across for ${offered}`;
  return failure('courtesy-count', `${words}: the smaller number counts, so give ${tileCount(due)}.`);
}

function isCount(count: number): boolean {
  return Number.isInteger(count) && count >= 0 && count <= PASS_SIZE;
}

function jokerRefused({ tiles }: OwnPass): Moved | undefined {
  return tiles.distinct().every(mayBePassed) ? undefined : failure('joker-passed', NEVER_PASSED);
}

function absentRefused(state: ExchangeState, { tiles }: OwnPass): Moved | undefined {
  const absent = tiles.distinct().find((kind) => tiles.count(kind) > state.rack.count(kind));
  if (absent === undefined) return undefined;
  return failure('not-in-rack', notInRack(absent, tiles.count(absent), state.rack.count(absent)));
}

/** Why `wanted` copies of a kind can't leave a rack that holds `held` of it. */
export function notInRack(kind: Kind, wanted: number, held: number): string {
  if (held === 0) return `There is no ${nameOf(kind)} in your rack: choose a tile that is there.`;
  return `Your rack has ${held} ${held === 1 ? nameOf(kind) : pluralNameOf(kind)}, not ${wanted}: choose fewer.`;
}

function incomingRefused(state: ExchangeState, step: PassStep, tiles: Tiles): Moved | undefined {
  if (state.phase !== 'receiving') {
    return failure('nothing-to-come', `Give the ${STEP_NAMES[step]} first, then enter what you received.`);
  }
  if (tiles.size === 0) return failure('wrong-count', 'No tile was named: enter what you received.');
  if (tiles.size > state.toCome) {
    return failure('wrong-count', onlyToCome(tiles.size, state.toCome));
  }
  if (!tiles.distinct().every(mayBePassed)) {
    return failure('joker-passed', 'A joker is never passed, so none can come in.');
  }
  return beyondSet(state, tiles);
}

function onlyToCome(typed: number, toCome: number): string {
  const [these, due] = typed > PASS_SIZE ? [`${typed} tiles`, String(toCome)] : [tileCount(typed), countWord(toCome)];
  return `These are ${these}, but only ${due} ${toCome === 1 ? 'is' : 'are'} still to come.`;
}

function beyondSet(state: ExchangeState, tiles: Tiles): Moved | undefined {
  const accounted = state.rack.plus(outOfReach(state)).plus(tiles);
  const kind = tiles.distinct().find((each) => accounted.count(each) > supplyOf(each));
  if (kind === undefined) return undefined;
  return failure(
    'not-in-set',
    `The set has only ${supplyOf(kind)} ${pluralNameOf(kind)}, and the others are accounted for: check this tile.`,
  );
}

function noStop(before: Stop): string {
  return before === 'left2'
    ? 'The second round can only be stopped before its first pass, right after the first left pass.'
    : 'The courtesy pass can only be left out when it is due.';
}
