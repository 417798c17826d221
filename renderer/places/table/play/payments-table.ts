import { html, type TemplateResult } from 'lit';
import { type Seat, SEATS } from '../../../../core/exchange/steps.ts';
import type { Payments } from '../../../../core/game/points.ts';
import { resultWords as words } from '../../../words/play.ts';
import { signed } from '../../../words/numbers.ts';

/** What each of the four seats gets or pays; the four add up to nothing. */
export function paymentsTable(
  payments: Payments,
  seats: readonly Seat[],
  nameOf: (seat: Seat) => string,
): TemplateResult {
  const none = SEATS.every((seat) => payments[seat] === 0);
  return html`<table class="payments">
      <caption>
        ${words.pays}
      </caption>
      <thead>
        <tr>
          <th scope="col">${words.seatColumn}</th>
          <th scope="col" class="amount">${words.amountColumn}</th>
          <th scope="col"><span class="unseen">${words.pays}</span></th>
        </tr>
      </thead>
      <tbody>
        ${seats.map(
          (seat) =>
            html`<tr>
              <th scope="row">${nameOf(seat)}</th>
              <td class="amount">${signed(payments[seat])}</td>
              <td>${inWords(payments[seat])}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="soft">${none ? words.noMoney : words.sum}</p>`;
}

function inWords(amount: number): string {
  if (amount === 0) return words.nothing;
  return amount > 0 ? words.gets(String(amount)) : words.paysWord(String(-amount));
}
