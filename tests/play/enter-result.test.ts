import { expect, test } from 'vitest';
import { success } from '../../core/base/result.ts';
import { enterResult } from '../../renderer/places/table/play/result-draft.ts';
import { GameSession } from '../../renderer/session/game-session.ts';

/** A session whose saving never comes to an end: only what is in memory matters here. */
function begun(): GameSession {
  const forever = async (): Promise<never> => await new Promise<never>(() => undefined);
  const done = async (): Promise<ReturnType<typeof success<null>>> => await Promise.resolve(success(null));
  const desk = {
    keepDraft: done,
    startGame: forever,
    changeGame: forever,
    appendEvent: done,
    dropEvent: done,
  };
  const now = (): string => '2026-11-25T20:00:00Z';
  return new GameSession({ desk, appVersion: '0', zone: 'UTC', now, newId: () => 'g-1' }, {});
}

test('a result entered anew takes the place of the old one, and notes made since stay', () => {
  const session = begun();
  expect(enterResult(session, { type: 'ended', result: 'wall', seat: 'West' }).ok).toBe(true);
  expect(session.apply({ type: 'noted', text: 'a long wall' }).ok).toBe(true);
  expect(enterResult(session, { type: 'ended', result: 'won', winner: 'East', seat: 'West' }).ok).toBe(true);
  expect(session.events.map(({ type }) => type)).toEqual(['ended', 'noted']);
  expect(session.state.result?.winner).toBe('East');
  expect(session.state.notes.map(({ text }) => text)).toEqual(['a long wall']);
});

test('a result that can not be leaves its reason, and the old result', () => {
  const session = begun();
  expect(enterResult(session, { type: 'ended', result: 'wall' }).ok).toBe(true);
  expect(session.apply({ type: 'noted', text: 'a long wall' }).ok).toBe(true);
  const entered = enterResult(session, { type: 'ended', result: 'won' });
  expect(entered).toMatchObject({ ok: false, problem: { code: 'bad-result' } });
  expect(session.events.map(({ type }) => type)).toEqual(['ended', 'noted']);
});
