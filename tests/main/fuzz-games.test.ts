import { LOTS, testLots } from './support/fuzz-lots.ts';

// The half that takes longest, in a file of its own, so that both run side by side.
testLots(LOTS.filter(({ name }) => name === 'games'));
