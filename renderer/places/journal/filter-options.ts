import { SEATS } from '../../../core/exchange/steps.ts';
import { ADVICE_TIMES } from '../../../core/game/advice.ts';
import type { JournalFilter } from '../../../core/journal/filter.ts';
import { OUTCOMES } from '../../../core/journal/summary.ts';
import type { ChoiceOption } from '../../parts/wr-choice.ts';
import { adviceWords } from '../../words/advice.ts';
import { journalWords as words } from '../../words/journal.ts';
import type { JournalGame } from './journal-game.ts';

/** One filter that is picked from a list: how its value reads in the filter, and how a pick changes it. */
export interface FilterPick {
  readonly label: string;
  readonly value: string;
  readonly options: readonly ChoiceOption[];
  readonly picked: (value: string) => JournalFilter;
}

const ANY: ChoiceOption = { value: '', label: words.any };

/** The picks that these games give a choice of; a filter that is in use always stays. */
export function filterPicks(games: readonly JournalGame[], filter: JournalFilter): FilterPick[] {
  return [
    textPick(
      words.place,
      'place',
      games.map(({ place }) => place),
      filter,
    ),
    seatPick(filter),
    outcomePick(filter),
    textPick(
      words.section,
      'section',
      games.map(({ section }) => section ?? ''),
      filter,
    ),
    tagPick(games, filter),
    notesPick(filter),
    textPick(
      words.card,
      'cardTitle',
      games.map(({ cardTitle }) => cardTitle),
      filter,
    ),
    textPick(
      words.season,
      'season',
      games.map(({ season }) => season),
      filter,
    ),
    advicePick(filter),
    demoPick(filter),
  ].filter(({ options, value }) => options.length > 1 || value !== '');
}

function textPick(
  label: string,
  field: 'place' | 'cardTitle' | 'season' | 'section',
  values: readonly string[],
  filter: JournalFilter,
): FilterPick {
  const { [field]: value = '', ...rest } = filter;
  const options = distinct(values).map((each) => ({ value: each, label: each }));
  return {
    label,
    value,
    options: [ANY, ...options],
    picked: (next) => (next === '' ? rest : { ...rest, [field]: next }),
  };
}

function seatPick({ seats, ...rest }: JournalFilter): FilterPick {
  return {
    label: words.seat,
    value: seats?.[0] ?? '',
    options: [ANY, ...SEATS.map((seat) => ({ value: seat, label: seat }))],
    picked: (value) => ({ ...rest, ...oneOf(SEATS, value, (seat) => ({ seats: [seat] })) }),
  };
}

function outcomePick({ outcomes, ...rest }: JournalFilter): FilterPick {
  return {
    label: words.outcome,
    value: outcomes?.[0] ?? '',
    options: [ANY, ...OUTCOMES.map((outcome) => ({ value: outcome, label: words.outcomes[outcome] }))],
    picked: (value) => ({ ...rest, ...oneOf(OUTCOMES, value, (outcome) => ({ outcomes: [outcome] })) }),
  };
}

function tagPick(games: readonly JournalGame[], { tags, ...rest }: JournalFilter): FilterPick {
  const options = distinct(games.flatMap((game) => game.tags)).map((each) => ({ value: each, label: each }));
  return {
    label: words.tag,
    value: tags?.[0] ?? '',
    options: [ANY, ...options],
    picked: (value) => (value === '' ? rest : { ...rest, tags: [value] }),
  };
}

function notesPick({ withNotes, ...rest }: JournalFilter): FilterPick {
  return {
    label: words.notes,
    value: withNotes === undefined ? '' : String(withNotes),
    options: [ANY, { value: 'true', label: words.withNotes }, { value: 'false', label: words.withoutNotes }],
    picked: (value) => (value === '' ? rest : { ...rest, withNotes: value === 'true' }),
  };
}

function advicePick({ advice, ...rest }: JournalFilter): FilterPick {
  return {
    label: adviceWords.label,
    value: advice ?? '',
    options: [ANY, ...ADVICE_TIMES.toReversed().map((each) => ({ value: each, label: adviceWords.names[each] }))],
    picked: (value) => ({ ...rest, ...oneOf(ADVICE_TIMES, value, (each) => ({ advice: each })) }),
  };
}

function demoPick({ demo, ...rest }: JournalFilter): FilterPick {
  return {
    label: words.whose,
    value: demo === undefined ? '' : String(demo),
    options: [ANY, { value: 'false', label: words.mine }, { value: 'true', label: words.demoOnly }],
    picked: (value) => (value === '' ? rest : { ...rest, demo: value === 'true' }),
  };
}

/** What a list's value stands for, made into a part of the filter; nothing for "any". */
function oneOf<Value extends string, Part>(
  values: readonly Value[],
  wanted: string,
  part: (value: Value) => Part,
): Part | object {
  const value = values.find((each) => each === wanted);
  return value === undefined ? {} : part(value);
}

function distinct(values: readonly string[]): string[] {
  return [...new Set(values)].filter((value) => value !== '').sort((one, other) => one.localeCompare(other));
}

/** How many filters narrow the list, the search apart. */
export function filtersInUse({ words: _, ...filter }: JournalFilter): number {
  return Object.keys(filter).length;
}
