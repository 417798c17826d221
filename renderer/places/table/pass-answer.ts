import { STEPS } from '../../../core/exchange/steps.ts';
import type { PassDocument, PlanDocument } from '../../../core/engine/documents.ts';
import { isSameChoice, type PassChoice } from '../../../core/future/rivals.ts';
import { legalEvents } from '../../../core/game/legal.ts';
import { belongTogether } from '../../../core/plan/gift.ts';
import { tileWords } from '../../../core/tiles/names.ts';
import type { Judged } from '../../session/compare-passes.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { answerWords as words } from '../../words/answer.ts';
import { isAdviceWelcome } from './aids.ts';
import { choiceName } from './look-row.ts';

/** From so many tiles nearer on average a pass helps its receiver much. */
const LARGE_GIFT = 1;
/** How many of the reasons are said at a glance. */
const SHORT = 2;

type App = Pick<AppContext, 'session' | 'analysis' | 'lookAhead' | 'draft'>;

/** The list of what can be given, the recommended choice first; of a courtesy that is agreed on, the passes of that number. Null until it is settled. */
export function listedPasses({ lookAhead, draft, session }: App): readonly Judged[] | null {
  const { ranked } = lookAhead;
  const { wanted } = draft;
  if (ranked === null || wanted === null || !isCourtesy(session)) return ranked;
  return ranked.filter(({ choice }) => choice.type === 'give' && choice.tiles.length === wanted);
}

/** What is recommended; null until the list is settled, and in a game in which the player chooses first. */
export function offeredPass(app: App): Judged | null {
  return !isAdviceWelcome(app) ? null : (listedPasses(app)?.[0] ?? null);
}

/** Whether the player has begun to choose for herself. */
export function hasChosen({ session, draft }: App): boolean {
  return session.layout.tray.length > 0 || draft.blind > 0;
}

/** True where the pass that is due is the courtesy, whose number is agreed on first. */
export function isCourtesy(session: App['session']): boolean {
  return legalEvents(session.state).give?.step === 'courtesy';
}

/** Whether tiles may go on blind now. */
export function goesBlind(session: App['session']): boolean {
  return (legalEvents(session.state).give?.blindUpTo ?? 0) > 0;
}

/** What a choice gives up against the best, in words; of several that are equal none is called the best. */
export function sizeWords({ standing }: Judged, list: readonly Judged[]): string {
  const { verdict, deciding } = standing;
  if (verdict === 'best' && equals(list) === 0) return words.list.best;
  return verdict !== 'costs' ? words.list.equal : words.list.behind(deciding.loss.mean);
}

/** How many others are as good as the best. */
export function equals(list: readonly Judged[]): number {
  return list.filter(({ standing }) => standing.verdict !== 'costs').length - 1;
}

/** The exact numbers of a pass of three tiles by itself. */
export function exactOf(plan: PlanDocument | null, choice: PassChoice): PassDocument | null {
  return plan?.options.find(({ kinds }) => isSameChoice({ type: 'give', tiles: kinds }, choice)) ?? null;
}

/** Why a choice stands where it does, in a sentence or two. */
export function shortReasons(plan: PlanDocument | null, { choice, reasons }: Judged): string {
  if (choice.type === 'stop') return words.stopWords;
  return (exactOf(plan, choice)?.reasons ?? reasons).slice(0, SHORT).join(' ');
}

/** What a pass gives that helps its receiver much, in words; empty where it does not. */
export function giftWords(plan: PlanDocument | null, { choice }: Judged): string {
  if (plan === null || choice.type === 'stop') return '';
  const gift = exactOf(plan, choice)?.gift ?? 0;
  const together = choice.tiles.filter((kind, at) =>
    choice.tiles.some((other, place) => place !== at && belongTogether(kind, other)),
  );
  if (gift < LARGE_GIFT || together.length === 0) return '';
  return words.list.helps(words.list.receivers[STEPS[plan.step].to], tileWords(together));
}

/** What is said of a pass once it is given: what it gave up, and which was the best; empty while that is not known. */
export function judgementOf(app: App, choice: PassChoice): string {
  const [best] = listedPasses(app) ?? [];
  const given = app.lookAhead.judged(choice);
  if (best === undefined || given === null) return '';
  const { verdict, deciding } = given.standing;
  if (verdict === 'best') return words.afterwards.best;
  const name = passWords(app.session, best.choice);
  return verdict === 'as good' ? words.afterwards.equal(name) : words.afterwards.costs(deciding.loss.mean, name);
}

/** A choice in words: "north wind, five crak and 1 blind". */
export function passWords(session: App['session'], choice: PassChoice): string {
  return choiceName(choice, goesBlind(session));
}
