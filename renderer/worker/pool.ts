import { type Result, success } from '../../core/base/result.ts';
import { EXCHANGE_FIGURES, GAME_FIGURES } from '../../core/future/figures.ts';
import type { DueGames, PairCount } from '../../core/future/play-costs.ts';
import type { BlockSums, RaceRule } from '../../core/plan/race.ts';
import { Race, type RaceResult } from '../../core/plan/race-run.ts';
import type { WorkerLine } from './client.ts';
import { type Engine, engine, type EngineQuestions } from './engine.ts';

/** How many workers share the blocks; what they find does not depend on their number. */
const WORKERS = 2;

/** What blocks of futures are counted of. */
export type ContestRequest = Omit<EngineQuestions['futures']['request'], 'blocks' | 'alive' | 'seed' | 'blockSize'>;

/** What is heard of a race on the way. */
export interface RaceListener {
  readonly signal: AbortSignal;
  /** Where the race stands, at every look. */
  readonly look?: (result: RaceResult) => void;
  /** The part that is done, 0 to 1, should it go on to the end of its budget. */
  readonly progress?: (part: number) => void;
}

/**
 * Workers that look ahead together, for the Table, the look-back and the Warm-up: each counts its
 * share of a race's blocks. The window has one pool.
 */
export class Pool {
  readonly #workers: readonly [Engine, ...Engine[]];

  constructor(start?: () => WorkerLine, workers = WORKERS) {
    const [first, ...others] = Array.from({ length: workers }, () => engine(start));
    this.#workers = [first ?? engine(start), ...others];
  }

  /** The first of the workers, for a single question. */
  get first(): Engine {
    return this.#workers[0];
  }

  /** Runs a race to its end. */
  async race(
    contest: ContestRequest,
    rule: RaceRule,
    { signal, look, progress }: RaceListener,
  ): Promise<Result<RaceResult>> {
    const figures = contest.depth === 'game' ? GAME_FIGURES : EXCHANGE_FIGURES;
    const race = new Race({ candidates: contest.choices.length, figures }, rule);
    const futures = (rule.looks.at(-1) as number) * rule.blockSize;
    let before = 0;
    for (let due = race.due; due !== null; due = race.due) {
      const request = { ...contest, seed: rule.seed, blockSize: rule.blockSize, ...due };
      const sums = await this.#count(request, signal, (counted) => progress?.((before + counted) / futures));
      if (!sums.ok) return sums;
      before += due.blocks.length * rule.blockSize;
      race.take(sums.value);
      look?.(race.result());
    }
    return success(race.result());
  }

  /** Plays the games due from a moment of play, each worker its share of them. */
  async playGames(
    moment: EngineQuestions['gameChance']['request'],
    due: DueGames,
    signal: AbortSignal,
  ): Promise<Result<readonly (readonly PairCount[])[]>> {
    const share = Math.ceil((due.to - due.from) / this.#workers.length);
    const answers = await Promise.all(
      this.#workers.map((worker, place) => {
        const from = due.from + place * share;
        const part = { ...due, from, to: Math.min(due.to, from + share) };
        return worker.ask('playGames', { ...moment, due: part }, { signal });
      }),
    );
    const parts: (readonly PairCount[])[] = [];
    for (const answer of answers) {
      if (!answer.ok) return answer;
      parts.push(answer.value);
    }
    return success(parts);
  }

  async #count(
    request: EngineQuestions['futures']['request'],
    signal: AbortSignal,
    progress: (futures: number) => void,
  ): Promise<Result<readonly BlockSums[]>> {
    const counted = this.#workers.map(() => 0);
    const shares = await Promise.all(
      this.#workers.map((worker, share) => {
        const blocks = request.blocks.filter((_, place) => place % this.#workers.length === share);
        const onProgress = (futures: number): void => {
          counted[share] = futures;
          progress(counted.reduce((sum, each) => sum + each, 0));
        };
        return worker.ask('futures', { ...request, blocks }, { signal, onProgress });
      }),
    );
    const sums: BlockSums[] = [];
    for (const share of shares) {
      if (!share.ok) return share;
      sums.push(...share.value);
    }
    return success(sums);
  }
}
