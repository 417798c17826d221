import { failure, type Problem, type Result } from '../../core/base/result.ts';
import { errorCode } from './files.ts';

type FileCode =
  | 'disk-full'
  | 'not-allowed'
  | 'busy'
  | 'missing'
  | 'too-large'
  | 'not-a-folder'
  | 'a-folder'
  | 'long-name'
  | 'many-files'
  | 'disk-trouble';

const CODES: Readonly<Record<string, FileCode>> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EACCES: 'not-allowed',
  EPERM: 'not-allowed',
  EROFS: 'not-allowed',
  EBUSY: 'busy',
  ENOENT: 'missing',
  EFBIG: 'too-large',
  ENOTDIR: 'not-a-folder',
  EISDIR: 'a-folder',
  ENAMETOOLONG: 'long-name',
  EMFILE: 'many-files',
  ENFILE: 'many-files',
};

const NOT_SAVED: Readonly<Record<FileCode, (what: string) => string>> = {
  'disk-full': (what) =>
    `The disk is full, so ${what} could not be saved. What was saved before is safe. Free some space, then try again.`,
  'not-allowed': (what) =>
    `This computer does not let Windrow write there, so ${what} could not be saved. What was saved before is safe. Check who may change the folder.`,
  busy: (what) =>
    `Another program holds the file, so ${what} could not be saved. What was saved before is safe. Close that program, then try again.`,
  missing: (what) =>
    `The folder is gone, so ${what} could not be saved. What you see stays while Windrow is open. Put the folder back, then try again.`,
  'too-large': (what) =>
    `A file is far larger than Windrow makes any, so ${what} could not be saved. It was left alone: put it elsewhere.`,
  'not-a-folder': (what) =>
    `A file stands where a folder should be, so ${what} could not be saved. What was saved before is safe. Move that file elsewhere, then try again.`,
  'a-folder': (what) =>
    `A folder stands where a file should be, so ${what} could not be saved. What was saved before is safe. Move that folder elsewhere, then try again.`,
  'long-name': (what) =>
    `The path of the folder is too long for this computer, so ${what} could not be saved. What was saved before is safe. Move the folder further up.`,
  'many-files': (what) =>
    `This computer has too many files open, so ${what} could not be saved. What was saved before is safe. Close other programs, then try again.`,
  'disk-trouble': (what) =>
    `The disk reported an error, so ${what} could not be saved. What was saved before is safe. Try again.`,
};

const NOT_READ: Readonly<Record<FileCode, (what: string) => string>> = {
  'disk-full': (what) => `The disk is full, so ${what} could not be read. Free some space, then try again.`,
  'not-allowed': (what) =>
    `This computer does not let Windrow read ${what}. Check who may open the folder, then try again.`,
  busy: (what) => `Another program holds ${what}, so it could not be read. Close that program, then try again.`,
  missing: (what) => `The folder of ${what} is gone. Put the folder back, or restart Windrow.`,
  'too-large': (what) =>
    `The file of ${what} is far larger than Windrow makes any. It was left alone: put it elsewhere.`,
  'not-a-folder': (what) =>
    `A file stands where a folder should be, so ${what} could not be read. Move that file elsewhere, then try again.`,
  'a-folder': (what) =>
    `A folder stands where a file should be, so ${what} could not be read. Move that folder elsewhere, then try again.`,
  'long-name': (what) =>
    `The path of the folder is too long for this computer, so ${what} could not be read. Move the folder further up.`,
  'many-files': (what) =>
    `This computer has too many files open, so ${what} could not be read. Close other programs, then try again.`,
  'disk-trouble': (what) => `The disk reported an error, so ${what} could not be read. Try again, then check the disk.`,
};

const NOT_OPENED: Readonly<Record<FileCode, (what: string) => string>> = {
  'disk-full': (what) => `The disk is full, so Windrow could not open ${what}. Free some space, then start it again.`,
  'not-allowed': (what) =>
    `This computer does not let Windrow write in ${what}. Check who may change that folder, then start Windrow again.`,
  busy: (what) => `Another program holds ${what}. Close that program, then start Windrow again.`,
  missing: (what) => `There is no place for ${what}. Check that its disk is there, then start Windrow again.`,
  'too-large': (what) => `A file in ${what} is far larger than Windrow makes any. Put it elsewhere, then start again.`,
  'not-a-folder': (what) =>
    `A file stands where ${what}, should be. Move that file elsewhere, then start Windrow again.`,
  'a-folder': (what) =>
    `In ${what}, a folder stands where a file should be. Move that folder elsewhere, then start Windrow again.`,
  'long-name': (what) => `The path of ${what}, is too long for this computer. Choose a shorter one, then start again.`,
  'many-files': (what) =>
    `This computer has too many files open to open ${what}. Close other programs, then start Windrow again.`,
  'disk-trouble': (what) => `The disk reported an error in ${what}. Check the disk, then start Windrow again.`,
};

const WORDS = { read: NOT_READ, save: NOT_SAVED, open: NOT_OPENED } as const;
type Doing = keyof typeof WORDS;

/**
 * A failed file call in words for a person. `what` names the thing, such as "the card". An error
 * that is not from the file system is our own bug and is thrown again.
 */
export function fileTrouble(error: unknown, doing: Doing, what: string): Result<never> {
  const code = errorCode(error);
  if (code === '') throw error;
  const known = CODES[code] ?? 'disk-trouble';
  return failure(known, WORDS[doing][known](what));
}

const ONLY_READS: Partial<Readonly<Record<FileCode, (folder: string) => string>>> = {
  'disk-full': () =>
    'The disk is full, so Windrow can save nothing for now. What was saved before is safe. Free some space, and saving goes on by itself.',
  'not-allowed': (folder) =>
    `Windrow may only read its folder, ${folder}, so nothing is saved for now. What was saved before is safe. Once it may write there, saving goes on by itself.`,
};

/** Why nothing can be written in a folder that can perhaps be read, in words for a person; null for any other trouble. */
export function cannotWrite(error: unknown, folder: string): Problem | null {
  const code = CODES[errorCode(error)];
  const words = code === undefined ? undefined : ONLY_READS[code];
  return code === undefined || words === undefined ? null : { code, message: words(folder) };
}

/** Makes a call, and turns an error of the file system into words. */
export async function orTrouble<Value>(
  doing: Doing,
  what: string,
  call: () => Promise<Result<Value>>,
): Promise<Result<Value>> {
  try {
    return await call();
  } catch (error) {
    return fileTrouble(error, doing, what);
  }
}
