import { writeDurably } from '../files/durable.ts';
import { ifThere } from '../files/files.ts';
import { type DeskContext, type Kept, parseObject, readRemakable, setAside } from './context.ts';

/** Where preferences are kept. */
export interface PreferenceKeeper {
  read(): Promise<Kept>;
  /** Sets the named fields and leaves the others. */
  change(fields: Kept): Promise<void>;
}

/** Bytes in the largest settings file that is read; a real one has some 500. */
const LARGEST_SETTINGS = 100_000;

/** Preferences in a file of their own, written whole at each change. */
export function preferencesFile(context: DeskContext): PreferenceKeeper {
  const path = context.places.preferences;
  const read = async (): Promise<Kept> => {
    const text = await readRemakable(context, path, LARGEST_SETTINGS);
    if (text === undefined && (await ifThere(context.files.info(path))) === undefined) return {};
    const kept = parseObject(text ?? '');
    if (kept !== undefined) return kept;
    const name = await setAside(context, path);
    context.notify(`The settings could not be read, so the usual ones are in use. The old file is kept as ${name}.`);
    return {};
  };
  return {
    read,
    async change(changed) {
      await writeDurably(context, path, JSON.stringify({ ...(await read()), ...changed }, undefined, '\t'));
    },
  };
}
