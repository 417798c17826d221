import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { success } from '../../core/base/result.ts';
import { emptyCard } from '../../core/card/document.ts';
import { addSection, changeLine, insertGroup, moveGroup, removeGroup, replaceGroup } from '../../core/card/edit.ts';
import { pointsFrom, readLine, tilesOfGroups } from '../../core/card/line.ts';
import { parsePattern } from '../../core/card/parse.ts';
import { formatGroup, formatPattern } from '../../core/card/pattern.ts';
import type { CardEntry } from '../../main/desk/desk.ts';
import { CardEditor } from '../../renderer/places/card/card-editor.ts';
import { cardFileName } from '../../renderer/backup/save-file.ts';
import { type Cell, cellBeside, rowBeside, setByKey, within } from '../../renderer/places/card/line-cells.ts';
import {
  copyLine,
  dropLine,
  newLine,
  pasteLines,
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

  test('a line has ways, or a problem', () => {
    const whole = readLine({ id: 'a', pattern: 'FF 111a 222b 333a 444b', slide: 1 });
    expect([whole.wayCount, whole.problems]).toEqual([36, []]);
    const half = readLine({ id: 'a', pattern: 'FF' });
    expect(half.problems.map(({ message }) => message)).toEqual(['The groups hold 2 tiles, not 14: add 12 more.']);
  });
});

describe('the cells of the table of lines', () => {
  const rows = { sections: [{ lines: [1, 2] }, { lines: [] }, { lines: [3] }], grows: true };
  const cell = (section: number, line: number, column: number): Cell => ({ section, line, column });

  test('CR-K6: Tab goes through every cell of every line, the row for a new line of each section too, and then out', () => {
    const path: Cell[] = [];
    for (let at: Cell | null = cell(0, 0, 0); at !== null; at = cellBeside(rows, at, 1)) path.push(at);
    const line = (section: number, at: number): Cell[] => [0, 1, 2, 3].map((column) => cell(section, at, column));
    expect(path).toEqual([...line(0, 0), ...line(0, 1), cell(0, 2, 0), cell(1, 0, 0), ...line(2, 0), cell(2, 1, 0)]);
    const back: Cell[] = [];
    for (let at: Cell | null = cell(2, 1, 0); at !== null; at = cellBeside(rows, at, -1)) back.push(at);
    expect(back.reverse()).toEqual(path);
  });

  test('CR-K6: Enter goes on to the next row, over the edges of sections, and stops behind the last', () => {
    expect(rowBeside(rows, cell(0, 1, 3), 1)).toEqual({ section: 0, line: 2 });
    expect(rowBeside(rows, cell(0, 2, 0), 1)).toEqual({ section: 1, line: 0 });
    expect(rowBeside(rows, cell(2, 1, 0), 1)).toBeNull();
    expect(rowBeside({ ...rows, grows: false }, cell(0, 1, 0), 1)).toEqual({ section: 2, line: 0 });
    expect(rowBeside(rows, cell(0, 0, 0), -1)).toBeNull();
  });

  test('a cell that is gone becomes the one nearest to it', () => {
    expect(within(rows, cell(0, 7, 3))).toEqual(cell(0, 2, 0));
    expect(within(rows, cell(9, 0, 2))).toEqual(cell(2, 0, 2));
    expect(within({ sections: [], grows: true }, cell(1, 1, 1))).toEqual(cell(0, 0, 0));
  });

  test('a digit sets how the numbers move, c and x the exposure; a blank and all else change nothing', () => {
    expect(['0', '1', '2', '3'].map((key) => setByKey(key, 'slide'))).toEqual([0, 1, 2, 3].map((slide) => ({ slide })));
    expect(['c', 'X'].map((key) => setByKey(key, 'concealed'))).toEqual([{ concealed: true }, { concealed: false }]);
    expect([' ', 'Enter', '4', 'c'].map((key) => setByKey(key, 'slide'))).toEqual([null, null, null, null]);
    expect([' ', '1', 'e'].map((key) => setByKey(key, 'concealed'))).toEqual([null, null, null]);
    expect([setByKey('1', 'pattern'), setByKey('c', 'points')]).toEqual([null, null]);
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

  test('pasted rows become lines, in the sections that they name; an empty line gives way to them', () => {
    const begun = newLine(addSection(emptyCard('T', ''), 'Runs'), { section: 0, line: 0 });
    const text = 'FF222a333b444a55b\t1\tc\t30\r\n\n# Winds\nNNNN EEEE WWWW SS | | | many\n';
    const { step, lines } = pasteLines(begun.document, { section: 0, line: 0 }, text);
    expect(lines).toBe(2);
    expect(step.selection).toEqual({ section: 1, line: 0 });
    expect(step.document.sections).toEqual([
      {
        name: 'Runs',
        lines: [{ id: 'runs-1', pattern: 'FF 222a 333b 444a 55b', slide: 1, concealed: true, points: 30 }],
      },
      {
        name: 'Winds',
        // What is no number of points is not lost: the line is to be looked at.
        lines: [{ id: 'winds-1', pattern: 'NNNN EEEE WWWW SS', slide: 0, concealed: false, points: 'many' }],
      },
    ]);
    const again = pasteLines(step.document, { section: 0, line: 0 }, 'FF 1111a 2222b 3333c');
    expect(again.step.document.sections[0]?.lines.map(({ id }) => id)).toEqual(['runs-1', 'runs-2']);
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
