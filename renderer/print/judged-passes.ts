import { formatTileList } from '../../core/tiles/text.ts';
import type { JudgedPass } from '../../core/warmup/sheet.ts';
import type { AnswerView } from '../worker/warm-up-calls.ts';

/** All passes with what the engine found, best first. */
export function judgedPasses({ options }: AnswerView): JudgedPass[] {
  return options.map(({ give, cost, verdict }) => ({ give: formatTileList(give), cost, verdict }));
}
