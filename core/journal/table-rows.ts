import { PASS_STEPS } from '../exchange/steps.ts';
import type { SeasonGame } from './season.ts';

/** A cell of an exported table: numbers stay numbers, null is an empty cell. */
export type Cell = string | number | null;

export const TABLE_HEADER: readonly string[] = [
  'id',
  'started (UTC)',
  'place',
  'tags',
  'seat',
  'card',
  'season',
  'outcome',
  'winner',
  'won by',
  'section',
  'hand',
  'points',
  'jokers dealt',
  'away at deal',
  ...PASS_STEPS.map((step) => `away after ${step}`),
  'away at end',
  'aimed at',
  'advice',
  'notes',
];

/** The journal as rows under `TABLE_HEADER`, for a players' spreadsheet. */
export function tableRows(games: readonly SeasonGame[]): Cell[][] {
  return games.map(({ summary, figures }) => {
    const away = new Map(figures?.aways.map((each) => [each.moment, each.away]));
    return [
      summary.id,
      summary.startedAt,
      summary.place,
      summary.tags.join(', '),
      summary.seat,
      summary.cardTitle,
      summary.season,
      summary.outcome,
      summary.winner,
      summary.wonBy,
      summary.section,
      summary.lineName,
      summary.points,
      summary.jokersDealt,
      ...(['deal', ...PASS_STEPS, 'end'] as const).map((moment) => away.get(moment) ?? null),
      figures?.aimed ?? null,
      summary.advice,
      summary.notes.join('\n'),
    ];
  });
}
