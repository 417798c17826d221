import { afterEach, expect, test, vi } from 'vitest';
import { DESK_CALLS } from '../../main/desk/calls.ts';
import { BROUGHT_IN as CHANNEL } from '../../main/shell/channels.ts';
import { BROUGHT_IN as EVENT } from '../../renderer/desk/connect.ts';

const seen = vi.hoisted(() => ({
  exposed: new Map<string, object>(),
  listeners: new Map<string, (...given: unknown[]) => void>(),
}));

vi.mock('electron', () => ({
  contextBridge: { exposeInMainWorld: (name: string, value: object) => seen.exposed.set(name, value) },
  ipcRenderer: {
    invoke: async () => await Promise.resolve(null),
    on: (channel: string, listener: (...given: unknown[]) => void) => seen.listeners.set(channel, listener),
  },
}));

afterEach(() => vi.unstubAllGlobals());

test('the page gets the calls of the desk, and one event without content when files were taken in', async () => {
  const heard: Event[] = [];
  vi.stubGlobal('dispatchEvent', (event: Event) => heard.push(event));
  await import('../../main/shell/preload.ts');
  expect([...seen.exposed.keys()]).toEqual(['windrowDesk']);
  expect(Object.keys(seen.exposed.get('windrowDesk') ?? {})).toEqual(DESK_CALLS);
  expect([...seen.listeners.keys()]).toEqual([CHANNEL]);
  seen.listeners.get(CHANNEL)?.({ sender: 'secret' }, 'more');
  expect(heard.map(({ type }) => type)).toEqual([EVENT]);
  expect(heard[0]).not.toHaveProperty('detail');
});
