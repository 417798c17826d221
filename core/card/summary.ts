import type { Card } from './card.ts';
import type { CardProblem, CheckedCard } from './check.ts';

/** What the command `card` tells of a card. */
export interface CardSummary {
  readonly title: string;
  readonly season: string;
  /** Ways of all lines together. */
  readonly ways: number;
  readonly lines: readonly {
    readonly id: string;
    readonly section: string;
    readonly pattern: string;
    readonly ways: number;
  }[];
  readonly problems: readonly Pick<CardProblem, 'section' | 'id' | 'column' | 'message'>[];
}

/** Every line of a card, in printed order. */
export function linesOf(card: Card): readonly Card['sections'][number]['lines'][number][] {
  return card.sections.flatMap((section) => section.lines);
}

export function summarizeCard({ card, problems }: CheckedCard): CardSummary {
  const lines = linesOf(card).map(({ id, section, pattern, ways }) => ({ id, section, pattern, ways: ways.length }));
  return {
    title: card.title,
    season: card.season,
    ways: lines.reduce((sum, { ways }) => sum + ways, 0),
    lines,
    problems: problems.map(({ section, id, column, message }) => ({ section, id, column, message })),
  };
}
