import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { failure, type Result } from '../../core/base/result.ts';
import { callDesk, DESK_CALLS, LARGEST_CALL } from '../desk/calls.ts';
import type { Desk } from '../desk/desk.ts';
import { channelOf } from './channels.ts';
import { isOurPage } from './origin.ts';

/** Opens one channel for each call of the desk; all go through the same door. */
export function setUpCalls(ipcMain: IpcMain, desk: Desk): void {
  for (const call of DESK_CALLS) {
    ipcMain.handle(channelOf(call), async (event, ...given: unknown[]) => await answerCall(desk, call, event, given));
  }
}

/** The door: the sender's page and frame, the size, then (in `callDesk`) the shape of the arguments. */
async function answerCall(
  desk: Desk,
  call: string,
  event: IpcMainInvokeEvent,
  given: readonly unknown[],
): Promise<Result<unknown>> {
  if (!isOurFrame(event)) return failure('not-allowed', 'This page may not speak to Windrow.');
  const plain = plainData(given);
  if (plain === undefined) return failure('too-large', 'This is too much at once. Nothing was changed.');
  return await callDesk(desk, call, plain);
}

/** The top frame of a page of ours, and it is still there. */
function isOurFrame({ senderFrame }: IpcMainInvokeEvent): boolean {
  return senderFrame !== null && senderFrame.parent === null && isOurPage(senderFrame.url);
}

/** The arguments as plain JSON data; undefined when they are too large or no plain data. */
function plainData(given: readonly unknown[]): unknown {
  try {
    const text = JSON.stringify(given);
    if (text.length > LARGEST_CALL) return undefined;
    const value: unknown = JSON.parse(text);
    return value;
  } catch {
    return undefined;
  }
}
