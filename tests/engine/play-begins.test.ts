import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { finish } from '../../core/base/steps.ts';
import { markedCard } from '../../core/card/mark.ts';
import { gameChance } from '../../core/engine/chance-questions.ts';
import type { Moment } from '../../core/engine/moment.ts';
import { advise, plan } from '../../core/engine/reading-questions.ts';
import type { GameEvent } from '../../core/game/events.ts';

const CARD = markedCard(JSON.parse(readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8')));

function momentOf(dealt: GameEvent, playBegins: boolean): Moment & { readonly at: { readonly events: GameEvent[] } } {
  return { card: CARD, at: { events: [dealt] }, said: { playBegins } };
}

describe('where play begins although passes are left unlogged', () => {
  const east: GameEvent = { type: 'dealt', seat: 'East', tiles: 'JJ FF NE 0 1389b 25c 7d' };

  test('the dealer’s first discard has advice', () => {
    const { choices } = expectValue(finish(advise(momentOf(east, true))));
    expect(choices.length).toBeGreaterThan(5);
    expect(choices.every(({ action }) => action === 'discard')).toBe(true);
    expect(finish(plan(momentOf(east, true))).ok).toBe(false);
  });

  test('the chance is that of play, not of a pass: a hand near its end wins more often', () => {
    const near: GameEvent = { type: 'dealt', seat: 'South', tiles: 'J F 11b 222d 333b 44d 9c' };
    const [before, after] = [false, true].map((begins) => {
      const said = expectValue(finish(gameChance(momentOf(near, begins))));
      return said.chance;
    });
    expect(after).toBeGreaterThan((before as number) + 0.1);
  });
});
