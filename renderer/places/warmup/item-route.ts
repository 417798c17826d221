import { failure, type Result, success } from '../../../core/base/result.ts';
import { PASS_STEPS, SEATS } from '../../../core/exchange/steps.ts';
import { makeItem, type WarmUpItem } from '../../../core/warmup/item.ts';
import { codeOfItem, itemOfCode } from '../../../core/warmup/problem-code.ts';
import { warmUpWords } from '../../words/warmup.ts';

/** Where a problem goes: to be practised, on the sheet that is open, or on a screen for all to see. */
const ITEM_GOALS = ['practise', 'sheet', 'show'] as const;
export type ItemGoal = (typeof ITEM_GOALS)[number];

/** An address within the window. */
const PLACE = /^#\/[\w\-/?=&.]{1,200}$/;

/** What an address of the Warm-up asks for. */
export interface ItemRoute {
  readonly goal: ItemGoal;
  readonly item: WarmUpItem;
  /** The game that it comes from; empty for none. */
  readonly source: string;
  /** Where to go back to once it was shown; empty for nowhere. */
  readonly back: string;
}

/**
 * The address that makes a warm-up of any deal or decision, or puts it on a sheet: a link for other
 * places, such as `#/warm-up?deal=H9Y-7MX-42W` or `#/warm-up?rack=…&step=across&seat=West&gone=…`.
 * `source` is the id of the game that it comes from, `back` the address that it was asked for at.
 */
export function addressOfItem(item: WarmUpItem, goal: ItemGoal = 'practise', source = '', back = ''): string {
  const query = new URLSearchParams(
    item.code === undefined
      ? { rack: item.rack, gone: item.gone, step: item.step, seat: item.seat }
      : { deal: codeOfItem(item) },
  );
  if (goal !== 'practise') query.set('goal', goal);
  if (source !== '') query.set('source', source);
  if (goal === 'show' && PLACE.test(back)) query.set('back', back);
  return `#/warm-up?${query.toString()}`;
}

/** What a hash asks for; null when it asks for nothing. */
export function itemOfAddress(hash: string): Result<ItemRoute> | null {
  const query = new URLSearchParams(/^#\/warm-up\?(.*)$/.exec(hash)?.[1] ?? '');
  const item = itemIn(query);
  if (item === null || !item.ok) return item;
  const goal = ITEM_GOALS.find((each) => each === query.get('goal')) ?? 'practise';
  const back = query.get('back') ?? '';
  const source = (query.get('source') ?? '').slice(0, 80);
  return success({ goal, item: item.value, source, back: PLACE.test(back) ? back : '' });
}

function itemIn(query: URLSearchParams): Result<WarmUpItem> | null {
  const code = query.get('deal');
  if (code !== null) return itemOfCode(code);
  const rack = query.get('rack');
  if (rack === null) return query.size === 0 ? null : failure('bad-address', warmUpWords.badAddress);
  const step = PASS_STEPS.find((each) => each === (query.get('step') ?? 'right'));
  const seat = SEATS.find((each) => each === (query.get('seat') ?? 'South'));
  if (step === undefined || seat === undefined) return failure('bad-address', warmUpWords.badAddress);
  return makeItem({ rack, gone: query.get('gone') ?? '', step, seat });
}
