import type { CardDocument } from '../../../core/card/document.ts';
import { writeCardFile } from '../../../core/card/file.ts';
import type { CardEntry, Desk } from '../../../main/desk/desk.ts';
import { SaveQueue, type SaveStatus } from '../../session/save-queue.ts';
import { Store } from '../../session/store.ts';

/** What is selected: a section, or a line in it. */
export interface Selection {
  readonly section: number;
  /** Null: the section itself. */
  readonly line: number | null;
}

interface Frame {
  readonly document: CardDocument;
  readonly selection: Selection | null;
}

/** How many steps can be undone; a step shares all that it doesn't change with the others. */
const STEPS = 500;

/**
 * One card while it is edited: every change is saved at once, and can be undone. Typing in one
 * field is one step, until something else is done (`settle`).
 */
export class CardEditor extends Store {
  readonly #desk: Pick<Desk, 'saveCard'>;
  readonly #queue = new SaveQueue(() => this.notify());
  readonly #entry: CardEntry;
  #past: readonly Frame[] = [];
  #present: Frame;
  #future: readonly Frame[] = [];
  #doing = '';

  constructor(desk: Pick<Desk, 'saveCard'>, entry: CardEntry, document: CardDocument) {
    super();
    this.#desk = desk;
    this.#entry = entry;
    this.#present = { document, selection: firstLine(document) };
  }

  get id(): string {
    return this.#entry.id;
  }
  /** The demo card can't be changed. */
  get fixed(): boolean {
    return this.#entry.fixed;
  }
  get document(): CardDocument {
    return this.#present.document;
  }
  get selection(): Selection | null {
    return this.#present.selection;
  }
  get canUndo(): boolean {
    return this.#past.length > 0;
  }
  get canRedo(): boolean {
    return this.#future.length > 0;
  }
  get saved(): SaveStatus {
    return this.#queue.status;
  }

  select(selection: Selection | null): void {
    this.#doing = '';
    this.#present = { ...this.#present, selection };
    this.notify();
  }

  /**
   * Puts a changed document here. Changes with the same `doing` (a field's name) that follow each
   * other are one step to undo.
   */
  change(document: CardDocument, selection: Selection | null = this.selection, doing = ''): void {
    if (this.fixed || document === this.document) return;
    if (doing === '' || doing !== this.#doing) this.#past = [...this.#past, this.#present].slice(-STEPS);
    this.#doing = doing;
    this.#future = [];
    this.#show({ document, selection });
  }

  /** Ends the step that is being typed. */
  settle(): void {
    this.#doing = '';
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (before === undefined) return;
    this.#past = this.#past.slice(0, -1);
    this.#future = [this.#present, ...this.#future];
    this.#doing = '';
    this.#show(before);
  }

  redo(): void {
    const [next, ...rest] = this.#future;
    if (next === undefined) return;
    this.#past = [...this.#past, this.#present];
    this.#future = rest;
    this.#doing = '';
    this.#show(next);
  }

  retrySaving(): void {
    this.#queue.retry();
  }

  #show(frame: Frame): void {
    this.#present = frame;
    this.#queue.add({
      name: 'card',
      run: () => this.#desk.saveCard(this.id, writeCardFile(this.document)),
    });
    // The queue says nothing while an earlier change is still being saved.
    this.notify();
  }
}

/** What is selected at first: the first line, else the first section. */
function firstLine({ sections }: CardDocument): Selection | null {
  const section = sections.findIndex(({ lines }) => lines.length > 0);
  if (section >= 0) return { section, line: 0 };
  return sections.length > 0 ? { section: 0, line: null } : null;
}
