import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { parseTiles } from '../../core/tiles/text.ts';
import { refusal, windrow, windrowAlone } from './run-windrow.ts';

const RACK = 'ff n 0 13B 4578c 22d1d';
let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'windrow-cli-'));
}, 120_000);
afterAll(async () => {
  await rm(folder, { recursive: true });
});

async function card(name: string, lines: object[], extra: object = {}): Promise<string> {
  const path = join(folder, name);
  await writeFile(
    path,
    JSON.stringify({
      format: 'windrow.card',
      version: 1,
      title: 'Test',
      season: 'Now',
      sections: [{ name: 'One', lines }],
      ...extra,
    }),
  );
  return path;
}

// Each in a process of its own: a card's games, once played, are known to all that comes after.
describe('--model', () => {
  const narrow = ['read', '--rack', 'ff n 0 13B 4578c 22d1d', '--card', 'tests/calibration/cards/narrow.card.json'];
  const reachOf = async (...more: string[]): Promise<number> => {
    const { hands } = JSON.parse((await windrowAlone([...narrow, '--top', '1', '--json', ...more])).out) as {
      hands: { reach: number }[];
    };
    return hands[0]?.reach ?? 0;
  };

  test('fitted counts how soon others win with this card: on a card where they win late, reach is larger', async () => {
    expect(await reachOf('--model', 'fitted')).toBeGreaterThan(await reachOf());
    expect(await reachOf('--model', 'first')).toBe(await reachOf());
  });

  test('a text says that the chance is provisional until the card’s own games are played, and how they are', async () => {
    const said = 'This is provisional, from games with other cards: --model fitted plays this card’s own first.';
    expect((await windrowAlone(narrow)).out).toContain(`any hand.\n\n${said}\n\n`);
    expect((await windrowAlone([...narrow, '--model', 'fitted'])).out).not.toContain('provisional');
    // The demo card's own games come with it.
    expect((await windrowAlone(['read', '--rack', RACK, '--table', 'relaxed'])).out).not.toContain('provisional');
  }, 180_000);

  test('another word is refused', async () => {
    expect(await windrow(['read', '--rack', RACK, '--model', 'best'])).toEqual(
      refusal(/--model must be one of first, fitted/),
    );
  });
});

async function json(args: readonly string[], input = ''): Promise<Record<string, unknown>> {
  const { code, out, err } = await windrow([...args, '--json'], input);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out);
}

describe('read', () => {
  test('it answers with one document of exactly the fields of the contract', async () => {
    const reading = await json(['read', '--rack', RACK, '--top', '3']);
    expect(Object.keys(reading)).toEqual(['tiles', 'ways', 'away', 'chance', 'lean', 'hands']);
    expect(reading['chance']).toBeGreaterThan(0.05);
    expect(reading['chance']).toBeLessThan(0.6);
    expect(reading['tiles']).toBe('FF N 0 13b 4578c 122d');
    expect(reading['hands']).toHaveLength(3);
    const fields = ['line', 'section', 'points', 'concealed', 'away', 'drawReach', 'reach', 'groups', 'missing'];
    const [hand] = reading['hands'] as [Record<string, unknown>];
    expect(Object.keys(hand)).toEqual(fields);
    expect(hand['missing']).toHaveLength(Number(hand['away']));
  });

  test('the chance is that of the moment that is asked for, at the kind of table', async () => {
    const chanceAt = async (...more: string[]): Promise<number> =>
      Number((await json(['read', '--rack', RACK, '--top', '1', ...more]))['chance']);
    const chances = [
      await chanceAt('--at', 'deal'),
      await chanceAt('--at', 'left2'),
      await chanceAt('--drawn', '60'),
      await chanceAt('--table', 'relaxed'),
      await chanceAt(),
    ];
    expect(new Set(chances).size).toBe(5);
    expect(await chanceAt('--at', 'right')).toBe(chances[0]);
    expect(await chanceAt('--at', 'play')).toBe(chances[4]);
    const refused = await windrow(['read', '--rack', RACK, '--at', 'left', '--drawn', '3']);
    expect(refused).toEqual(refusal(/leave out --drawn, or --at left/));
    expect(await windrow(['read', '--rack', RACK, '--table', 'slow'])).toEqual(refusal(/one of club, quick, relaxed/));
  });

  test('the demo card is the default; best reach comes first, or least away with --by away', async () => {
    const byReach = (await json(['read', '--rack', RACK]))['hands'] as { reach: number; away: number }[];
    expect(byReach).toHaveLength(10);
    expect(byReach.map(({ reach }) => reach)).toEqual(
      byReach.map(({ reach }) => reach).sort((one, other) => other - one),
    );
    const byAway = await json(['read', '--rack', RACK, '--by', 'away', '--top', '0']);
    const aways = (byAway['hands'] as { away: number }[]).map(({ away }) => away);
    expect(aways).toHaveLength(Number(byAway['ways']));
    expect(aways).toEqual([...aways].sort((one, other) => one - other));
    expect(aways[0]).toBe(byAway['away']);
  });

  test('--gone and --draws change what can be drawn: no draws, no draw reach', async () => {
    const path = await card('one.card.json', [{ id: 'a', pattern: 'FF 2222bam 4444crak 6666dot', slide: 0 }]);
    const rack = 'FF 2222b 4444c 666d';
    const none = await json(['read', '--card', path, '--rack', rack, '--draws', '0']);
    expect(none['hands']).toMatchObject([{ away: 1, drawReach: 0, missing: ['6d'] }]);
    // One sort of tile wanted: the last 6 of dots or any of 8 jokers, 9 of 139 unseen (common formula).
    const one = await json(['read', '--card', path, '--rack', rack, '--draws', '1']);
    expect((one['hands'] as [{ drawReach: number }])[0].drawReach).toBeCloseTo(9 / 139, 12);
    const gone = await json(['read', '--card', path, '--rack', rack, '--draws', '1', '--gone', '6d JJ']);
    expect((gone['hands'] as [{ drawReach: number }])[0].drawReach).toBeCloseTo(6 / 136, 12);
  });

  test('--rack - answers one document a line, in the order of the lines', async () => {
    const racks = ['FF N 0 13b 4578c 22d1d', 'J FF N 0 13b 4578c 22d', '1112223334445b'];
    const { code, out, err } = await windrow(['read', '--rack', '-', '--top', '1'], `${racks.join('\r\n')}\n\n`);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const lines = out.trimEnd().split('\n');
    expect(lines).toHaveLength(3);
    const singly = await Promise.all(racks.map((rack) => json(['read', '--rack', rack, '--top', '1'])));
    expect(lines.map((line) => JSON.parse(line))).toEqual(singly);
  });

  test('a bad line among many is named, and nothing is written', async () => {
    const good = 'FF N 0 13b 4578c 22d1d';
    expect(await windrow(['read', '--rack', '-'], `${good}\n${good}\n11111b\n`)).toEqual(refusal(/^Line 3: .*1b/));
    expect(await windrow(['read', '--rack', '-'], `${good}\n\n${good}\n`)).toEqual(refusal(/^Line 2: /));
    expect(await windrow(['read', '--rack', '-'], '')).toEqual(refusal(/no racks/));
  });

  test('for people: the hands in a table, no line with blanks at its end', async () => {
    const { code, out, err } = await windrow(['read', '--rack', RACK]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^FF N 0 13b 4578c 122d\n/);
    expect(out).toMatch(/The nearest of \d+ ways is \d tiles away\./);
    expect(out).toMatch(/Hand .*Line .*Points .*Away .*Reach .*In 20 draws .*Missing/);
    expect(out).not.toMatch(/ \n/);
    expect(out).not.toMatch(/\d\.\d/);
  });

  test('a chance that is certain is said without "about", one near it with what it is beyond', async () => {
    const path = await card('close.card.json', [{ id: 'a', pattern: 'FF 2222bam 4444crak 6666dot', slide: 0 }]);
    const chanceOf = async (rack: string, ...more: string[]): Promise<string | undefined> =>
      (await windrow(['read', '--card', path, '--rack', rack, ...more])).out.split('\n')[2];
    const would = 'would be won from here, with any hand.';
    expect(await chanceOf('FF 2222b 4444c 6666d')).toBe(`100 games in 100 ${would}`);
    expect(await chanceOf('FF 2222b 4444c 666d N')).toMatch(/^About \d+ games in 100 /);
    expect(await chanceOf('NNNN EEEE 13579d', '--drawn', '98')).toBe(`Under 1 game in 100 ${would}`);
    expect(await chanceOf('NNNN EEEE 13579d', '--gone', '2222b JJJJ JJJJ')).toBe(`0 games in 100 ${would}`);
  });

  test.each([
    [['--rack', 'FF N 0 13b 4578c 22d'], /12/],
    [['--rack', 'FF N 0 13b 4578c 22d123d'], /15/],
    [['--rack', '11111b 2345678b 1c'], /5 one bams.*1b/],
    [['--rack', 'FFFFFFFFF 1234b'], /9 flowers/],
    [['--rack', 'FF N 0 13b 4578c 22d1x'], /place/],
    [['--rack', 'FF N Q 13b 4578c 22d1d'], /"Q" at place 6/],
    [['--rack', 'FF N 0 13b 4578c 22d1'], /no suit/],
    [['--rack', ''], /0/],
    [[], /--rack/],
    [['--rack'], /--rack needs a value/],
    [['--rack', RACK, '--top', '-1'], /--top must be a whole number/],
    [['--rack', RACK, '--top', '1e3'], /--top must be a whole number/],
    [['--rack', RACK, '--draws', '140'], /--draws/],
    [['--rack', RACK, '--draws', '139', '--gone', '5d'], /draws/],
    [['--rack', RACK, '--by', 'luck'], /--by must be one of reach, away/],
    [['--rack', RACK, '--gone', '2222d'], /2d/],
    [['--rack', RACK, '--gone', '22'], /--gone/],
    [['--rack', RACK, '--rack', RACK], /twice/],
    [['--rack', RACK, '--colour', 'red'], /--colour is no option of read: use --rack/],
    [['--rack', RACK, '--json=yes'], /--json takes no value/],
    [['--rack', RACK, 'extra'], /"extra"/],
    [['--rack', RACK, '--card', 'no-such-file.card.json'], /no such file/],
    [['--rack', RACK, '--card', 'core'], /folder/],
    [['--rack', RACK, '--card', 'package.json'], /package\.json: .*no Windrow card/],
  ])('bad input %j is refused in one line', async (args, sentence) => {
    expect(await windrow(['read', ...args])).toEqual(refusal(sentence));
    expect(await windrow(['read', ...args, '--json'])).toMatchObject({ code: 2, out: '' });
  });
});

describe('card', () => {
  test('it answers with one document of exactly the fields of the contract', async () => {
    const summary = await json(['card', 'assets/demo.card.json']);
    expect(Object.keys(summary)).toEqual(['title', 'season', 'ways', 'lines', 'problems']);
    const lines = summary['lines'] as { ways: number }[];
    expect(Object.keys(lines[0] ?? {})).toEqual(['id', 'section', 'pattern', 'ways']);
    expect(summary['problems']).toEqual([]);
    expect(summary['ways']).toBe(lines.reduce((sum, { ways }) => sum + ways, 0));
    // Contract of the demo card: at least 48 lines, 8 sections, 900 ways.
    expect(lines.length).toBeGreaterThanOrEqual(48);
    expect(Number(summary['ways'])).toBeGreaterThanOrEqual(900);
  });

  test('problems are told with section, line, column and message, and exit code 2; the other lines are read', async () => {
    const path = await card('bad.card.json', [
      { id: 'good', pattern: 'FF 2222a 4444b 6666c' },
      { id: 'bad', pattern: 'FF 2222a 4444q 6666c' },
    ]);
    const { code, out, err } = await windrow(['card', path, '--json']);
    expect(code).toBe(2);
    expect(err).toMatch(/^.*bad\.card\.json: 1 problem\.\n$/);
    const summary = JSON.parse(out);
    expect(summary.lines).toMatchObject([{ id: 'good' }]);
    expect(summary.problems).toMatchObject([
      { section: 'One', id: 'bad', column: expect.any(Number), message: expect.any(String) },
    ]);
    expect(Object.keys(summary.problems[0])).toEqual(['section', 'id', 'column', 'message']);
    const text = await windrow(['card', path]);
    expect(text.out).toMatch(/Problems\n {2}One, 2nd line, column \d+: /);
    const read = await windrow(['read', '--card', path, '--rack', RACK, '--json']);
    expect(read).toMatchObject({ code: 0, err: expect.stringMatching(/^Note: this card has 1 problem/) });
  });

  test.each([
    ['truncated', '{"format":"windrow.card","version":1,"sec', /damaged or cut short/],
    ['newer', '{"format":"windrow.card","version":7}', /newer Windrow/],
    ['foreign', '{"format":"another.card","version":1}', /no Windrow card/],
    ['a list', '[]', /no Windrow card/],
    ['empty', '', /damaged|no Windrow card/],
    ['zeros', '\0\0\0\0', /damaged|no Windrow card/],
  ])('a %s file is refused in one line and left as it is', async (name, text, sentence) => {
    const path = join(folder, `${name}.card.json`);
    await writeFile(path, text);
    expect(await windrow(['card', path, '--json'])).toEqual(refusal(sentence));
    expect(await windrow(['read', '--card', path, '--rack', RACK])).toEqual(refusal(sentence));
  });

  test('a card without any hand can not be read against', async () => {
    const path = await card('empty.card.json', []);
    expect(await windrow(['read', '--card', path, '--rack', RACK])).toEqual(refusal(/no hand/));
  });

  test.skipIf(process.platform === 'win32')('a file without end is left off', async () => {
    expect(await windrow(['card', '/dev/zero'])).toEqual(refusal(/^\/dev\/zero is far too large/));
  });

  test('no file or two files are refused', async () => {
    expect(await windrow(['card'])).toEqual(refusal(/Which card/));
    expect(await windrow(['card', 'a', 'b'])).toEqual(refusal(/one file at a time/));
  });
});

describe('deal', () => {
  test('a seed deals the same rack on every machine', async () => {
    const deals = [];
    for (const seed of ['0', '1', '42', '9007199254740991']) deals.push(await json(['deal', '--seed', seed]));
    expect(deals).toMatchInlineSnapshot(`
      [
        {
          "rack": "J F SS G 239b 59c 258d",
          "seed": 0,
        },
        {
          "rack": "J F R 1346b 3889c 26d",
          "seed": 1,
        },
        {
          "rack": "ESS 0 136b 45c 2268d",
          "seed": 42,
        },
        {
          "rack": "J W R 178b 479c 2688d",
          "seed": 9007199254740991,
        },
      ]
    `);
  });

  test('13 tiles, or 14 for the dealer that hold the 13 of the same seed', async () => {
    const thirteen = String((await json(['deal', '--seed', '5']))['rack']);
    const fourteen = String((await json(['deal', '--seed', '5', '--tiles', '14']))['rack']);
    const [few, more] = [expectValue(parseTiles(thirteen)), expectValue(parseTiles(fourteen))];
    expect([few.size, more.size, more.contains(few)]).toEqual([13, 14, true]);
    expect((await json(['read', '--rack', fourteen]))['tiles']).toBe(fourteen);
  });

  test('without a seed each deal is another one and tells its seed', async () => {
    const one = await json(['deal']);
    const other = await json(['deal']);
    expect(one['seed']).not.toBe(other['seed']);
    expect(await json(['deal', '--seed', String(one['seed'])])).toEqual(one);
    const { out } = await windrow(['deal', '--seed', '7']);
    expect(out).toMatch(/^[^\n]+\n\nThe same rack again: deal --seed 7\n$/);
  });

  test.each([
    [['--seed', '-1'], /--seed must be a whole number/],
    [['--seed', '1.5'], /--seed must be a whole number/],
    [['--seed', '9007199254740992'], /--seed must be a whole number/],
    [['--seed', 'x'], /--seed/],
    [['--tiles', '12'], /13, or 14/],
  ])('bad input %j is refused in one line', async (args, sentence) => {
    expect(await windrow(['deal', ...args, '--json'])).toEqual(refusal(sentence));
  });
});

describe('calibrate', () => {
  test('says at each moment what the chance said and what came, on games of another seed than the fit’s', async () => {
    const document = await json(['calibrate', '--games', '20', '--seed', '3', '--table', 'quick']);
    expect(document).toMatchObject({ games: 20, table: 'quick' });
    const moments = document['moments'] as Record<string, number | string>[];
    expect(moments).toHaveLength(18);
    expect(Object.keys(moments[0] ?? {})).toEqual(['moment', 'states', 'said', 'won', 'error', 'gap']);
    expect(moments[0]).toMatchObject({ moment: 'deal', states: 80 });
    expect(await windrow(['calibrate', '--seed', '13', '--games', '1'])).toEqual(refusal(/took part in the fit/));
    expect((await windrow(['calibrate', '--games', '20'])).out).toContain('Said less won');
  });
});

describe('worth', () => {
  test('plays each deal twice, and says what the advice wins with its error', async () => {
    const document = await json(['worth', '--in', 'play', '--deals', '8', '--rule', 'advice', '--against', 'random']);
    expect(Object.keys(document)).toEqual([
      'deals',
      'games',
      'won',
      'wonAgainst',
      'difference',
      'error',
      'secondsPerDecision',
    ]);
    // Twice each deal, each with eight walls.
    expect(document).toMatchObject({ deals: 8, games: 128 });
    const { won, wonAgainst, difference } = document as Record<string, number>;
    expect(difference).toBeCloseTo((100 * ((won ?? 0) - (wonAgainst ?? 0))) / 64, 9);
    const same = await json(['worth', '--rule', 'soft', '--deals', '8']);
    expect(same).toMatchObject({ difference: 0, error: 0 });
    expect((await windrow(['worth', '--rule', 'nearest', '--deals', '8'])).out).toContain('By nearest the chair won');
    // Of one deal no error can be told.
    expect(await windrow(['worth', '--deals', '1'])).toEqual(refusal(/--deals must be a whole number from 2/));
    expect(await windrow(['worth', '--rule', 'best'])).toEqual(refusal(/one of advice, soft, nearest, random/));
  });
});

describe('verbs', () => {
  test('an unknown verb, or none, is answered with the verbs there are', async () => {
    expect(await windrow([])).toEqual(refusal(/card, read, pass, deal, review, calibrate, worth, simulate/));
    expect(await windrow(['guess', '--json'])).toEqual(refusal(/"guess".*card, read,.*deal/));
    expect(await windrow(['__proto__'])).toEqual(refusal(/card, read/));
  });

  test('help tells how each verb is used', async () => {
    const help = await windrow(['help']);
    expect(help).toMatchObject({ code: 0, err: '' });
    for (const verb of ['card FILE', 'read --rack', 'deal [--seed N]']) expect(help.out).toContain(verb);
    expect(await windrow(['--help'])).toEqual(help);
  });
});
