import { keepRecent } from '../base/recent.ts';
import { type Result, success } from '../base/result.ts';
import type { Steps } from '../base/steps.ts';
import { type CardFile, type CardRefusal, readCard } from '../card/file.ts';
import { type MarkedCard, markedCard } from '../card/mark.ts';
import { type CardChance, fitCardChance, provisionalChance, shippedChance } from '../chance/card-chance.ts';
import { type CompiledCard, compileCard } from '../reading/compiled.ts';
import type { StageTerms } from '../reading/reach-model.ts';
import type { TableKind } from '../table/kinds.ts';
import { makeTableCard, type TableCard } from '../table/table-card.ts';

/** Cards kept at once: a journal and a table may have different ones. */
const MOST_CARDS = 3;

/** The cards used last, oldest first, by their marks. */
const CARDS = new Map<string, ReadyCard>();

/** A card ready for questions; made once for its mark. Refused when its content is no card. */
export function readyCard({ mark, document }: MarkedCard): Result<ReadyCard, CardRefusal> {
  const known = CARDS.get(mark);
  if (known === undefined) {
    const read = readCard(document);
    if (!read.ok) return read;
    return success(keep(mark, new ReadyCard(mark, read.value)));
  }
  return success(keep(mark, known));
}

/** Marks a card whose file has just been read, so that no question reads it again. */
export function markedFile(file: CardFile): MarkedCard {
  const marked = markedCard(file.document);
  keep(marked.mark, CARDS.get(marked.mark) ?? new ReadyCard(marked.mark, file));
  return marked;
}

function keep(mark: string, card: ReadyCard): ReadyCard {
  return keepRecent(CARDS, mark, card, MOST_CARDS);
}

/** A card with all that is made of it once: its lists for counting, and what its own games have shown. */
export class ReadyCard {
  readonly mark: string;
  readonly file: CardFile;
  /** How soon others win with it at each stage of play; null until its games have been simulated. */
  stages: StageTerms | null = null;
  readonly #chances = new Map<TableKind, CardChance>();
  #compiled: CompiledCard | undefined;
  #table: TableCard | undefined;

  constructor(mark: string, file: CardFile) {
    this.mark = mark;
    this.file = file;
  }

  /** All its ways. */
  get compiled(): CompiledCard {
    this.#compiled ??= compileCard(this.file.card);
    return this.#compiled;
  }

  /** The same for the simulated table. */
  get table(): TableCard {
    this.#table ??= makeTableCard(this.compiled);
    return this.#table;
  }

  /** The chance of this card at a kind of table: fitted to its own games where these have been played, else provisional. */
  chanceAt(kind: TableKind): CardChance {
    return this.#chances.get(kind) ?? shippedChance(this.mark, kind) ?? provisionalChance(kind);
  }

  /** The same fitted: the card's own games are played now if they have not been; yields the part done, 0 to 1. */
  *fittedAt(kind: TableKind): Steps<number, CardChance> {
    const known = this.chanceAt(kind);
    if (known.games > 0) return known;
    const fit = yield* fitCardChance(this.compiled, kind);
    this.#chances.set(kind, fit);
    return fit;
  }
}
