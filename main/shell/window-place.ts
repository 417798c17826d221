import * as v from 'valibot';
import { errorCode } from '../files/files.ts';

/** What the settings library gives us. */
export interface PlaceStore {
  readonly store: Readonly<Record<string, unknown>>;
  set(fields: Readonly<Record<string, unknown>>): void;
}

export interface PlaceStoreOptions {
  readonly name: string;
  readonly configFileMode: number;
  readonly accessPropertiesByDotNotation: boolean;
  readonly clearInvalidConfig: boolean;
}

const whole = v.pipe(v.number(), v.integer(), v.minValue(-100_000), v.maxValue(100_000));
const WINDOW_PLACE = v.object({ x: whole, y: whole, width: whole, height: whole, maximized: v.boolean() });
export type WindowPlace = v.InferOutput<typeof WINDOW_PLACE>;

/** Remembers where the window was. */
export interface WindowPlaceKeeper {
  /** Undefined at the first start, and where what was kept makes no sense. */
  read(): WindowPlace | undefined;
  keep(place: WindowPlace): void;
}

/**
 * The window's place by the settings library, in the folder that the system gives to Electron: it may be lost without harm,
 * for on a full disk the library replaces a good file by a cut one. All else that a person sets lies with her games.
 */
export function windowPlaceBy(createStore: (options: PlaceStoreOptions) => PlaceStore): WindowPlaceKeeper {
  const store = quietly(() =>
    createStore({
      name: 'window',
      configFileMode: 0o600,
      accessPropertiesByDotNotation: false,
      clearInvalidConfig: true,
    }),
  );
  return {
    read: () => {
      const place = v.safeParse(
        WINDOW_PLACE,
        quietly(() => store?.store['window']),
      );
      return place.success ? place.output : undefined;
    },
    keep: (place) => quietly(() => store?.set({ window: place })),
  };
}

/** A window's place is not worth a word when it can't be read or kept; our own faults are. */
function quietly<Value>(call: () => Value): Value | undefined {
  try {
    return call();
  } catch (error) {
    if (errorCode(error) === '' && !(error instanceof SyntaxError)) throw error;
    return undefined;
  }
}
