import type { Facts, Measured } from './facts.ts';

/** How large a thing must be that is pressed, and a tile that is moved, in CSS px; CR-W2. */
const TARGET = { width: 44, height: 44 } as const;
const TILE = { width: 48, height: 64, apart: 8 } as const;
/** The smallest text, in CSS px; CR-O1. */
const LEAST_TEXT = 16;
/** The longest motion, in ms; CR-W8. */
const LONGEST_MOTION = 200;
/** Half a px is a matter of rounding. */
const ROUNDING = 0.5;

function told(what: string, { name, width, height }: Facts): string {
  return `${what}: ${name} ${Math.round(width)}x${Math.round(height)}`;
}

/** CR-W2: what is pressed is 44 px in both ways, tiles 48 by 64. */
export function tooSmall({ facts }: Measured): string[] {
  return facts
    .filter(({ isTarget, isTile, width, height }) => {
      const least = isTile ? TILE : TARGET;
      return isTarget && (width < least.width - ROUNDING || height < least.height - ROUNDING);
    })
    .map((found) => told('small', found));
}

/** CR-W2: tiles that can be moved lie 8 px apart. */
export function tooClose({ facts }: Measured): string[] {
  const tiles = facts.filter(({ isTile }) => isTile);
  return tiles
    .filter((tile, at) => {
      const next = tiles[at + 1];
      if (next === undefined || Math.abs(next.y - tile.y) > 1) return false;
      const room = next.x - tile.x - tile.width;
      return room >= 0 && room < TILE.apart - ROUNDING;
    })
    .map((found) => told('close', found));
}

/** CR-W6: nothing reaches beyond the window, and nothing has more beside or below than it shows. */
export function cutOff({ windowWidth, facts }: Measured): string[] {
  return [
    ...facts
      .filter(({ isFramed, x, width }) => !isFramed && (x + width > windowWidth + 1 || x < -1))
      .map((found) => told('outside', found)),
    ...facts.filter(({ cutsSideways }) => cutsSideways).map((found) => told('cut off sideways', found)),
    ...facts.filter(({ cutsBelow }) => cutsBelow).map((found) => told('cut off below', found)),
  ];
}

/** The most that a page may go on below the last thing on it, in sizes of its text: its margin. */
const MOST_BELOW = 8;

/** No page can be scrolled to where nothing is, and no box that holds a table is without width. */
export function leftEmpty({ windowHeight, textSize, emptyBelow, documentHeight, flatBoxes }: Measured): string[] {
  const empty = emptyBelow > MOST_BELOW * textSize ? [`empty below: ${Math.round(emptyBelow)} px`] : [];
  const beyond = documentHeight > windowHeight ? [`a document of ${documentHeight} px`] : [];
  return [...empty, ...beyond, ...flatBoxes.map((box) => `no width: ${box}`)];
}

/** CR-O1: no text is smaller than 16 px. */
export function tooFine({ facts }: Measured): string[] {
  return facts
    .filter(({ textSize }) => textSize !== null && textSize < LEAST_TEXT)
    .map((found) => told(`text of ${found.textSize} px`, found));
}

/** CR-O2: every button, link and fold shows words, or the tile that it stands for. */
export function wordless({ facts }: Measured): string[] {
  return facts
    .filter(({ tag, words, showsTile }) => /^(?:button|a|summary|label)$/.test(tag) && !showsTile && words === '')
    .map((found) => told('without words', found));
}

/** CR-O3: nothing is told only to a mouse that rests. */
export function hoverOnly({ facts }: Measured): string[] {
  return facts.filter(({ title }) => title !== '').map((found) => told(`only by hovering "${found.title}"`, found));
}

/** CR-W8: no motion is longer than 200 ms; with reduced motion there is none. */
export function tooLively({ facts }: Measured, longest: number = LONGEST_MOTION): string[] {
  return facts.filter(({ motion }) => motion > longest).map((found) => told(`moves ${found.motion} ms`, found));
}
