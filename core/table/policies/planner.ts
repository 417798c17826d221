import { type Deficits, emptyDeficits } from '../../reading/deficits.ts';
import { reachOfDeficits } from '../../reading/reader.ts';
import { JOKER } from '../../tiles/kinds.ts';
import type { TrialRack } from '../weigher.ts';
import type { PolicyMaker } from '../policy.ts';
import type { TableCard } from '../table-card.ts';
import { ByWeight } from './by-weight.ts';
import { passReader, playReader } from './planner-model.ts';

/**
 * Ways overlap, so their reaches can't simply be added; a power above one leans to the best ones.
 * Two told winners from losers better than one and as well as three, by the log loss named in
 * planner-model.ts.
 */
const POWER = 2;
/** What is left of a concealed hand's reach: nobody's discard helps it before the last tile. */
const CONCEALED_SHARE = 0.75;

/**
 * Values a rack by the reach of its near ways and gives up what costs the least of it. A pass is
 * chosen tile by tile, and what comes in is counted as draws, which is what makes it fast.
 */
export const planner: PolicyMaker = (card) => {
  const deficits = emptyDeficits();
  let reader = passReader('right');
  return new ByWeight(card, {
    weigh: (way, _plain, _wild, rack) => {
      fillTrialDeficits(card, way, rack, deficits);
      const concealed = card.compiled.concealed[way] !== 0;
      const reach = reachOfDeficits(reader.reach, deficits, rack.unseen[JOKER] as number, concealed);
      return (concealed ? CONCEALED_SHARE * reach : reach) ** POWER;
    },
    margin: 2,
    targetBonus: 0,
    idleShare: 0.1,
    stopShare: 0.5,
    prepare: (view, step) => {
      reader = step === undefined ? playReader(view.wallLeft) : passReader(step);
    },
  });
};

/** What a way lacks for a trial rack, its exposures taken as filled groups. */
function fillTrialDeficits(card: TableCard, way: number, rack: TrialRack, into: Deficits): void {
  const { starts, needKind, needPlain, needWild } = card.compiled;
  const end = starts[way + 1] as number;
  let length = 0;
  let plainShort = 0;
  let wildShort = 0;
  for (let need = starts[way] as number; need < end; need += 1) {
    const kind = needKind[need] as number;
    const over = (rack.counts[kind] as number) - (needPlain[need] as number);
    const plain = over < 0 ? -over : 0;
    const wild = Math.max(0, (needWild[need] as number) - (rack.exposed[kind] as number) - Math.max(0, over));
    if (plain + wild === 0) continue;
    into.kind[length] = kind;
    into.plain[length] = plain;
    into.wild[length] = wild;
    into.unseen[length] = rack.unseen[kind] as number;
    length += 1;
    plainShort += plain;
    wildShort += wild;
  }
  into.length = length;
  into.shortage = Math.max(0, wildShort - (rack.counts[JOKER] as number));
  into.away = plainShort + into.shortage;
}
