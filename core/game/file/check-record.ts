import { SEATS } from '../../exchange/steps.ts';
import { type Check, firstTrouble, isAmount, isFlag, isOneOf, isSeat, isText, isTime, optional } from './fields.ts';
import { isFields } from './plain-json.ts';

/** More events than any game can have. */
const MOST_EVENTS = 5_000;
const MOST_TAGS = 50;

const isId: Check = (value) =>
  typeof value === 'string' && /^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/.test(value)
    ? null
    : 'must be 1 to 64 letters, digits and dashes';

const isTags: Check = (value) =>
  Array.isArray(value) && value.length <= MOST_TAGS && value.every((tag) => isText(60)(tag) === null)
    ? null
    : `must be a list of at most ${MOST_TAGS} short words`;

const isEventList: Check = (value) =>
  Array.isArray(value) && value.length <= MOST_EVENTS ? null : `must be a list of at most ${MOST_EVENTS} events`;

const isCard: Check = (value) => (isFields(value) ? null : 'must be a card');

const isPlayers: Check = (value) => {
  if (!isFields(value)) return 'must name players by seat';
  const stray = Object.keys(value).find((name) => isSeat(name) !== null);
  if (stray !== undefined) return `has "${stray}", which is no seat`;
  return firstTrouble(value, Object.fromEntries(SEATS.map((seat) => [seat, optional(isText(60))])));
};

const isPayment: Check = (value) => {
  if (!isFields(value)) return 'must be rules of payment';
  return firstTrouble(value, {
    scheme: isOneOf(['hand', 'fixed', 'none']),
    stake: isAmount,
    discarderPays: isAmount,
    othersPay: isAmount,
    drawPays: isAmount,
    jokerlessTimes: isAmount,
    jokerlessAlsoPairs: isFlag,
    limit: (limit) => (limit === null ? null : isAmount(limit)),
  });
};

/** What every field of a game file must be; a field not named here passes and is kept. */
export const RECORD_CHECKS: Readonly<Record<string, Check>> = {
  appVersion: isText(40),
  id: isId,
  startedAt: isTime,
  editedAt: optional(isTime),
  zone: isText(60),
  place: isText(200),
  tags: isTags,
  demo: isFlag,
  card: isCard,
  events: isEventList,
  copyOf: optional(isId),
  evening: optional(isText(64)),
  players: optional(isPlayers),
  payment: optional(isPayment),
};
