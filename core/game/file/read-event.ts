import { type Result, success } from '../../base/result.ts';
import { STOPS } from '../../exchange/state.ts';
import { PASS_STEPS } from '../../exchange/steps.ts';
import type { GameEventType, TimedEvent } from '../events.ts';
import {
  type Check,
  firstTrouble,
  isAmount,
  isCount,
  isFlag,
  isOneOf,
  isSeat,
  isText,
  isTime,
  optional,
} from './fields.ts';
import { isFields } from './plain-json.ts';
import { type GameFileProblem, refuseFile } from './problems.ts';

/** The longest note kept. */
const LONGEST_NOTE = 10_000;

const isTiles = isText(100);

/** What the fields of each type of event must be. */
export const EVENT_CHECKS: Readonly<Record<GameEventType, Readonly<Record<string, Check>>>> = {
  dealt: { seat: isSeat, tiles: isTiles },
  gave: {
    step: isOneOf(PASS_STEPS),
    tiles: isTiles,
    blind: optional(isCount),
    asked: optional(isCount),
    offered: optional(isCount),
  },
  received: { step: isOneOf(PASS_STEPS), tiles: isTiles },
  stopped: { before: isOneOf(STOPS), seat: optional(isSeat) },
  drew: { tile: isTiles },
  discarded: { seat: isSeat, tile: isTiles },
  called: { seat: isSeat, tile: isTiles, group: isTiles, from: optional(isSeat) },
  swapped: { seat: isSeat, owner: isSeat, tile: isTiles },
  ended: {
    result: isOneOf(['won', 'wall', 'abandoned']),
    winner: optional(isSeat),
    by: optional(isOneOf(['draw', 'discard'])),
    from: optional(isSeat),
    lineId: optional(isText(100)),
    jokerless: optional(isFlag),
    tile: optional(isTiles),
    points: optional(isAmount),
    seat: optional(isSeat),
  },
  noted: { text: isText(LONGEST_NOTE), about: optional(isCount) },
};

/** An event of unknown make, from a file or another process, as an event. Fields not known are kept. */
export function readEvent(value: unknown): Result<TimedEvent, GameFileProblem> {
  if (!isFields(value)) return refuseFile('bad-field', 'this is not an event.');
  const type = value['type'];
  if (!isEventType(type))
    return refuseFile('bad-field', `"type" must be one of ${Object.keys(EVENT_CHECKS).join(', ')}.`);
  const trouble = firstTrouble(value, { ...EVENT_CHECKS[type], at: isTime });
  return trouble === null ? success(asEvent(value)) : refuseFile('bad-field', `${trouble}.`);
}

function isEventType(value: unknown): value is GameEventType {
  return typeof value === 'string' && Object.hasOwn(EVENT_CHECKS, value);
}

/** Every field of its type has been checked just above. */
function asEvent(value: object): TimedEvent {
  return value as TimedEvent;
}
