/**
 * How hard a text is to read: the Flesch–Kincaid grade level (Kincaid, Fishburne, Rogers and
 * Chissom, 1975): 0.39 × words per sentence + 11.8 × syllables per word − 15.59. The formula is
 * quoted from memory. Syllables are counted by groups of vowels, which is a rule of thumb.
 */
export function readingGrade(text: string): number {
  const sentences = sentencesOf(text);
  const words = sentences.flatMap(wordsOf);
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word), 0);
  return 0.39 * (words.length / sentences.length) + 11.8 * (syllables / words.length) - 15.59;
}

/** The sentences of a text; a part after a colon or a raised dot stands for itself. */
export function sentencesOf(text: string): string[] {
  return text
    .split(/(?<=[.!?:;·…])\s+/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => wordsOf(sentence).length > 0);
}

export function wordsOf(sentence: string): string[] {
  return sentence.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word));
}

/** Groups of vowels, less an e that is not spoken at the end; a number counts as one. */
export function syllablesOf(word: string): number {
  const letters = word.toLowerCase().replace(/[^a-z]/g, '');
  const spoken = letters
    .replace(/(?<=[^aeiouydt])ed$/, 'd')
    .replace(/(?<=[^aeiouysxzcgh])es$|(?<=[^aeiouy])e$/, (end, at: number) =>
      /[^aeiouy]l$/.test(letters.slice(0, at)) ? end : '',
    );
  return Math.max(1, spoken.match(/[aeiouy]+/g)?.length ?? 1);
}
