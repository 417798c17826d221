import { failure, type Result, success } from '../../core/base/result.ts';

/** Names that Windows keeps for devices, with whatever follows a dot. */
const DEVICE = /^(?:con|nul|prn|aux|(?:com|lpt)[1-9¹²³])(?:\..*)?$/i;

/** The same text for names that would be one file where a disk does not tell capitals, or forms of a letter, apart. */
export function alike(name: string): string {
  return name.normalize('NFC').toLowerCase();
}

/** Whether a new card or game may have this name on every computer. `other` is one that is there and alike. */
export function checkNewName(name: string, other: string | undefined): Result<null> {
  if (DEVICE.test(name)) {
    return failure(
      'bad-name',
      `Windows keeps the name "${name}" for itself, so nothing was saved. Choose another name.`,
    );
  }
  if (other === undefined) return success(null);
  return failure(
    'bad-name',
    `"${name}" differs from "${other}" only in capital letters, which many computers take for one name. Choose another name.`,
  );
}
