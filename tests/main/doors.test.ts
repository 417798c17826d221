import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { DESK_CALLS, type DeskCall } from '../../main/desk/calls.ts';
import { openDesk } from '../../main/desk/open.ts';
import type { DeskService } from '../../main/desk/service.ts';
import { startHost } from '../../main/host/host.ts';
import { channelOf } from '../../main/shell/channels.ts';
import { setUpCalls } from '../../main/shell/set-up-calls.ts';
import { cardText, event, gameRecord } from './support/desks.ts';
import { ElectronStub } from './support/electron-stub.ts';
import { HOSTILE_ARGUMENTS } from './support/hostile-arguments.ts';
import { letIn } from './support/let-in.mjs';

/** A door to a desk: the text of a list of arguments in, the text of a result out. */
interface Door {
  readonly name: string;
  ask(call: string, given: string): Promise<string>;
  close(): Promise<void>;
}

let base = '';
const doors: Door[] = [];

async function filledDesk(folder: string): Promise<void> {
  const desk = expectValue(await openDesk({ folder, host: 'browser' }));
  expectValue(await desk.saveCard('mine', cardText('Mine')));
  expectValue(await desk.startGame(gameRecord('g-1')));
  for (const place of [0, 1]) expectValue(await desk.appendEvent('g-1', place, event(place)));
  await desk.close();
}

/** The IPC door, with a stand-in for Electron. What isn't JSON can't come through it: that is a page's own mistake. */
async function shellDoor(folder: string): Promise<Door> {
  const electron = new ElectronStub();
  const desk: DeskService = expectValue(await openDesk({ folder, host: 'electron' }));
  setUpCalls(electron.parts().ipcMain, desk);
  return {
    name: 'IPC',
    ask: async (call, given) => {
      const list: unknown = JSON.parse(given);
      return JSON.stringify(
        await electron.invoke(channelOf(call as DeskCall), Array.isArray(list) && list.length < 1000 ? list : [list]),
      );
    },
    close: () => desk.close(),
  };
}

async function hostDoor(folder: string): Promise<Door> {
  const root = join(base, 'window');
  await mkdir(root);
  await writeFile(join(root, 'index.html'), '');
  const host = await startHost({ folder, root });
  const headers = await letIn(host.url);
  return {
    name: 'HTTP',
    ask: async (call, body) => {
      const reply = await fetch(new URL(`/desk/${call}`, host.url), { method: 'POST', headers, body });
      expect(reply.status).toBe(200);
      return await reply.text();
    },
    close: () => host.close(),
  };
}

beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-doors-'));
  for (const name of ['shell', 'host']) await filledDesk(join(base, name));
  doors.push(await shellDoor(join(base, 'shell')), await hostDoor(join(base, 'host')));
});

afterAll(async () => {
  for (const door of doors) await door.close();
  await rm(base, { recursive: true });
});

/** All that is kept behind a door. */
async function contentBehind(door: Door): Promise<string> {
  const calls = { listCards: '[]', openCard: '["mine"]', openGame: '["g-1"]', readPreferences: '[]', listGames: '[]' };
  const answers = Object.entries(calls).map(async ([call, given]) => await door.ask(call, given));
  return (await Promise.all(answers)).join('\n');
}

/** Calls that may rightly be made with a card or game that is there. */
const MAY_SUCCEED: ReadonlySet<string> = new Set<DeskCall>([
  ...([
    'about',
    'listCards',
    'listGames',
    'notices',
    'whyOnlyReading',
    'listCopies',
    'readPreferences',
    'openGame',
    'openCard',
    'readDraft',
  ] as const),
  ...(['listBackups', 'readCardProgress', 'readFindings', 'keepFindings', 'importGames'] as const),
  ...(['listSheets', 'removeSheet', 'practiceHistory', 'notePractice', 'showFolder', 'removeNames'] as const),
  ...(['changePreferences', 'changeGame', 'removeCard', 'saveCard', 'dropEvent'] as const),
]);

test.each([0, 1])(
  '17: every call of the desk stands every hostile list of arguments (door %#): a result, never an exception, nothing written',
  { timeout: 240_000 },
  async (which) => {
    const door = doors[which];
    if (door === undefined) throw new Error('no such door');
    const before = await contentBehind(door);
    let refused = 0;
    for (const call of DESK_CALLS.filter((name) => name !== 'removeGame')) {
      for (const given of HOSTILE_ARGUMENTS) {
        const result = JSON.parse(await door.ask(call, given));
        if (result.ok === false) refused += 1;
        if (result.ok === false) expect(result.problem.message).toMatch(/^[A-Z"].*\.$/s);
        else expect([...MAY_SUCCEED], `${call} ${given.slice(0, 80)}`).toContain(call);
      }
    }
    expect(refused).toBeGreaterThan(DESK_CALLS.length * HOSTILE_ARGUMENTS.length * 0.8);
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
    expect(await contentBehind(door)).toBe(before);
    expect(JSON.parse(await door.ask('listGames', '[]'))).toMatchObject({ ok: true, value: [{ id: 'g-1' }] });
  },
);
