import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { success } from '../../core/base/result.ts';
import { emptyCard } from '../../core/card/document.ts';
import { addSection, changeLine, insertGroup, moveGroup, removeGroup, replaceGroup } from '../../core/card/edit.ts';
import { pointsFrom, printedWay, readLine, tilesOfGroups } from '../../core/card/line.ts';
import { parsePattern } from '../../core/card/parse.ts';
import { formatGroup, formatPattern } from '../../core/card/pattern.ts';
import type { CardEntry } from '../../main/desk/desk.ts';
import { CardEditor } from '../../renderer/places/card/card-editor.ts';
import { cardFileName } from '../../renderer/backup/save-file.ts';
import { COLUMNS, goTo, setByKey } from '../../renderer/places/card/grid-cells.ts';
import {
  copyLine,
  dropLine,
  newLine,
  placeBeside,
  sendLine,
  shiftLine,
} from '../../renderer/places/card/line-moves.ts';
import * as arbitrary from '../card/arbitrary.ts';
import { withUs } from './card-file.ts';

const ENTRY: CardEntry = { id: 'mine', title: 'Mine', season: '', lines: 0, savedAt: '', fixed: false };

describe('the builder and the typed line are one text', () => {
  test('a pattern put together group by group says the same as the pattern written at once', () => {
    fc.assert(
      fc.property(arbitrary.pattern, (pattern) => {
        const built = pattern.reduce((text, group) => insertGroup(text, formatGroup(group)), '');
        expect(parsePattern(built)).toEqual(parsePattern(formatPattern(pattern)));
      }),
      { seed: arbitrary.SEED, numRuns: 300 },
    );
  });

  test('moving a group and moving it back, or copying and taking away, changes nothing', () => {
    fc.assert(
      fc.property(arbitrary.pattern, fc.nat(13), fc.nat(13), (pattern, one, other) => {
        const text = formatPattern(pattern);
        const [from, to] = [one % pattern.length, other % pattern.length];
        expect(moveGroup(moveGroup(text, from, to), to, from)).toBe(text);
        expect(removeGroup(insertGroup(text, 'FF', from), from)).toBe(text);
        expect(replaceGroup(replaceGroup(text, from, 'J'), from, formatGroup(pattern[from]!))).toBe(text);
      }),
      { seed: arbitrary.SEED, numRuns: 300 },
    );
  });

  test('groups that can not be read yet stay as they were typed', () => {
    expect(replaceGroup('FF 22? 333a', 0, 'FFF')).toBe('FFF 22? 333a');
    expect(moveGroup('FF 22? 333a', 1, 2)).toBe('FF 333a 22?');
    expect(removeGroup('FF', 4)).toBe('FF');
    expect(moveGroup('FF EE', 0, 7)).toBe('FF EE');
  });
});

describe('a line as it is drawn', () => {
  test('an example is drawn from the first group on, before there are 14 tiles', () => {
    const reading = readLine({ pattern: 'FF NEWS 22', slide: 0 });
    expect(reading).toMatchObject({ tiles: 6, whole: false });
    const drawn = tilesOfGroups(reading.forms[0], reading.ways[0]);
    expect(drawn.map((group) => group?.length ?? null)).toEqual([1, 4, null]);
  });

  test('the first way that is shown stands as printed', () => {
    const reading = readLine({ pattern: '3333a 4444a 5555b FF', slide: 1 });
    const drawn = tilesOfGroups(reading.forms[0], reading.ways[printedWay(reading.forms[0])]);
    expect(reading.ways.length).toBeGreaterThan(1);
    const line = readLine({ pattern: '3333bam 4444bam 5555crak FF' });
    expect(drawn).toEqual(tilesOfGroups(line.forms[0], line.ways[0]));
  });

  test('a line has ways, or a problem', () => {
    const whole = readLine({ id: 'a', pattern: 'FF 111a 222b 333a 444b', slide: 1 });
    expect([whole.wayCount, whole.problems]).toEqual([36, []]);
    const half = readLine({ id: 'a', pattern: 'FF' });
    expect(half.problems.map(({ message }) => message)).toEqual(['The groups hold 2 tiles, not 14: add 12 more.']);
  });
});

describe('the grid', () => {
  const key = (name: string, ctrlKey = false) => ({ key: name, ctrlKey });
  const last = COLUMNS.length - 1;

  test('CR-K6: arrows move by cell and stop at the edges', () => {
    expect(goTo(key('ArrowLeft'), { row: 0, column: 0 }, 3)).toEqual({ row: 0, column: 0 });
    expect(goTo(key('ArrowUp'), { row: 0, column: 2 }, 3)).toEqual({ row: 0, column: 2 });
    expect(goTo(key('ArrowRight'), { row: 1, column: last }, 3)).toEqual({ row: 1, column: last });
    expect(goTo(key('ArrowDown'), { row: 2, column: 1 }, 3)).toEqual({ row: 2, column: 1 });
    expect(goTo(key('ArrowDown'), { row: 1, column: 1 }, 3)).toEqual({ row: 2, column: 1 });
  });

  test('CR-K6: Home and End within the row, with Control to the corners', () => {
    expect(goTo(key('Home'), { row: 1, column: 3 }, 3)).toEqual({ row: 1, column: 0 });
    expect(goTo(key('End'), { row: 1, column: 3 }, 3)).toEqual({ row: 1, column: last });
    expect(goTo(key('Home', true), { row: 1, column: 3 }, 3)).toEqual({ row: 0, column: 0 });
    expect(goTo(key('End', true), { row: 1, column: 3 }, 3)).toEqual({ row: 2, column: last });
    expect(goTo(key('a'), { row: 0, column: 0 }, 3)).toBeNull();
  });

  test('cells that are not written in are set by one key', () => {
    expect(setByKey('2', 'slide', {})).toEqual({ slide: 2 });
    expect(setByKey('4', 'slide', {})).toBeNull();
    expect(setByKey(' ', 'slide2', { slide2: 3 })).toEqual({ slide2: 0 });
    expect(setByKey('c', 'concealed', {})).toEqual({ concealed: true });
    expect(setByKey('E', 'concealed', {})).toEqual({ concealed: false });
    expect(setByKey('5', 'ways', {})).toBeNull();
  });

  test('points are whole numbers from 0 to 1000', () => {
    expect(['0', ' 25 ', '1000', '1001', '-5', '2.5', '', 'x'].map(pointsFrom)).toEqual([
      0,
      25,
      1000,
      null,
      null,
      null,
      null,
      null,
    ]);
  });
});

describe('moving lines', () => {
  const card = withUs();
  const count = card.sections.length;

  test('a line moved down and up again leaves the card as it was, over section edges too', () => {
    for (const [section, { lines }] of card.sections.entries()) {
      for (const line of lines.keys()) {
        const down = shiftLine(card, { section, line }, 1);
        if (down.document === card) continue;
        const { section: there, line: place } = down.selection;
        expect(shiftLine(down.document, { section: there, line: place ?? 0 }, -1).document).toEqual(card);
      }
    }
  });

  test('at the ends of the card a line stays', () => {
    expect(placeBeside(card, { section: 0, line: 0 }, -1)).toBeNull();
    const last = { section: count - 1, line: (card.sections[count - 1]?.lines.length ?? 0) - 1 };
    expect(placeBeside(card, last, 1)).toBeNull();
  });

  test('a new, a copied and a sent line have ids of their own, and one taken away leaves its neighbour chosen', () => {
    const place = { section: 0, line: 1 };
    const made = [newLine(card, place), copyLine(card, place), sendLine(card, place, 2)];
    for (const { document } of made) {
      const ids = document.sections.flatMap(({ lines }) => lines.map(({ id }) => id));
      expect(new Set(ids).size).toBe(ids.length);
    }
    expect(copyLine(card, place).selection).toEqual({ section: 0, line: 2 });
    const nine = card.sections[0]?.lines.length ?? 0;
    expect(dropLine(card, { section: 0, line: nine - 1 }).selection).toEqual({ section: 0, line: nine - 2 });
  });
});

describe('the editor', () => {
  function editorOn(entry: CardEntry = ENTRY): { editor: CardEditor; texts: string[] } {
    const texts: string[] = [];
    const saveCard = async (_: string | null, text: string) => {
      texts.push(text);
      return success(entry);
    };
    return { editor: new CardEditor({ saveCard }, entry, emptyCard('Mine', '')), texts };
  }

  test('CR-W7: undo restores every step exactly, 100 of them, and redo goes forward again', () => {
    const { editor } = editorOn();
    const states = [editor.document];
    for (let step = 0; step < 100; step += 1) {
      editor.change(addSection(editor.document, `Section ${step}`));
      states.push(editor.document);
    }
    for (const state of states.toReversed().slice(1)) {
      editor.undo();
      expect(editor.document).toBe(state);
    }
    expect(editor.canUndo).toBe(false);
    for (const state of states.slice(1)) {
      editor.redo();
      expect(editor.document).toBe(state);
    }
    expect(editor.canRedo).toBe(false);
  });

  test('typing in one field is one step until something else is done', () => {
    const { editor } = editorOn();
    editor.change(addSection(editor.document, 'A'));
    editor.change(newLine(editor.document, { section: 0, line: 0 }).document);
    const place = { section: 0, line: 0 };
    for (const pattern of ['F', 'FF', 'FF 2'])
      editor.change(changeLine(editor.document, place, { pattern }), place, 'p');
    editor.settle();
    editor.change(changeLine(editor.document, place, { pattern: 'FF 22' }), place, 'p');
    editor.undo();
    expect(editor.document.sections[0]?.lines[0]).toMatchObject({ pattern: 'FF 2' });
    editor.undo();
    expect(editor.document.sections[0]?.lines[0]).toMatchObject({ pattern: '' });
  });

  test('a change is told at once, while an earlier one is still being saved too', () => {
    const { editor } = editorOn();
    const seen: number[] = [];
    editor.subscribe(() => seen.push(editor.document.sections.length));
    editor.change(addSection(editor.document, 'A'));
    expect(seen.at(-1)).toBe(1);
    editor.change(addSection(editor.document, 'B'));
    expect(seen.at(-1)).toBe(2);
  });

  test('every change is saved, the last one last; the demo card can not be changed', async () => {
    const { editor, texts } = editorOn();
    editor.change(addSection(editor.document, 'A'));
    editor.change(addSection(editor.document, 'B'));
    await expect.poll(() => editor.saved.status).toBe('saved');
    expect(withUs(texts.at(-1))).toEqual(editor.document);
    const demo = editorOn({ ...ENTRY, fixed: true }).editor;
    demo.change(addSection(demo.document, 'A'));
    expect(demo.document.sections).toEqual([]);
    expect(demo.canUndo).toBe(false);
  });
});

test('a card file is named by its title and season', () => {
  expect(cardFileName('Thursday card', '2027')).toBe('thursday-card-2027.card.json');
  expect(cardFileName('../..', '')).toBe('card.card.json');
});
