import { describe, expect, it } from 'vitest';
import { success } from '../../core/base/result.ts';
import type { Desk, GameEntry } from '../../main/desk/desk.ts';
import { JournalStore } from '../../renderer/places/journal/journal-store.ts';
import { engine } from '../../renderer/worker/engine.ts';

const ENTRY: GameEntry = {
  id: 'g-1',
  startedAt: '2026-11-20T01:30:00Z',
  place: '',
  tags: [],
  demo: false,
  cardTitle: 'My card',
  season: '2026',
  seat: 'South',
  events: 3,
  stage: 'Dealt',
  lastEventAt: '2026-11-20T02:00:00Z',
  zone: 'UTC',
  table: 'club',
  advice: null,
  evening: null,
  outcome: 'open',
  winner: null,
  wonBy: null,
  lineId: null,
  lineName: null,
  section: null,
  payments: null,
  jokersDealt: 1,
  drawn: null,
  secondRound: null,
  notes: [],
  names: [],
};

/** A store over a desk that answers with one game once it is told to. */
function store(): { readonly journal: JournalStore; readonly answer: () => void } {
  let answer = (): void => undefined;
  const asked = new Promise<void>((resolve) => (answer = resolve));
  const desk: Pick<Desk, 'listGames' | 'readFindings'> = {
    listGames: () => asked.then(() => success([ENTRY])),
    readFindings: () => asked.then(() => success([])),
  };
  const noWorker = engine(() => {
    throw new Error('no worker is needed');
  });
  return { journal: new JournalStore(desk as Desk, noWorker, noWorker), answer };
}

describe('the games that the Journal holds', () => {
  it('are fetched while it is open, and let go when it is left', async () => {
    const { journal, answer } = store();
    answer();
    await journal.load();
    expect(journal.games).toHaveLength(1);
    journal.release();
    expect(journal.games).toBeNull();
  });

  it('are not kept if they come after it was left: nobody would let them go', async () => {
    const { journal, answer } = store();
    const loading = journal.load();
    journal.release();
    answer();
    await loading;
    expect(journal.games).toBeNull();
    await journal.load();
    expect(journal.games).toHaveLength(1);
  });
});
