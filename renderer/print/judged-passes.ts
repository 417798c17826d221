import { formatTileList } from '../../core/tiles/text.ts';
import { Tiles } from '../../core/tiles/tiles.ts';
import type { JudgedPass } from '../../core/warmup/sheet.ts';
import { endCostOf } from '../../core/warmup/sheet-ends.ts';
import type { AnswerView, JudgedView } from '../worker/warm-up-calls.ts';
import type { SheetAnswer } from './answer-for.ts';

/** All passes with what the engine found, the best first: by the end of the exchange where that is known, else for now. */
export function judgedPasses({ answer, ends }: SheetAnswer): JudgedPass[] {
  const best = ends?.rows[0]?.give ?? null;
  const passes = answer.options.map(({ give, cost: now, verdict }) => {
    const end = ends === null ? undefined : endCostOf(ends, Tiles.of(give));
    const judged = end ?? { cost: now, halfWidth: null, verdict };
    const pass = {
      give: formatTileList(give),
      cost: judged.cost,
      halfWidth: judged.halfWidth,
      verdict: judged.verdict,
      now,
    };
    return { pass, isBest: end !== undefined && end.give === best };
  });
  return [...passes.filter(({ isBest }) => isBest), ...passes.filter(({ isBest }) => !isBest)].map(({ pass }) => pass);
}

/** The option of the plan that gives these tiles. */
export function optionOf(text: string | undefined, { options }: AnswerView): JudgedView | undefined {
  return options.find(({ give }) => formatTileList(give) === text);
}
