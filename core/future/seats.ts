import type { Random } from '../base/random.ts';
import type { Pass } from '../exchange/state.ts';
import { agreed, mayBePassed, PASS_SIZE, type PassStep, STEPS } from '../exchange/steps.ts';
import { type Kind, KINDS } from '../tiles/kinds.ts';
import type { Offer, Policy, SeatView } from '../table/policy.ts';
import type { PassChoice } from './rivals.ts';

/** Leaves every decision to another policy, until a subclass takes one over. */
export class Follower implements Policy {
  protected readonly policy: Policy;

  constructor(policy: Policy) {
    this.policy = policy;
  }

  begin(random: Random): void {
    this.policy.begin?.(random);
  }

  seesWin(): boolean {
    return this.policy.seesWin?.() ?? true;
  }

  pass(view: SeatView, step: PassStep, blind: boolean, out: Kind[]): number {
    return this.policy.pass(view, step, blind, out);
  }

  goesOn(view: SeatView): boolean {
    return this.policy.goesOn(view);
  }

  courtesy(view: SeatView, out: Kind[]): number {
    return this.policy.courtesy(view, out);
  }

  discard(view: SeatView): Kind {
    return this.policy.discard(view);
  }

  callsWrongly(view: SeatView, kind: Kind, offer: Offer): boolean {
    return this.policy.callsWrongly?.(view, kind, offer) ?? false;
  }

  call(view: SeatView, kind: Kind, offer: Offer): boolean {
    return this.policy.call(view, kind, offer);
  }

  swap(view: SeatView, kind: Kind): boolean {
    return this.policy.swap(view, kind);
  }
}

/** What the user's record says of the exchange so far, shared by the four seats. */
export interface History {
  readonly passes: readonly Pass[];
  readonly due: PassStep;
  /** Whether the second round was stopped. */
  readonly stopped: boolean;
  /** How many tiles the player across asks for in the courtesy, if that is known. */
  readonly offered: number | undefined;
  /** Called by each seat before it decides what to give. */
  beforeStep(step: PassStep): void;
}

/** The user's seat: what has been done, then the choice on trial, then a policy. */
export class OwnSeat extends Follower {
  choice: PassChoice = { type: 'stop' };
  readonly #history: History;

  constructor(policy: Policy, history: History) {
    super(policy);
    this.#history = history;
  }

  override pass(view: SeatView, step: PassStep, blind: boolean, out: Kind[]): number {
    this.#history.beforeStep(step);
    const past = this.#history.passes.find((pass) => pass.step === step);
    if (past !== undefined) return write(past.given.toKinds(), out);
    if (step === this.#history.due && this.choice.type === 'give') return write(this.choice.tiles, out);
    return super.pass(view, step, blind, out);
  }

  override goesOn(view: SeatView): boolean {
    const { due, stopped } = this.#history;
    if (due === 'left2') return this.choice.type !== 'stop';
    return isFirstRound(due) ? super.goesOn(view) : !stopped;
  }

  override courtesy(view: SeatView, out: Kind[]): number {
    if (this.#history.due !== 'courtesy') return super.courtesy(view, out);
    return this.choice.type === 'give' ? write(this.choice.tiles, out) : 0;
  }
}

/** Another seat: by its policy, but what it is known to have given the user it gives. */
export class OtherSeat extends Follower {
  readonly #history: History;
  readonly #gifts: ReadonlyMap<PassStep, readonly Kind[]>;

  /** `gifts`: by step, what the user took in from this seat. */
  constructor(policy: Policy, history: History, gifts: ReadonlyMap<PassStep, readonly Kind[]>) {
    super(policy);
    this.#history = history;
    this.#gifts = gifts;
  }

  override pass(view: SeatView, step: PassStep, blind: boolean, out: Kind[]): number {
    this.#history.beforeStep(step);
    const gift = this.#gifts.get(step);
    if (gift === undefined) return super.pass(view, step, blind, out);
    const wanted = [...this.#besides(view, step, gift), ...gift];
    // The user handed on the first of what came, so the tiles that stayed come last.
    for (const [place, kind] of wanted.entries()) out[place] = kind;
    return wanted.length;
  }

  /** What goes besides a known gift: by the policy, as far as the gift leaves it in the rack. */
  #besides(view: SeatView, step: PassStep, gift: readonly Kind[]): Kind[] {
    const missing = PASS_SIZE - gift.length;
    const own: Kind[] = [];
    if (missing > 0) own.length = super.pass(view, step, false, own);
    const rest = KINDS.filter(mayBePassed);
    const besides: Kind[] = [];
    for (const kind of [...own, ...rest]) {
      const taken = [...besides, ...gift].filter((other) => other === kind).length;
      if (besides.length < missing && taken < (view.hand.counts[kind] as number)) besides.push(kind);
    }
    return besides;
  }

  override goesOn(view: SeatView): boolean {
    return isFirstRound(this.#history.due) ? super.goesOn(view) : true;
  }

  override courtesy(view: SeatView, out: Kind[]): number {
    const { offered } = this.#history;
    if (offered === undefined) return super.courtesy(view, out);
    return agreed(offered, super.pass(view, 'courtesy', false, out));
  }
}

function isFirstRound(step: PassStep): boolean {
  return STEPS[step].round === 'first';
}

function write(tiles: readonly Kind[], out: Kind[]): number {
  if (!tiles.every(mayBePassed)) throw new Error('a joker is never passed');
  for (const [place, kind] of tiles.entries()) out[place] = kind;
  return tiles.length;
}
