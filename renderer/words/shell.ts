/** Words of the window's frame: places, text size, saving, notices. */
export const shellWords = {
  name: 'Windrow',
  places: { table: 'Table', card: 'Card', journal: 'Journal', warmup: 'Warm-up', settings: 'Settings' },
  placesLabel: 'Places of the window',
  skip: 'Go to the main part',
  smaller: 'A−',
  larger: 'A+',
  smallerLabel: 'A−, smaller text',
  largerLabel: 'A+, larger text',
  textSizeLabel: 'Text size',
  textSizeNow: (px: number) => `Text size ${px}`,
  saved: 'Saved',
  saving: 'Saving…',
  notSaved: 'Not saved',
  retry: 'Try again',
  cannotStart: 'Windrow could not open.',
  reload: 'Try again',
};
