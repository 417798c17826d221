import * as v from 'valibot';
import { type DeskContext, type Kept, setAside } from '../desk/context.ts';
import { errorCode } from '../files/files.ts';
import { type PreferenceKeeper, preferencesFile } from '../desk/preferences-file.ts';

/** What the settings library gives us. */
export interface SettingsStore {
  readonly store: Kept;
  set(fields: Kept): void;
}

export interface SettingsOptions {
  readonly cwd: string;
  readonly name: string;
  readonly configFileMode: number;
  readonly accessPropertiesByDotNotation: boolean;
  readonly clearInvalidConfig: boolean;
}

/** Preferences and the window's place, in one small file. */
export interface Settings extends PreferenceKeeper {
  /** Where the window was; undefined at the first start. */
  readonly windowPlace: () => WindowPlace | undefined;
  readonly keepWindowPlace: (place: WindowPlace) => void;
}

const whole = v.pipe(v.number(), v.integer(), v.minValue(-100_000), v.maxValue(100_000));
const windowPlace = v.object({ x: whole, y: whole, width: whole, height: whole, maximized: v.boolean() });
export type WindowPlace = v.InferOutput<typeof windowPlace>;

/**
 * Opens the settings by the library. A file that can't be read is set aside first, since the
 * library would stop or write over it.
 */
export async function openSettings(
  context: DeskContext,
  createStore: (options: SettingsOptions) => SettingsStore,
): Promise<Settings> {
  await preferencesFile(context).read();
  const store = await openStore(context, createStore);
  let forgotten = false;
  return {
    read: async () => store.store,
    change: async (fields) => {
      store.set(fields);
      forgotten = false;
    },
    forget: () => {
      forgotten = true;
    },
    windowPlace: () => {
      const place = v.safeParse(windowPlace, store.store['window']);
      return place.success ? place.output : undefined;
    },
    keepWindowPlace: (place) => {
      if (!forgotten) keepQuietly(store, place);
    },
  };
}

/** A window's place is not worth a word when it can't be kept. */
function keepQuietly(store: SettingsStore, place: WindowPlace): void {
  try {
    store.set({ window: place });
  } catch (error) {
    if (errorCode(error) === '') throw error;
  }
}

async function openStore(
  context: DeskContext,
  createStore: (options: SettingsOptions) => SettingsStore,
): Promise<SettingsStore> {
  const options: SettingsOptions = {
    cwd: context.places.folder,
    name: 'preferences',
    configFileMode: 0o600,
    accessPropertiesByDotNotation: false,
    clearInvalidConfig: false,
  };
  try {
    return createStore(options);
  } catch {
    const name = await setAside(context, context.places.preferences);
    context.notify(`The settings could not be read, so the usual ones are in use. The old file is kept as ${name}.`);
    return createStore(options);
  }
}
