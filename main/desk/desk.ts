import type { Result } from '../../core/base/result.ts';
import type { StudyAnswer } from '../../core/card/study.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import type { Seat } from '../../core/exchange/steps.ts';
import type { AdviceTime } from '../../core/game/advice.ts';
import type { TimedEvent } from '../../core/game/events.ts';
import type { PointRules } from '../../core/game/point-rules.ts';
import type { Payments } from '../../core/game/points.ts';
import type { GameRecord } from '../../core/game/record.ts';
import type { Findings } from '../../core/journal/findings.ts';
import type { Outcome } from '../../core/journal/summary.ts';
import type { TableKind } from '../../core/table/kinds.ts';
import type { PracticeEntry } from '../../core/warmup/history-file.ts';

/**
 * The desk: all that the window knows of the outside. Two bindings serve it, Electron's IPC and a
 * local HTTP host, both calling one service (service.ts). What a call may be given and what it does
 * stands in one table, calls.ts. Every call is asynchronous; a problem
 * comes back as a value with words for a person, never as a rejection (save for our own bugs).
 * Arguments and answers are plain JSON. Over HTTP a call is `POST /desk/<call>` with the list of
 * its arguments, and the answer is the `Result`.
 */
export interface Desk {
  about(): Promise<Result<DeskInfo>>;

  readPreferences(): Promise<Result<Preferences>>;
  /** Changes the named preferences and answers with all of them. */
  changePreferences(change: Partial<Preferences>): Promise<Result<Preferences>>;

  listCards(): Promise<Result<readonly CardEntry[]>>;
  /** The card file's text as kept. The demo card is always there, under the id `demo`, and can't be changed. */
  openCard(id: string): Promise<Result<{ readonly entry: CardEntry; readonly text: string }>>;
  /** Keeps a card file's text, with a dated backup of what was there; `id` null makes a new one. */
  saveCard(id: string | null, text: string): Promise<Result<CardEntry>>;
  /** Takes a card off the list; its last content stays among its backups. */
  removeCard(id: string): Promise<Result<null>>;
  /** Dated copies of a card, newest first; of a removed card too. */
  listBackups(id: string): Promise<Result<readonly BackupEntry[]>>;
  /** Puts a backup in the card's place; what was there becomes a backup itself. */
  restoreCard(id: string, backup: string): Promise<Result<CardEntry>>;
  /** How far proof-reading and study of a card have come; empty if never begun. The demo card has it too. */
  readCardProgress(id: string): Promise<Result<CardProgress>>;
  /** Keeps it, durably, in the place of what was kept before. */
  saveCardProgress(id: string, progress: CardProgress): Promise<Result<null>>;

  /** All games, newest first. */
  listGames(): Promise<Result<readonly GameEntry[]>>;
  openGame(id: string): Promise<Result<GameRecord>>;
  /** The tiles typed for a game before its deal was complete: its record without events; null when there are none. */
  readDraft(): Promise<Result<GameRecord | null>>;
  /** Keeps them, durably, in the place of those before; the journal does not list them. They go once the game is started. */
  keepDraft(record: GameRecord): Promise<Result<null>>;
  /** Keeps a new game, durably, before answering. */
  startGame(record: GameRecord): Promise<Result<GameEntry>>;
  /**
   * Adds one event, durably, before answering; `place` is the event's place in the list, so that a
   * repeated call does nothing twice. `arrangement` is how the rack then lies, as `GameRecord.arrangement`;
   * without it that stays as it was.
   */
  appendEvent(id: string, place: number, event: TimedEvent, arrangement?: string): Promise<Result<null>>;
  /** Undo: drops the last event, which is at `place`. */
  dropEvent(id: string, place: number, arrangement?: string): Promise<Result<null>>;
  /** Changes what is not an event. */
  /** A corrected event is refused where one of those after it would be impossible. */
  changeGame(id: string, change: GameChange | EventCorrection): Promise<Result<GameEntry>>;
  /** Takes a game off the list; for a month it can be brought back. */
  removeGame(id: string): Promise<Result<null>>;
  restoreGame(id: string): Promise<Result<GameEntry>>;
  /**
   * Brings games in from an export, at most `MOST_AT_ONCE` of them, merged by id: nothing is lost,
   * the older of two versions becomes a copy.
   */
  importGames(records: readonly GameRecord[]): Promise<Result<ImportedGames>>;

  /**
   * What the engine found out about games, kept only to save time. `id` null: of all games, without
   * their reviews; otherwise of that game, with its review if one is kept.
   */
  readFindings(id: string | null): Promise<Result<readonly Findings[]>>;
  /** Keeps findings in the place of older ones, at most `MOST_AT_ONCE` of them. */
  keepFindings(findings: readonly Findings[]): Promise<Result<null>>;

  /** What a card's own games at a kind of table brought, by the card's `cardMark`; null where they must be played. */
  readFit(mark: string, table: TableKind): Promise<Result<CardFit | null>>;
  /** Keeps it, only to save time. */
  keepFit(mark: string, fit: CardFit): Promise<Result<null>>;

  /** All sheets for a class, newest first. */
  listSheets(): Promise<Result<readonly SheetEntry[]>>;
  /** The text of a sheet's file. */
  openSheet(id: string): Promise<Result<string>>;
  /** Keeps a sheet's text in its file, in the place of what was there. */
  keepSheet(text: string): Promise<Result<SheetEntry>>;
  /** Takes a sheet away for good; to undo that, keep its text again. Answers with those left. */
  removeSheet(id: string): Promise<Result<readonly SheetEntry[]>>;

  /** All entries of the practice history, oldest first. */
  practiceHistory(): Promise<Result<readonly PracticeEntry[]>>;
  /** Adds entries, durably; one that is there already, by its id, is not added twice. */
  notePractice(entries: readonly PracticeEntry[]): Promise<Result<null>>;

  /** Games and cards that are there in two files, as sync programs leave them. */
  listCopies(): Promise<Result<readonly CopyEntry[]>>;
  /** Chooses what stays of two files, by the name of the second; the other is kept aside. Answers what is left to choose. */
  settleCopy(file: string, choice: CopyChoice): Promise<Result<readonly CopyEntry[]>>;

  /** Shows the folder in the system's own window of files; false where that isn't possible, as in a browser. */
  showFolder(): Promise<Result<boolean>>;
  /** Takes the players' names out of every game, removed ones too. Answers how many games had names. */
  removeNames(): Promise<Result<number>>;
  /** Deletes everything that Windrow keeps, for good; the window asks twice before. */
  deleteEverything(sure: 'delete everything'): Promise<Result<null>>;

  /** Things set aside or repaired since the start, in words for a person. */
  notices(): Promise<Result<readonly string[]>>;
  /**
   * Why nothing can be saved since the start, as on a full disk, in words for a person; null once all can be. Calls that
   * save are refused with the same words until then. The desk finds out by itself when it may write.
   */
  whyOnlyReading(): Promise<Result<string | null>>;
}

/** An event in the place of one that was logged wrongly; those after it stay. */
export interface EventCorrection {
  readonly corrected: { readonly place: number; readonly event: TimedEvent };
  /** How the rack then lies, if not as before. */
  readonly arrangement?: string;
}

export interface GameChange {
  readonly place?: string;
  readonly tags?: readonly string[];
  /** How the rack lies, as `GameRecord.arrangement`; at most 200 characters. */
  readonly arrangement?: string;
  readonly evening?: string;
  /** In the place of all names before; `{}` takes them away. */
  readonly players?: Readonly<Partial<Record<Seat, string>>>;
  readonly payment?: PointRules;
  /** Whether a joker may be swapped for between a call and the discard after it. */
  readonly swapAfterCall?: boolean;
  /** The kind of table that it is played at. */
  readonly table?: TableKind;
  /** The most aid that it was played with, and when advice is shown from now on. */
  readonly advice?: AdviceTime;
  readonly adviceNow?: AdviceTime;
}

/** What stays: the file in use, the second one in its place, or both, the second as a game or card of its own. */
export const COPY_CHOICES = ['used', 'copy', 'both'] as const;
export type CopyChoice = (typeof COPY_CHOICES)[number];

/** A second file of a game or card. */
export interface CopyEntry {
  readonly kind: 'game' | 'card';
  /** Null where the second one stands alone. */
  readonly used: CopyFile | null;
  readonly copy: CopyFile;
}

export interface CopyFile {
  /** Its path from the desk's folder on, with `/`. */
  readonly file: string;
  /** UTC, ISO 8601 with Z. */
  readonly changedAt: string;
  /** The steps of a game, the lines of a card; null where it could not be read. */
  readonly holds: number | null;
}

/** How many games or findings one call may bring. */
export const MOST_AT_ONCE = 200;

/** What an import did. */
export interface ImportedGames {
  /** Games that were not here before. */
  readonly added: number;
  /** Games of which another version was here: the newest edit stays, the older one is kept as a copy. */
  readonly copied: number;
  /** Games that were here already, the same. */
  readonly same: number;
}

export interface SheetEntry {
  readonly id: string;
  readonly title: string;
  /** UTC, ISO 8601 with Z. */
  readonly madeAt: string;
  /** How many there are. */
  readonly problems: number;
}

export interface DeskInfo {
  readonly appVersion: string;
  readonly host: 'electron' | 'browser';
  /** Where the files are. */
  readonly folder: string;
  /** What holds until a person chooses otherwise. */
  readonly usualPreferences: Preferences;
}

export interface Preferences {
  readonly theme: 'system' | 'light' | 'dark';
  /** Body text in CSS px, 16 to 32. */
  readonly textSize: number;
  readonly tiles: 'normal' | 'large';
  readonly rackTiers: 1 | 2;
  readonly seat: 'East' | 'South' | 'West' | 'North';
  readonly cardId: string;
  /** What kind of players one plays with. */
  readonly table: TableKind;
  /** When advice is shown at the Table, for games to come. */
  readonly advice: AdviceTime;
  /** The person was asked about that. */
  readonly adviceAsked: boolean;
  /** Whether a joker may be swapped for between a call and the discard after it, for games to come. */
  readonly swapAfterCall: boolean;
  /** Whether what can be done at the Table is played out as soon as it is due, or only when the person asks, which spares a battery. */
  readonly weighs: 'at-once' | 'when-asked';
  /** How the table pays, for games to come. */
  readonly payment: PointRules;
  /** Cautions about printed cards that were shown and need not come again. */
  readonly cautionsSeen: readonly CardCaution[];
  /** The paper of new sheets; `region`: what is usual where the window's language is spoken. */
  readonly paper: 'region' | 'letter' | 'a4';
  /** What was printed of a sheet the last time. */
  readonly sheetParts: 'questions' | 'answers' | 'both';
  /** The tour of the first start was offered; it does not come back unasked. */
  readonly tourOffered: boolean;
  /** The step of the tour, counted from 0, at which it was left. */
  readonly tourStep: number;
}

/** When a caution about a printed card is due: at its first entry, import and export. */
export type CardCaution = 'entry' | 'import' | 'export';

/** What a person has done with a card beside editing it. */
export interface CardProgress {
  /** What the lines say that were compared with the printed card, as `core/card/proof.ts` writes it. */
  readonly confirmed: readonly string[];
  /** Answers of card study, oldest first. */
  readonly answers: readonly StudyAnswer[];
  /** Findings of the check that were meant so, by their keys (`core/card/inspect.ts`); what is saved without them keeps them. */
  readonly meant?: readonly string[];
}

export interface CardEntry {
  readonly id: string;
  readonly title: string;
  readonly season: string;
  readonly lines: number;
  /** UTC, ISO 8601 with Z; empty for the demo card. */
  readonly savedAt: string;
  /** The demo card can't be changed or removed. */
  readonly fixed: boolean;
}

export interface BackupEntry {
  /** Names the backup in the calls about it. */
  readonly name: string;
  /** UTC, ISO 8601 with Z. */
  readonly savedAt: string;
}

/** What the journal's list shows of a game without opening it. */
export interface GameEntry {
  readonly id: string;
  readonly startedAt: string;
  readonly place: string;
  readonly tags: readonly string[];
  readonly demo: boolean;
  readonly cardTitle: string;
  readonly season: string;
  readonly seat: string;
  readonly events: number;
  /** The step or result that it stands at, in words of `core/game`. */
  readonly stage: string;
  /** When an event was last entered or corrected; empty when there is none. */
  readonly lastEventAt: string;
  readonly zone: string;
  /** The kind of table that it is judged at. */
  readonly table: TableKind;
  /** The most aid that it was played with; null when not known. */
  readonly advice: AdviceTime | null;
  readonly evening: string | null;
  readonly outcome: Outcome;
  readonly winner: Seat | null;
  readonly wonBy: 'draw' | 'discard' | null;
  readonly lineId: string | null;
  readonly lineName: string | null;
  readonly section: string | null;
  /** What each seat gained; null when it can't be known. */
  readonly payments: Payments | null;
  readonly jokersDealt: number | null;
  /** What its log tells of its table: `TableLog` of core/journal/table-log.ts. */
  readonly drawn: number | null;
  readonly secondRound: boolean | null;
  /** The first few notes, shortened. */
  readonly notes: readonly string[];
  /** Names of players, if any were written. */
  readonly names: readonly string[];
}
