import type { DealKind } from '../../core/warmup/deal-kinds.ts';
import type { Phase } from '../../core/warmup/history.ts';
import { differenceAlone, differenceInGames, tilesCounted } from './numbers.ts';

/** "at the first pass" and the like, within a sentence. */
const AT_PHASE: Readonly<Record<Phase, string>> = {
  first: 'the first pass',
  middle: 'the later passes',
  last: 'the last pass of a round',
  courtesy: 'the courtesy',
};

/** "racks with a pair" and the like, within a sentence. */
const ON_KIND: Readonly<Record<DealKind, string>> = {
  any: 'all kinds of racks',
  pair: 'racks with a pair',
  pung: 'racks with a pung',
  scattered: 'racks in which nothing repeats',
  'no-joker': 'racks without a joker',
  'one-joker': 'racks with one joker',
  'two-jokers': 'racks with two jokers',
  'three-jokers': 'racks with three jokers',
  'four-jokers': 'racks with four jokers',
  flowers: 'racks with three flowers or more',
  'two-ways': 'racks that could go two ways',
  close: 'close decisions',
};

/** A count of decisions in words. */
function decisions(count: number): string {
  return count === 1 ? '1 decision' : `${count} decisions`;
}

/** Words of a practice: the start, one problem on one page, the answer, and what came of it. */
export const practiceWords = {
  start: {
    daily: 'Practice of the day',
    dailyLead: (due: number) =>
      due === 0
        ? 'None of your own decisions comes back today, so you get a mix of problems.'
        : `${due === 1 ? '1 of your own decisions comes' : `${due} of your own decisions come`} back today, on new tiles.`,
    dailyLength: 'At most 12 problems or ten minutes. Stop when you like.',
    dailyStart: 'Start today’s practice',
    deal: 'A deal of your choice',
    kind: 'Kind of deal',
    tiles: 'Tiles',
    turns: '13 and 14 in turn',
    thirteen: '13',
    fourteen: '14, as East',
    clock: 'Show a clock',
    dealNow: 'Deal',
    whole: 'A whole exchange',
    wholeLead: 'Pass after pass, with what three simulated neighbours really give you.',
    wholeAfter: 'At the end you see what Windrow’s own passes would have come to with the same tiles.',
    wholeStart: 'Start an exchange',
    code: 'A deal by its code',
    codeLabel: 'Code',
    codeHint: 'For example: EE2-222-22W',
    codeStart: 'Deal this one',
    codeMissing: 'Type a code first.',
    searching: (tried: number) => (tried > 1 ? `Looked at ${tried} deals…` : 'Looking for a deal…'),
    stop: 'Stop',
  },

  /** Where a problem stands: "Problem 3 of 12". */
  of: (place: number, of: number) => `Problem ${place} of ${of}`,
  passOf: 'A whole exchange',
  /** "South, first pass to the right, with 13 tiles". */
  turn: (turn: string, tiles: number) => `${turn}, with ${tilesCounted(tiles)}`,
  code: (code: string) => `Code ${code}`,
  tried: (tried: number, share: string) =>
    `${tried === 1 ? 'The first deal was of this kind' : `Deal ${tried} was of this kind`}${share}.`,
  share: (deals: number) => `; on average it takes ${deals}`,
  clock: (seconds: number) => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`,
  clockLabel: 'Time',
  /** By how many seats on the giver sits. */
  cameIn: { 1: 'From your right came', 2: 'From across came', 3: 'From your left came' },

  page: {
    label: 'Problem',
    rack: 'Your rack',
    question: 'What would you give?',
    questionCourtesy: 'How many would you exchange, and which?',
    help: 'Tap three tiles: they go into the tray. That is all you need.',
    helpCourtesy: 'Tap none to three tiles. The smaller number of both players counts.',
    helpMore:
      'If you like, mark what you would keep, and tap a line of the card that you aim at. Then you see where you differ.',
    tap: 'A tap on a tile',
    taps: { give: 'gives it', keep: 'keeps it', arrange: 'moves it' },
    tray: 'Tiles to give',
    arrange: 'Arrange for me',
    blind: 'Pass blind',
    blindNone: 'None',
    kept: (count: number) => (count === 0 ? '' : `${tilesCounted(count)} kept.`),
    aimed: (names: string) => `You aim at ${names}.`,
    missing: (count: number) => (count === 1 ? 'Tap one more tile.' : `Tap ${count} more tiles.`),
    full: 'Three tiles lie in the tray already: tap one there to take it back.',
    stop: 'Stop before the second round',
    show: 'Show the answer',
    why: 'Why? In your own words, if you like',
    skip: 'Skip',
    skipDone: 'Next problem',
    back: 'Back',
    leave: 'End',
    leaveDeal: 'Leave',
    goOn: 'Play on to the next pass',
    finish: 'Play on to the end',
    answerCode: 'Your answer as a code, to send back:',
    copyAnswerCode: 'Copy it',
    copied: 'Copied.',
    notCopied: 'It could not be copied: write it down.',
    working: 'Working out the answer…',
    again: 'Try again',
    reopened: 'This is an answer that you gave before.',
    otherCard: 'You gave it with another card; this answer is for the card in use now.',
  },

  card: {
    title: 'The card',
    near: 'Only lines near this rack',
    whole: 'Whole card',
    show: 'Show the card',
    hide: 'Hide the card',
    aim: 'Tap a line or a section that you aim at.',
    away: (away: number) => `${away} away`,
    waiting: 'Looking for lines near this rack…',
    mine: 'my aim',
    section: 'the whole section',
  },

  answer: {
    title: 'The answer',
    best: 'Yours is the best pass.',
    equal: 'Yours is as good as the best.',
    costs: (cost: number) => `Yours gives up ${differenceInGames(cost)}.`,
    within: (half: string) => `Give or take ${half}.`,
    stopBest: 'To stop here is best.',
    stopped: 'You stopped before the second round.',
    chance: (chance: string) => `Before this pass you would win ${chance}, with any hand.`,
    rack: 'The rack',
    goes: 'Goes',
    stays: 'Stays',
    stopHere: 'Stop here: no second round.',
    passes: 'The best passes, and yours',
    yours: 'yours',
    bestMark: 'best',
    equalMark: 'as good',
    behind: (cost: number) => `${differenceAlone(cost)} in 100 behind`,
    differs: 'Where you read it differently',
    same: 'You read the rack as Windrow does.',
    unmarked: 'Mark what you would keep, or a line that you aim at, and you see here where you differ.',
    aimFirst: (name: string) => `You aim at ${name}: Windrow puts it first too.`,
    aimRank: (name: string, rank: number, of: number) =>
      `You aim at ${name}: Windrow puts it at place ${rank} of ${of}.`,
    aimOut: (name: string) => `You aim at ${name}, which can’t be made with these tiles any more.`,
    aimGone: 'One of your aims is not on the card in use now.',
    keptGiven: (names: string) => `You would keep the ${names}; the best pass gives it away.`,
    keptGivenMore: (names: string) => `You would keep the ${names}; the best pass gives them away.`,
    gaveKept: (name: string, why: string) => `You gave the ${name}. ${why}`,
    why: (words: string) => `You said: ${words}`,
    more: 'Explain more',
    hands: 'The hands it could become',
    lean: 'Lean',
    legend: 'Marks under the tiles:',
    marks: { spare: 'given in the best pass', kept: 'stays' },
    estimate: 'All costs are estimates, counted to the end of the exchange.',
  },

  summary: {
    title: 'Your practice',
    none: 'You answered no problem this time.',
    cost: (cost: number, count: number) => {
      const answered = `You answered ${count === 1 ? '1 problem' : `${count} problems`}`;
      if (cost < 0.005) return `${answered} and gave up nothing that counts.`;
      if (count === 1) return `${answered} and gave up ${differenceInGames(cost)}.`;
      return `${answered}. You gave up ${differenceInGames(cost / count)} at each, ${differenceAlone(cost)} in all.`;
    },
    right: (hits: number, of: number) => `${hits} of ${of} were the best or as good.`,
    skipped: (count: number) => `${count === 1 ? '1 problem was' : `${count} problems were`} skipped.`,
    another: 'Worth another look',
    all: 'All problems of this practice',
    open: 'Open the answer',
    openOne: (place: number) => `Open the answer to problem ${place}`,
    gave: 'you gave',
    costAlone: (cost: number) => (cost < 0.005 ? 'nothing' : differenceInGames(cost)),
    stopped: 'you stopped',
    columns: { problem: 'Problem', gave: 'You gave', cost: 'Gave up' },
    workOn: (phase: Phase | null, kind: DealKind | null, count: number, cost: number) => {
      const where = [
        ...(kind === null || kind === 'any' ? [] : [ON_KIND[kind]]),
        ...(phase === null ? [] : [AT_PHASE[phase]]),
      ].join(' at ');
      return `Work on ${where}: ${decisions(count)} there gave up ${differenceInGames(cost)}.`;
    },
    nothing: 'Nothing here needs work: every choice was as good as the best.',
    again: 'Another practice',
    done: 'Done',
    progress: 'See your progress',
  },

  exchange: {
    title: 'The exchange at its end',
    yours: 'With your passes',
    windrows: 'With Windrow’s passes',
    won: (chance: string) => `You would win ${chance}.`,
    away: (away: number) => (away === 0 ? 'A hand is complete.' : `The nearest hand is ${tilesCounted(away)} away.`),
    pending: 'Playing the same deal with Windrow’s passes…',
    one: 'It is one deal on one wall: luck in what comes in plays its part here too.',
    ahead: (cost: number) => `On this wall Windrow’s passes came out ${differenceInGames(cost)} ahead.`,
    behind: (cost: number) => `On this wall your passes came out ${differenceInGames(cost)} ahead.`,
    even: 'On this wall both came out about the same.',
    passes: 'Pass by pass',
    stopped: 'stopped',
    figures: 'The exchange in figures',
    nobody: '–',
    came: 'came in',
    pass: 'Pass',
  },

  progress: {
    weeks: 'Week by week',
    weeksLead: 'All decisions that you answered in practice. Gave up: games of a hundred at one decision, on average.',
    week: 'Week of',
    decisions: 'Decisions',
    right: 'Best or as good',
    cost: 'Gave up at one decision',
    costCell: (cost: string, half: string | null) =>
      half === null ? `${cost} (too few to say more)` : `${cost} ± ${half}`,
    weeksNone: 'Your first practice will stand here.',
    back: 'What comes back, and when',
    backLead: 'A decision that cost something comes back on new tiles: the next day, and later each time it goes well.',
    backNone: 'Nothing waits: so far no decision cost anything that counts.',
    backMore: (count: number) => `and ${count} more later on`,
    today: 'today',
    tomorrow: 'tomorrow',
    inDays: (days: number) => `in ${days} days`,
    from: (game: boolean) => (game ? 'from a game' : 'from practice'),
    because: (right: number) =>
      right === 0 ? '' : right === 1 ? ' It went well once.' : ` It went well ${right} times.`,
    backRow: (what: string, cost: string, from: string) => `${what}, ${from}. It gave up ${cost}.`,
    sittings: 'Earlier practices',
    sitting: (date: string, count: number, cost: string) =>
      `${date}: ${count === 1 ? '1 problem' : `${count} problems`}, gave up ${cost} in all`,
    single: (date: string, count: number, cost: string) =>
      `${date}, single deals: ${count === 1 ? '1 problem' : `${count} problems`}, gave up ${cost} in all`,
    openSitting: 'Open',
    openOf: (date: string) => `Open the practice of ${date}`,
    inAll: 'Gave up in all, in games of a hundred',
  },

  /** "First pass: with a pair". */
  phaseOnKind: (phase: string, kind: string) => `${phase}: ${kind.charAt(0).toLowerCase()}${kind.slice(1)}`,
  phases: {
    first: 'First pass',
    middle: 'Later pass',
    last: 'Last pass of a round',
    courtesy: 'Courtesy',
  } satisfies Readonly<Record<Phase, string>>,
};
