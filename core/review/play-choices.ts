import { expectValue } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import type { Line } from '../card/card.ts';
import type { CardChance } from '../chance/card-chance.ts';
import { layMoment, steadyTable } from '../chance/lay.ts';
import { MomentChance } from '../chance/moment-chance.ts';
import { type Seat, SEATS } from '../exchange/steps.ts';
import type { PlayRule } from '../future/play-costs.ts';
import type { PlayPosition } from '../future/play-futures.ts';
import type { GameEvent } from '../game/events.ts';
import type { Discard, GameState } from '../game/game-state.ts';
import { groupKinds, handSize } from '../game/hand-view.ts';
import { maySwapNow, USUAL_SWAP_AFTER_CALL } from '../game/house-rules.ts';
import { applyEvent } from '../game/state.ts';
import { discardRisks } from '../others/careful.ts';
import { OthersReader, type OthersReading } from '../others/others.ts';
import { lineOfWay } from '../reading/reading.ts';
import type { PlayAction, PlayOption } from '../table/play-option.ts';
import { type DiscardRisks, PlayRanking } from '../table/play-ranking.ts';
import type { Offer, SeatView } from '../table/policy.ts';
import { playerAt, type Table } from '../table/table.ts';
import type { TableCard } from '../table/table-card.ts';
import { codeOf, JOKER, type Kind } from '../tiles/kinds.ts';
import { formatTiles } from '../tiles/text.ts';
import { Tiles } from '../tiles/tiles.ts';
import type { Verdict } from './decision.ts';
import { beforeGames, type Costed, type Valued } from './play-costs.ts';
import { seatMoment } from './seat-moment.ts';

/** What choices of play are measured with: a card as the simulated table needs it, and its chance. */
export interface PlayMeasure {
  readonly table: TableCard;
  readonly chance: CardChance;
  /** How games are played to tell what choices cost; as usual unless given. */
  readonly rule?: PlayRule | undefined;
  /** Whether a joker may be swapped for between a call and the discard after it; as usual unless given. */
  readonly swapAfterCall?: boolean | undefined;
}

/** One thing that can be done now, and what it leaves. */
export interface PlayChoice extends Costed {
  readonly action: PlayAction;
  /** The tile discarded, the group laid open, the tile given for a joker, the discard that completes the hand; empty for letting a discard go and for a win with the tiles in hand. */
  readonly tiles: Tiles;
  /** Whose group the joker of a swap lies in; null for all else. */
  readonly owner: Seat | null;
  /** The hand that is then the best, or that is won; null when none is left. */
  readonly hand: { readonly line: Line; readonly away: number } | null;
}

/** A choice whose cost is known. */
export interface JudgedChoice extends PlayChoice {
  readonly verdict: Verdict;
}

export function isJudged(choice: PlayChoice): choice is JudgedChoice {
  return choice.verdict !== null;
}

/** All that can be done at a moment of play, best first; empty when nothing is due. */
export interface PlayChoices {
  readonly choices: readonly PlayChoice[];
  /** The discard on the table that the choices are about; null with a tile to discard. */
  readonly offered: Discard | null;
  /** What the others can hold; each seat is read when it is first asked about. Null when nothing is due. */
  readonly others: OthersReading | null;
}

const NOTHING: PlayChoices = { choices: [], offered: null, others: null };

/**
 * Everything that the user can do in a state of play, in the order in which games are won (`PlayRanking`, which the
 * simulated adviser, `carefulAdviser`, plays by): with a tile to discard, East's first one included, mah jongg, each kind that can
 * be given for a joker, and each discard; with another's discard on the table mah jongg, letting it go, and a call with
 * each group that a hand holds, never with more jokers than it needs. A discard that can't be used leaves nothing to
 * choose. The chance is that after the first choice; what others cost is open until games tell (play-games.ts).
 *
 * @param events those that led to the state
 * @param made a call of the discard that was made: it is among the choices even where its group shows more jokers than it
 *   needs, or where no hand holds it
 */
export function* playChoices(
  measure: PlayMeasure,
  state: GameState,
  events: readonly GameEvent[],
  made?: Offer,
): Steps<undefined, PlayChoices> {
  const trial = Trial.at(measure, state, events);
  return trial === null ? NOTHING : yield* trial.choices(made);
}

/** What there is to choose from, in the order of `playChoices`, and where games of each begin; null where nothing is due. */
export function playOptions(
  measure: PlayMeasure,
  state: GameState,
  events: readonly GameEvent[],
  made?: Offer,
): { readonly options: readonly PlayOption[]; readonly position: PlayPosition } | null {
  const trial = Trial.at(measure, state, events);
  return trial === null ? null : { options: trial.options(made), position: trial.position };
}

/** What is left by a choice and the best that follows in the same turn. */
interface Left {
  /** As forecast; exactly 0 for a dead hand and 1 for a complete one. */
  readonly chance: number;
  readonly hand: PlayChoice['hand'];
}

/** A state with the events that led to it. */
interface Moment {
  readonly state: GameState;
  readonly events: readonly GameEvent[];
}

/** Rankings are made once for a card. */
const RANKINGS = new WeakMap<TableCard, PlayRanking>();

function rankingFor(card: TableCard): PlayRanking {
  const ranking = RANKINGS.get(card) ?? new PlayRanking(card);
  RANKINGS.set(card, ranking);
  return ranking;
}

/** Tries what can be done at one moment, each thing laid at the table for itself. */
class Trial {
  readonly #now: Moment;
  readonly #seat: Seat;
  readonly #offered: Discard | null;
  readonly #measure: PlayMeasure;
  readonly #table: Table;
  readonly #ranking: PlayRanking;
  readonly #chance: MomentChance;
  /** What the others can hold, read when a discard is first weighed. */
  #others: OthersReading | undefined;
  readonly #risks: DiscardRisks;

  private constructor(measure: PlayMeasure, now: Moment, offered: Discard | null) {
    this.#now = now;
    this.#seat = now.state.seat as Seat;
    this.#offered = offered;
    this.#measure = measure;
    // Nobody at this table decides anything, so that its kind doesn't matter.
    this.#table = steadyTable(measure.table, 'quick');
    this.#ranking = rankingFor(measure.table);
    this.#chance = new MomentChance(this.#table, measure.chance);
    this.#risks = discardRisks(() => this.#readOthers());
  }

  /** Null where nothing is due. */
  static at(measure: PlayMeasure, state: GameState, events: readonly GameEvent[]): Trial | null {
    const { seat, lastDiscard, exchange, result } = state;
    if (seat === null || result !== null || exchange?.phase === 'receiving') return null;
    const now = { state, events: events.slice(0, state.length) };
    if (handSize(state) === 14) return new Trial(measure, now, null);
    const callable = lastDiscard !== null && lastDiscard.seat !== seat && lastDiscard.kind !== JOKER;
    return callable ? new Trial(measure, now, lastDiscard) : null;
  }

  options(made?: Offer): PlayOption[] {
    const { view } = this.#lay(this.#now);
    const risks = this.#risks;
    const offered = this.#offered;
    if (offered === null) return this.#ranking.onTurn(view, { risks, maySwap: this.#maySwap(this.#now.state) });
    return this.#ranking.offered(view, offered.kind, { made, risks, maySwap: this.#swapAfterCall });
  }

  *choices(made?: Offer): Steps<undefined, PlayChoices> {
    const options = this.options(made);
    const choices: PlayChoice[] = [];
    let first: Valued | undefined;
    for (const option of options) {
      const { chance, hand } = this.#leftBy(option);
      const valued = { option, chance, risk: this.#risk(option) };
      first ??= valued;
      const about = { action: option.action, tiles: tilesOf(option), owner: this.#owner(option), hand };
      choices.push({ ...about, ...beforeGames(first, valued) });
      yield undefined;
    }
    return { choices, offered: this.#offered, others: this.#readOthers() };
  }

  /** The chance that another seat wins by the tile of a discard; null for all else. */
  #risk({ action, kind }: PlayOption): number | null {
    return action === 'discard' && kind !== null ? this.#readOthers().taken(kind).win : null;
  }

  get position(): PlayPosition {
    const { before: _, ...moment } = seatMoment(this.#now.state, this.#now.events);
    const offered = this.#offered;
    const maySwap = offered === null ? this.#maySwap(this.#now.state) : this.#swapAfterCall;
    const discarded = offered === null ? null : { seat: SEATS.indexOf(offered.seat), kind: offered.kind };
    return { moment, discarded, maySwap };
  }

  get #swapAfterCall(): boolean {
    return this.#measure.swapAfterCall ?? USUAL_SWAP_AFTER_CALL;
  }

  #maySwap(state: GameState): boolean {
    return maySwapNow(state, this.#swapAfterCall);
  }

  /** Once for all choices: what they change of it is little. */
  #readOthers(): OthersReading {
    if (this.#others === undefined) {
      const { table, chance } = this.#measure;
      const { view } = this.#lay(this.#now);
      this.#others = OthersReader.of(table, chance.kind).read(view);
    }
    return this.#others;
  }

  #leftBy(option: PlayOption): Left {
    if (option.action === 'win') return this.#won(option);
    return this.#leaves(option.action === 'let-go' ? this.#now : this.#after(this.#now, option));
  }

  /** What a moment leaves once the best that follows in the turn is done, too. */
  #leaves(moment: Moment): Left {
    const { view, before } = this.#lay(moment);
    if (handSize(moment.state) === 14) {
      const [next] = this.#ranking.onTurn(view, { risks: this.#risks, maySwap: this.#maySwap(moment.state) });
      // All 14 lie open and make no hand.
      if (next === undefined) return { chance: 0, hand: null };
      if (next.action === 'win') return this.#won(null);
      return this.#leaves(this.#after(moment, next));
    }
    const aim = this.#ranking.aim(view);
    const chance = this.#chance.waiting(before);
    return { chance, hand: aim === null ? null : { line: this.#lineOf(aim.way), away: aim.away } };
  }

  /** A win with the tiles as laid, or with a discard beside them. */
  #won(option: PlayOption | null): Left {
    if (option !== null) this.#lay(this.#now);
    const { hand } = playerAt(this.#table, this.#chance.seat);
    if (option !== null && option.kind !== null) hand.add(option.kind);
    const way = hand.completed();
    return { chance: 1, hand: way < 0 ? null : { line: this.#lineOf(way), away: 0 } };
  }

  #after({ state, events }: Moment, option: PlayOption): Moment {
    const event = this.#event(state, option);
    return { state: expectValue(applyEvent(state, event)), events: [...events, event] };
  }

  #event(state: GameState, { action, kind, group }: PlayOption): GameEvent {
    const seat = this.#seat;
    const tile = codeOf(kind as Kind);
    if (action === 'swap') return { type: 'swapped', seat, owner: ownerOf(state, kind) as Seat, tile };
    if (group === null) return { type: 'discarded', seat, tile };
    return { type: 'called', seat, tile, group: formatTiles(groupTiles(kind as Kind, group)) };
  }

  #owner({ action, kind }: PlayOption): Seat | null {
    return action === 'swap' ? ownerOf(this.#now.state, kind) : null;
  }

  #lay({ state, events }: Moment): { readonly view: SeatView; readonly before: number } {
    const { before, ...moment } = seatMoment(state, events);
    layMoment(this.#table, moment);
    this.#chance.seat = moment.seat;
    return { view: playerAt(this.#table, moment.seat).view, before };
  }

  #lineOf(way: number): Line {
    return lineOfWay(this.#measure.table.compiled, way);
  }
}

/** Who shows a joker that a kind can be given for. */
function ownerOf({ exposures }: GameState, kind: Kind | null): Seat | null {
  return exposures.find((group) => group.kind === kind && group.jokers > 0)?.seat ?? null;
}

function tilesOf({ action, kind, group }: PlayOption): Tiles {
  if (kind === null || action === 'let-go') return Tiles.none;
  return group === null ? Tiles.of([kind]) : groupTiles(kind, group);
}

function groupTiles(kind: Kind, { size, jokers }: Offer): Tiles {
  return Tiles.of(groupKinds({ kind, size, jokers }));
}
