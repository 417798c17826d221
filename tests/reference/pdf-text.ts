import { inflateSync } from 'node:zlib';

/**
 * The text of each page of a PDF as Chromium writes it (ISO 32000-1: objects, Flate streams, fonts
 * with a ToUnicode map), in the order in which it is painted. Enough to compare a printed page with
 * what it should say; not a reader for PDF files of other makers.
 */
export function pdfPages(file: Buffer): string[] {
  const objects = objectsOf(file);
  const maps = new Map<number, Map<string, string>>();
  const mapOf = (font: number): Map<string, string> => {
    const known = maps.get(font) ?? unicodeMap(objects, font);
    maps.set(font, known);
    return known;
  };
  return pagesOf(objects).map((page) => {
    const contents = /\/Contents (\d+) 0 R/.exec(page)?.[1];
    const text = streamOf(objects.get(Number(contents)) ?? '');
    // Ligatures come apart again: NFKC.
    return textOf(text, mapOf).normalize('NFKC').replaceAll(/\s+/g, ' ').trim();
  });
}

/** Width and height of each page in points. */
export function pdfSizes(file: Buffer): string[] {
  return pagesOf(objectsOf(file)).map((page) => {
    const box = /\/MediaBox \[[\d.]+ [\d.]+ ([\d.]+) ([\d.]+)\]/.exec(page);
    return `${Math.round(Number(box?.[1]))} x ${Math.round(Number(box?.[2]))}`;
  });
}

/** Objects by number, as Latin-1 text, so that a byte is a letter. */
function objectsOf(file: Buffer): Map<number, string> {
  const text = file.toString('latin1');
  const objects = new Map<number, string>();
  for (const match of text.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) {
    objects.set(Number(match[1]), match[2] ?? '');
  }
  return objects;
}

function pagesOf(objects: ReadonlyMap<number, string>): string[] {
  const kids = (object: string): string[] => {
    const list = /\/Kids \[([^\]]*)\]/.exec(object)?.[1];
    if (list === undefined) return [object];
    return [...list.matchAll(/(\d+) 0 R/g)].flatMap((match) => kids(objects.get(Number(match[1])) ?? ''));
  };
  const catalog = [...objects.values()].find((object) => /\/Type \/Catalog/.test(object)) ?? '';
  return kids(objects.get(Number(/\/Pages (\d+) 0 R/.exec(catalog)?.[1])) ?? '');
}

function streamOf(object: string): string {
  const start = object.indexOf('stream\n');
  if (start < 0) return '';
  const bytes = Buffer.from(object.slice(start + 7, object.lastIndexOf('endstream')), 'latin1');
  return object.slice(0, start).includes('/FlateDecode')
    ? inflateSync(bytes).toString('latin1')
    : bytes.toString('latin1');
}

/** From character codes in hexadecimal to letters. */
function unicodeMap(objects: ReadonlyMap<number, string>, font: number): Map<string, string> {
  const reference = /\/ToUnicode (\d+) 0 R/.exec(objects.get(font) ?? '')?.[1];
  const text = streamOf(objects.get(Number(reference)) ?? '');
  const map = new Map<string, string>();
  for (const block of text.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, code, letters] of (block[1] ?? '').matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g)) {
      map.set((code ?? '').toUpperCase(), lettersOf(letters ?? ''));
    }
  }
  for (const block of text.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    const ranges = (block[1] ?? '').matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g);
    for (const [, first = '', last = '', letters = ''] of ranges) addRange(map, first, last, letters);
  }
  return map;
}

function addRange(map: Map<string, string>, first: string, last: string, letters: string): void {
  const from = Number.parseInt(first, 16);
  for (let code = from; code <= Number.parseInt(last, 16); code += 1) {
    const hex = code.toString(16).toUpperCase().padStart(first.length, '0');
    map.set(hex, String.fromCodePoint(Number.parseInt(letters, 16) + code - from));
  }
}

function lettersOf(hex: string): string {
  return Buffer.from(hex, 'hex').swap16().toString('utf16le');
}

/** The strings that a page shows: `<0012> Tj`, or in lists with shifts, after the font was named. */
function textOf(content: string, mapOf: (font: number) => ReadonlyMap<string, string>): string {
  let map: ReadonlyMap<string, string> = new Map();
  let text = '';
  for (const match of content.matchAll(/\/F(\d+) [\d.]+ Tf|<([0-9A-Fa-f]+)>|\bET\b/g)) {
    if (match[1] !== undefined) map = mapOf(Number(match[1]));
    else if (match[2] === undefined) text += ' ';
    else text += decoded(match[2], map);
  }
  return text;
}

function decoded(hex: string, map: ReadonlyMap<string, string>): string {
  const [code = '0000'] = map.keys();
  const codes = hex.toUpperCase().match(new RegExp(`.{${code.length}}`, 'g')) ?? [];
  return codes.map((each) => map.get(each) ?? '').join('');
}
