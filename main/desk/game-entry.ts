import { isFields, textField } from '../../core/card/document.ts';
import type { GameRecord } from '../../core/game/record.ts';
import { stageOf } from '../../core/game/stage.ts';
import { replay } from '../../core/game/state.ts';
import type { GameEntry } from './desk.ts';

/** What the journal's list shows of a game. */
export function gameEntryOf(record: GameRecord): GameEntry {
  const { state } = replay(record.events);
  const card = isFields(record.card) ? record.card : {};
  return {
    id: record.id,
    startedAt: record.startedAt,
    place: record.place,
    tags: record.tags,
    demo: record.demo,
    cardTitle: textField(card, 'title').slice(0, 200),
    season: textField(card, 'season').slice(0, 200),
    seat: state.seat ?? '',
    events: record.events.length,
    stage: stageOf(state),
  };
}
