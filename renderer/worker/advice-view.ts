import type { Advised, PlayAdvice } from '../../core/review/advice.ts';
import type { AdvisedView, AdviceView } from './calls.ts';

export function adviceView({ wins, discards, call }: PlayAdvice): AdviceView {
  return {
    wins: wins.map(({ id, section, points }) => ({ line: id, section, points })),
    discards: discards.map(advisedView),
    call: call === null ? null : { ...call, choices: call.choices.map(advisedView) },
  };
}

function advisedView({ tiles, worth, cost, verdict, hand }: Advised): AdvisedView {
  return {
    tiles: tiles.toKinds(),
    worth,
    cost,
    verdict,
    hand: hand === null ? null : { line: hand.line.id, section: hand.line.section, away: hand.away },
  };
}
