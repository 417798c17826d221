import { failure, type Result } from '../../core/base/result.ts';

/** What a command has to say: the same value as a document and as a text for people. */
export interface Answer {
  /** The JSON document. */
  readonly document: unknown;
  /** The text for people, made only when it is asked for. */
  readonly text: () => string;
}

/** What comes out of a command: documents are written one a line, texts with a blank line between them. */
export interface Answers {
  /** Made one by one while they are written. */
  readonly answers: Iterable<Answer>;
  /** True when documents are asked for. */
  readonly json: boolean;
  /** A remark for standard error that does not make the command fail. */
  readonly remark?: string;
  /** What was asked for is answered, but it has problems: exit code 2. */
  readonly trouble?: boolean;
}

export const NO_FILE = 'no-file';

/** What a command may use of the world. */
export interface CommandWorld {
  /** A file's text; a problem in words when it can't be read, `NO_FILE` when it is not there. */
  readonly readFile: (path: string) => Promise<Result<string>>;
  /** All that comes in on standard input. */
  readonly readInput: () => Promise<Result<string>>;
  /** A seed nobody chose. */
  readonly anySeed: () => number;
  /** A clock that only goes forward. */
  readonly seconds: () => number;
}

/** A command that was not used as it is meant. */
export function misused(message: string): Result<never> {
  return failure('misused', message);
}
