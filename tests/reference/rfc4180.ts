/**
 * A reader for CSV, written from the grammar of RFC 4180, section 2 (with the ABNF at its end), and from nothing else.
 * The names of the rules stand at what reads them. It is as strict as the grammar, save for the letters beyond ASCII,
 * which TEXTDATA of 2005 has not. What the grammar does not allow is an error with its place.
 */
export function readRfc4180(file: string): string[][] {
  let at = 0;

  const fail = (what: string): never => {
    throw new Error(`RFC 4180: ${what} at ${at}`);
  };
  const isNext = (text: string): boolean => file.startsWith(text, at);
  const take = (text: string): void => {
    if (!isNext(text)) fail(`no ${JSON.stringify(text)}`);
    at += text.length;
  };

  // escaped = DQUOTE *(TEXTDATA / COMMA / CR / LF / 2DQUOTE) DQUOTE
  const escaped = (): string => {
    take('"');
    let text = '';
    while (!isNext('"') || isNext('""')) {
      if (at >= file.length) fail('no end of a quoted field');
      text += file[at];
      at += isNext('""') ? 2 : 1;
    }
    take('"');
    return text;
  };

  // non-escaped = *TEXTDATA
  const nonEscaped = (): string => {
    const start = at;
    while (at < file.length && !/[,"\r\n]/.test(file[at] ?? '')) at += 1;
    return file.slice(start, at);
  };

  // record = field *(COMMA field)
  const record = (): string[] => {
    const fields = [isNext('"') ? escaped() : nonEscaped()];
    while (isNext(',')) {
      take(',');
      fields.push(isNext('"') ? escaped() : nonEscaped());
    }
    return fields;
  };

  // file = [header CRLF] record *(CRLF record) [CRLF]
  const records = [record()];
  while (at < file.length) {
    take('\r\n');
    if (at < file.length) records.push(record());
  }
  // "Each line should contain the same number of fields throughout the file."
  if (records.some(({ length }) => length !== records[0]?.length)) fail('lines of different length');
  return records;
}
