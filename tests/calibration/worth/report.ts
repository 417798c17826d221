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

/** Whether a row was played among players of a club table as they were before. */
export function isOutdated({ among, players = 1 }: WorthRow): boolean {
  return among === 'club' && players < CLUB_PLAYERS;
}

/** Stands behind what was played among other players of a club table than there are now. */
const MARK = ' †';
const OUTDATED = `†: among players of a club table as they were before they stopped the second round oftener and now and then went dead
(core/RULES.md, TB-31 to TB-33). The next \`npm run worth:table\` plays these rows anew.
`;
const PARTS = { exchange: 'In the exchange', play: 'In play', game: 'In the whole game' } as const;

/** The report of what has been played. */
export function worthReport(rows: readonly WorthRow[]): string {
  const sections = (['exchange', 'play', 'game'] as const).flatMap((part) => {
    const own = rows.filter((row) => row.part === part);
    return own.length === 0 ? [] : [`## ${PARTS[part]}\n\n${tableOf(own)}\n`];
  });
  return [TITLE, ...(rows.some(isOutdated) ? [OUTDATED] : []), ...sections].join('\n');
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
    `${card}${isOutdated(row) ? MARK : ''}`,
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
  const mark = rows.some(isOutdated) ? MARK : '';
  return `| **invented cards, pooled**${mark} | ${against} | ${among} | ${deals} | | **${pooled}** | |`;
}

function gain({ difference, error }: Pick<WorthRow, 'difference' | 'error'>): string {
  const sign = difference < 0 ? '−' : '+';
  const halfWidth = 1.96 * error;
  const found = Math.abs(difference) > halfWidth ? '' : ', none found';
  return `${sign}${Math.abs(difference).toFixed(2)} ± ${halfWidth.toFixed(2)}${found}`;
}
