import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CardDocument, emptyCard, textField } from '../../core/card/document.ts';
import {
  addLine,
  addSection,
  changeCard,
  changeLine,
  duplicateLine,
  freshId,
  lineAt,
  moveLine,
  moveSection,
  removeLine,
  removeSection,
  renameSection,
} from '../../core/card/edit.ts';
import { SEED } from './arbitrary.ts';

function sample(): CardDocument {
  const card = addSection(addSection(emptyCard('T', 'S'), 'Stairs'), 'Even Paces');
  const lines = ['a', 'b', 'c'].map((id) => ({ id, pattern: 'FF', kept: id }));
  return lines.reduce((built, line, index) => addLine(built, { section: 0, line: index }, line), card);
}

function ids(card: CardDocument): string[][] {
  return card.sections.map(({ lines }) => lines.map((line) => textField(line, 'id')));
}

function frozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) {
    Object.freeze(value);
    for (const part of Object.values(value)) frozen(part);
  }
  return value;
}

describe('edits of a card', () => {
  test('lines are added, moved within and between sections, duplicated and removed', () => {
    const card = sample();
    expect(ids(card)).toEqual([['a', 'b', 'c'], []]);
    expect(ids(moveLine(card, { section: 0, line: 0 }, { section: 0, line: 2 }))).toEqual([['b', 'c', 'a'], []]);
    expect(ids(moveLine(card, { section: 0, line: 1 }, { section: 1, line: 0 }))).toEqual([['a', 'c'], ['b']]);
    expect(ids(duplicateLine(card, { section: 0, line: 0 }))).toEqual([['a', 'stairs-4', 'b', 'c'], []]);
    expect(ids(removeLine(card, { section: 0, line: 1 }))).toEqual([['a', 'c'], []]);
  });

  test('sections are renamed, moved and removed', () => {
    const card = sample();
    expect(renameSection(card, 1, 'Odd Paces').sections[1]?.['name']).toBe('Odd Paces');
    expect(ids(moveSection(card, 0, 1))).toEqual([[], ['a', 'b', 'c']]);
    expect(ids(removeSection(card, 0))).toEqual([[]]);
    expect(changeCard(card, { season: 'Winter' })).toMatchObject({ title: 'T', season: 'Winter' });
  });

  test('changing a line keeps its other fields; undefined takes a field away', () => {
    const place = { section: 0, line: 0 };
    expect(lineAt(changeLine(sample(), place, { points: 30 }), place)).toEqual({
      id: 'a',
      pattern: 'FF',
      kept: 'a',
      points: 30,
    });
    expect(lineAt(changeLine(sample(), place, { kept: undefined }), place)).toEqual({ id: 'a', pattern: 'FF' });
  });

  test('a fresh id is taken by no line, whatever the section is called', () => {
    expect(freshId(sample(), 1)).toBe('even-paces-1');
    expect(freshId(addSection(emptyCard('', ''), '…'), 0)).toBe('line-1');
    const taken = addLine(sample(), { section: 1, line: 0 }, { id: 'stairs-4', pattern: '' });
    expect(freshId(taken, 0)).toBe('stairs-5');
    expect(freshId(sample(), 2)).toBe('line-1');
  });

  test('no edit touches the card it starts from, a place that is not there changes nothing, and no line is lost', () => {
    const place = fc.record({ section: fc.integer({ min: -1, max: 3 }), line: fc.integer({ min: -1, max: 5 }) });
    const at = fc.integer({ min: -1, max: 4 });
    const edit = fc.oneof(
      fc.tuple(place, place).map(([from, to]) => (card: CardDocument) => ({ card: moveLine(card, from, to), more: 0 })),
      fc.tuple(at, at).map(([from, to]) => (card: CardDocument) => ({ card: moveSection(card, from, to), more: 0 })),
      at.map((where) => (card: CardDocument) => ({ card: addSection(card, 'N', where), more: 0 })),
      place.map((where) => (card: CardDocument) => ({ card: changeLine(card, where, { points: 5 }), more: 0 })),
      at.map((where) => (card: CardDocument) => ({ card: renameSection(card, where, 'R'), more: 0 })),
      place.map((where) => (card: CardDocument) => {
        const next = duplicateLine(card, where);
        return { card: next, more: lineAt(card, where) === undefined ? 0 : 1 };
      }),
      place.map((where) => (card: CardDocument) => {
        const next = removeLine(card, where);
        return { card: next, more: lineAt(card, where) === undefined ? 0 : -1 };
      }),
    );
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 20 }), (edits) => {
        let card = frozen(sample());
        let lines = 3;
        for (const apply of edits) {
          const { card: next, more } = apply(card);
          lines += more;
          if (next !== card) expect(JSON.stringify(next)).not.toBe('');
          card = frozen(next);
          const all = ids(card).flat();
          expect(all).toHaveLength(lines);
          expect(new Set(all).size).toBe(lines);
        }
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test('a place that is not there gives back the same card', () => {
    const card = sample();
    const nowhere = { section: 7, line: 0 };
    expect(addLine(card, nowhere, {})).toBe(card);
    expect(addLine(card, { section: 0, line: 9 }, {})).toBe(card);
    expect(changeLine(card, nowhere, {})).toBe(card);
    expect(duplicateLine(card, nowhere)).toBe(card);
    expect(removeLine(card, nowhere)).toBe(card);
    expect(moveLine(card, nowhere, { section: 0, line: 0 })).toBe(card);
    expect(moveLine(card, { section: 0, line: 0 }, nowhere)).toBe(card);
    expect(moveSection(card, 0, 5)).toBe(card);
    expect(removeSection(card, 5)).toBe(card);
    expect(renameSection(card, 5, '')).toBe(card);
    expect(addSection(card, '', 9)).toBe(card);
  });
});
