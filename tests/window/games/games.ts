import { fingerprint } from '../../../core/base/fingerprint.ts';
import { expectValue } from '../../../core/base/result.ts';
import { readCardFile } from '../../../core/card/file.ts';
import { compileCard } from '../../../core/reading/compiled.ts';
import { PLAYERS_AT, traceGame } from '../../../core/table/simulate.ts';

const SEED = 20_264;
/** So many that powers rounded otherwise in the last place make other games. */
const GAMES = { quick: 48, club: 24 } as const;

/** The marks of games with a card, each of all the events of one game. */
export function marksOfGames(card: string): string[] {
  const compiled = compileCard(expectValue(readCardFile(card)).card);
  return (['quick', 'club'] as const).flatMap((kind) =>
    Array.from({ length: GAMES[kind] }, (_, game) => {
      const events = traceGame({ compiled, seed: SEED, policies: PLAYERS_AT[kind] }, game);
      return `${kind} ${game}: ${fingerprint(JSON.stringify(events))}`;
    }),
  );
}
