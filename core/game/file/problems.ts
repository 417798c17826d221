import { failure, type Problem } from '../../base/result.ts';

/** Why a game file can't be opened. It is never changed then. */
export type GameFileCode = 'too-large' | 'unreadable' | 'too-deep' | 'foreign' | 'newer-version' | 'bad-field';
export type GameFileProblem = Problem<GameFileCode>;

export type FileRefusal = { readonly ok: false; readonly problem: GameFileProblem };

export function refuseFile(code: GameFileCode, message: string, at?: number): FileRefusal {
  return failure(code, message, at);
}
