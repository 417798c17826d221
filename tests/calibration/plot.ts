import type { CardResult } from './report.ts';

const SIZE = 520;
const MARGIN = 70;
/** Ten tenths reach to some 60 %; the picture ends a little above. */
const MOST = 0.7;
const MARKS = ['circle', 'square', 'triangle'] as const;

/** The tenths of every card against the line of perfect agreement, as an SVG picture. */
export function plot(cards: readonly CardResult[]): string {
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SIZE + 2 * MARGIN} ${SIZE + 2 * MARGIN}" font-family="sans-serif" font-size="16" fill="#22303c">`,
    '<title>Reach and what came of it at the simulated table</title>',
    `<rect width="${SIZE + 2 * MARGIN}" height="${SIZE + 2 * MARGIN}" fill="#fbf8f1"/>`,
    ...axes(),
    ...cards.flatMap(({ title, measured: { best } }, card) => [
      ...best.tenths.flatMap(({ predicted, won }) => [
        `<path d="M${x(predicted)} ${y(won.low)}V${y(won.high)}" stroke="#5b6b78" stroke-width="1.5"/>`,
        mark(card, x(predicted), y(won.share ?? 0)),
      ]),
      mark(card, MARGIN + 24, MARGIN + 22 + 26 * card),
      `<text x="${MARGIN + 40}" y="${MARGIN + 28 + 26 * card}">${title}</text>`,
    ]),
    '</svg>',
  ].join('\n')}\n`;
}

function axes(): string[] {
  const steps = Array.from({ length: Math.round(MOST * 10) + 1 }, (_, step) => step / 10);
  const middle = MARGIN + SIZE / 2;
  return [
    ...steps.flatMap((step) => [
      `<path d="M${x(step)} ${y(0)}V${y(MOST)}M${x(0)} ${y(step)}H${x(MOST)}" stroke="#dcd5c5" fill="none"/>`,
      `<text x="${x(step)}" y="${y(0) + 22}" text-anchor="middle">${Math.round(100 * step)}</text>`,
      `<text x="${x(0) - 10}" y="${y(step) + 5}" text-anchor="end">${Math.round(100 * step)}</text>`,
    ]),
    `<path d="M${x(0)} ${y(0)}L${x(MOST)} ${y(MOST)}" stroke="#22303c" stroke-dasharray="6 5"/>`,
    `<text x="${middle}" y="${SIZE + 2 * MARGIN - 16}" text-anchor="middle">reach, %</text>`,
    `<text transform="translate(20 ${middle}) rotate(-90)" text-anchor="middle">won, %</text>`,
  ];
}

function mark(card: number, atX: number, atY: number): string {
  switch (MARKS[card % MARKS.length]) {
    case 'circle':
      return `<circle cx="${atX}" cy="${atY}" r="6" fill="#1f5f8b"/>`;
    case 'square':
      return `<rect x="${atX - 6}" y="${atY - 6}" width="12" height="12" fill="#a3461f"/>`;
    default:
      return `<path d="M${atX} ${atY - 7}l7 13h-14z" fill="#3d6b35"/>`;
  }
}

function x(chance: number): number {
  return round(MARGIN + (SIZE * chance) / MOST);
}

function y(chance: number): number {
  return round(MARGIN + SIZE - (SIZE * chance) / MOST);
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
