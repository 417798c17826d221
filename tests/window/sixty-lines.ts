import type { LineDocument } from '../../core/card/document.ts';

/** A line of an invented card: its forms, how its numbers move, and where they differ from the usual X and 25 points. */
type Row = readonly [forms: string, slide: 0 | 1 | 2 | 3, exposure?: 'C' | 'X', points?: number];

/** An invented card of ten sections and 60 lines in which every feature of the language of cards occurs. */
const SECTIONS: Readonly<Record<string, readonly Row[]>> = {
  'Long shores': [
    ['FF 1111a 2222b 3333c', 1],
    ['11a 222a 333a 4444a 55a', 1, 'C', 30],
    ['FFFF 22a 333a 444b 55b', 1, 'X', 30],
    ['111a 222a 3333b 4444b', 1],
    ['FF 11a 222b 333b 4444c', 1, 'X', 30],
    ['1a 22a 333a 4444a 5555a', 1, 'X', 35],
  ],
  'Same again': [
    ['FF 2222a 2222b 2222c', 1],
    ['22a 222b 2222c DDDDD', 1, 'X', 40],
    ['FFFF 33a 3333b 3333c', 1, 'X', 30],
    ['333a 333b DDDDa DDDDb', 1],
    ['FF 444a NEWS 444b 4c 4c', 1, 'C', 35],
    ['11a 111b 1111c ww xxx', 1, 'X', 30],
  ],
  'Even tides': [
    ['222a 444a 666b 888b FF', 0],
    ['22a 444a 66a 888a DDDDa', 0, 'X', 30],
    ['FF 2222a 4444b 6666c', 2, 'X', 30],
    ['2a 4a 6a 8a FF 2222b 2222c', 0, 'X', 35],
    ['FFFF 2a 4a 6a 8a 666b 888c', 0, 'C', 35],
    ['222a 44b 666a 88b 2222c', 0],
  ],
  'Odd tides': [
    ['111a 333a 555b 777b 9c 9c', 0],
    ['11a 333a 55a 777a DDDDb', 0, 'X', 30],
    ['FF 1111a 3333b 5555c', 2, 'X', 30],
    ['1a 3a 5a 7a 9a FF 1111b 333c', 0, 'X', 35],
    ['FFFFF 135a 9999b 55c', 0],
    ['111a 33b 555a 77b 9999c', 0],
  ],
  'By threes': [
    ['FF 3333a 6666b 9999c', 0],
    ['333a 666a 999a DDDa FF', 0, 'X', 30],
    ['11a 444a 77a 1111b 444c', 3, 'X', 30],
    ['3a 6a 9a FF 333b 666b 999b', 0, 'C', 35],
    ['FFFF 33a 66a 99a DDDDc', 0],
    ['333a 666b 99c 9999a FF', 0, 'X', 30],
  ],
  'Winds about': [
    ['NNN EEE WWWW SSSS', 0],
    ['NNNN 11a 11b 11c SSSS', 1, 'X', 30],
    ['EEEE 22a 22b 22c WWWW', 1, 'X', 30],
    ['NEWS FF 3333a 3333b', 1],
    ['FF wwww 1111a xxxx', 1, 'X', 30],
    ['NN EE WW SS 1a 2a 3a 4a 5a 6a', 0, 'C', 50],
  ],
  Dragons: [
    ['GGGG RRRR 0000 FF', 0],
    ['FF 111a DDDa 2222b DDb', 1, 'X', 30],
    ['DDDDa 22b 33b 44b DDDDc', 1, 'X', 30],
    ['FFFF DDD 1111a 111b', 1],
    ['00 111bam 333crak 555dot GGG', 0, 'X', 30],
    ['FF GG RR 00 1111a 22a', 1, 'C', 35],
  ],
  'White as nought': [
    ['FF 2a 0 2a 7a 2222b 7777c', 0, 'X', 30],
    ['2026a 2222b 6666c FF', 0, 'X', 35],
    ['FFFF 1a 0 1a 0 1111b 00', 0],
    ['0000 222a 444b 6666c', 0, 'X', 30],
    ['000 333a 333b 33c FFF', 1, 'X', 30],
    ['20a 20b 20c 2222a FFFF', 0, 'C', 40],
  ],
  'Two by two': [
    ['11a 22a 33a 44a 55a 66a 77a', 1, 'C', 50],
    ["11a 11b 11c 55a' 55b' 55c' FF", 1, 'C', 50],
    ['22a 44a 66a 88a FF NN SS', 0, 'C', 50],
    ['NN EE WW SS GG RR 00', 0, 'C', 50],
    ['FF 33a 33b 44a 44b 55a 55b', 1, 'C', 50],
    ['11a 33a 55a 77a 99a DDa FF', 0, 'C', 50],
  ],
  'One or other': [
    ['FF 1111a 222a 33a 444a or FF 1111a 222b 33b 444b', 1, 'X', 30],
    ['222a 444a 666a 88a FFF or 333a 555a 777a 99a FFF', 0],
    ["FF 222a 222b 9999a= 55c'", 1, 'X', 30],
    ['FFFF NNNN EEEE SS or FFFF WWWW EEEE SS', 0, 'X', 30],
    ['NEWS 1111a 2222a DD or NEWS 1111a 2222b DD', 1, 'X', 30],
    ['111bam 222bam 3333dot 4444dot or 111crak 222crak 3333dot 4444dot', 0, 'X', 30],
  ],
};

/** A line of the card, as its file is to say it, and what is typed for it. */
export interface IntendedLine {
  readonly section: string;
  /** As it stands above, which is how it is printed: `2026a` for 2a 0 2a 6a. */
  readonly printed: string;
  readonly line: LineDocument;
}

/** Short forms of the list above, written out by hand. */
const WRITTEN_OUT: Readonly<Record<string, string>> = {
  'FFFFF 135a 9999b 55c': 'FFFFF 1a 3a 5a 9999b 55c',
  '2026a 2222b 6666c FF': '2a 0 2a 6a 2222b 6666c FF',
  '20a 20b 20c 2222a FFFF': '2a 0 2b 0 2c 0 2222a FFFF',
};

export const SIXTY: readonly IntendedLine[] = Object.entries(SECTIONS).flatMap(([section, rows]) =>
  rows.map(([printed, slide, exposure = 'X', points = 25]) => {
    const [pattern, ...or] = (WRITTEN_OUT[printed] ?? printed).split(' or ');
    const line = { pattern, slide, concealed: exposure === 'C', points, ...(or.length === 0 ? {} : { or }) };
    return { section, printed, line };
  }),
);
