import { html, nothing, type TemplateResult } from 'lit';
import { PASS_SIZE } from '../../../core/exchange/state.ts';
import type { RaceResult, Standing } from '../../../core/plan/race-run.ts';
import type { Choice } from '../../../core/table/future-seats.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import type { Kind } from '../../../core/tiles/kinds.ts';
import { namedTiles } from '../../parts/tile/named-tiles.ts';
import type { Look } from '../../session/look-ahead.ts';
import { lookWords as words } from '../../words/look.ts';
import { counted, inWords, percent, points, pointsAlone, tenths } from '../../words/numbers.ts';

/** What the look ahead says of a pass; its line is there before, so that nothing moves. */
export function passAhead(look: Look, give: readonly Kind[]): TemplateResult | typeof nothing {
  if (look.status === 'none') return nothing;
  const named = give.join();
  const place = look.choices.findIndex((choice) => choice.type === 'give' && choice.tiles.join() === named);
  return place < 0 ? html`<span class="ahead"></span>` : choiceAhead(look, place);
}

/** What it says of the choice at a place. */
export function choiceAhead({ result }: Look, place: number): TemplateResult {
  const standing = result?.standings[place];
  if (result === null || standing === undefined) return html`<span class="ahead soft">${words.waiting}</span>`;
  const look = standing.verdict === 'best' ? 'ahead best' : 'ahead';
  return html`<wr-explain class=${look} .value=${shortVerdict(standing)} .heading=${words.heading}>
    <p>${verdictWords(standing)}</p>
    ${figures(standing)}
  </wr-explain>`;
}

/** A choice that is no row of the plan: its tiles, or what it is called. */
export function choicePart(choice: Choice, mayBeBlind: boolean): TemplateResult {
  const name = choiceName(choice, mayBeBlind);
  if (choice.type === 'stop' || choice.tiles.length === 0) return html`<span class="name">${name}</span>`;
  const unseen = unseenWith(choice.tiles, mayBeBlind);
  return html`<span class="name">
    ${namedTiles(choice.tiles, tileNames(choice.tiles))} ${unseen > 0 ? words.andUnseen(unseen) : nothing}
  </span>`;
}

/** The same in words: "north wind, five crak and 1 unseen". */
export function choiceName(choice: Choice, mayBeBlind: boolean): string {
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

function tileNames(tiles: readonly Kind[]): string {
  return tiles.map(nameOf).join(', ');
}

/** How the look came to its end, in sentences. */
export function endWords({ ended, halfWidth, rule }: RaceResult): string[] {
  const most = counted((rule.looks.at(-1) ?? 0) * rule.blockSize);
  const ending = {
    decided: words.decided,
    'half-width': words.known(points(halfWidth)),
    budget: words.spent(points(halfWidth)),
  };
  return [
    words.sameLuck,
    words.rule(points(rule.halfWidth), most),
    ...(ended === null ? [] : [ending[ended]]),
    words.errorRate,
    words.smallest,
  ];
}

function shortVerdict({ verdict, deciding }: Standing): string {
  if (verdict === 'best') return words.best;
  return verdict === 'as good' ? words.asGood : words.costs(pointsAlone(deciding.loss.mean));
}

function verdictWords({ verdict, deciding: { loss } }: Standing): string {
  const half = points((loss.high - loss.low) / 2);
  if (verdict === 'best') return words.bestWords;
  return verdict === 'as good' ? words.asGoodWords : words.costsWords(points(loss.mean), half);
}

function figures({ verdict, samples, deciding: { value, loss }, others }: Standing): TemplateResult {
  const [away] = others;
  const half = (value.high - value.low) / 2;
  return html`${verdict === 'as good' ? html`<p>${words.gap(points(loss.mean), points((loss.high - loss.low) / 2))}</p>` : nothing}
    <p>${words.reach(percent(value.mean), inWords(value.mean), points(half))}</p>
    ${away === undefined ? nothing : html`<p>${words.away(tenths(away.value.mean))}</p>`}
    <p>${words.futures(counted(samples))}</p>`;
}
