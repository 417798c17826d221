import { html, nothing } from 'lit';
import type { Stage } from '../../../core/warmup/warm-up.ts';
import '../../parts/wr-button.ts';
import '../../parts/wr-field.ts';
import type { FieldText } from '../../parts/wr-field.ts';
import { arranged } from '../../session/layout.ts';
import { warmUpWords } from '../../words/warmup.ts';
import type { PracticeRoom } from './practice-room.ts';
import type { WarmUpRun } from './warm-up-run.ts';
import './wr-ask-aim.ts';
import type { AimsChanged } from './wr-ask-aim.ts';
import './wr-ask-pass.ts';

const words = warmUpWords.run;

/** What the question of a stage draws from, and whom it tells what was done. */
export interface Asking {
  readonly room: PracticeRoom;
  readonly run: WarmUpRun;
  readonly aims: AimsChanged;
  /** Tiles marked in the rack. */
  readonly marked: number;
  readonly blind: number;
  readonly why: string;
  /** Why a click did nothing, in words. */
  readonly told: string;
  readonly aimed: (aims: AimsChanged) => void;
  readonly typed: (why: string) => void;
  readonly blindChosen: (blind: number) => void;
  readonly kept: () => void;
  readonly given: () => void;
}

/** The one thing that a stage asks, with the button that settles it. */
export function stageAsk(stage: Exclude<Stage, 'answer'>, asking: Asking): unknown {
  switch (stage) {
    case 'arrange':
      return askToArrange(asking);
    case 'aim':
      return askForAims(asking);
    case 'keep':
      return askForKeepers(asking);
    case 'choose':
      return askForPass(asking);
    case 'say':
      return askWhy(asking);
  }
}

function askToArrange({ run }: Asking): unknown {
  const arrange = html`<wr-button @click=${() => run.lay(arranged(run.layout))}>${words.arrangeAll}</wr-button>`;
  return ask(
    run,
    words.arrange,
    words.arrangeHelp,
    arrange,
    goOn(() => run.arranged()),
  );
}

function askForAims({ run, room, aims, aimed }: Asking): unknown {
  const choice = html`<wr-ask-aim
    .sections=${room.sections}
    .aims=${aims}
    @aims-changed=${({ detail }: CustomEvent<AimsChanged>) => aimed(detail)}
  ></wr-ask-aim>`;
  return ask(
    run,
    words.aim,
    words.aimHelp,
    choice,
    goOn(() => run.aimed(aims)),
  );
}

function askForKeepers({ run, marked, kept }: Asking): unknown {
  return ask(run, words.keep, words.keepHelp, html`<p role="status">${words.kept(marked)}</p>`, goOn(kept));
}

function askForPass({ run, room, marked, blind, told, blindChosen, given }: Asking): unknown {
  const courtesy = run.step === 'courtesy';
  return html`<h2 class="asked" tabindex="-1">${courtesy ? words.chooseCourtesy : words.choose}</h2>
    <p class="soft">${courtesy ? words.chooseCourtesyHelp : words.chooseHelp}</p>
    ${told === '' ? nothing : html`<p class="bad">${told}</p>`}
    <wr-ask-pass
      .room=${room}
      .run=${run}
      .refusal=${run.refusal}
      .count=${marked}
      .blind=${blind}
      @blind-chosen=${({ detail }: CustomEvent<number>) => blindChosen(detail)}
      @pass-chosen=${given}
      >${back(run)}</wr-ask-pass
    >`;
}

function askWhy({ run, why, typed }: Asking): unknown {
  const field = html`<wr-field
    label=${words.sayLabel}
    lines="3"
    .value=${why}
    @field-typed=${({ detail }: CustomEvent<FieldText>) => typed(detail.value)}
  ></wr-field>`;
  const show = html`<wr-button look="main" @click=${() => run.said(why)}>${words.show}</wr-button>`;
  return ask(run, run.warmUp.attempt.stops ? words.sayStop : words.say, words.sayHelp, field, show);
}

function ask(run: WarmUpRun, title: string, help: string, body: unknown, act: unknown): unknown {
  return html`<h2 class="asked" tabindex="-1">${title}</h2>
    <p class="soft">${help}</p>
    ${body}
    <p class="bad" role="alert">${run.refusal}</p>
    <div class="row">${act} ${run.warmUp.stage === 'arrange' ? nothing : back(run)}</div>`;
}

function goOn(settle: () => void): unknown {
  return html`<wr-button look="main" @click=${settle}>${words.next}</wr-button>`;
}

function back(run: WarmUpRun): unknown {
  return html`<wr-button look="quiet" @click=${() => run.back()}>${words.back}</wr-button>`;
}
