import type { AimStanding } from '../../../core/warmup/answer.ts';
import { warmUpWords } from '../../words/warmup.ts';

const words = warmUpWords.answer;

/** How an aim stands, in a sentence. */
export function aimWords({ aim, rank, of }: AimStanding): string {
  const name = aim.replace(/^(section|line):/, '');
  if (rank === 0) return words.aimGone(name);
  return rank === 1 ? words.aimFirst(name) : words.aimRank(name, rank, of);
}
