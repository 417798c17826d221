import { contextBridge, ipcRenderer } from 'electron';
import { DESK_CALLS } from '../desk/calls.ts';
import { BROUGHT_IN, channelOf } from './channels.ts';

/** The desk's calls and nothing else: no channel names, nothing of Electron. */
const desk = DESK_CALLS.map((call) => {
  const ask = async (...given: readonly unknown[]): Promise<unknown> =>
    await ipcRenderer.invoke(channelOf(call), ...given);
  return [call, ask] as const;
});

contextBridge.exposeInMainWorld('windrowDesk', Object.fromEntries(desk));

// The one thing that the page is told unasked, and with no more than its name.
ipcRenderer.on(BROUGHT_IN, () =>
  Reflect.apply(Reflect.get(globalThis, 'dispatchEvent'), globalThis, [new Event(BROUGHT_IN)]),
);
