import type { Cost } from './growth.ts';

const WIDTH = 560;
const HEIGHT = 400;
const MARGIN = 80;
/** Both axes are logarithmic: ways from 500 to 50,000, milliseconds from 0.1 to 10,000. */
const WAYS = [500, 50_000] as const;
const TIMES = [0.1, 10_000] as const;
const SERIES = [
  { name: 'all passes', of: ({ passes }: Cost) => passes, ink: '#1f5f8b', dash: '' },
  { name: 'a game', of: ({ game }: Cost) => game, ink: '#a3461f', dash: '9 5' },
  { name: 'a reading', of: ({ reading }: Cost) => reading, ink: '#3d6b35', dash: '2 5' },
] as const;

/** The page that `npm run growth` writes. */
export function growthPage(costs: readonly Cost[], machine: string): string {
  const rows = costs.map(
    ({ ways, compile, reading, passes, game, memory }) =>
      `| ${ways.toLocaleString('en')} | ${digits(compile)} | ${digits(reading)} | ${digits(passes)} | ${digits(game)} | ${Math.round(memory)} |`,
  );
  return `# How cost grows with the card

Written by \`npm run growth\`; do not edit. Cards of so many ways in the manner of the demo card, which has 1,053.
Milliseconds of one core, medians; the most memory that a process held that did all of it, in megabytes.
Measured on ${machine}.

| ways | making the card ready | a reading | all passes | a game of four soft players | memory |
| ---: | ---: | ---: | ---: | ---: | ---: |
${rows.join('\n')}

${sentences(costs)}

![Milliseconds against the number of ways, both on logarithmic scales](../../assets/growth.svg)
`;
}

/** How steeply each cost rises: the exponent between the first size and the last. */
function sentences(costs: readonly Cost[]): string {
  const [first, last] = [costs[0] as Cost, costs[costs.length - 1] as Cost];
  const steepness = SERIES.map(({ name, of }) => {
    const exponent = Math.log(of(last) / of(first)) / Math.log(last.ways / first.ways);
    return `${name}: ${exponent.toFixed(2)}`;
  });
  return `With ten times the ways, a cost is ten to this power times as high (${steepness.join('; ')}).`;
}

/** The same as a picture. */
export function growthPlot(costs: readonly Cost[]): string {
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH + 2 * MARGIN + 60} ${HEIGHT + 2 * MARGIN}" font-family="sans-serif" font-size="16" fill="#22303c">`,
    '<title>How cost grows with the number of ways</title>',
    `<rect width="${WIDTH + 2 * MARGIN + 60}" height="${HEIGHT + 2 * MARGIN}" fill="#fbf8f1"/>`,
    ...axes(),
    ...SERIES.flatMap(({ name, of, ink, dash }) => line(costs, name, of, ink, dash)),
    '</svg>',
  ].join('\n')}\n`;
}

function axes(): string[] {
  const ways = [500, 1_000, 2_000, 5_000, 10_000, 20_000, 50_000];
  const times = [0.1, 1, 10, 100, 1_000, 10_000];
  return [
    ...ways.map(
      (each) =>
        `<path d="M${x(each)} ${y(TIMES[0])}V${y(TIMES[1])}" stroke="#dcd5c5"/><text x="${x(each)}" y="${y(TIMES[0]) + 24}" text-anchor="middle">${each.toLocaleString('en')}</text>`,
    ),
    ...times.map(
      (each) =>
        `<path d="M${x(WAYS[0])} ${y(each)}H${x(WAYS[1])}" stroke="#dcd5c5"/><text x="${x(WAYS[0]) - 10}" y="${y(each) + 5}" text-anchor="end">${each.toLocaleString('en')}</text>`,
    ),
    `<text x="${MARGIN + WIDTH / 2}" y="${HEIGHT + 2 * MARGIN - 20}" text-anchor="middle">ways of the card</text>`,
    `<text transform="translate(22 ${MARGIN + HEIGHT / 2}) rotate(-90)" text-anchor="middle">milliseconds</text>`,
  ];
}

function line(costs: readonly Cost[], name: string, of: (cost: Cost) => number, ink: string, dash: string): string[] {
  const points = costs.map((cost) => `${x(cost.ways)} ${y(of(cost))}`);
  const last = costs.at(-1);
  return [
    `<path d="M${points.join('L')}" fill="none" stroke="${ink}" stroke-width="3"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/>`,
    ...(last === undefined ? [] : [`<text x="${x(last.ways) + 8}" y="${y(of(last)) + 5}">${name}</text>`]),
  ];
}

function x(ways: number): number {
  return along(ways, WAYS, MARGIN, WIDTH);
}

function y(time: number): number {
  return along(time, TIMES, MARGIN + HEIGHT, -HEIGHT);
}

function along(value: number, [low, high]: readonly [number, number], start: number, length: number): number {
  return Math.round(10 * (start + (length * Math.log(value / low)) / Math.log(high / low))) / 10;
}

/** Three significant digits. */
function digits(value: number): string {
  return value >= 100 ? Math.round(value).toLocaleString('en') : value.toPrecision(3);
}
