import * as v from 'valibot';
import { isFields } from '../../core/card/document.ts';
import { SEATS } from '../../core/exchange/steps.ts';
import { DEFAULT_POINT_RULES } from '../../core/game/point-rules.ts';
import { writeDurably } from '../files/durable.ts';
import { type DeskContext, readRemakable, setAside } from './context.ts';
import { ifThere } from '../files/files.ts';
import type { Preferences } from './desk.ts';
import { pointRules } from './point-rules-check.ts';

export const DEFAULT_PREFERENCES: Preferences = {
  theme: 'system',
  textSize: 18,
  tiles: 'normal',
  rackTiers: 1,
  seat: 'East',
  cardId: 'demo',
  payment: DEFAULT_POINT_RULES,
  cautionsSeen: [],
  tourOffered: false,
};

const fields = {
  theme: v.picklist(['system', 'light', 'dark']),
  textSize: v.pipe(v.number(), v.minValue(16), v.maxValue(32)),
  tiles: v.picklist(['normal', 'large']),
  rackTiers: v.picklist([1, 2]),
  seat: v.picklist(SEATS),
  cardId: v.pipe(v.string(), v.minLength(1), v.maxLength(80)),
  payment: pointRules,
  cautionsSeen: v.pipe(v.array(v.picklist(['entry', 'import', 'export'])), v.maxLength(3)),
  tourOffered: v.boolean(),
};

/** Any of the preferences and nothing else. */
export const preferenceChange = v.strictObject({
  theme: v.exactOptional(fields.theme),
  textSize: v.exactOptional(fields.textSize),
  tiles: v.exactOptional(fields.tiles),
  rackTiers: v.exactOptional(fields.rackTiers),
  seat: v.exactOptional(fields.seat),
  cardId: v.exactOptional(fields.cardId),
  payment: v.exactOptional(fields.payment),
  cautionsSeen: v.exactOptional(fields.cautionsSeen),
  tourOffered: v.exactOptional(fields.tourOffered),
});

/** A kept document with named fields; those of other owners (window bounds) are left alone. */
export type Kept = Readonly<Record<string, unknown>>;

/**
 * Where preferences are kept. The desktop shell keeps them by its settings library, the browser
 * host by `preferencesFile`; both use the same file in the same form.
 */
export interface PreferenceKeeper {
  read(): Promise<Kept>;
  /** Sets the named fields and leaves the others. */
  change(fields: Kept): Promise<void>;
  /** Everything was deleted: writes nothing by itself until a person chooses something again. */
  forget?(): void;
}

/** Bytes in the largest settings file that is read; a real one has some 500. */
const LARGEST_SETTINGS = 100_000;

/** The preferences in a kept document; a field that is missing or makes no sense has its default. */
export function preferencesIn(kept: Kept): Preferences {
  const good = Object.entries(fields).filter(([name, schema]) => v.is(schema, kept[name]));
  const chosen = Object.fromEntries(good.map(([name]) => [name, kept[name]]));
  return { ...DEFAULT_PREFERENCES, ...v.parse(preferenceChange, chosen) };
}

/** Preferences in a file of their own, tab-indented as the settings library writes it. */
export function preferencesFile(context: DeskContext): PreferenceKeeper {
  const path = context.places.preferences;
  const read = async (): Promise<Kept> => {
    const text = await readRemakable(context, path, LARGEST_SETTINGS);
    if (text === undefined && (await ifThere(context.files.info(path))) === undefined) return {};
    const kept = parseObject(text ?? '');
    if (kept !== undefined) return kept;
    const name = await setAside(context, path);
    context.tell(`The settings could not be read, so the usual ones are in use. The old file is kept as ${name}.`);
    return {};
  };
  return {
    read,
    async change(changed) {
      await writeDurably(context, path, JSON.stringify({ ...(await read()), ...changed }, undefined, '\t'));
    },
  };
}

/** Deeper than any file of ours; what is nested deeper still could not be written again. */
const DEEPEST = 64;

/** The object that a text of JSON holds; undefined for anything else, and for one nested too deep. */
export function parseObject(text: string): Kept | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return isFields(value) && isWithin(value, DEEPEST) ? value : undefined;
  } catch {
    return undefined;
  }
}

function isWithin(value: unknown, depth: number): boolean {
  if (typeof value !== 'object' || value === null) return true;
  return depth > 0 && Object.values(value).every((part) => isWithin(part, depth - 1));
}
