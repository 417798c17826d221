/** Words of the Journal. */
export const journalWords = {
  title: 'Journal',
  lead: 'All your games, newest first. Open one to go on where it was.',
  empty: 'No game yet. Your first deal will be here.',
  toTable: 'Go to the Table',
  open: 'Open',
  openLabel: (when: string) => `Open the game of ${when}`,
  here: 'On the table now',
  when: 'When',
  seat: 'Seat',
  stage: 'Where it stands',
  card: 'Card',
  demo: 'example',
  waiting: 'Opening your games…',
  failed: 'Your games could not be opened.',
  retry: 'Try again',
};
