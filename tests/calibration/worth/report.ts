import type { WorthRow } from './run.ts';

const TITLE = `# What advice is worth

Made by \`npm run worth:table\`; all figures are games of a hundred. One chair does what stands first in the window's list, at
its default setting, in the part of the game that is named; in the other part, and when it follows the other rule, it
plays as the row says. Each deal is played twice and goes on with the same walls after the exchange. The interval is 95 %.
Cards other than the demo card are invented, from seeds that took part in no fit and no tuning. Simulated players; real
tables differ. "None found": the interval holds nought, so these games tell no difference.
`;
/** Raised whenever the players of a club table play otherwise, so that what was played among others is played anew. */
export const CLUB_PLAYERS = 2;

/** Raised likewise whenever the advice in play orders its list otherwise. */
export const PLAY_ADVICE = 2;

/** Why a row no longer tells of what is there now: its mark, when it holds, and what that says. */
const OUTDATED = [
  {
    mark: '†',
    holds: ({ among, players = 1 }: WorthRow): boolean => among === 'club' && players < CLUB_PLAYERS,
    words: `among players of a club table as they were before they stopped the second round oftener and now and then went dead
(core/RULES.md, TB-31 to TB-33)`,
  },
  {
    mark: '‡',
    holds: ({ part, advice = 1 }: WorthRow): boolean => part !== 'exchange' && advice < PLAY_ADVICE,
    words: `by the advice in play before it looked at what seats with open groups may do with a discard
(core/others/OTHERS.md, OT-11)`,
  },
];

/** Whether a row was played among other players, or by other advice, than there are now. */
export function isOutdated(row: WorthRow): boolean {
  return OUTDATED.some(({ holds }) => holds(row));
}

/** The marks of what no longer holds of some of the rows, to stand behind their name. */
function marksOf(rows: readonly WorthRow[]): string {
  return OUTDATED.filter(({ holds }) => rows.some(holds))
    .map(({ mark }) => ` ${mark}`)
    .join('');
}

/** What the marks on the page mean. */
function marksExplained(rows: readonly WorthRow[]): string[] {
  const lines = OUTDATED.filter(({ holds }) => rows.some(holds)).map(({ mark, words }) => `${mark}: ${words}.\n`);
  return lines.length === 0 ? [] : [...lines, 'The next `npm run worth:table` plays these rows anew.\n'];
}

const PARTS = { exchange: 'In the exchange', play: 'In play', game: 'In the whole game' } as const;

/** The report of what has been played. */
export function worthReport(rows: readonly WorthRow[]): string {
  const sections = (['exchange', 'play', 'game'] as const).flatMap((part) => {
    const own = rows.filter((row) => row.part === part);
    return own.length === 0 ? [] : [`## ${PARTS[part]}\n\n${tableOf(own)}\n`];
  });
  return [TITLE, ...marksExplained(rows), ...sections].join('\n');
}

function tableOf(rows: readonly WorthRow[]): string {
  const settings = [...new Set(rows.map(settingOf))];
  const lines = settings.flatMap((setting) => {
    const own = rows.filter((row) => settingOf(row) === setting);
    const fresh = own.filter(({ card }) => card !== 'Demo card');
    return [...own.map(lineOf), ...(fresh.length > 1 ? [pooledLine(fresh)] : [])];
  });
  return [
    '| card | against | among | deals × walls | wall games | won more | ms a decision |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...lines,
  ].join('\n');
}

function settingOf({ against, among }: WorthRow): string {
  return `${against} ${among}`;
}

function lineOf(row: WorthRow): string {
  const { card, against, among, deals, walls, wallGames, secondsPerDecision } = row;
  const cells = [
    `${card}${marksOf([row])}`,
    against,
    among,
    `${deals} × ${walls}`,
    wallGames.toFixed(0),
    gain(row),
    milliseconds(secondsPerDecision),
  ];
  return `| ${cells.join(' | ')} |`;
}

function milliseconds(seconds: number): string {
  return (1000 * seconds).toFixed(seconds < 0.01 ? 2 : 0);
}

/** Of the invented cards, each weighed by how well it is known. */
function pooledLine(rows: readonly WorthRow[]): string {
  const weights = rows.map(({ error }) => 1 / error ** 2);
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const difference = rows.reduce((sum, row, place) => sum + (weights[place] as number) * row.difference, 0) / all;
  const { against, among } = rows[0] as WorthRow;
  const deals = rows.reduce((sum, row) => sum + row.deals, 0);
  const pooled = gain({ difference, error: 1 / Math.sqrt(all) });
  return `| **invented cards, pooled**${marksOf(rows)} | ${against} | ${among} | ${deals} | | **${pooled}** | |`;
}

function gain({ difference, error }: Pick<WorthRow, 'difference' | 'error'>): string {
  const sign = difference < 0 ? '−' : '+';
  const halfWidth = 1.96 * error;
  const found = Math.abs(difference) > halfWidth ? '' : ', none found';
  return `${sign}${Math.abs(difference).toFixed(2)} ± ${halfWidth.toFixed(2)}${found}`;
}
