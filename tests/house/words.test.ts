import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readRules, readTopics } from '../../renderer/help/page.ts';
import { inWords, percent } from '../../renderer/words/numbers.ts';
import { settingsWords } from '../../renderer/words/settings.ts';
import { readingGrade, sentencesOf, syllablesOf, wordsOf } from './reading-grade.ts';
import { textsOf, type Text, type WordTable, wordTables } from './word-tables.ts';
import { usedPaths } from './words-in-use.ts';

const HOUSE = resolve(import.meta.dirname, '../..');
const RENDERER = join(HOUSE, 'renderer');
const JARGON = /\b(json|schema|cache|null|undefined|server|database|parse|invalid|token|localhost|payload)\b/i;

let tables: readonly WordTable[] = [];
let texts: readonly Text[] = [];
const numbers = readTopics(readFileSync(join(RENDERER, 'help/NUMBERS.md'), 'utf8'));
const cardPage = readTopics(readFileSync(join(RENDERER, 'help/CARD.md'), 'utf8'));
const rules = readRules(readFileSync(join(HOUSE, 'core/RULES.md'), 'utf8'), 'EX');

/** The window's sources, without the words themselves. */
const sources = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.startsWith('words/'))
  .map((file) => ({ file, text: readFileSync(join(RENDERER, file), 'utf8') }));

beforeAll(async () => {
  tables = await wordTables();
  const pages = [...[...numbers, ...cardPage].flatMap(({ paragraphs }) => paragraphs), ...rules];
  texts = [
    ...tables.flatMap(({ name, words }) => textsOf(words, name)),
    ...pages.map((text) => ({ path: 'a page of the help', text })),
  ];
});

describe('plain words', () => {
  it('there are tables and texts to look at', () => {
    expect(tables.length).toBeGreaterThan(15);
    expect(texts.length).toBeGreaterThan(1000);
    expect(sources.length).toBeGreaterThan(100);
  });

  it('CR-O5: no text uses the language of programs', () => {
    expect(texts.filter(({ text }) => JARGON.test(text))).toEqual([]);
  });

  it('CR-O5: no sentence is longer than 20 words', () => {
    const sentences = texts.flatMap(({ text }) => sentencesOf(text));
    expect(sentences.filter((sentence) => wordsOf(sentence).length > 20)).toEqual([]);
  });

  it.each([
    ['reading', 2],
    ['tiles', 1],
    ['tables', 2],
    ['choices', 2],
    ['passed', 1],
    ['wanted', 2],
    ['estimate', 3],
    ['courtesy', 3],
    ['people', 2],
    ['the', 1],
    ['14', 1],
  ])('syllables of "%s": %i', (word, count) => {
    expect(syllablesOf(word)).toBe(count);
  });

  it('the grade of a known plain and a known hard text', () => {
    // By hand: 6 words, 1 sentence, 6 syllables; 9 words, 1 sentence, 27 syllables.
    expect(readingGrade('The cat sat on the mat.')).toBeCloseTo(0.39 * 6 + 11.8 - 15.59, 9);
    expect(
      readingGrade(
        'Probability estimation presupposes independent observation of hypergeometric alternatives periodically.',
      ),
    ).toBeGreaterThan(20);
  });

  it('CR-O5: the sentences of every table of words have a reading grade of at most 8', () => {
    const graded = tables.flatMap(({ name, words }) => {
      const sentences = textsOf(words, name).filter(({ text }) => /[.!?]$/.test(text) && wordsOf(text).length > 3);
      return sentences.length === 0 ? [] : [{ name, grade: readingGrade(sentences.map(({ text }) => text).join(' ')) }];
    });
    expect(graded.length).toBeGreaterThan(10);
    expect(graded.filter(({ grade }) => grade > 8)).toEqual([]);
  });

  it('CR-O5: every topic of the help, and the rules of the exchange, have a reading grade of at most 8', () => {
    const graded = numbers.map(({ title, paragraphs }) => ({ title, grade: readingGrade(paragraphs.join(' ')) }));
    expect(graded.filter(({ grade }) => grade > 8)).toEqual([]);
    expect(readingGrade(rules.join(' '))).toBeLessThanOrEqual(8);
  });
});

describe('every text in one place', () => {
  it('no key of the words is unused', () => {
    const unused = tables.flatMap((table) => {
      const used = usedPaths(table, RENDERER);
      return textsOf(table.words, table.name)
        .map(({ path }) => path)
        .filter((path) => !used.some((other) => path === other || path.startsWith(`${other}.`)));
    });
    expect([...new Set(unused)]).toEqual([]);
  });

  it('no text stands in a template or a sentence outside renderer/words', () => {
    const found = sources.flatMap(({ file, text }) => strayTexts(text).map((stray) => `${file}: ${stray}`));
    expect(found).toEqual([]);
  });

  it('the check for stray texts finds them', () => {
    expect(strayTexts('html`<p>Hello there</p>`')).toEqual(['Hello there']);
    expect(strayTexts('html`<p aria-label="Hello there">${word}</p>`')).toEqual(['Hello there']);
    expect(strayTexts("const a = 'Something is wrong.';")).toEqual(['Something is wrong.']);
    expect(strayTexts('html`<p class="big one">${words.hello}</p>`')).toEqual([]);
  });
});

/** Texts between tags and in spoken attributes of templates, and sentences in quotes. */
function strayTexts(source: string): string[] {
  const code = source
    .replace(/css`[^`]*`/g, '')
    .replace(/\/\*[^]*?\*\//g, '')
    .replace(/^\s*\/\/.*$/gm, '');
  const between = [...code.matchAll(/>([^<>${}`()=;]{2,200})(?:<\/|(?<=[\s.,:!?])<)[a-z]/g)];
  const spoken = [...code.matchAll(/\s(?:aria-label|label|heading|hint|title|placeholder|alt|reason)="([^"$]*)"/g)];
  const quoted = [...code.matchAll(/'([A-Z][a-z]+ [^'\n]*[.!?…])'/g)].filter(
    ({ index }) => !/(?:Error\($|throw .*)$/.test(code.slice(Math.max(0, index - 40), index)),
  );
  return [...between, ...spoken, ...quoted]
    .map(([, text = '']) => text.trim())
    .filter((text) => /[A-Za-z]{2}/.test(text));
}

describe('the help says what the model says', () => {
  it('every sentence of the model that a topic names is there', () => {
    const model = readFileSync(join(HOUSE, 'core/reading/MODEL.md'), 'utf8');
    const named = numbers.flatMap((topic) => topic.model);
    expect(named.length).toBeGreaterThan(15);
    expect(named.filter((id) => !model.includes(`\n- ${id}. `))).toEqual([]);
  });

  it('every number that explains itself in the window has its topic in the help', () => {
    const headings = texts.filter(
      ({ path }) => /\.(?:\w*Heading|heading|why)$/.test(path) && /^(?:table|look|play|others|counted)Words/.test(path),
    );
    const shown = numbers.flatMap(({ shownAs }) => shownAs);
    expect(headings.length).toBeGreaterThan(20);
    expect(headings.filter(({ text, path }) => !shown.includes(text) && !path.includes('struck'))).toEqual([]);
  });

  it('every "shown as" is a heading that the window has', () => {
    const all = new Set(texts.map(({ text }) => text));
    expect(numbers.flatMap(({ shownAs }) => shownAs).filter((heading) => !all.has(heading))).toEqual([]);
  });

  it('CR-O9: each per cent in the help comes with its natural frequency, as the window would say it', () => {
    const pages = numbers.flatMap(({ paragraphs }) => paragraphs).join('\n');
    const chances = [...pages.matchAll(/"(\d+) %, ([^"]+)"/g)];
    expect(chances.length).toBeGreaterThan(1);
    for (const [, hundredths, words] of chances) {
      expect(words).toBe(inWords(Number(hundredths) / 100));
      expect(percent(Number(hundredths) / 100)).toBe(`${hundredths} %`);
    }
  });

  it('the cautions are those of the README, word for word', () => {
    const readme = readFileSync(join(HOUSE, 'README.md'), 'utf8');
    const section = readme.split('## Cautions\n')[1]?.split('\n## ')[0] ?? '';
    expect([...section.matchAll(/^- (.+)$/gm)].map(([, line]) => line)).toEqual(settingsWords.cautionList);
  });
});
