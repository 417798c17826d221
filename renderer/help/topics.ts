import rulesPage from '../../core/exchange/RULES.md?raw';
import numbersPage from './NUMBERS.md?raw';
import { readRules, readTopics, type Topic } from './page.ts';

/** The rules of the exchange, from the page that the tests quote. */
export const EXCHANGE_RULES: readonly string[] = readRules(rulesPage);

/** The explanations of the numbers, from their page. */
export const NUMBER_TOPICS: readonly Topic[] = readTopics(numbersPage);

/** The place of the topic that explains what stands under this heading in the window; null when none does. */
export function topicOf(heading: string): number | null {
  const found = NUMBER_TOPICS.findIndex(({ shownAs }) => shownAs.includes(heading));
  return found === -1 ? null : found;
}
