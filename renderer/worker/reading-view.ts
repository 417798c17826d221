import { type Hand, handOf } from '../../core/reading/hand.ts';
import { bestOfLines } from '../../core/reading/lean.ts';
import { type RankBy, rankedWays } from '../../core/reading/ranking.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { nameOf, pluralNameOf } from '../../core/tiles/names.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import type { HandPlace, PlaceStanding } from '../parts/wr-hand.ts';
import type { HandView, ReadingView, StruckView } from './calls.ts';

/** The most hands that are handed over; a player looks at the first few. */
const MOST_HANDS = 60;

const STANDINGS: Readonly<Record<Hand['groups'][number]['places'][number]['held'], PlaceStanding>> = {
  natural: 'filled',
  joker: 'joker',
  missing: 'missing',
};

/** A reading as plain data, ready to be drawn. */
export function readingView(reading: Reading): ReadingView {
  const views = new Map<number, HandView>();
  return {
    rack: formatTiles(reading.known.rack),
    ways: reading.compiled.wayCount,
    away: reading.away,
    draws: reading.draws,
    lean: reading.lean,
    byReach: bestOfEachLine(reading, 'reach', views),
    byAway: bestOfEachLine(reading, 'away', views),
    struck: struckLines(reading),
  };
}

/** A hand that both orders show is one object, so that it is made once, and goes to the window once. */
function bestOfEachLine(reading: Reading, by: RankBy, views: Map<number, HandView>): HandView[] {
  const seen = new Set<number>();
  const hands: HandView[] = [];
  for (const way of rankedWays(reading, by)) {
    const line = reading.compiled.lineOf[way] ?? 0;
    if (seen.has(line) || reading.reaches[way] === 0) continue;
    seen.add(line);
    const view = views.get(way) ?? handView(handOf(reading, way), reading.compiled.ways[way]?.key ?? '');
    views.set(way, view);
    hands.push(view);
    if (hands.length === MOST_HANDS) break;
  }
  return hands;
}

/** Lines of which no way can be reached any more. */
function struckLines({ compiled, reaches }: Reading): StruckView[] {
  const best = bestOfLines(compiled, reaches);
  return compiled.lines.flatMap(({ id, section, concealed, ways }, place) => {
    if ((best[place] as number) > 0) return [];
    const why = ways.length > 0 ? 'gone' : concealed ? 'concealed' : 'groups';
    return [{ line: id, section, why }];
  });
}

function handView(hand: Hand, wayKey: string): HandView {
  return {
    key: `${hand.line.id} ${wayKey}`,
    line: hand.line.id,
    section: hand.line.section,
    points: hand.line.points,
    concealed: hand.line.concealed,
    note: hand.line.note,
    away: hand.away,
    drawReach: hand.drawReach,
    reach: hand.reach,
    groups: hand.groups.map(({ places }) => places.map(({ kind, held }) => placeOf(kind, STANDINGS[held]))),
    missing: missingWords(hand.missing),
  };
}

const places = new Map<string, HandPlace>();

/** Equal places are one object, so that what goes to the window is a fifth as long. */
function placeOf(kind: Kind, standing: PlaceStanding): HandPlace {
  const key = `${standing} ${kind}`;
  const known = places.get(key) ?? { kind, standing };
  places.set(key, known);
  return known;
}

/** "five bam", "2 five bams": each kind once. */
function missingWords(missing: readonly Kind[]): string[] {
  const counts = new Map<Kind, number>();
  for (const kind of missing) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts].map(([kind, count]) => (count === 1 ? nameOf(kind) : `${count} ${pluralNameOf(kind)}`));
}
