import { html, nothing, type TemplateResult } from 'lit';
import { type Seat, SEATS } from '../../../../core/exchange/steps.ts';
import type { LineDocument } from '../../../../core/engine/reading-questions.ts';
import '../../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../../parts/wr-choice.ts';
import '../../../parts/wr-field.ts';
import type { FieldText } from '../../../parts/wr-field.ts';
import type { GameSession } from '../../../session/game-session.ts';
import { resultWords as words } from '../../../words/play.ts';
import { arePointsGood, type ResultDraft } from './result-draft.ts';
import { inChairOrder, seatName, seatOf } from './seat-names.ts';

type Change = Partial<ResultDraft>;

/** What the form of a result is drawn from, and where a change of it goes. */
export interface ResultForm {
  readonly session: GameSession;
  readonly draft: ResultDraft;
  /** The card's lines; empty until they are known. */
  readonly lines: readonly LineDocument[];
  readonly change: (change: Change) => void;
}

/** The questions about a result, each as soon as it makes sense. */
export function resultForm(form: ResultForm): unknown {
  const { session, draft } = form;
  return html`${choice(form, words.what, Object.entries(words.results), draft.result, (value) => ({
    result: value === 'won' || value === 'wall' ? value : 'abandoned',
  }))}
  ${session.state.exchange === null ? seats(form, words.seat, SEATS, draft.seat, (seat) => ({ seat })) : nothing}
  ${draft.result === 'won' ? winForm(form) : nothing}`;
}

/** The line of a draft, if one is chosen and known. */
export function lineOf({ lines, draft }: Pick<ResultForm, 'lines' | 'draft'>): LineDocument | undefined {
  return lines.find(({ id }) => id === draft.lineId);
}

function winForm(form: ResultForm): unknown {
  const { draft, lines, change } = form;
  const ways = [
    ['discard', words.byDiscard],
    ['draw', words.byDraw],
  ] as const;
  const others = SEATS.filter((seat) => seat !== draft.winner);
  return html`${seats(form, words.winner, SEATS, draft.winner, (winner) => ({ winner }))}
  ${choice(form, words.by, ways, draft.by, (value) => ({ by: value === 'draw' ? value : 'discard' }))}
  ${draft.by === 'discard' ? seats(form, words.from, others, draft.from, (from) => ({ from })) : nothing}
  ${linePicker(lines, draft.lineId, (lineId) => change({ lineId }))} ${jokers(form)} ${points(form)}`;
}

/** A hand of pairs alone has no place for a joker: nothing to ask. */
function jokers(form: ResultForm): unknown {
  if (lineOf(form)?.pairsOnly === true) return nothing;
  const { jokerless } = form.draft;
  const value = jokerless === null ? null : jokerless ? 'without' : 'with';
  const options = [
    ['with', words.withJokers],
    ['without', words.without],
  ] as const;
  return choice(form, words.jokers, options, value, (chosen) => ({ jokerless: chosen === 'without' }));
}

function points(form: ResultForm): unknown {
  const { draft, change } = form;
  const line = lineOf(form);
  return html`<wr-field
    label=${words.points}
    hint=${line === undefined ? words.pointsUnknown : words.pointsHint(line.points)}
    .value=${draft.points}
    error=${arePointsGood(draft) ? '' : words.pointsWrong}
    @field-typed=${({ detail }: CustomEvent<FieldText>) => change({ points: detail.value })}
  ></wr-field>`;
}

function seats(
  form: ResultForm,
  label: string,
  among: readonly Seat[],
  value: Seat | null,
  changeTo: (seat: Seat | null) => Change,
): unknown {
  const { session } = form;
  const options = inChairOrder(session, among).map((seat) => [seat, seatName(session, seat)] as const);
  return choice(form, label, options, value, (chosen) => changeTo(seatOf(chosen)));
}

function choice(
  { change }: ResultForm,
  label: string,
  options: readonly (readonly [string, string])[],
  value: string | null,
  changeTo: (value: string) => Change,
): unknown {
  return html`<wr-choice
    label=${label}
    .options=${options.map(([option, shown]) => ({ value: option, label: shown }))}
    .value=${value ?? ''}
    @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => change(changeTo(detail.value))}
  ></wr-choice>`;
}

/** The card's hands to choose one from, section by section. */
function linePicker(
  lines: readonly LineDocument[],
  chosen: string | null,
  change: (lineId: string | null) => void,
): TemplateResult {
  const sections = [...new Set(lines.map(({ section }) => section))];
  const changed = ({ target }: Event): void => {
    if (target instanceof HTMLSelectElement) change(target.value === '' ? null : target.value);
  };
  return html`<div>
    <label for="hand">${words.line}</label>
    <select id="hand" @change=${changed}>
      <option value="" ?selected=${chosen === null}>${words.lineUnknown}</option>
      ${sections.map(
        (section) =>
          html`<optgroup label=${section}>
            ${lines
              .filter((line) => line.section === section)
              .map(
                ({ id, name, points }) =>
                  html`<option value=${id} ?selected=${id === chosen}>${words.lineOption(name, points)}</option>`,
              )}
          </optgroup>`,
      )}
    </select>
  </div>`;
}
