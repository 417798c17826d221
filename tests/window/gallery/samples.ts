import { kindOf, type KindCode } from '../../../core/tiles/kinds.ts';
import type { HandPlace } from '../../../renderer/parts/wr-hand.ts';
import type { RackTile } from '../../../renderer/parts/rack/rack-tile.ts';
import type { TileMark } from '../../../renderer/parts/tile/wr-tile.ts';

/** Groups written as tile and standings: `4b` `++j-` is two here, one by joker, one missing. */
function group(code: KindCode, standings: string): HandPlace[] {
  const words: Readonly<Record<string, HandPlace['held']>> = { '+': 'natural', j: 'joker', '-': 'missing' };
  return [...standings].map((sign) => ({ kind: kindOf(code), held: words[sign] ?? 'missing' }));
}

export const aHand = [group('F', '++'), group('4b', '++j-'), group('5b', '+++-'), group('6b', '+--j')];
export const aLongHand = [group('2b', '+-'), group('2c', '+++'), group('N', '++jj'), group('0', '-----')];

export const aLean = [
  { section: 'Two Shores', share: 0.41 },
  { section: 'Three Shores', share: 0.24 },
  { section: 'Weather', share: 0.14 },
  { section: 'Lanterns', share: 0.09 },
  { section: 'Still Water', share: 0.06 },
  { section: 'Boulders', share: 0.035 },
  { section: 'Dragons', share: 0.021 },
  { section: 'Quints', share: 0.004 },
];

const KEPT: readonly string[] = ['F', '4b', '5b', '6b'];

/** A rack of 13 with marks and two gaps. */
export function aRack(): RackTile[] {
  const codes: KindCode[] = ['J', 'F', 'F', 'N', '0', '4b', '4b', '5b', '6b', '2c', '5c', '9d', '9d'];
  return codes.map((code, at) => ({
    id: `t${at}`,
    kind: kindOf(code),
    space: at === 5 || at === 9 ? 'gap' : 'none',
    ...markOf(code),
  }));
}

function markOf(code: string): { mark?: TileMark; why?: string } {
  if (KEPT.includes(code)) return { mark: 'kept' };
  if (code === '9d') return { mark: 'strained', why: 'Two Shores and Still Water both want it' };
  return code === 'J' ? {} : { mark: 'spare' };
}
