import { tilesCounted } from './numbers.ts';

/** Words of the small parts that the places are made of. */
export const partWords = {
  close: 'Close',
  moreHelp: 'More in the help',
  noTiles: 'nothing',
  calculationStopped:
    'What you entered is safe. It stopped twice: try it again, or close Windrow and open it once more.',
  calculationFailed: 'What you entered is safe. Try it again, or close Windrow and open it once more.',

  tones: { info: 'Note', good: 'Done', warn: 'Please look', bad: 'Something went wrong' },

  rack: {
    label: 'Your rack',
    empty: 'No tiles yet',
    enough: (limit: number) => `${tilesCounted(limit)} are chosen already.`,
    fresh: 'new',
    marks: { kept: 'kept', spare: 'spare', strained: 'wanted twice' },
    place: (tile: string, place: number, of: number) => `${tile}, place ${place} of ${of}`,
    group: (group: number, of: number) => `group ${group} of ${of}`,
  },

  slots: {
    label: 'Tiles to give',
    full: 'full',
    free: (count: number) => (count === 1 ? '1 place free' : `${count} places free`),
    unseen: 'a blind tile',
    offered: (tile: string) => `${tile}, offered`,
    empty: 'empty',
    place: (holds: string, place: number, of: number) => `${holds}, place ${place} of ${of}`,
  },

  tray: {
    label: 'Tiles to pick from',
    noneLeft: 'none left',
    left: (tile: string, count: number) => `${tile}, ${count === 0 ? 'none' : count} left`,
  },

  entry: {
    label: 'Type the tiles',
    needsSuit: (digits: string) => `${digits} still needs its suit: write b, c or d after it.`,
    suitNext: (digits: string) => `${digits} … now b, c or d`,
    wrongCount: (counted: string, wanted: string) => `That's ${counted}. It takes ${wanted}.`,
    counted: (tiles: number, wanted: string) => `${tiles} of ${wanted} ${wanted === '1' ? 'tile' : 'tiles'}`,
    or: 'or',
  },

  hand: {
    sizes: ['', '', 'pair', 'pung', 'kong', 'quint', 'sextet'],
    run: (size: string, tiles: string) => `${size} of ${tiles}`,
    here: 'here',
    byJoker: 'by joker',
    missing: 'missing',
    and: ' and ',
  },

  lean: {
    label: 'Lean',
    table: (label: string) => `${label} as a table`,
    section: 'Section',
    share: 'Share',
  },

  steps: {
    undo: (what: string) => `Undone: ${what}.`,
    redo: (what: string) => `Done again: ${what}.`,
    change: 'the last change',
  },

  places: 'Places',
  faceDown: 'tile face down',
};
