import { cp, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { sortedFields } from '../../core/base/json.ts';
import { expectValue } from '../../core/base/result.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { openDesk } from '../../main/desk/open.ts';
import type { Troubles } from './table.ts';

/** All that a person has put in, as text by the name of the thing. */
export type Content = ReadonlyMap<string, string>;

const asText = (value: unknown): string => JSON.stringify(sortedFields(value));

/** What a desk tells of all that is in it; what it can't read is told by its code. */
export async function contentOf(desk: Desk): Promise<Content> {
  const found = new Map<string, string>();
  const keep = async (name: string, call: Promise<Awaited<ReturnType<Desk['readDraft' | 'openSheet']>>>) => {
    const result = await call;
    found.set(name, result.ok ? asText(result.value) : `refused as ${result.problem.code}`);
  };
  for (const { id } of expectValue(await desk.listGames())) await keep(`game ${id}`, desk.openGame(id));
  for (const { id, fixed } of expectValue(await desk.listCards())) {
    const { text } = expectValue(await desk.openCard(id));
    if (!fixed) found.set(`card ${id}`, text);
    found.set(`progress ${id}`, asText(expectValue(await desk.readCardProgress(id))));
  }
  for (const { id } of expectValue(await desk.listSheets())) await keep(`sheet ${id}`, desk.openSheet(id));
  await keep('draft', desk.readDraft());
  found.set('practice', asText(expectValue(await desk.practiceHistory())));
  found.set('settings', asText(expectValue(await desk.readPreferences())));
  return found;
}

/** What lies in a folder, read by a desk of its own on a copy: the folder is left as it is, even while it is used. */
export async function contentIn(folder: string): Promise<Content> {
  const base = await mkdtemp(join(tmpdir(), 'windrow-copy-'));
  try {
    const copy = join(base, 'desk');
    await cp(folder, copy, { recursive: true, filter: (path) => basename(path) !== 'in-use.json' });
    const desk = expectValue(await openDesk({ folder: copy, host: 'browser' }));
    const content = await contentOf(desk);
    const notices = expectValue(await desk.notices());
    await desk.close();
    if (notices.length > 0) throw new Error(`what lies on the disk is damaged: ${notices.join(' ')}`);
    return content;
  } finally {
    await rm(base, { recursive: true, force: true });
  }
}

/** How one content differs from another; `but` names what may. */
export function differences(before: Content, after: Content, but: (name: string) => boolean = () => false): Troubles {
  const names = new Set([...before.keys(), ...after.keys()]);
  const differ = [...names].filter((name) => !but(name) && before.get(name) !== after.get(name));
  const short = (text: string | undefined): string => text?.slice(0, 120) ?? 'not there';
  return differ.map((name) => `${name} was ${short(before.get(name))}, is ${short(after.get(name))}`);
}

/** Every file below a folder, its bytes by its path in it. */
export async function filesIn(folder: string): Promise<ReadonlyMap<string, Buffer>> {
  const found = new Map<string, Buffer>();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    if (entry.isFile()) found.set(path.slice(folder.length + 1), await readFile(path));
  }
  return found;
}

/** Every file of ours is whole JSON, or lines of it, and none was set aside. */
export async function fileTroubles(folder: string): Promise<Troubles> {
  const troubles: string[] = [];
  for (const [path, bytes] of await filesIn(folder)) {
    if (/\.(damaged|other)-/.test(path)) troubles.push(`${path} was set aside`);
    const text = bytes.toString('utf8');
    const documents = path.endsWith('.jsonl') ? text.split('\n').slice(0, -1) : path.endsWith('.json') ? [text] : [];
    if (path.endsWith('.jsonl') && !/^$|\n$/.test(text)) troubles.push(`${path} ends in the middle of a line`);
    if (!documents.every(isJson)) troubles.push(`${path} can't be read`);
  }
  return troubles;
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
