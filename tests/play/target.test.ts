import { expect, test } from 'vitest';
import { targetAdvice } from '../../renderer/places/table/play/target.ts';
import type { HandDocument, ReadingDocument } from '../../core/engine/documents.ts';

function hand(line: string, reach: number): HandDocument {
  const none = {
    points: 25,
    concealed: false,
    note: '',
    away: 3,
    drawReach: 0,
    groups: [],
    missing: [],
    places: [],
    missingNames: [],
  };
  return { key: line, line, name: line, section: 'S', reach, ...none };
}

function reading(...hands: HandDocument[]): Pick<ReadingDocument, 'hands'> {
  return { hands };
}

test('the best hand is the first target, and stays it while no other is clearly better', () => {
  expect(targetAdvice(null, reading(hand('a', 0.1)))).toMatchObject({ verdict: 'stay', target: 'a' });
  expect(targetAdvice('a', reading(hand('b', 0.12), hand('a', 0.1)))).toMatchObject({ verdict: 'stay' });
});

test('a hand with a quarter more reach than the target is worth a change', () => {
  const advice = targetAdvice('a', reading(hand('b', 0.13), hand('a', 0.1)));
  expect(advice).toMatchObject({ verdict: 'change', target: 'a', reach: 0.1, best: { line: 'b' } });
});

test('a target that is struck out is dead; without any hand there is none to take', () => {
  expect(targetAdvice('a', reading(hand('b', 0.01)))).toMatchObject({ verdict: 'dead', reach: 0 });
  expect(targetAdvice('a', reading())).toMatchObject({ verdict: 'none', best: null });
});
