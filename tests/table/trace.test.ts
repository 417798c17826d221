import { describe, expect, it } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { POLICY_NAMES, type PolicyName } from '../../core/table/policies/names.ts';
import { traceGame } from '../../core/table/simulate.ts';
import { formatTrace, type TableEvent } from '../../core/table/trace.ts';
import { JOKER, type Kind } from '../../core/tiles/kinds.ts';
import { parseTileList } from '../../core/tiles/text.ts';
import { cardOf, demoCard } from './cards.ts';
import { Referee } from './referee.ts';
import { IN_FULL } from '../reference/rounds.ts';

const GAMES_EACH = IN_FULL ? 8 : 2;

function tablesOf(): PolicyName[][] {
  return [...POLICY_NAMES.map((name) => [name, name, name, name]), ['soft', 'beginner', 'nearest', 'beginner']];
}

describe('a trace, replayed by a slow referee that knows only core/RULES.md', () => {
  it.each(tablesOf())('TB-1 to TB-20 hold for %s, %s, %s and %s', (...policies) => {
    const seen = new Set<string>();
    for (let game = 0; game < GAMES_EACH; game += 1) {
      const events = traceGame({ compiled: demoCard, seed: 401, policies }, game);
      new Referee(
        demoCard,
        policies.some((name) => name === 'club' || name === 'relaxed'),
      ).follow(events);
      for (const event of events) seen.add(event.type);
    }
    expect([...seen]).toEqual(
      expect.arrayContaining(['dealt', 'gave', 'received', 'drew', 'discarded', 'called', 'won']),
    );
  });

  it('every kind of event occurs in a season of games', () => {
    const seen = new Set<string>();
    for (let game = 0; game < 60; game += 1) {
      const events = traceGame(
        { compiled: demoCard, seed: 5, policies: ['soft', 'nearest', 'beginner', 'soft'] },
        game,
      );
      for (const event of events) seen.add(event.type);
    }
    expect([...seen].sort()).toEqual(
      ['called', 'dealt', 'discarded', 'drew', 'gave', 'received', 'stopped', 'swapped', 'wallGame', 'won'].sort(),
    );
  });
});

describe('cards of other kinds', () => {
  const cards = {
    'a card of one hand, soon dead': cardOf({ id: 'one', pattern: 'NEWS 1111bam 11crak 1111dot' }),
    'concealed hands only': cardOf(
      { id: 'pairs', pattern: '11a 22a 33a 44a 55a 66a 77a', slide: 1, concealed: true },
      { id: 'pungs', pattern: 'FF 111a 222a 333a 444a', slide: 1, concealed: true },
    ),
    'quints and sextets, jokers needed': cardOf(
      { id: 'quints', pattern: '11111a 2222a 33333a', slide: 1 },
      { id: 'sextet', pattern: 'FFFFFF 1111a 1111b', slide: 1 },
      { id: 'twice', pattern: 'FF FFF 111a 222a 333a', slide: 1 },
    ),
  };
  it.each(Object.entries(cards))('TB-1 to TB-20 hold on %s', (_, compiled) => {
    for (let game = 0; game < 24; game += 1) {
      const events = traceGame({ compiled, seed: 55, policies: ['soft', 'planner', 'nearest', 'beginner'] }, game);
      new Referee(compiled).follow(events);
    }
  });
});

describe('the referee itself', () => {
  const events = traceGame({ compiled: demoCard, seed: 401, policies: ['soft', 'soft', 'soft', 'soft'] }, 3);
  const follow = (list: readonly TableEvent[]) => (): void => new Referee(demoCard).follow(list);

  it('accepts the untouched game', () => {
    expect(follow(events)).not.toThrow();
  });

  it('TB-20: notices a tile that is drawn twice', () => {
    const doubled = events.flatMap((event): TableEvent[] => (event.type === 'drew' ? [event, event] : [event]));
    expect(follow(doubled)).toThrow(/TB-9/);
  });

  it('TB-4: notices a passed joker', () => {
    const first = events.findIndex((event) => event.type === 'gave');
    const spoilt = events.map((event, place) =>
      place === first && event.type === 'gave' ? { ...event, tiles: [JOKER, ...event.tiles.slice(1)] } : event,
    );
    expect(follow(spoilt)).toThrow(/TB-4/);
  });

  it('TB-18: notices a game that ends too early', () => {
    expect(follow([...events.slice(0, 40), { type: 'wallGame' }])).toThrow(/TB-18/);
    expect(follow(events.slice(0, -1))).toThrow(/has an end/);
  });

  it('TB-17: notices a win that the tiles do not make', () => {
    const spoilt = events.map((event) =>
      event.type === 'won' ? { ...event, way: (event.way + 1) % demoCard.wayCount } : event,
    );
    expect(follow(spoilt)).toThrow(/TB-17/);
  });
});

describe('formatTrace', () => {
  const kinds = (text: string): Kind[] => expectValue(parseTileList(text));
  const [bam] = kinds('1b') as [Kind];

  it.each<[TableEvent, string]>([
    [{ type: 'dealt', seat: 0, tiles: kinds('1b FJ') }, 'East is dealt J F 1b.'],
    [{ type: 'gave', seat: 1, step: 'right', tiles: kinds('FN'), blind: 0 }, 'South gives F N to the right.'],
    [{ type: 'gave', seat: 1, step: 'across', tiles: kinds('F'), blind: 0 }, 'South gives F across.'],
    [{ type: 'gave', seat: 1, step: 'left2', tiles: kinds('F'), blind: 0 }, 'South gives F to the left, second round.'],
    [{ type: 'gave', seat: 1, step: 'across2', tiles: kinds('F'), blind: 0 }, 'South gives F across, second round.'],
    [{ type: 'gave', seat: 1, step: 'left', tiles: kinds('F'), blind: 2 }, 'South gives F and 2 unseen to the left.'],
    [
      { type: 'gave', seat: 1, step: 'right2', tiles: [], blind: 3 },
      'South gives 3 unseen to the right, second round.',
    ],
    [{ type: 'gave', seat: 1, step: 'courtesy', tiles: [], blind: 0 }, 'South gives nothing across as a courtesy.'],
    [{ type: 'received', seat: 2, step: 'courtesy', tiles: [] }, 'West receives nothing.'],
    [{ type: 'received', seat: 2, step: 'across', tiles: kinds('1b N') }, 'West receives 1b N.'],
    [{ type: 'stopped', seat: 3, before: 'left2' }, 'North stops the exchange before the second round.'],
    [{ type: 'drew', seat: 0, tile: bam }, 'East draws one bam.'],
    [
      { type: 'swapped', seat: 0, owner: 2, tile: bam },
      'East puts one bam into an exposure of West and takes the joker.',
    ],
    [{ type: 'discarded', seat: 0, tile: JOKER }, 'East discards joker.'],
    [{ type: 'called', seat: 1, from: 0, tile: bam, group: kinds('11b J') }, 'South calls one bam and exposes 11b J.'],
    [{ type: 'won', seat: 1, way: 4 }, 'South wins hand 4 by own draw.'],
    [{ type: 'won', seat: 1, from: 3, tile: bam, way: 4 }, 'South wins hand 4 on one bam from North.'],
    [{ type: 'wallGame' }, 'The wall has run out: nobody wins.'],
  ])('%j', (event, sentence) => {
    expect(formatTrace([event], (way) => `hand ${way}`)).toBe(sentence);
  });

  it('writes a line for each event, in words', () => {
    const events = traceGame({ compiled: demoCard, seed: 401, policies: ['soft', 'soft', 'soft', 'soft'] }, 3);
    const lines = formatTrace(events, (way) => demoCard.lines[demoCard.lineOf[way]!]!.id).split('\n');
    expect(lines).toHaveLength(events.length);
    expect(lines[0]).toMatch(/^East is dealt .+\.$/);
    expect(lines.at(-1)).toMatch(/wins|nobody wins/);
    for (const line of lines) expect(line).toMatch(/^(East|South|West|North|The wall) .+\.$/);
  });
});
