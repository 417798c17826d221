import { type Result, success } from '../../core/base/result.ts';
import { dealRack } from '../../core/tiles/deal.ts';
import { formatTiles } from '../../core/tiles/text.ts';
import { type Answers, type CommandWorld, misused } from './answer.ts';
import { type Given, nothingElse, type OptionNames, wholeNumber } from './options.ts';

export const DEAL_OPTIONS: OptionNames = { valued: ['seed', 'tiles'], flags: ['json'] };

/** `deal`: a rack dealt at random, the same for the same seed. */
export async function runDeal(given: Given, world: CommandWorld): Promise<Result<Answers>> {
  const stray = nothingElse('deal', given);
  if (!stray.ok) return stray;
  const seed = given.values.has('seed')
    ? wholeNumber(given, 'seed', { usual: 0, least: 0, most: Number.MAX_SAFE_INTEGER })
    : success(world.anySeed());
  if (!seed.ok) return seed;
  const size = rackSize(given);
  if (!size.ok) return size;
  const document = { seed: seed.value, rack: formatTiles(dealRack(seed.value, size.value)) };
  const text = (): string =>
    `${document.rack}\n\nThe same rack again: deal --seed ${document.seed}${size.value === 14 ? ' --tiles 14' : ''}`;
  return success({ answers: [{ document, text }], json: given.flags.has('json') });
}

function rackSize({ values }: Given): Result<13 | 14> {
  const text = values.get('tiles') ?? '13';
  if (text === '13') return success(13);
  return text === '14' ? success(14) : misused(`--tiles must be 13, or 14 for the dealer, not "${text}".`);
}
