import { failure, type Problem, type Result, success } from '../base/result.ts';
import { PASS_STEPS } from '../exchange/steps.ts';
import { type Check, firstTrouble, isCount, isFlag, isOneOf, isText, optional } from '../game/file/fields.ts';
import { isFields } from '../game/file/plain-json.ts';
import { DEAL_KINDS } from './deal-kinds.ts';
import { GUESSED, type PracticeEntry } from './history.ts';

const isShare: Check = (value) =>
  typeof value === 'number' && value >= 0 && value <= 1 ? null : 'must be a number from 0 to 1';
const isId: Check = (value) =>
  typeof value === 'string' && /^[A-Za-z0-9-]{1,64}$/.test(value) ? null : 'must be 1 to 64 letters, digits and dashes';

const ENTRY = { id: isId, day: isCount };
const DECISION = {
  ...ENTRY,
  kind: isOneOf(DEAL_KINDS),
  step: isOneOf(PASS_STEPS),
  cost: isShare,
  halfWidth: optional(isShare),
};

const CHECKS: Readonly<Record<PracticeEntry['type'], Readonly<Record<string, Check>>>> = {
  miss: { ...DECISION, source: isText(80) },
  answer: {
    ...DECISION,
    miss: (value) => (value === null ? null : isId(value)),
    verdict: isOneOf(['best', 'equal', 'slip', 'costly']),
    seconds: optional(isCount),
  },
  guess: { ...ENTRY, what: isOneOf(GUESSED), sure: isShare, right: isFlag },
};

/** An entry of unknown make as an entry of the practice history. Fields not known are kept. */
export function checkPracticeEntry(value: unknown): Result<PracticeEntry, Problem<'bad-entry'>> {
  if (!isFields(value)) return failure('bad-entry', 'This is not an entry of the practice history.');
  const type = value['type'];
  if (!isEntryType(type)) return failure('bad-entry', `"type" must be one of ${Object.keys(CHECKS).join(', ')}.`);
  const trouble = firstTrouble(value, CHECKS[type]);
  return trouble === null ? success(asEntry(value)) : failure('bad-entry', `${trouble}.`);
}

/** The good ones of many entries; those of a newer Windrow, and damaged ones, are passed over. */
export function practiceEntries(values: readonly unknown[]): PracticeEntry[] {
  return values.flatMap((value) => {
    const entry = checkPracticeEntry(value);
    return entry.ok ? [entry.value] : [];
  });
}

function isEntryType(value: unknown): value is PracticeEntry['type'] {
  return typeof value === 'string' && Object.hasOwn(CHECKS, value);
}

/** Every field of its type has been checked just before. */
function asEntry(value: object): PracticeEntry {
  return value as PracticeEntry;
}
