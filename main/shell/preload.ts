import { contextBridge, ipcRenderer } from 'electron';
import { DESK_CALLS } from '../desk/calls.ts';
import { channelOf } from './channels.ts';

/** The desk's calls and nothing else: no events, no channel names, nothing of Electron. */
const desk = DESK_CALLS.map((call) => {
  const ask = async (...given: readonly unknown[]): Promise<unknown> =>
    await ipcRenderer.invoke(channelOf(call), ...given);
  return [call, ask] as const;
});

contextBridge.exposeInMainWorld('windrowDesk', Object.fromEntries(desk));
