/** Words as a search compares them: small letters, no accents, single blanks. */
export function foldWords(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
}
