import { capital } from '../../../core/base/words.ts';
import type { Card } from '../../../core/card/card.ts';
import { nameOf, tileWords } from '../../../core/tiles/names.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import { Tiles } from '../../../core/tiles/tiles.ts';
import { aimedSection, rankOf } from '../../../core/warmup/aims.ts';
import type { Attempt } from '../../../core/warmup/warm-up.ts';
import { practiceWords } from '../../words/practice.ts';
import { aimName } from './aim-names.ts';
import type { ShownAnswer } from './warm-up-run.ts';

const words = practiceWords.answer;

/** Where a player's reading of a rack differs from Windrow's, in sentences: aims, tiles kept, tiles given. */
export function differences(attempt: Attempt, shown: ShownAnswer, sections: Card['sections']): string[] {
  const { reading } = shown.answer;
  const aims = attempt.aims.map((aim) => {
    const name = aimName(aim, sections);
    if (name === null) return words.aimGone;
    const rank = rankOf(reading, aim);
    if (rank === 0) return words.aimOut(name);
    const of = aimedSection(aim) === null ? reading.hands.length : reading.lean.length;
    return rank === 1 ? words.aimFirst(name) : words.aimRank(name, rank, of);
  });
  return [...aims, ...keptGiven(attempt, shown), ...givenKept(attempt, shown)];
}

/** What she would keep although every good pass gives it away, told against the best one. */
function keptGiven({ keeps }: Attempt, shown: ShownAnswer): string[] {
  const kept = Tiles.of(kindsOf(keeps));
  const rack = Tiles.of(kindsOf(shown.answer.reading.tiles));
  // Of several copies the best pass may leave as many as she keeps.
  const both = givenByBest(shown).minus(rack.minus(kept)).toKinds();
  if (both.length === 0) return [];
  return [both.length === 1 ? words.keptGiven(tileWords(both)) : words.keptGivenMore(tileWords(both))];
}

/** What she gave although her choice costs something and the tile serves a near hand. */
function givenKept({ give }: Attempt, shown: ShownAnswer): string[] {
  const { chosen } = shown.ahead;
  if (chosen.verdict === 'best' || chosen.verdict === 'equal') return [];
  const given = Tiles.of(kindsOf(give)).minus(givenByBest(shown));
  return given.distinct().flatMap((kind) => {
    const copies = shown.answer.tiles.filter((each) => each.kind === kind);
    const verdict = copies.at(-given.count(kind));
    return verdict === undefined || verdict.verdict === 'spare'
      ? []
      : [words.gaveKept(nameOf(kind), reasonIn(verdict.sentence))];
  });
}

/** Why, without the word of the verdict before it. */
function reasonIn(sentence: string): string {
  return capital(sentence.replace(/^[A-Z][a-z]+: /, ''));
}

function givenByBest({ list: [best] }: ShownAnswer): Tiles {
  return best === undefined || best.choice.type === 'stop' ? Tiles.none : Tiles.of(best.choice.tiles);
}
