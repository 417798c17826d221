import type { CardChance } from '../chance/card-chance.ts';
import type { PassStep } from '../exchange/steps.ts';
import type { Discard } from '../game/game-state.ts';
import type { AdvisedChoice } from '../future/pass-advice.ts';
import type { PassNumbers, PassOption, PassPlan } from '../plan/plan.ts';
import { handOf, type HandGroup } from '../reading/hand.ts';
import { bestOfLines, type SectionShare } from '../reading/lean.ts';
import { type RankBy, rankedWays } from '../reading/targets.ts';
import type { Reading } from '../reading/reading.ts';
import { type TurningTile, turningTiles } from '../reading/one-tile.ts';
import { type TileVerdict, tileVerdicts } from '../reading/verdicts.ts';
import type { OthersReading } from '../others/others.ts';
import type { Take } from '../others/seat-reading.ts';
import type { PlayChoice, PlayChoices } from '../review/play-choices.ts';
import type { Costed } from '../review/play-costs.ts';
import type { IncomingRates } from '../table/incoming-rates.ts';
import { codeOf, type Kind, type KindCode } from '../tiles/kinds.ts';
import { nameOf, pluralNameOf } from '../tiles/names.ts';
import { formatTiles } from '../tiles/text.ts';

/*
 * What the questions of the exchange and of a hand are answered with: plain data, the same for the
 * commands and for the window. The first fields of each are those of the commands, fixed from
 * outside; `…Contract` picks them.
 */

/** A reading: the hands that a rack can still become. */
export interface ReadingDocument {
  readonly tiles: string;
  /** How many ways the card has; with groups laid open those that hold them. */
  readonly ways: number;
  readonly away: number;
  readonly lean: readonly SectionShare[];
  /** The hands, best first: the best way of each line, or as many ways as were asked for. */
  readonly hands: readonly HandDocument[];
  /** Draws that `drawReach` looks ahead. */
  readonly draws: number;
  /** The best way of each line by tiles away, least first; empty where ways were asked for. */
  readonly byAway: readonly HandDocument[];
  /** Lines that can't be made any more, in the card's order; they are in neither list. */
  readonly struck: readonly StruckLine[];
}

/** A way of a line, with its numbers for a rack. */
export interface HandDocument {
  /** The line's id. */
  readonly line: string;
  /** The line's name for a player: "Weather, 4th line". */
  readonly name: string;
  readonly section: string;
  readonly points: number;
  readonly concealed: boolean;
  readonly away: number;
  readonly drawReach: number;
  readonly reach: number;
  /** In the order of the printed line: `FF`, `4444b`. */
  readonly groups: readonly string[];
  readonly missing: readonly KindCode[];
  /** Distinct for distinct ways of a card. */
  readonly key: string;
  readonly note: string;
  /** The 14 places, group by group. */
  readonly places: readonly HandGroup['places'][];
  /** Names of the tiles that are missing, "2 five bams" as one. */
  readonly missingNames: readonly string[];
}

/** A line that can't be made any more. */
interface StruckLine {
  readonly line: string;
  readonly name: string;
  /** Whether its tiles are gone, it has no place for the groups laid open, or it is concealed. */
  readonly why: 'gone' | 'groups' | 'concealed';
}

/** What the tiles are to a reading: those of the rack, and those that may still come. */
export interface TilesDocument {
  readonly verdicts: readonly VerdictDocument[];
  /** The unseen tiles that would change most, best first. */
  readonly turning: readonly TurningTile[];
}

export interface VerdictDocument extends Pick<TileVerdict, 'kind' | 'copy' | 'sentence' | 'loss'> {
  readonly verdict: 'keep' | 'spare' | 'strain';
}

/** All passes of one step, best first. */
export interface PlanDocument {
  readonly step: PassStep;
  readonly options: readonly PassDocument[];
  /** Expected away and reach are exact means, not samples. */
  readonly exact: true;
  /** What comes in by the numbers of the options; null if all tiles alike. */
  readonly rates: IncomingRates | null;
}

export interface PassDocument extends PassNumbers {
  readonly give: readonly KindCode[];
  readonly gift: number;
  /** The same tiles as `give`. */
  readonly kinds: readonly Kind[];
  /** Its numbers if all tiles were as likely to come in. */
  readonly even: PassNumbers;
  /** The standard error of the gift. */
  readonly giftError: number;
  /** Why, in short sentences for a player. */
  readonly reasons: readonly string[];
}

/** The choices of a step of the exchange in one list, the recommended one first. */
export interface PassAdviceDocument {
  readonly step: PassStep;
  readonly options: readonly AdvisedPassDocument[];
}

/** A choice of the list: a pass, or the stop before the second round, which gives nothing. */
export interface AdvisedPassDocument
  extends Omit<PassDocument, 'even'>, Pick<AdvisedChoice, 'chance' | 'costs' | 'error' | 'verdict'> {
  readonly stop: boolean;
}

/** All that can be done at a moment of play. What the choices cost is open until games from there have told (`withCosts`). */
export interface AdviceDocument {
  /** One list, best first; empty when nothing is due. */
  readonly choices: readonly AdvisedDocument[];
  /** The discard on the table that the choices are about; null with a tile to discard. */
  readonly offered: Discard | null;
  /** True until the card's own games have been played: the chances are then those of the form for all cards. */
  readonly provisional: boolean;
}

export interface AdvisedDocument extends Pick<PlayChoice, 'action' | 'owner' | keyof Costed> {
  /**
   * The tile discarded, the group laid open, the tile given for a joker, the discard that completes the hand; none for
   * letting a discard go and for a win with the tiles in hand.
   */
  readonly tiles: readonly Kind[];
  /** The chance that another seat takes the tile discarded; null for all else. */
  readonly take: Take | null;
  /** The hand that is then the best, or that is won; null when none is left. */
  readonly hand: {
    readonly line: string;
    readonly name: string;
    readonly section: string;
    readonly points: number;
    readonly away: number;
  } | null;
}

/** The most hands that are listed line by line; a player looks at the first few. */
const MOST_HANDS = 60;
/** The turning tiles that are listed; a player remembers a few. */
const MOST_TURNING = 6;

/** Which ways a reading lists, instead of the best of each line: `top` of them, 0 for all. */
export interface WayList {
  readonly by: RankBy;
  readonly top: number;
}

export function readingDocument(reading: Reading, list?: WayList): ReadingDocument {
  const made = new Map<number, HandDocument>();
  // A hand that both orders hold is one object, so that it is made once, and goes to the window once.
  const hand = (way: number): HandDocument => {
    const document = made.get(way) ?? handDocument(reading, way);
    made.set(way, document);
    return document;
  };
  return {
    tiles: formatTiles(reading.known.rack),
    ways: reading.compiled.wayCount,
    away: reading.away,
    lean: reading.lean,
    hands: (list === undefined ? bestOfEachLine(reading, 'reach') : waysOf(reading, list)).map(hand),
    draws: reading.draws,
    byAway: list === undefined ? bestOfEachLine(reading, 'away').map(hand) : [],
    struck: struckLines(reading),
  };
}

function waysOf(reading: Reading, { by, top }: WayList): number[] {
  return [...rankedWays(reading, by, top)];
}

/** The best way of each line that can still be made. */
function bestOfEachLine(reading: Reading, by: RankBy): number[] {
  const seen = new Set<number>();
  const ways: number[] = [];
  for (const way of rankedWays(reading, by)) {
    const line = reading.compiled.lineOf[way] as number;
    if (seen.has(line) || reading.reaches[way] === 0) continue;
    seen.add(line);
    ways.push(way);
    if (ways.length === MOST_HANDS) break;
  }
  return ways;
}

function handDocument(reading: Reading, way: number): HandDocument {
  const { line, away, drawReach, reach, groups, missing } = handOf(reading, way);
  return {
    line: line.id,
    name: line.name,
    section: line.section,
    points: line.points,
    concealed: line.concealed,
    away,
    drawReach,
    reach,
    groups: groups.map(({ text }) => text),
    missing: missing.map(codeOf),
    key: `${line.id} ${reading.compiled.ways[way]?.key ?? ''}`,
    note: line.note,
    places: groups.map(({ places }) => places.map(sharedPlace)),
    missingNames: missingNames(missing),
  };
}

type HandPlace = HandGroup['places'][number];

const PLACES = new Map<string, HandPlace>();

/** Equal places are one object, so that what goes to the window is a fifth as long. */
function sharedPlace(place: HandPlace): HandPlace {
  const key = `${place.held} ${place.kind}`;
  const known = PLACES.get(key) ?? place;
  PLACES.set(key, known);
  return known;
}

/** "five bam", "2 five bams": each kind once. */
function missingNames(missing: readonly Kind[]): string[] {
  const counts = new Map<Kind, number>();
  for (const kind of missing) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts].map(([kind, count]) => (count === 1 ? nameOf(kind) : `${count} ${pluralNameOf(kind)}`));
}

function struckLines({ compiled, reaches }: Reading): StruckLine[] {
  const best = bestOfLines(compiled, reaches);
  return compiled.lines.flatMap(({ id, name, concealed, ways }, place) => {
    if ((best[place] as number) > 0) return [];
    const why = ways.length > 0 ? 'gone' : concealed ? 'concealed' : 'groups';
    return [{ line: id, name, why }];
  });
}

export function tilesDocument(reading: Reading): TilesDocument {
  return { verdicts: verdictDocuments(tileVerdicts(reading)), turning: turningTiles(reading).slice(0, MOST_TURNING) };
}

export function verdictDocuments(verdicts: readonly TileVerdict[]): VerdictDocument[] {
  return verdicts.map(({ kind, copy, verdict, strain, sentence, loss }) => ({
    kind,
    copy,
    verdict: verdict === 'keep' && strain !== null ? 'strain' : verdict,
    sentence,
    loss,
  }));
}

export function passDocument({ give, gift, ...option }: PassOption): PassDocument {
  const { expectedAway, reach, cost, even, reasons } = option;
  return {
    give: give.map(codeOf),
    expectedAway,
    reach,
    cost,
    gift: gift.mean,
    kinds: give,
    even,
    giftError: gift.error,
    reasons,
  };
}

export function planDocument(
  step: PassStep,
  options: readonly PassOption[],
  rates: IncomingRates | null = null,
): PlanDocument {
  return { step, options: options.map(passDocument), exact: true, rates };
}

/** `now`: the exact numbers of the rack as it is, for the stop. */
export function passAdviceDocument(
  step: PassStep,
  list: readonly AdvisedChoice[],
  plans: readonly PassPlan[],
  now: { readonly away: number; readonly reach: number },
): PassAdviceDocument {
  const options = plans.flatMap((plan) => plan.options);
  const most = options.reduce((best, { reach }) => Math.max(best, reach), 0);
  return {
    step,
    options: list.map(({ choice, chance, costs, error, verdict }) => {
      const advised = { chance, costs, error, verdict, stop: choice.type === 'stop' };
      if (choice.type === 'stop') {
        const { away, reach } = now;
        const numbers = { expectedAway: away, reach, cost: Math.max(0, most - reach), gift: 0, giftError: 0 };
        return { give: [], kinds: [], ...numbers, reasons: ['The exchange ends with the courtesy.'], ...advised };
      }
      const named = choice.tiles.join();
      const { even: _, ...pass } = passDocument(options.find(({ give }) => give.join() === named) as PassOption);
      return { ...pass, cost: most - pass.reach, ...advised };
    }),
  };
}

export function adviceDocument({ choices, offered, others }: PlayChoices, { games }: CardChance): AdviceDocument {
  return { choices: choices.map((choice) => advisedDocument(choice, others)), offered, provisional: games === 0 };
}

function advisedDocument({ tiles, hand, ...choice }: PlayChoice, others: OthersReading | null): AdvisedDocument {
  const kinds = tiles.toKinds();
  const [kind] = kinds;
  const isDiscard = choice.action === 'discard' && kind !== undefined;
  const take = isDiscard ? (others?.taken(kind) ?? null) : null;
  return { ...choice, tiles: kinds, take, hand: hand === null ? null : handAfter(hand) };
}

function handAfter({ line, away }: NonNullable<PlayChoice['hand']>): NonNullable<AdvisedDocument['hand']> {
  return { line: line.id, name: line.name, section: line.section, points: line.points, away };
}

/** What the command `read` answers with. */
export type ReadingContract = Pick<ReadingDocument, 'tiles' | 'ways' | 'away' | 'lean'> & {
  /** The chance to win, with any hand. */
  readonly chance: number;
  readonly hands: readonly HandContract[];
};
type HandContract = Omit<HandDocument, 'name' | 'key' | 'note' | 'places' | 'missingNames'>;

export function readingContract({ tiles, ways, away, lean, hands }: ReadingDocument, chance: number): ReadingContract {
  return { tiles, ways, away, chance, lean, hands: hands.map(handContract) };
}

function handContract(hand: HandDocument): HandContract {
  const { line, section, points, concealed, away, drawReach, reach, groups, missing } = hand;
  return { line, section, points, concealed, away, drawReach, reach, groups, missing };
}

/** What the command `pass` answers with. */
export type PlanContract = Pick<PlanDocument, 'step' | 'exact'> & { readonly options: readonly PassContract[] };
type PassContract = Pick<PassDocument, 'give' | 'expectedAway' | 'reach' | 'cost' | 'gift'>;

/** `top` 0 gives all options. */
export function planContract({ step, options, exact }: PlanDocument, top = 0): PlanContract {
  const listed = top === 0 ? options : options.slice(0, top);
  return { step, options: listed.map(passContract), exact };
}

/** What the command `pass` answers with where advice is asked for. */
export interface PassAdviceContract extends Pick<PlanContract, 'step' | 'exact'> {
  readonly options: readonly AdvisedPassContract[];
}

interface AdvisedPassContract extends PassContract, Pick<AdvisedChoice, 'chance' | 'costs' | 'error' | 'verdict'> {
  /** Only with the stop, which gives nothing. */
  readonly stop?: true;
}

/** `top` 0 gives all options. The stop is the option that says so. */
export function passAdviceContract({ step, options }: PassAdviceDocument, top = 0): PassAdviceContract {
  const listed = top === 0 ? options : options.slice(0, top);
  return {
    step,
    options: listed.map((option) => {
      const { chance, costs, error, verdict, stop } = option;
      return { ...passContract(option), chance, costs, error, verdict, ...(stop ? { stop: true } : {}) };
    }),
    exact: true,
  };
}

function passContract({ give, expectedAway, reach, cost, gift }: PassContract): PassContract {
  return { give, expectedAway, reach, cost, gift };
}
