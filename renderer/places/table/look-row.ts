import { html, nothing, type TemplateResult } from 'lit';
import { PASS_SIZE } from '../../../core/exchange/steps.ts';
import type { RaceResult, Standing } from '../../../core/plan/race-run.ts';
import type { PassChoice } from '../../../core/future/rivals.ts';
import { tileNames } from '../../../core/tiles/names.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { lookWords as words } from '../../words/look.ts';
import { counted, differenceAlone, differenceInGames, inWords, percent, tenths } from '../../words/numbers.ts';

/** What the look ahead says of a choice, which explains itself. */
export function standingPart(standing: Standing): TemplateResult {
  return html`<wr-explain class="ahead" .value=${shortVerdict(standing)} .heading=${words.heading}>
    <p>${verdictWords(standing)}</p>
    ${figures(standing)}
  </wr-explain>`;
}

/** A choice: its tiles, or what it is called. */
export function choicePart(choice: PassChoice, mayBeBlind: boolean): TemplateResult {
  const name = choiceName(choice, mayBeBlind);
  if (choice.type === 'stop' || choice.tiles.length === 0) return html`<span class="name">${name}</span>`;
  const unseen = unseenWith(choice.tiles, mayBeBlind);
  return html`<span class="name"> ${tileRow(choice.tiles)} ${unseen > 0 ? words.andUnseen(unseen) : nothing} </span>`;
}

/** The same in words: "north wind, five crak and 1 unseen". */
export function choiceName(choice: PassChoice, mayBeBlind: boolean): string {
  if (choice.type === 'stop') return words.stop;
  const unseen = unseenWith(choice.tiles, mayBeBlind);
  if (choice.tiles.length === 0) return unseen > 0 ? words.unseenAlone(unseen) : words.nothing;
  const tiles = tileNames(choice.tiles);
  return unseen > 0 ? `${tiles} ${words.andUnseen(unseen)}` : tiles;
}

/** How many tiles go on unseen with those of a pass. */
export function unseenWith(tiles: readonly Kind[], mayBeBlind: boolean): number {
  return mayBeBlind ? PASS_SIZE - tiles.length : 0;
}

/** Why the look ended, in sentences. */
export function endWords({ ended, halfWidth, rule }: RaceResult): string[] {
  const most = counted((rule.looks.at(-1) ?? 0) * rule.blockSize);
  const ending = {
    decided: words.decided,
    'half-width': words.known(differenceInGames(halfWidth)),
    budget: words.spent(differenceInGames(halfWidth)),
  };
  return [
    words.sameLuck,
    words.rule(differenceInGames(rule.halfWidth), most),
    ...(ended === null ? [] : [ending[ended]]),
    words.errorRate,
    words.smallest,
  ];
}

function shortVerdict({ verdict, deciding }: Standing): string {
  if (verdict === 'best') return words.best;
  return verdict === 'as good' ? words.asGood : words.costs(differenceAlone(deciding.loss.mean));
}

function verdictWords({ verdict, deciding: { loss } }: Standing): string {
  const half = differenceInGames((loss.high - loss.low) / 2);
  if (verdict === 'best') return words.bestWords;
  return verdict === 'as good' ? words.asGoodWords : words.costsWords(differenceInGames(loss.mean), half);
}

function figures({ verdict, samples, deciding: { value, loss }, others }: Standing): TemplateResult {
  const [away] = others;
  const half = (value.high - value.low) / 2;
  return html`${verdict === 'as good' ? html`<p>${words.gap(differenceInGames(loss.mean), differenceInGames((loss.high - loss.low) / 2))}</p>` : nothing}
    <p>${words.chance(percent(value.mean), inWords(value.mean), differenceInGames(half))}</p>
    ${away === undefined ? nothing : html`<p>${words.away(tenths(away.value.mean))}</p>`}
    <p>${words.futures(counted(samples))}</p>`;
}
