// Lists all games of a Windrow folder, oldest first: when, where, which card, how it ended.
// Stands alone: it needs Node and nothing of Windrow. Usage: node list-games.mjs FOLDER
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Paths of all files below a folder; none if there is no such folder. @param {string} folder */
function filesBelow(folder) {
  try {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => join(folder, name));
  } catch {
    return [];
  }
}

/** A game that is being changed lies in a log: its first line has the game, the others its steps. @param {string} text */
function gameOfLog(text) {
  const [first, ...steps] = text
    .slice(0, text.lastIndexOf('\n'))
    .split('\n')
    .map((line) => JSON.parse(line));
  const game = first.record;
  for (const step of steps) {
    if ('add' in step) game.events.splice(step.place, Infinity, step.add);
    if ('drop' in step) game.events.splice(step.drop, Infinity);
    if ('change' in step) Object.assign(game, step.change);
  }
  return game;
}

/** @param {readonly { type: string, result?: string, winner?: string }[]} events */
function ending(events) {
  const end = events.findLast(({ type }) => type === 'ended');
  if (end === undefined) return 'not ended';
  return end.result === 'won' ? `won by ${end.winner}` : end.result;
}

const folder = process.argv[2] ?? '.';
const games = new Map();
for (const path of filesBelow(join(folder, 'games'))) {
  if (!path.endsWith('.json')) continue;
  const game = JSON.parse(readFileSync(path, 'utf8'));
  games.set(game.id, game);
}
for (const path of filesBelow(join(folder, 'open'))) {
  if (!path.endsWith('.jsonl')) continue;
  const game = gameOfLog(readFileSync(path, 'utf8'));
  games.set(game.id, game);
}

const oldestFirst = [...games.values()].toSorted((one, other) => (one.startedAt < other.startedAt ? -1 : 1));
for (const { id, startedAt, place, card, events } of oldestFirst) {
  console.log([id, startedAt, place, card.title, ending(events)].join('\t'));
}
