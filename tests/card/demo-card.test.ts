import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { type UnderstoodLine, understoodLines } from '../../core/card/line.ts';
import { tilesIn } from '../../core/card/pattern.ts';
import { compileCard } from '../../core/reading/compiled.ts';
import { demoFile } from './demo.ts';

const FIRST = new URL('../golden/0.1.0/card.json', import.meta.url);
const LINES = understoodLines(demoFile.document);

/** 4, one more for every two tiles that no joker stands for, 3 for a quint, 5 for a sextet, 4 when concealed. */
function pointsOf({ pattern, concealed }: UnderstoodLine): number {
  const count = (sizes: (size: number) => boolean): number => pattern.filter(({ size }) => sizes(size)).length;
  const natural = pattern.reduce((sum, group) => sum + (group.size <= 2 ? tilesIn(group) : 0), 0);
  return (
    4 +
    Math.floor(natural / 2) +
    3 * count((size) => size === 5) +
    5 * count((size) => size === 6) +
    (concealed ? 4 : 0)
  );
}

/** What a line asks for, without its name, its place and its points. */
function asksFor({ pattern, slide, slide2, concealed, note }: UnderstoodLine): string {
  return JSON.stringify([pattern, slide, slide2, concealed, note]);
}

describe('the demo card', () => {
  test('goes by its own rule of points', () => {
    expect(LINES.map(({ id, points }) => [id, points])).toEqual(LINES.map((line) => [line.id, pointsOf(line)]));
  });

  test('holds the lines of its first order, each once, and so the same ways', () => {
    const first = expectValue(readCardFile(readFileSync(FIRST, 'utf8')));
    const before = understoodLines(first.document).map(asksFor);
    expect(LINES.map(asksFor).toSorted()).toEqual(before.toSorted());
    expect(compileCard(demoFile.card).wayCount).toBe(compileCard(first.card).wayCount);
  });

  test('names a concealed hand in still water, and nowhere else', () => {
    const still = LINES.filter(({ section }) => section === 'Still Water');
    expect(still.length).toBeGreaterThan(1);
    expect(LINES.filter(({ concealed }) => concealed)).toEqual(still);
  });
});
