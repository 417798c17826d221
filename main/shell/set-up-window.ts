import type { BrowserWindow, BrowserWindowConstructorOptions, Rectangle } from 'electron';
import type { ElectronParts } from './electron.ts';
import { START_PAGE } from './origin.ts';
import type { WindowPlace, WindowPlaceKeeper } from './window-place.ts';

const USUAL = { width: 1280, height: 860 };
const SMALLEST = { minWidth: 360, minHeight: 480 };
/** So much of a window must lie on a screen for a hand to catch it. */
const CATCH = 80;

/** Makes the one window, where it was last time if that is still on a screen. */
export function setUpWindow(
  { createWindow, screen }: Pick<ElectronParts, 'createWindow' | 'screen'>,
  places: WindowPlaceKeeper,
  preload: string,
): BrowserWindow {
  const place = places.read();
  const areas = screen.getAllDisplays().map(({ workArea }) => workArea);
  const seen = place !== undefined && areas.some((area) => isCatchable(place, area)) ? place : undefined;
  const window = createWindow(windowOptions(preload, seen));
  if (seen?.maximized === true) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on('close', () => places.keep({ ...window.getNormalBounds(), maximized: window.isMaximized() }));
  void window.loadURL(START_PAGE);
  return window;
}

/** The window's page is shut off from the computer in every way there is. */
function windowOptions(preload: string, place: WindowPlace | undefined): BrowserWindowConstructorOptions {
  const { x, y, width, height } = place ?? USUAL_PLACE;
  return {
    ...(x === undefined || y === undefined ? {} : { x, y }),
    width: Math.max(width, SMALLEST.minWidth),
    height: Math.max(height, SMALLEST.minHeight),
    ...SMALLEST,
    title: 'Windrow',
    show: false,
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      spellcheck: false,
      navigateOnDragDrop: false,
    },
  };
}

const USUAL_PLACE: { x?: number; y?: number; width: number; height: number } = USUAL;

function isCatchable(place: WindowPlace, area: Rectangle): boolean {
  const across = Math.min(place.x + place.width, area.x + area.width) - Math.max(place.x, area.x);
  const isTopInside = place.y >= area.y && place.y < area.y + area.height - CATCH;
  return across >= CATCH && isTopInside;
}
