import { describe, expect, it } from 'vitest';
import { findingsKey } from '../../core/journal/findings-key.ts';
import { FIRST_REACH_MODEL, type ReachModel } from '../../core/reading/reach-model.ts';

const MARK = { events: 7, lastEventAt: '2026-11-19T20:10:00Z', table: 'club' } as const;

describe('what findings were made from', () => {
  const key = findingsKey(MARK, FIRST_REACH_MODEL);

  it('is the same for the same events and model, also for a copy of the model', () => {
    expect(findingsKey(MARK, FIRST_REACH_MODEL)).toBe(key);
    expect(findingsKey({ ...MARK }, structuredClone(FIRST_REACH_MODEL))).toBe(key);
  });

  it('is another when an event comes or goes, or when the kind of table, the engine or its model changes', () => {
    const model: ReachModel = { ...FIRST_REACH_MODEL, calibration: [] };
    const others = [
      findingsKey({ ...MARK, events: 8 }, FIRST_REACH_MODEL),
      findingsKey({ ...MARK, lastEventAt: '' }, FIRST_REACH_MODEL),
      findingsKey({ ...MARK, table: 'quick' }, FIRST_REACH_MODEL),
      findingsKey(MARK, model),
    ];
    expect(new Set([key, ...others]).size).toBe(5);
  });

  it('is short enough to be kept with every game', () => {
    expect(key.length).toBeLessThanOrEqual(64);
  });
});
