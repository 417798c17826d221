import type { BlockSums, Contest, RaceRule } from '../../core/plan/race.ts';
import { blockSteps } from '../../core/plan/race.ts';
import { Race, type RaceResult, raceSteps } from '../../core/plan/race-run.ts';

/** Games won with known chances: a shared stroke of luck and one's own, half and half. */
export function coins(chances: readonly number[], shared = 0.5): Contest {
  return {
    candidates: chances.length,
    figures: [{ name: 'won', kind: 'share', better: 'more' }],
    sample: (candidate, random, into) => {
      const isShared = random.fraction() < shared;
      const common = random.fraction();
      for (let other = 0; other < candidate; other += 1) random.fraction();
      into[0] = (isShared ? common : random.fraction()) < (chances[candidate] as number) ? 1 : 0;
    },
  };
}

/** Values spread evenly over 0.2 about known means, with a second figure of twice as much less one. */
export function spreads(means: readonly number[]): Contest {
  return {
    candidates: means.length,
    figures: [
      { name: 'reach', kind: 'mean', better: 'more' },
      { name: 'away', kind: 'mean', better: 'less' },
    ],
    sample: (candidate, random, into) => {
      const common = random.fraction() - 0.5;
      for (let other = 0; other < candidate; other += 1) random.fraction();
      const value = (means[candidate] as number) + 0.1 * common + 0.1 * (random.fraction() - 0.5);
      into[0] = value;
      into[1] = 1 - 2 * value;
    },
  };
}

export function finished<Value>(steps: Generator<unknown, Value>): Value {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

export function raceOf(contest: Contest, rule: RaceRule): RaceResult {
  return finished(raceSteps(contest, rule));
}

/** The same race with its blocks dealt out to so many counters, the last one's answers first. */
export function raceInShards(makeContest: () => Contest, rule: RaceRule, shards: number): RaceResult {
  const contests = Array.from({ length: shards }, makeContest);
  const race = new Race(makeContest(), rule);
  for (let due = race.due; due !== null; due = race.due) {
    const { blocks, alive } = due;
    const answers: BlockSums[][] = contests.map((contest, shard) =>
      blocks
        .filter((block) => block % shards === shard)
        .map((block) => finished(blockSteps(contest, rule, block, alive))),
    );
    race.take(answers.reverse().flat());
  }
  return race.result();
}

/** The bytes of a result, every bit of every number. */
export function bytesOf(result: RaceResult): string {
  return JSON.stringify(result, (_, value: unknown) =>
    typeof value === 'number' ? Buffer.from(Float64Array.of(value).buffer).toString('hex') : value,
  );
}
