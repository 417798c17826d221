import type { Card } from '../../core/card/card.ts';
import { isFields } from '../../core/base/json.ts';
import { textField } from '../../core/card/document.ts';
import type { GameState } from '../../core/game/game-state.ts';
import { keptCard } from '../../core/game/kept-card.ts';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import { type Payments, paymentsOf } from '../../core/game/points.ts';
import { type GameRecord, lastEnteredAt } from '../../core/game/record.ts';
import { summaryOf } from '../../core/journal/summary.ts';
import { USUAL_KIND } from '../../core/table/kinds.ts';
import type { GameEntry } from './desk.ts';
import type { KeptGame } from './log.ts';

const MOST_NOTES = 12;
const LONGEST_NOTE = 240;

/** What the journal's list shows of a game. */
export function gameEntryOf({ record, state }: KeptGame): GameEntry {
  const card = cardFor(record, state);
  const summary = summaryOf(record, state, card);
  return {
    id: record.id,
    startedAt: record.startedAt,
    place: record.place,
    tags: record.tags,
    demo: record.demo,
    cardTitle: card.title,
    season: card.season,
    seat: state.seat ?? '',
    events: record.events.length,
    stage: summary.stage,
    lastEventAt: lastEnteredAt(record.events),
    zone: record.zone,
    table: record.table ?? USUAL_KIND,
    advice: summary.advice,
    evening: summary.evening,
    outcome: summary.outcome,
    winner: summary.winner,
    wonBy: summary.wonBy,
    lineId: summary.lineId,
    lineName: summary.lineName,
    section: summary.section,
    payments: paymentsIn(record, state, card),
    jokersDealt: summary.jokersDealt,
    drawn: summary.drawn,
    secondRound: summary.secondRound,
    notes: summary.notes.slice(0, MOST_NOTES).map((note) => note.slice(0, LONGEST_NOTE)),
    names: Object.values(record.players ?? {}),
  };
}

function paymentsIn({ payment }: GameRecord, { result }: GameState, card: Card): Payments | null {
  const payments = paymentsOf(result, card, payment ?? DEFAULT_POINT_RULES);
  return payments.ok ? payments.value : null;
}

/** The card kept with a game; without its sections unless somebody won, which alone needs them. */
function cardFor(record: GameRecord, { result }: GameState): Card {
  const fields = isFields(record.card) ? record.card : {};
  const [title, season] = [textField(fields, 'title').slice(0, 200), textField(fields, 'season').slice(0, 200)];
  const sections = result?.result === 'won' ? readCard(record).sections : [];
  return { title, season, sections };
}

const NO_CARD: Card = { title: '', season: '', sections: [] };
const byDocument = new WeakMap<object, Card>();
let last: { readonly text: string; readonly card: Card } | undefined;

/** Reading a card takes as long as a hundred games, and a player's games share one. */
function readCard(record: GameRecord): Card {
  if (!isFields(record.card)) return NO_CARD;
  const known = byDocument.get(record.card);
  if (known !== undefined) return known;
  const text = JSON.stringify(record.card);
  if (last?.text !== text) {
    const read = keptCard(record);
    last = { text, card: read.ok ? read.value.card : NO_CARD };
  }
  byDocument.set(record.card, last.card);
  return last.card;
}
