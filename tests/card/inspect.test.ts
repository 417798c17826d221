import { describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { checkCard } from '../../core/card/check.ts';
import { emptyCard, type CardDocument, type LineDocument } from '../../core/card/document.ts';
import { inspectCard } from '../../core/card/inspect.ts';
import {
  confirmLine,
  isConfirmed,
  lineContent,
  proofProgress,
  pruneProof,
  unconfirmLine,
} from '../../core/card/proof.ts';
import { namedSuits, openSuits } from '../../core/card/suits.ts';
import { cardStatistics } from '../../core/card/statistics.ts';
import { codeOf } from '../../core/tiles/kinds.ts';
import { demoFile } from './demo.ts';

const UNREAD = { confirmed: [] };

function cardOf(...sections: (readonly [string, ...LineDocument[]])[]): CardDocument {
  return { ...emptyCard('Small', 'Autumn'), sections: sections.map(([name, ...lines]) => ({ name, lines })) };
}

function findings(card: CardDocument): [string, string, string][] {
  return inspectCard(card, expectValue(checkCard(card))).findings.map(({ code, section, id }) => [code, section, id]);
}

const fine = { points: 25 };

describe('the page that says what looks wrong', () => {
  test('the demo card has three things to ask: a run that stays among runs that move, and two that move by steps', () => {
    const { problems, findings } = inspectCard(demoFile.document, demoFile);
    expect(problems).toEqual([]);
    expect(findings.map(({ code, id, place }) => [code, id, place])).toEqual([
      ['not-moving', 'two-shores-2', { section: 1, line: 1 }],
      ['run-by-steps', 'two-shores-7', { section: 1, line: 6 }],
      ['run-by-steps', 'boulders-6', { section: 6, line: 5 }],
    ]);
  });

  test.each([
    [20, true],
    [24, true],
    [25, false],
    [26, true],
    [30, false],
    [95, false],
    [100, false],
    [105, true],
  ])('%i points are asked about, if others have usual ones: %s', (points, isAsked) => {
    const others = [1, 2, 3, 4].map((number) => ({
      id: `o${number}`,
      pattern: `FF ${number}111a 4444b 6666c`,
      points: 30,
    }));
    const found = findings(cardOf(['S', { id: 'a', pattern: 'FF 2222a 4444b 6666c', points }, ...others]));
    expect(found.some(([code, , id]) => code === 'unusual-points' && id === 'a')).toBe(isAsked);
  });

  test.each<[string, LineDocument]>([
    ['impossible', { ...fine, id: 'a', pattern: 'FFFFFF 11bam F 11bam F 11bam' }],
    ['many-jokers', { ...fine, id: 'a', pattern: 'FF 55555bam 5555bam NNN' }],
    ['unusual-points', { id: 'a', pattern: 'FF 2222a 4444b 6666c', points: 27 }],
    ['unusual-points', { id: 'a', pattern: 'FF 2222a 4444b 6666c', points: 0 }],
    ['idle-slide', { ...fine, id: 'a', pattern: 'FF 2222a= 4444b= 6666c=', slide: 1 }],
    ['stuck-mark', { ...fine, id: 'a', pattern: "FF 2222a 4444b 6666c'", slide2: 0 }],
    ['could-be-concealed', { ...fine, id: 'a', pattern: 'NN EE WW SS DDa DDb DDc' }],
  ])('%s: %j', (code, line) => {
    expect(findings(cardOf(['S', line]))).toEqual([[code, 'S', 'a']]);
  });

  test('a line without points counts as usual: nothing is asked', () => {
    expect(findings(cardOf(['S', { id: 'a', pattern: 'FF 2222a 4444b 6666c' }]))).toEqual([]);
  });

  const slips: [string, LineDocument, LineDocument, LineDocument[]][] = [
    [
      'not-moving',
      { pattern: 'FF 1111a 2222b 3333c' },
      { pattern: 'FF 1111a 2222b 3333c', slide: 1 },
      [
        { pattern: 'FFFF 111a 222a 3333a', slide: 1 },
        { pattern: 'FFFF 111a 222b 3333a', slide: 1 },
      ],
    ],
    [
      'not-moving',
      { pattern: 'FFFF 11111a 11111b' },
      { pattern: 'FF 2222a 4444a 6666a' },
      [
        { pattern: 'FF 1111a 1111b 1111c', slide: 1 },
        { pattern: 'FFF 1111a 1111b 111c', slide: 1 },
      ],
    ],
    [
      'inside-another',
      { pattern: 'FF 2222a 4444a 6666a' },
      { pattern: 'FF 2222a 4444b 6666a' },
      [{ pattern: 'FF 1111a 3333a 5555a', slide: 1 }],
    ],
    ['suit-without-a', { pattern: 'FF 2222b 4444b 6666b' }, { pattern: 'FF 2222a 4444b 6666b' }, []],
    ['suit-without-a', { pattern: 'FF 2222c 4444c 6666c' }, { pattern: 'FF 2222crak 4444crak 6666crak' }, []],
    ['wind-mixed', { pattern: 'FF wwww EEEE NNNN' }, { pattern: 'FF WWWW EEEE NNNN' }, []],
    ['wind-mixed', { pattern: 'FF xxxx RRRR GGGG' }, { pattern: 'FF wwww RRRR GGGG' }, []],
    ['repeated-group', { pattern: 'FF 22a 22a 4444b 6666c' }, { pattern: 'FF 2a 2a 2222b 66b 4444c' }, []],
    [
      'exposed-alone',
      { pattern: 'FF 2222a 4444b 6666c' },
      { pattern: 'FF 2222a 4444b 6666c', concealed: true },
      [
        { pattern: 'FF 2222a 4444b 8888c', concealed: true },
        { pattern: 'FF 2222a 6666b 8888c', concealed: true },
        { pattern: 'FF 4444a 6666b 8888c', concealed: true },
      ],
    ],
    [
      'section-points',
      { pattern: 'FF 2222a 4444b 6666c' },
      { pattern: 'FF 2222a 4444b 6666c', points: 30 },
      [
        { pattern: 'FF 2222a 4444b 8888c', points: 30 },
        { pattern: 'FF 2222a 6666b 8888c', points: 35 },
        { pattern: 'FF 4444a 6666b 8888c', points: 30 },
      ],
    ],
    [
      'section-points',
      { pattern: 'FF 2222a 4444b 6666c', points: 75 },
      { pattern: 'FF 2222a 4444b 6666c', points: 35 },
      [
        { pattern: 'FF 2222a 4444b 8888c', points: 25 },
        { pattern: 'FF 2222a 6666b 8888c', points: 30 },
        { pattern: 'FF 4444a 6666b 8888c', points: 35 },
      ],
    ],
  ];

  test.each(slips)('%s is asked of %j, not of %j', (code, slip, right, others) => {
    const beside = others.map((line, at) => ({ ...fine, ...line, id: `o${at}` }));
    const ask = (line: LineDocument): string[] =>
      findings(cardOf(['S', { ...fine, ...line, id: 'a' }, ...beside])).flatMap(([found, , id]) =>
        id === 'a' ? [found] : [],
      );
    expect(ask(slip)).toEqual([code]);
    expect(ask(right)).toEqual([]);
  });

  test('what was found names other lines as a player does, and is another question once the line is changed', () => {
    const look = (points: number) => {
      const card = cardOf(
        ['S', { ...fine, id: 'a', pattern: 'FF 2222a 4444b 6666c' }],
        ['T', { ...fine, id: 'b', pattern: 'FF 2222a 4444b 6666c', points }],
      );
      return inspectCard(card, expectValue(checkCard(card))).findings;
    };
    const [found] = look(25);
    expect(found).toMatchObject({
      code: 'same-ways',
      place: { section: 1, line: 0 },
      message: 'This line has the same ways as S: check one of them.',
    });
    expect(look(25)[0]?.key).toBe(found?.key);
    expect(look(30)[0]?.key).not.toBe(found?.key);
  });

  test('what can never be made comes first', () => {
    const card = cardOf(
      ['S', { ...fine, id: 'a', pattern: 'NN EE WW SS DDa DDb DDc' }],
      ['T', { ...fine, id: 'b', pattern: 'FFFFFF 11bam F 11bam F 11bam' }],
    );
    expect(findings(card).map(([code]) => code)).toEqual(['impossible', 'could-be-concealed']);
  });

  test('suits are named, or opened from a on, without touching what else is written', () => {
    expect(namedSuits("FF 22b 333c DDb 4b' 5c= bb 2q")).toBe("FF 22bam 333crak DDbam 4bam' 5crak= bb 2q");
    expect(openSuits("FF 22b 333c DDb 4b' 5c= 0")).toBe("FF 22a 333b DDa 4a' 5b= 0");
    expect(openSuits('FF 22c 333c')).toBe('FF 22a 333a');
    expect(openSuits('FF  22a 333b 4bam')).toBe('FF  22a 333b 4bam');
  });

  test('lines with the same ways, however they are written', () => {
    const card = cardOf(
      [
        'S',
        { ...fine, id: 'a', pattern: 'FF 2222a 4444b 6666c' },
        { ...fine, id: 'b', pattern: '6666b FF 4444c 2222a' },
      ],
      [
        'T',
        { ...fine, id: 'c', pattern: "FF 2222a' 4444b' 6666c'", slide2: 0 },
        { ...fine, id: 'd', pattern: 'FF 2222a 4444b 6666a' },
      ],
    );
    expect(findings(card)).toEqual([
      ['stuck-mark', 'T', 'c'],
      ['same-ways', 'S', 'b'],
      ['same-ways', 'T', 'c'],
    ]);
  });

  test('an empty section, two sections of one name, no title, no lines', () => {
    expect(findings(cardOf(['S'], ['S', { ...fine, id: 'a', pattern: 'FF 2222a 4444b 6666c' }]))).toEqual([
      ['empty-section', 'S', ''],
      ['same-section-name', 'S', ''],
    ]);
    expect(findings({ ...emptyCard(' ', ''), sections: [] }).map(([code]) => code)).toEqual(['no-title', 'no-lines']);
  });

  test('duplicate ids and bad patterns come as problems', () => {
    const card = cardOf([
      'S',
      { ...fine, id: 'a', pattern: 'FF 2222a 4444b 6666c' },
      { ...fine, id: 'a', pattern: 'FF' },
    ]);
    expect(inspectCard(card, expectValue(checkCard(card))).problems.map(({ code }) => code)).toEqual([
      'duplicate-id',
      'wrong-size',
    ]);
  });
});

describe('card statistics', () => {
  const statistics = cardStatistics(demoFile.card);

  test('tiles wanted per line sum to 14, most wanted first', () => {
    expect(statistics.tiles).toHaveLength(35);
    expect(statistics.tiles.reduce((sum, { perLine }) => sum + perLine, 0)).toBeCloseTo(14, 9);
    expect(statistics.tiles.map(({ perLine }) => perLine)).toEqual(
      statistics.tiles.map(({ perLine }) => perLine).sort((one, other) => other - one),
    );
  });

  test('ways per line and section add up', () => {
    expect(statistics.lineWays.reduce((sum, { ways }) => sum + ways, 0)).toBe(statistics.ways);
    expect(statistics.sections.reduce((sum, { ways }) => sum + ways, 0)).toBe(statistics.ways);
  });

  test('an empty card and a line without ways have no shares', () => {
    const card = cardOf(['S'], ['T', { id: 'a', pattern: 'FFFFFF 11bam 11bam 11bam FF' }]);
    const counted = cardStatistics(expectValue(checkCard(card)).card);
    expect(counted).toMatchObject({ lines: 1, ways: 0, alike: [{ one: 'S', other: 'T', shared: 0 }] });
    expect(counted.tiles.every(({ perLine }) => perLine === 0)).toBe(true);
    expect(cardStatistics({ title: '', season: '', sections: [] }).tiles.every(({ perLine }) => perLine === 0)).toBe(
      true,
    );
  });

  test('counted by hand on a small card', () => {
    // FFFF 1111a NNN EEE: 3 ways, each with 4 flowers, 4 ones of one suit, 3 N, 3 E.
    const card = cardOf(
      ['S', { id: 'a', pattern: 'FFFF 1111a NNN EEE' }],
      ['T', { id: 'b', pattern: 'FFFF NNNN EEEE SS' }],
    );
    const counted = cardStatistics(expectValue(checkCard(card)).card);
    const wanted = Object.fromEntries(
      counted.tiles.map(({ kind, lines, ways, perLine }) => [codeOf(kind), [lines, ways, perLine]]),
    );
    expect(wanted).toMatchObject({
      F: [2, 4, 4],
      N: [2, 4, 3.5],
      S: [1, 1, 1],
      '1b': [1, 1, 4 / 3 / 2],
      '2b': [0, 0, 0],
    });
    // Shared: 4 flowers + 3 N + 3 E of 14.
    expect(counted.alike).toEqual([{ one: 'S', other: 'T', shared: expect.closeTo(10 / 14, 12) }]);
  });
});

describe('proof-reading remembers which lines were confirmed', () => {
  const line = { id: 'a', pattern: 'FF', points: 25 };

  test.each(['id', 'pattern', 'slide', 'slide2', 'concealed', 'points', 'note'])(
    'an edited %s loses the tick, put back it returns',
    (field) => {
      const proof = confirmLine(UNREAD, line);
      expect(isConfirmed(proof, line)).toBe(true);
      expect(isConfirmed(proof, { ...line, [field]: 3 })).toBe(false);
      expect(isConfirmed(proof, { ...line, [field]: (line as LineDocument)[field] })).toBe(true);
    },
  );

  test('a default written out, or a field that is not ours, keeps the tick', () => {
    expect(lineContent({ ...line, slide: 0, note: '', colour: 'red' })).toBe(lineContent(line));
  });

  test('progress tells the next line to read, behind a place or from the start', () => {
    const { document } = demoFile;
    const first = document.sections[0]?.lines[0] ?? {};
    const proof = confirmLine(UNREAD, first);
    expect(proofProgress(proof, document)).toEqual({ confirmed: 1, lines: 57, next: { section: 0, line: 1 } });
    expect(proofProgress(proof, document, { section: 1, line: 2 }).next).toEqual({ section: 1, line: 3 });
    const all = document.sections.flatMap(({ lines }) => lines).reduce(confirmLine, UNREAD);
    expect(proofProgress(all, document)).toEqual({ confirmed: 57, lines: 57 });
    expect(proofProgress(unconfirmLine(all, first), document, { section: 5, line: 0 }).next).toEqual({
      section: 0,
      line: 0,
    });
  });

  test('a line confirmed twice has one tick', () => {
    const proof = confirmLine(UNREAD, line);
    expect(confirmLine(proof, { ...line })).toEqual(proof);
    expect(unconfirmLine(confirmLine(proof, line), line)).toEqual(UNREAD);
  });

  test('ticks of lines that are gone are forgotten', () => {
    const proof = confirmLine(confirmLine(UNREAD, line), { id: 'z' });
    expect(pruneProof(proof, cardOf(['S', line])).confirmed).toEqual([lineContent(line)]);
  });
});
