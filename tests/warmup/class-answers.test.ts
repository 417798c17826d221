import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { codeOf } from '../../core/tiles/kinds.ts';
import { type AnswerGiven, formatAnswerCode } from '../../core/warmup/answer-code.ts';
import {
  addAnswer,
  aimCounts,
  keptByNearlyAll,
  peopleOf,
  sectionOf,
  takeAnswer,
} from '../../core/warmup/class-answers.ts';
import { codesIn, countCodes, withAnswer } from '../../core/warmup/class-codes.ts';
import { schoolsOf } from '../../core/warmup/schools.ts';
import { type ClassAnswer, type SheetProblem } from '../../core/warmup/sheet.ts';
import { readSheetFile, writeSheetFile } from '../../core/warmup/sheet-file.ts';
import { classSheet as sheet, DEMO_TEXT, tiles } from './demo.ts';

const { card } = expectValue(readCardFile(DEMO_TEXT));
const { problems } = sheet();
const [first, second] = problems as [SheetProblem, SheetProblem];
// The first rack: J F R 1346b 3889c 26d.
const GIVES = ['13b 6b', '134b', '3c 26d', 'R 6b 2d'] as const;

const said = (give: string, keeps = '', aim = '', people = 1): ClassAnswer => ({
  give,
  people,
  ...(keeps === '' ? {} : { keeps }),
  ...(aim === '' ? {} : { aim }),
});

describe('the answers of a class', () => {
  test('the same answer in another order is counted together; another keep or aim is another answer', () => {
    const all = [
      said('13b 6b', 'J F', 'section:Weather', 2),
      said('6b 3b 1b', 'F J', 'section:Weather', 3),
      said('13b 6b', 'J F'),
      said('13b 6b'),
    ].reduce(addAnswer, first);
    expect(all.answers.map(({ people }) => people)).toEqual([5, 1, 1]);
    expect(peopleOf(all.answers)).toBe(7);
  });

  test('one is taken off the answer entered last of those that chose it, down to nobody', () => {
    const all = [said('13b 6b', 'J'), said('134b'), said('13b 6b', '', 'section:Weather')].reduce(addAnswer, first);
    const once = takeAnswer(all, { give: '6b 13b' });
    expect(once.answers).toEqual([said('13b 6b', 'J'), said('134b')]);
    expect(takeAnswer(takeAnswer(once, { give: '13b 6b' }), { give: '13b 6b' }).answers).toEqual([said('134b')]);
  });

  test('a sheet keeps what each kept and aimed at, and one of before opens as it was', () => {
    const answers = [said('13b 6b', 'J F', 'line:weather-1'), { ...said(''), stops: true as const }, said('134b')];
    const one = sheet({ problems: [{ ...first, answers }] });
    expect(readSheetFile(writeSheetFile(one))).toEqual({ ok: true, value: one });
    const old = sheet({ problems: [{ ...first, answers: [{ give: '134b', people: 7 }] }] });
    expect(expectValue(readSheetFile(JSON.stringify(old))).problems[0]?.answers).toEqual([{ give: '134b', people: 7 }]);
    for (const wrong of [{ keeps: 'Q' }, { aim: 7 }, { stops: false }]) {
      const bad = sheet({ problems: [{ ...first, answers: [{ ...said('134b'), ...wrong } as ClassAnswer] }] });
      const read = readSheetFile(JSON.stringify(bad));
      expect(read).toMatchObject({ ok: false, problem: { code: 'bad-field' } });
    }
  });

  test('a line counts for its section, an aim that the card has not for none', () => {
    const answers = [
      said('134b', '', 'line:weather-1', 4),
      said('134b', '', 'section:Weather', 2),
      said('134b', '', 'section:Lanterns', 3),
      said('134b', '', 'section:Nowhere', 9),
      said('134b', '', '', 5),
    ];
    expect(aimCounts(answers, card)).toEqual([
      { section: 'Weather', people: 6 },
      { section: 'Lanterns', people: 3 },
    ]);
    expect(sectionOf(answers[3]!, card)).toBeUndefined();
  });

  test('nearly all is four in five of those who said what they keep', () => {
    const answers = [
      said('134b', 'J F', '', 7),
      said('134b', 'J R', '', 2),
      said('134b', 'J', '', 1),
      said('134b', '', '', 30),
    ];
    const { of, kept } = keptByNearlyAll(answers);
    expect(of).toBe(10);
    expect(kept.map(({ kind, people }) => [codeOf(kind), people])).toEqual([['J', 10]]);
    const one = keptByNearlyAll([said('134b', 'J F', '', 8), said('134b', 'R', '', 2)]);
    expect(one.kept.map(({ kind }) => codeOf(kind))).toEqual(['J', 'F']);
    expect(keptByNearlyAll([])).toEqual({ of: 0, kept: [] });
  });
});

describe('the two schools of thought of a class', () => {
  test('are the sections most people aim at, with what only each keeps', () => {
    const answers = [
      said('13b 6b', 'J F 88c', 'section:Weather', 4),
      said('134b', 'J F', 'line:weather-1', 3),
      said('3c 26d', 'J R', 'section:Lanterns', 4),
      said('134b', 'J', 'section:Moonlight'),
    ];
    const found = schoolsOf(answers, card);
    expect(found).toMatchObject({
      type: 'two',
      others: 1,
      schools: [
        { people: 7, section: 'Weather', give: '13b 6b' },
        { people: 4, section: 'Lanterns', give: '3c 26d' },
      ],
    });
    const keeps = found.type === 'two' ? found.schools.map((school) => school.keeps.map(codeOf)) : [];
    expect(keeps).toEqual([['F'], ['R']]);
  });

  test('keep what three in four of one and fewer than half of the other keep', () => {
    const keepsOf = (theirs: readonly ClassAnswer[]): string[][] => {
      const mine = [said('13b 6b', 'J F R', 'section:Weather', 3), said('13b 6b', 'J', 'section:Weather', 1)];
      const found = schoolsOf([...mine, ...theirs], card);
      return found.type === 'two' ? found.schools.map((school) => school.keeps.map(codeOf)) : [];
    };
    const lanterns = (keeps: string, people: number): ClassAnswer => said('3c 26d', keeps, 'section:Lanterns', people);
    expect(keepsOf([lanterns('J R', 1), lanterns('J', 2)])).toEqual([['F', 'R'], []]);
    expect(keepsOf([lanterns('J R', 2), lanterns('J', 2)])).toEqual([['F'], []]);
    const less = [said('13b 6b', 'F R', 'section:Weather', 2), said('13b 6b', 'J', 'section:Weather', 2)];
    expect(schoolsOf([...less, lanterns('J', 3)], card)).toMatchObject({ schools: [{ keeps: [] }, { keeps: [] }] });
  });

  test('are told by the pass where nobody named an aim, and differ in two tiles at least', () => {
    const answers = [said('13b 6b', '', '', 5), said('134b', '', '', 4), said('3c 26d', '', '', 2)];
    expect(schoolsOf(answers, card)).toMatchObject({
      type: 'two',
      others: 4,
      schools: [
        { people: 5, section: null, give: '13b 6b' },
        { people: 2, section: null, give: '3c 26d' },
      ],
    });
    expect(schoolsOf(answers.slice(0, 2), card)).toEqual({ type: 'agree' });
  });

  test('may be to stop and to go on', () => {
    const answers: ClassAnswer[] = [{ ...said('', '', '', 3), stops: true }, said('134b', '', '', 2)];
    expect(schoolsOf(answers, card)).toMatchObject({
      schools: [
        { people: 3, give: null },
        { people: 2, give: '134b' },
      ],
    });
  });

  test('are none when fewer than four answered, when all agree, or when the others stand alone', () => {
    expect(schoolsOf([said('134b', '', '', 2), said('3c 26d')], card)).toEqual({ type: 'few' });
    expect(schoolsOf([said('134b', '', 'section:Weather', 12)], card)).toEqual({ type: 'agree' });
    expect(schoolsOf([said('134b', '', '', 11), said('3c 26d')], card)).toEqual({ type: 'agree' });
    expect(schoolsOf([], card)).toEqual({ type: 'few' });
  });

  test('are the same in whatever order the answers came, where no two groups are of one size', () => {
    const answers = [
      said('13b 6b', 'J F', 'section:Weather', 5),
      said('3c 26d', 'J R', 'section:Lanterns', 3),
      said('134b', 'J', 'section:Moonlight', 2),
      said('134b', 'J', '', 1),
    ];
    fc.assert(
      fc.property(fc.shuffledSubarray(answers, { minLength: 4 }), (order) => {
        expect(schoolsOf(order, card)).toEqual(schoolsOf(answers, card));
      }),
      { seed: 1 },
    );
  });
});

describe('the codes of a class', () => {
  const given = (give: string, keeps = '', aims: readonly string[] = []): AnswerGiven => ({
    aims,
    keeps,
    give,
    blind: 0,
    stops: false,
  });
  const code = (give: string, keeps = '', aims: readonly string[] = []): string =>
    formatAnswerCode(first, given(give, keeps, aims), card);
  const elsewhere = tiles(second.rack).toKinds().slice(-3).map(codeOf).join(' ');
  const other = formatAnswerCode(second, given(elsewhere), card);

  test('stand in lines, with blanks, commas, semicolons or names between, in groups or not', () => {
    const [a, b, c] = GIVES.map((give) => code(give)) as [string, string, string];
    const spaced = b.replaceAll('-', ' ');
    for (const text of [`${a}\n${b}\n${c}`, `${a} ${b} ${c}`, `${a}, ${b};${c}`, `Desk 1: ${a}\n\n 2: ${b}\n${c}`]) {
      expect(codesIn(text)).toEqual([a, b, c]);
    }
    expect(codesIn(`${a.replaceAll('-', ' ')} ${spaced}`)).toEqual([a, b].map((each) => each.replaceAll('-', ' ')));
    expect(codesIn(`${spaced}\n${c.replaceAll('-', '')}`)).toEqual([spaced, c.replaceAll('-', '')]);
    expect(codesIn(' \n,; ')).toEqual([]);
  });

  test('each finds its problem; bad ones are told one by one, and the good ones are kept', () => {
    const good = code(GIVES[0], 'J F', ['section:Weather']);
    const slip = `${good.slice(0, -1)}${good.endsWith('2') ? '3' : '2'}`;
    const text = [good, slip, good.slice(0, 7), 'K7M-4PQ-0AB2', other, code(GIVES[1]), good].join('\n');
    const { problems: after, counted, refused, repeated } = countCodes(text, problems, card);
    expect(counted).toEqual([2, 1, 0]);
    expect(after.map(({ answers }) => answers)).toEqual([
      [said('136b', 'J F', 'section:Weather'), said('134b')],
      [{ give: expect.any(String), people: 1 }],
      [],
    ]);
    expect(refused.map((each) => each.text)).toEqual([slip, good.slice(0, 7), 'K7M-4PQ-0AB2']);
    expect(refused.map(({ message }) => message)).toEqual([
      'This code has a slip: a sign is wrong, or two are exchanged. Compare it again.',
      'An answer’s code has 10 signs, but this one has 6: it is cut short.',
      expect.stringContaining('"0" at place 9 can\'t be in a code'),
    ]);
    expect(repeated).toMatchObject([{ text: good, place: 0 }]);
  });

  test('one that came twice is counted again only when that is said', () => {
    const read = countCodes(`${code(GIVES[0])} ${code(GIVES[0])}`, problems, card);
    expect(read.problems[0]?.answers).toEqual([said('136b')]);
    expect(withAnswer(read, read.repeated[0]!).problems[0]?.answers).toEqual([said('136b', '', '', 2)]);
  });

  test('are refused where the file has no room for them', () => {
    const full = { ...first, answers: Array.from({ length: 300 }, (_, at) => said('134b', '', `section:${at}`)) };
    const read = countCodes(code(GIVES[0]), [full], card);
    expect(read.refused).toEqual([{ text: code(GIVES[0]), message: 'Problem 1 has no room for more answers.' }]);
  });
});
