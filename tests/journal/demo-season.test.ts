import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { SEATS } from '../../core/exchange/steps.ts';
import { readGameFile } from '../../core/game/file/read-game-file.ts';
import { writeGameFile } from '../../core/game/file/write-game-file.ts';
import { stateOf } from '../../core/game/state.ts';
import { finish } from '../../core/base/steps.ts';
import { DEMO_GAMES, demoSeason } from '../../core/journal/demo-season.ts';
import { readCardFile } from '../../core/card/file.ts';
import { replay } from '../../core/game/state.ts';
import demoDocument from '../../assets/demo.card.json' with { type: 'json' };
import { gameEntryOf } from '../../main/desk/game-entry.ts';

const { card } = expectValue(readCardFile(JSON.stringify(demoDocument)));
const task = { card, document: demoDocument, appVersion: '0.1.0' };
const season = finish(demoSeason(task));
const entries = season.map((record) => gameEntryOf({ record, state: replay(record.events).state }));

describe('the invented season', () => {
  it('has at least 60 games, all marked as demo, seats only, each with an id of its own', () => {
    expect(season.length).toBe(DEMO_GAMES);
    expect(season.length).toBeGreaterThanOrEqual(60);
    expect(season.every(({ demo, players }) => demo && players === undefined)).toBe(true);
    expect(new Set(season.map(({ id }) => id)).size).toBe(season.length);
  });

  it('every game is whole and legal, as a file too', () => {
    for (const game of season) {
      expectValue(stateOf(game.events));
      const { record, damage } = expectValue(readGameFile(writeGameFile(game)));
      expect(damage).toBeNull();
      expect(record).toEqual(game);
    }
  });

  it('is the same every time', () => {
    const texts = season.map(writeGameFile);
    expect(finish(demoSeason(task)).map(writeGameFile)).toEqual(texts);
  });

  it('is played on Thursdays, four games an evening with East going round', () => {
    for (const { startedAt } of season) expect(new Date(startedAt).getUTCDay()).toBe(4);
    const seats = entries.map(({ seat }) => seat).filter((seat) => seat !== '');
    expect(seats.slice(0, 4)).toEqual(['East', 'North', 'West', 'South']);
    expect(new Set(seats)).toEqual(new Set(SEATS));
    expect(season.map(({ startedAt }) => startedAt)).toEqual(season.map(({ startedAt }) => startedAt).sort());
  });

  it('has wins, losses, hands, payments and notes to look at', () => {
    const outcomes = entries.map(({ outcome }) => outcome);
    expect(outcomes.filter((outcome) => outcome === 'won').length).toBeGreaterThan(5);
    expect(outcomes.filter((outcome) => outcome === 'lost').length).toBeGreaterThan(20);
    expect(entries.every(({ payments }) => payments !== null)).toBe(true);
    expect(entries.every(({ outcome, section }) => (outcome === 'won') <= (section !== null))).toBe(true);
    expect(entries.some(({ notes }) => notes.length > 0)).toBe(true);
  });
});
