/**
 * Numbers as people say them. Never more digits than the estimate bears: whole per cents, tenths
 * of a tile; and each chance also as a natural frequency.
 */

/** "23 %", "under 1 %", "over 99 %", "0 %", "100 %"; `chance` from 0 to 1. */
export function percent(chance: number): string {
  if (chance <= 0) return '0 %';
  if (chance >= 1) return '100 %';
  if (chance < 0.01) return 'under 1 %';
  if (chance > 0.99) return 'over 99 %';
  return `${Math.round(chance * 100)} %`;
}

/** "about 1 in 4", "about 3 in 4", "less than 1 in 100", "never", "sure". */
export function inWords(chance: number): string {
  if (chance <= 0) return 'never';
  if (chance >= 1) return 'sure';
  if (chance < 0.01) return chance < 0.001 ? 'less than 1 in 1000' : `about 1 in ${roundish(1 / chance)}`;
  if (chance > 0.95) return 'nearly always';
  if (chance < 0.42) return `about 1 in ${roundish(1 / chance)}`;
  const tenths = Math.round(chance * 10);
  if (tenths === 5) return 'about 1 in 2';
  return chance > 0.63 && chance < 0.7 ? 'about 2 in 3' : `about ${tenths} in 10`;
}

/** A count with one decimal: "3.4". */
export function tenths(value: number): string {
  return value.toFixed(1);
}

/** A difference of chances in whole games of a hundred: "3 games in 100", "under 1 game in 100". */
export function differenceInGames(difference: number): string {
  const shown = differenceAlone(difference);
  return `${shown} ${Math.round(difference * 100) > 1 ? 'games' : 'game'} in 100`;
}

/** The same without the word, where a heading says it. */
export function differenceAlone(difference: number): string {
  const shown = Math.round(difference * 100);
  return shown < 1 ? 'under 1' : String(shown);
}

/** A difference of chances as whole games of a hundred: "3". */
export function gamesOfHundred(difference: number): string {
  return String(Math.round(difference * 100));
}

/** A chance as whole games of a hundred: "about 34 games in 100", "under 1 game in 100", "0 games in 100". */
export function inHundred(chance: number): string {
  if (chance <= 0 || chance >= 1) return `${chance <= 0 ? 0 : 100} games in 100`;
  if (chance < 0.005) return 'under 1 game in 100';
  if (chance > 0.995) return 'over 99 games in 100';
  const games = Math.round(100 * chance);
  return `about ${games} ${games === 1 ? 'game' : 'games'} in 100`;
}

/** The same in short, where a heading says what it is: "about 34 in 100". */
export function inHundredShort(chance: number): string {
  return inHundred(chance).replace(/ games? in /, ' in ');
}

/** A count with its thousands apart: "12,400". */
export function counted(count: number): string {
  return count.toLocaleString('en');
}

/** "1 tile", "3 tiles". */
export function tilesCounted(count: number): string {
  return count === 1 ? '1 tile' : `${count} tiles`;
}

/** As a person would round: 3, 12, 45, 250. */
function roundish(value: number): number {
  const unit = value < 20 ? 1 : value < 100 ? 5 : 50;
  return Math.round(value / unit) * unit;
}

/** A number with its sign: "+50", "−25", "0"; with decimals "+1.2", "+0.0". */
export function signed(amount: number, digits: number | null = null): string {
  const size = Math.abs(amount);
  const shown = digits === null ? String(size) : size.toFixed(digits);
  if (shown === '0') return shown;
  return `${amount < 0 && Number(shown) !== 0 ? '−' : '+'}${shown}`;
}
