import { readFileSync } from 'node:fs';
import { randomFromSeed } from '../../core/base/random.ts';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { awayOfAll } from '../../core/reading/deficits.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { Hand } from '../../core/table/hand.ts';
import { simulate, traceGame } from '../../core/table/simulate.ts';
import { makeTableCard } from '../../core/table/table-card.ts';
import type { TableEvent } from '../../core/table/trace.ts';
import { shuffledSet } from '../../core/tiles/deal.ts';
import { KIND_COUNT, type Kind } from '../../core/tiles/kinds.ts';
import { CLOCKS } from './clocks.mjs';
import type { Measures } from './measure.ts';

const text = readFileSync(new URL('assets/demo.card.json', `file://${process.cwd()}/`), 'utf8');
const compiled = compileCard(expectValue(readCardFile(text)).card);
const hand = new Hand(makeTableCard(compiled));
const random = randomFromSeed(2026);
const aways = new Uint8Array(compiled.wayCount);
const rack: Kind[] = shuffledSet(random).slice(0, 13);
for (const kind of rack) hand.add(kind);

/** A tile comes into the rack and another goes: what happens at every turn of a simulated game. */
function turn(): void {
  const place = random.below(13);
  const incoming = COMING[random.below(COMING.length)] as Kind;
  hand.add(incoming);
  hand.remove(rack[place] as Kind);
  rack[place] = incoming;
}
const COMING = shuffledSet(random);

const SEED = 1;
const SOFT = ['soft', 'soft', 'soft', 'soft'] as const;
const traces = Array.from({ length: 40 }, (_, place) => traceGame({ compiled, seed: SEED, policies: SOFT }, place));
let game = 0;

/** Follows a traced game and counts every rack's distance to every way anew whenever its tiles change. */
function recount(events: readonly TableEvent[]): void {
  const racks = [0, 1, 2, 3].map(() => new Uint8Array(KIND_COUNT));
  const move = (seat: number, tiles: readonly Kind[], by: number): void => {
    const counts = racks[seat] as Uint8Array;
    for (const kind of tiles) {
      counts[kind] = (counts[kind] as number) + by;
      awayOfAll(compiled, counts, aways);
    }
  };
  for (const event of events) {
    if (event.type === 'dealt' || event.type === 'received') move(event.seat, event.tiles, 1);
    if (event.type === 'gave') move(event.seat, event.tiles, -1);
    if (event.type === 'drew') move(event.seat, [event.tile], 1);
    if (event.type === 'discarded') move(event.seat, [event.tile], -1);
  }
}

/** What this ratio was, in the same runs as 7.7 now, when each decision looked through all ways. */
const BEFORE = 3.6;

function gamesASecond(): number {
  const games = 400;
  const start = CLOCKS.cpu();
  simulate({ compiled, seed: SEED, games, policies: SOFT });
  return (1000 * games) / (CLOCKS.cpu() - start);
}

function tallyOfTraces(): { draws: number; wallGames: number } {
  const events = traces.flat();
  const countOf = (type: TableEvent['type']): number => events.filter((event) => event.type === type).length;
  return { draws: countOf('drew'), wallGames: countOf('wallGame') };
}

export const measures: Measures = [
  {
    name: 'one tile in, one out, the nearest way, demo card',
    unit: 'turn',
    reference: () => {
      turn();
      awayOfAll(compiled, hand.counts, aways);
      let least = 14;
      for (const away of aways) if (away < least) least = away;
      return least;
    },
    candidate: () => {
      turn();
      return hand.least();
    },
    atLeast: 1.5,
    check: () => {
      for (let count = 0; count < 200; count += 1) {
        turn();
        awayOfAll(compiled, hand.counts, aways);
        const least = aways.reduce((best, next) => Math.min(best, next), 14);
        if (hand.least() !== least) throw new Error(`the nearest way is ${least} away, not ${hand.least()}`);
      }
    },
  },
  {
    name: 'ten games of four soft players, demo card, against all aways anew at each of their events',
    unit: 'ten games',
    reference: () => {
      for (let place = 0; place < 10; place += 1) recount(traces[(game + place) % traces.length] ?? []);
    },
    candidate: () => {
      game = (game + 10) % traces.length;
      return simulate({ compiled, seed: SEED, first: game, games: 10, policies: SOFT });
    },
    atLeast: 2.5,
    more: () => ({ 'games a second': gamesASecond(), 'times as fast before near ways were kept tile by tile': BEFORE }),
    check: () => {
      const alone = tallyOfTraces();
      const played = simulate({ compiled, seed: SEED, games: traces.length, policies: SOFT });
      if (played.draws !== alone.draws) throw new Error(`${played.draws} draws were played, ${alone.draws} traced`);
      if (played.wallGames !== alone.wallGames) throw new Error('the traces end otherwise than the games');
    },
  },
];
