/** Words of the help, the tour of the first start, and the list of keys. */
export const helpWords = {
  title: 'Help',
  parts: 'Parts of the help',
  tabs: {
    steps: 'First steps',
    exchange: 'Exchange',
    numbers: 'Numbers',
    card: 'Entering your card',
    check: 'Check and Proof-read',
    study: 'Study',
    keys: 'Keys',
    cautions: 'Cautions',
  },
  examples: 'Whole lines, printed and typed',
  examplesLead: 'These lines are invented. Suits are told by words here, as cards tell them by colours.',
  exampleHeads: { printed: 'As printed', typed: 'As typed', moves: 'Moves', means: 'What it means' },
  print: 'Print the help',
  paperTitle: 'Windrow: the help on paper',
  startTour: 'Take the tour',
  resumeTour: 'Go on with the tour',
  stepsLead: 'The tour shows Windrow in five short steps. You can leave it at any time.',
  keysLead: 'Everything works with the mouse too. Click a tile, then its new place.',
  or: 'or',
  exchangeLead: 'This is common practice. A rule of your table or of the printed card wins over it.',
};

/** Whole lines as a card may print them, and how each is typed; the lines are ours. */
export const lineExamples = [
  {
    printed: 'FF 11 222 333 4444 (one suit, any run of four)',
    typed: 'FF 11a 222a 333a 4444a',
    or: '',
    moves: 1,
    means: 'Any consecutive run in one suit, with a pair of flowers.',
  },
  {
    printed: '1111 1111 1111 FF (three suits, like numbers)',
    typed: '1111a 1111b 1111c FF',
    or: '',
    moves: 1,
    means: 'Like numbers in three suits, with a pair of flowers.',
  },
  {
    printed: '222 444 666 DDDDD (one suit, matching dragons)',
    typed: '222a 444a 666a DDDDDa',
    or: '',
    moves: 0,
    means: 'These numbers only, with a quint of the matching dragon.',
  },
  {
    printed: '3333 55 7777 DDDD (one suit, opposite dragons)',
    typed: '3333a 55a 7777a DDDDb',
    or: '',
    moves: 0,
    means: 'The dragons are of another suit than the numbers.',
  },
  {
    printed: 'FFFF 22 88 888 and a pung of any wind (two suits)',
    typed: 'FFFF 22a 88a 888b www',
    or: '',
    moves: 0,
    means: 'Any wind is w: the same wind in the whole line.',
  },
  {
    printed: 'NEWS 444 444 6666 (two suits)',
    typed: 'NEWS 444a 444b 6666a',
    or: '',
    moves: 2,
    means: 'One of each wind. The numbers go up or down by evens.',
  },
  {
    printed: '2034 2034 FFF 333 (white dragon as zero, three suits)',
    typed: '2a 0 3a 4a 2b 0 3b 4b FFF 333c',
    or: '',
    moves: 0,
    means: 'The white dragon is the zero. It has no suit.',
  },
  {
    printed: 'NNNN 11 33 55 SSSS, or EEEE 22 44 66 WWWW (one suit)',
    typed: 'NNNN 11a 33a 55a SSSS',
    or: 'EEEE 22a 44a 66a WWWW',
    moves: 0,
    means: 'One line with two forms. Press “or” under the first, and type the second.',
  },
  {
    printed: '333 666 99 GGG RRR (craks only)',
    typed: '333crak 666crak 99crak GGG RRR',
    or: '',
    moves: 0,
    means: 'The card names the suit, so it is written in full.',
  },
] as const;

/** Short forms that may be typed, and what becomes of each. */
export const shortForms = {
  title: 'Short forms',
  lead: 'These are made into groups as you go on.',
  forms: [
    ['FF222a', 'FF 222a'],
    ['2468a', '2a 4a 6a 8a'],
    ['1a2a3a', '1a 2a 3a'],
  ],
} as const;

/** Words of the tour. */
export const tourWords = {
  heading: (step: number, of: number, title: string) => `${step} of ${of}: ${title}`,
  back: 'Back',
  next: 'Next',
  done: 'Done',
  leave: 'Leave the tour',
  again: 'You find this tour again under Help.',
  steps: [
    {
      title: 'Lay down your tiles',
      text: ['Type the tiles that you were dealt, or click each one.', 'The tour goes on with an example deal.'],
    },
    {
      title: 'See your nearest hands',
      text: [
        'These hands of your card are nearest. Pale places are missing tiles.',
        'Click a figure to see what it means.',
      ],
    },
    {
      title: 'Choose a pass',
      text: [
        'Here is what to do now. The best pass lies in the tray, and one press gives it.',
        'Or set aside tiles of your own. You see what that costs before you give them.',
      ],
    },
    {
      title: 'Look back',
      text: [
        'Every game is kept in the Journal as you go. There is no need to save.',
        'The look-back tells luck from choices, long after the game.',
      ],
    },
    {
      title: 'Make it yours',
      text: [
        'Enter the card that you own in the place named Card. Until then a small demo card is there.',
        'Warm-up has deals to practise. Settings has the colours, the text size and your files.',
      ],
    },
  ],
};

/** How keys are named on the screen. */
export const keyNames: Readonly<Record<string, string>> = {
  ArrowLeft: 'Left',
  ArrowRight: 'Right',
  ArrowUp: 'Up',
  ArrowDown: 'Down',
  Home: 'Home',
  End: 'End',
  PageUp: 'Page up',
  PageDown: 'Page down',
  ' ': 'Space',
  Enter: 'Enter',
  Escape: 'Esc',
  Delete: 'Delete',
  Control: 'Ctrl',
  Alt: 'Alt',
  Shift: 'Shift',
  Tab: 'Tab',
  ',': 'Comma',
  'a-z': 'a letter',
  '1-9': 'a digit',
};

/** What the keys do, place by place. The keys themselves stand in renderer/help/keys.ts. */
export const keyWords = {
  everywhere: {
    title: 'Everywhere',
    help: 'Open this help',
    on: 'Go on to the next part',
    back: 'Go back to the part before',
    press: 'Press the button',
    close: 'Close what is open',
    undo: 'Undo',
    redo: 'Redo',
  },
  rack: {
    title: 'On the rack',
    walk: 'Go to the tile beside',
    climb: 'Go to the other row',
    ends: 'Go to the first or last tile',
    jump: 'Go to a tile by its letter or digit',
    select: 'Choose the tile, or let it go',
    step: 'Move the tile by one place',
    tier: 'Move the tile to the other row',
    gap: 'Make or close a gap before the tile',
    send: 'Set the chosen tiles aside to give',
    recall: 'Take the tiles back that you set aside',
    cancel: 'Let all chosen tiles go, or stop a drag',
  },
  slots: {
    title: 'On the tiles to give',
    walk: 'Go to the tile beside',
    takeBack: 'Take this tile back',
    takeAll: 'Take all tiles back',
  },
  tray: {
    title: 'On the tiles to click',
    walk: 'Go to the tile beside',
    climb: 'Go to the row above or below',
    ends: 'Go to the first or last tile',
    add: 'Take the tile',
  },
  tabs: {
    title: 'On tabs and rows of buttons',
    walk: 'Go to the one beside',
    ends: 'Go to the first or last one',
  },
  picker: {
    title: 'On the tiles for a group of your card',
    walk: 'Go to the tile beside',
    climb: 'Go to the row above or below',
    ends: 'Go to the first or last tile',
    choose: 'Put the tile into the group',
  },
  groups: {
    title: 'On the groups of a line of your card',
    walk: 'Go to the group beside',
    move: 'Move the group',
    remove: 'Take the group away',
  },
  grid: {
    title: 'In the table of your card',
    line: 'Go to the next line; after the last one, to the next section',
    cell: 'Go to the next cell',
    back: 'Go to the cell before',
    walk: 'Go to the line above or below',
    move: 'Move the whole line',
    moves: 'In Moves: these numbers only, any, evens or odds, by threes',
    side: 'In C or X: concealed, exposed',
    offers: 'Ask how the line may go on',
    leave: 'Go to the choices below the line',
  },
  whole: {
    title: 'On the whole card',
    walk: 'Go to the line before or after',
    ends: 'Go to the first or last line',
    show: 'Change the line',
    empty: 'Empty what you look for',
  },
  projector: {
    title: 'On a sheet shown to a class',
    on: 'Show the next thing',
    back: 'Show the thing before',
  },
};
