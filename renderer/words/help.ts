/** Words of the help, the tour of the first start, and the list of keys. */
export const helpWords = {
  title: 'Help',
  parts: 'Parts of the help',
  tabs: { steps: 'First steps', keys: 'Keys', exchange: 'Exchange', numbers: 'Numbers', cautions: 'Cautions' },
  print: 'Print the help',
  paperTitle: 'Windrow: the help on paper',
  startTour: 'Take the tour',
  resumeTour: 'Go on with the tour',
  stepsLead: 'The tour shows Windrow in five short steps. You can leave it at any time.',
  keysLead: 'Everything works with the mouse too. Click a tile, then its new place.',
  or: 'or',
  exchangeLead: 'This is common practice. A rule of your table or of the printed card wins over it.',
};

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
    title: 'On the quick entry of your card',
    walk: 'Go from cell to cell',
    row: 'Go to the first or last cell of the row',
    corners: 'Go to the first or last cell of all',
    write: 'Write in the cell; Esc gives it up',
    move: 'Move the whole line',
    empty: 'Empty the cell',
  },
  projector: {
    title: 'On a sheet shown to a class',
    on: 'Show the next thing',
    back: 'Show the thing before',
  },
};
