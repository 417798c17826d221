import { describe, expect, test } from 'vitest';
import { isSameCard, linesThatDiffer } from '../../core/card/compare.ts';
import { addLine, changeCard, changeLine, moveLine, removeLine, renameSection } from '../../core/card/edit.ts';
import { withUs } from '../window/card-file.ts';

const CARD = withUs();
const FIRST = { section: 0, line: 0 };

describe('two cards compared', () => {
  test('ids, blanks and what is usual anyway make no other card', () => {
    const pattern = String(CARD.sections[0]?.lines[0]?.['pattern']);
    const same = changeLine(CARD, FIRST, { id: 'else', pattern: ` ${pattern.replaceAll(' ', '  ')}`, distinct: false });
    expect(isSameCard(CARD, same)).toBe(true);
    expect(linesThatDiffer(CARD, same)).toBe(0);
  });

  test('a line that is changed, added or left out counts once', () => {
    const changed = changeLine(CARD, FIRST, { points: 95 });
    expect([isSameCard(CARD, changed), linesThatDiffer(CARD, changed)]).toEqual([false, 1]);
    expect(linesThatDiffer(CARD, addLine(changed, FIRST, { id: 'n', pattern: 'FF' }))).toBe(2);
    expect(linesThatDiffer(addLine(CARD, FIRST, { id: 'n', pattern: 'FF' }), CARD)).toBe(1);
    expect(linesThatDiffer(CARD, removeLine(CARD, FIRST))).toBe(1);
    expect(linesThatDiffer(CARD, changeLine(CARD, FIRST, { or: ['FF'] }))).toBe(1);
  });

  test('another order, or another title, is another card of the same lines', () => {
    const moved = moveLine(CARD, FIRST, { section: 0, line: 1 });
    expect([isSameCard(CARD, moved), linesThatDiffer(CARD, moved)]).toEqual([false, 0]);
    const titled = changeCard(CARD, { title: 'Else' });
    expect([isSameCard(CARD, titled), linesThatDiffer(CARD, titled)]).toEqual([false, 0]);
  });

  test('a section of another name has other lines', () => {
    expect(linesThatDiffer(CARD, renameSection(CARD, 0, 'Else'))).toBe(CARD.sections[0]?.lines.length);
  });
});
