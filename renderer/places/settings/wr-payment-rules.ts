import { css, html, nothing } from 'lit';
import { DEFAULT_POINT_RULES, type PointRules } from '../../../core/game/point-rules.ts';
import { paymentsFor, type Payments } from '../../../core/game/points.ts';
import { SEATS } from '../../../core/exchange/steps.ts';
import { data, element, state } from '../../parts/element.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import type { AppContext } from '../../shell/app-context.ts';
import { StoreController } from '../../shell/store-controller.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { moneyWords as words, resultWords } from '../../words/play.ts';
import { paymentsTable } from '../table/play/payments-table.ts';
import { resultStyles } from '../table/play/result-styles.ts';
import { amountOf, limitOf } from './amounts.ts';

type AmountName = 'stake' | 'discarderPays' | 'othersPay' | 'drawPays' | 'jokerlessTimes';

/** The points of the example hand that shows what the rules amount to. */
const EXAMPLE_POINTS = 25;

const Base = element({
  app: data<AppContext>(),
  /** The fields whose text is no number that can be taken. */
  wrong: state<readonly string[]>(() => []),
});

/** How the table pays: every rule a setting, with an example that follows at once. */
export class WrPaymentRules extends Base {
  static override styles = [
    sharedStyles,
    resultStyles,
    css`
      .rules {
        display: flex;
        flex-direction: column;
        gap: var(--space-4);
      }

      .numbers {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(16rem, 100%), 1fr));
        align-items: end;
        gap: var(--space-2) var(--space-5);
      }

      p {
        margin: 0;
        max-width: 65ch;
      }

      .soft {
        color: var(--ink-soft);
        font-size: var(--text-small);
      }
    `,
  ];

  constructor() {
    super();
    new StoreController(this, () => [this.app.preferences]);
  }

  protected override render(): unknown {
    const rules = this.#rules;
    return html`<div class="rules">
      <p>${words.lead}</p>
      <wr-choice
        label=${words.scheme}
        .options=${Object.entries(words.schemes).map(([value, label]) => ({ value, label }))}
        .value=${rules.scheme}
        @choice-changed=${this.#schemeChosen}
      ></wr-choice>
      ${rules.scheme === 'none' ? nothing : this.#numbers(rules)} ${example(rules)}
      <p><strong>${resultWords.caution}</strong></p>
      <div><wr-button @click=${this.#usual}>${words.usual}</wr-button></div>
    </div>`;
  }

  get #rules(): PointRules {
    return this.app.preferences.values.payment;
  }

  #numbers(rules: PointRules): unknown {
    return html`<div class="numbers">
        ${rules.scheme === 'fixed' ? this.#amount('stake', words.stake) : nothing}
        ${this.#amount('discarderPays', words.discarder)} ${this.#amount('othersPay', words.others)}
        ${this.#amount('drawPays', words.draw)} ${this.#amount('jokerlessTimes', words.jokerless, words.jokerlessHint)}
        ${this.#limit(rules)}
      </div>
      <wr-choice
        label=${words.pairs}
        .options=${[
          { value: 'no', label: words.no },
          { value: 'yes', label: words.yes },
        ]}
        .value=${rules.jokerlessAlsoPairs ? 'yes' : 'no'}
        @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
          this.#change({ jokerlessAlsoPairs: detail.value === 'yes' })}
      ></wr-choice>`;
  }

  #amount(name: AmountName, label: string, hint = ''): unknown {
    return html`<wr-field
      label=${label}
      hint=${hint}
      .value=${String(this.#rules[name])}
      error=${this.wrong.includes(name) ? words.wrong : ''}
      @field-changed=${({ detail }: CustomEvent<FieldText>) => this.#setAmount(name, amountOf(detail.value))}
    ></wr-field>`;
  }

  #limit({ limit }: PointRules): unknown {
    return html`<wr-field
      label=${words.limit}
      hint=${words.limitHint}
      .value=${limit === null ? '' : String(limit)}
      error=${this.wrong.includes('limit') ? words.wrong : ''}
      @field-changed=${({ detail }: CustomEvent<FieldText>) => this.#setAmount('limit', limitOf(detail.value))}
    ></wr-field>`;
  }

  /** Keeps a number, or says beside the field that it is none; the text stays as it was written. */
  #setAmount(name: AmountName | 'limit', amount: number | null | undefined): void {
    const others = this.wrong.filter((each) => each !== name);
    this.wrong = amount === undefined ? [...others, name] : others;
    if (amount !== undefined) this.#change({ [name]: amount });
  }

  #schemeChosen({ detail }: CustomEvent<ChoiceChanged>): void {
    const scheme = detail.value === 'fixed' || detail.value === 'none' ? detail.value : 'hand';
    this.#change({ scheme });
  }

  #change(change: Partial<PointRules>): void {
    void this.app.preferences.change({ payment: { ...this.#rules, ...change } });
  }

  #usual(): void {
    this.wrong = [];
    this.#change(DEFAULT_POINT_RULES);
  }
}

function example(rules: PointRules): unknown {
  const payments: Payments = paymentsFor(
    { winner: 'South', by: 'discard', from: 'West', points: EXAMPLE_POINTS, jokerless: false, pairsOnly: false },
    rules,
  );
  return html`<div>
    <p class="soft">${words.exampleWords(EXAMPLE_POINTS)}</p>
    ${paymentsTable(payments, SEATS, (seat) => seat)}
  </div>`;
}

customElements.define('wr-payment-rules', WrPaymentRules);
