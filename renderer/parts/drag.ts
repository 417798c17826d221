/**
 * A drag as a small state machine without a window: pressed, dragging after a few px, and back to
 * idle by a drop or by anything that cancels. Nothing is done on the press itself (WCAG 2.5.2).
 */
export interface DragPoint {
  readonly x: number;
  readonly y: number;
}

export type DragState =
  | { readonly phase: 'idle' }
  | { readonly phase: 'pressed' | 'dragging'; readonly id: string; readonly pointer: number; readonly from: DragPoint };

export type DragEvent =
  | { readonly type: 'press'; readonly id: string; readonly pointer: number; readonly at: DragPoint }
  | { readonly type: 'move' | 'release'; readonly pointer: number; readonly at: DragPoint }
  | { readonly type: 'cancel' };

/** What the window must do. */
export type DragEffect = 'none' | 'start' | 'move' | 'drop' | 'restore';

export const IDLE: DragState = { phase: 'idle' };

/** How far a pressed pointer moves before it drags, in CSS px; a shaking hand still clicks. */
export const SLOP = 6;

export function dragged(
  state: DragState,
  event: DragEvent,
): { readonly state: DragState; readonly effect: DragEffect } {
  if (event.type === 'press') return pressed(state, event);
  if (state.phase === 'idle') return { state, effect: 'none' };
  if (event.type === 'cancel') return { state: IDLE, effect: state.phase === 'dragging' ? 'restore' : 'none' };
  if (event.pointer !== state.pointer) return { state, effect: 'none' };
  if (event.type === 'release') return { state: IDLE, effect: state.phase === 'dragging' ? 'drop' : 'none' };
  if (state.phase === 'dragging') return { state, effect: 'move' };
  const far = Math.hypot(event.at.x - state.from.x, event.at.y - state.from.y) > SLOP;
  return far ? { state: { ...state, phase: 'dragging' }, effect: 'start' } : { state, effect: 'none' };
}

/** A second finger never takes over a drag. */
function pressed(
  state: DragState,
  { id, pointer, at }: Extract<DragEvent, { type: 'press' }>,
): { readonly state: DragState; readonly effect: DragEffect } {
  if (state.phase !== 'idle') return { state, effect: 'none' };
  return { state: { phase: 'pressed', id, pointer, from: at }, effect: 'none' };
}
