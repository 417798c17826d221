import { html, type ReactiveControllerHost } from 'lit';
import type { Kind } from '../../../core/tiles/kinds.ts';
import '../../parts/wr-entry.ts';
import type { TypedTiles } from '../../parts/wr-entry.ts';
import '../../parts/wr-tray.ts';
import type { TilePicked } from '../../parts/wr-tray.ts';

interface FieldOptions {
  readonly label: string;
  readonly hint?: string;
  /** How many tiles may be typed at once; empty for any. */
  readonly counts: readonly number[];
  /** What stands in the field where that is not just what was typed. */
  readonly text?: string;
}

interface TrayOptions {
  readonly label: string;
  readonly left: ArrayLike<number>;
  /** Why a kind is illegal now. */
  readonly reasons?: ReadonlyMap<Kind, string>;
  /** Why no tile may be added now; empty if one may. */
  readonly full?: string;
}

/** Enters one tile, or what was put together; '' if that went well, why it was refused, or null if nothing is due. */
type Enter<Given extends unknown[]> = (...given: Given) => string | null;

/** How an element enters tiles: at once, all or none of those typed, or put together first and entered at the end. */
type Entering =
  | { readonly all: Enter<[kinds: readonly Kind[]]> }
  | {
      /** Shows these tiles and no others, at each key. */
      readonly show: (kinds: readonly Kind[]) => void;
      readonly add: (kind: Kind) => void;
      readonly enter: Enter<[]>;
    };

const NO_REASONS: ReadonlyMap<Kind, string> = new Map();

/** A field to type tiles into and a tray to click them in; it keeps what was typed and why it was refused. */
export class EntryAndTray {
  readonly #host: ReactiveControllerHost;
  readonly #entering: Entering;
  #typed = '';
  #refusal = '';

  constructor(host: ReactiveControllerHost, entering: Entering) {
    this.#host = host;
    this.#entering = entering;
  }

  /** What was typed, as it was written. */
  get typed(): string {
    return this.#typed;
  }

  field({ label, hint = '', counts, text = this.#typed }: FieldOptions): unknown {
    return html`<wr-entry
      bare
      label=${label}
      hint=${hint}
      .value=${text}
      .counts=${counts}
      .refusal=${this.#refusal}
      @tiles-typed=${this.#onTyped}
      @tiles-entered=${this.#onEntered}
    ></wr-entry>`;
  }

  tray({ label, left, reasons = NO_REASONS, full = '' }: TrayOptions): unknown {
    return html`<wr-tray
      label=${label}
      .left=${left}
      .reasons=${reasons}
      full=${full}
      @tile-picked=${this.#onPicked}
    ></wr-tray>`;
  }

  /** Forgets what was typed, and why it was refused. */
  clear(): void {
    this.#typed = '';
    this.forgive();
  }

  /** Forgets why the last tile was refused. */
  forgive(): void {
    this.#refusal = '';
    this.#host.requestUpdate();
  }

  /** Enters what was put together. */
  readonly finish = (): void => {
    if (!('all' in this.#entering)) this.#entered(this.#entering.enter());
  };

  readonly #onTyped = ({ detail }: CustomEvent<TypedTiles>): void => {
    this.#typed = detail.text;
    this.forgive();
    if ('show' in this.#entering) this.#entering.show(detail.kinds);
  };

  readonly #onEntered = ({ detail }: CustomEvent<TypedTiles>): void => {
    if ('all' in this.#entering) this.#entered(this.#entering.all(detail.kinds));
    else this.finish();
  };

  readonly #onPicked = ({ detail }: CustomEvent<TilePicked>): void => {
    if ('all' in this.#entering) this.#entered(this.#entering.all([detail.kind]), false);
    else {
      this.#entering.add(detail.kind);
      this.forgive();
    }
  };

  /** What was refused stays in the field as it was typed. */
  #entered(refusal: string | null, typed = true): void {
    if (refusal === null) return;
    this.#refusal = refusal;
    if (typed && refusal === '') this.#typed = '';
    this.#host.requestUpdate();
  }
}
