import { differenceAlone, tilesCounted } from './numbers.ts';

/** "1 game in 100 behind": what a choice gives up against the best. */
function behind(cost: number): string {
  return `${cost >= 0.005 ? 'about ' : ''}${differenceAlone(cost)} in 100 behind`;
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

function numberWord(count: number): string {
  return NUMBERS[count] ?? String(count);
}

/** Words of the one answer of the Table: what to do now, what else there is, and what that costs. */
export const answerWords = {
  /** While it is worked out. */
  pending: 'Weighing all passes…',
  unknown: '…',
  /** Where nothing is weighed before the person asks. */
  waits: 'Not weighed yet: by the Settings, Windrow waits until you ask.',
  weighPasses: 'Weigh the passes',
  weighOwn: 'What does it cost?',
  weighPlay: 'Weigh what I can do',
  failed: 'The passes could not be compared.',
  offered: 'Offered to give',
  best: 'The best choice.',
  alike: (others: number) => `As good as any: ${numberWord(others)} ${others === 1 ? 'other is' : 'others are'} equal.`,
  stop: 'Better to stop here.',
  stopWords: 'A second round would take more from you than it brings.',
  ask: (count: number, equal: readonly number[]) =>
    `Ask for ${count === 0 ? 'none' : tilesCounted(count)}.${equal.length === 0 ? '' : ` ${equal.join(' or ')} would be as good.`}`,
  askWords: 'Say what you both ask for: the smaller number counts.',
  own: {
    best: 'Yours is the best choice.',
    equal: 'Yours is as good as the best.',
    costs: (cost: number) => `Yours is ${behind(cost)} the best.`,
    pending: 'Yours: …',
    open: (missing: number) => `${missing === 1 ? 'One tile' : `${missing} tiles`} to go.`,
    openWords: 'Then you see what your own choice costs.',
    chosen: 'Your own choice.',
  },
  back: 'Back to the offer',
  backAlone: 'Take them back',
  give: (tiles: number, blind: number) => {
    if (blind > 0) return tiles === 0 ? `Pass ${blind} blind` : `Give ${tiles} and ${blind} blind`;
    return tiles === 0 ? 'Give nothing' : `Give ${tilesCounted(tiles)}`;
  },
  stopHere: 'Stop here',
  /** Where no advice is shown. */
  later: 'No advice now: the look-back has it all afterwards.',
  chooseFirst: 'Choose first: then you see what your choice costs.',
  afterwards: {
    best: 'You gave the best pass.',
    equal: (best: string) => `You gave a pass as good as the best, ${best}.`,
    costs: (cost: number, best: string) => `You gave up ${differenceAlone(cost)} in 100. Best was ${best}.`,
  },

  list: {
    title: 'Other passes',
    all: 'All passes',
    unit: 'What it costs',
    unitHeading: 'Cost',
    unitWords: [
      '"2 in 100 behind" means that you win about 2 games in a hundred fewer than with the best pass.',
      'All passes met the same luck, up to the end of the exchange. Where no real difference was found, it says "as good".',
    ],
    row: (name: string, words: string) => `${name}: ${words}. Lay it into the tray`,
    equal: 'as good',
    best: 'the best',
    behind,
    helps: (whom: string, tiles: string) => `helps ${whom}: ${tiles}`,
    none: 'There is no other pass.',
    receivers: {
      1: 'your right neighbour',
      2: 'the player across',
      3: 'your left neighbour',
    },
  },
  counted: 'How this was counted',
};
