import type { ExchangeState } from '../exchange/state.ts';
import { STEP_NAMES, tileCount } from '../exchange/words.ts';
import type { EndedEvent } from './events.ts';
import type { GameState } from './game-state.ts';

/** Where the game stands, in a few plain words: "First left pass: two tiles to come". */
export function stageOf({ result, playing, exchange }: GameState): string {
  if (result !== null) return resultWords(result);
  if (exchange === null) return 'Not dealt yet';
  if (playing) return 'Play';
  return exchangeWords(exchange);
}

function exchangeWords({ phase, step, toCome }: ExchangeState): string {
  if (step === null) return 'Passes done';
  const name = capital(STEP_NAMES[step]);
  return phase === 'giving' ? `${name}: choose what to give` : `${name}: ${tileCount(toCome)} to come`;
}

function resultWords({ result, winner, by, from }: EndedEvent): string {
  if (result === 'wall') return 'Wall game';
  if (result === 'abandoned') return 'Abandoned';
  if (by === 'draw') return `${winner} won by own draw`;
  if (from !== undefined) return `${winner} won by ${from}'s discard`;
  return by === 'discard' ? `${winner} won by a discard` : `${winner} won`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
