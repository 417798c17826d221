import {
  changeTier,
  moveTo,
  orderOf,
  type RackLayout,
  type RackPlace,
  sameLayout,
  step,
  toggleGap,
  whereIs,
} from './rack-layout.ts';

/** What the rack remembers while a person handles it. */
export interface RackState {
  readonly layout: RackLayout;
  /** The tile that has, or last had, the focus; null only when there are no tiles. */
  readonly active: string | null;
  /** The tiles chosen, oldest choice first. */
  readonly selected: readonly string[];
}

/** All that a person can do to the rack; keys, clicks and drags all come down to these. */
export type RackCommand =
  | { readonly do: 'focus'; readonly id: string }
  | { readonly do: 'walk'; readonly by: -1 | 1 }
  | { readonly do: 'climb'; readonly by: -1 | 1 }
  | { readonly do: 'end'; readonly side: 'first' | 'last' }
  /** To the next tile, after the active one and around, for which `fits` says yes. */
  | { readonly do: 'jump'; readonly fits: (id: string) => boolean }
  | { readonly do: 'select'; readonly id: string; readonly limit: number }
  | { readonly do: 'unselect' }
  | { readonly do: 'step'; readonly by: -1 | 1 }
  | { readonly do: 'tier'; readonly by: -1 | 1 }
  | { readonly do: 'gap' }
  | { readonly do: 'put'; readonly ids: readonly string[]; readonly place: RackPlace };

/** The state after a command. Does nothing, and answers with the same state, when there is nothing to do. */
export function after(state: RackState, command: RackCommand): RackState {
  if (state.active === null) return state;
  switch (command.do) {
    case 'focus':
      return { ...state, active: command.id };
    case 'walk':
      return walked(state, state.active, command.by);
    case 'climb':
      return climbed(state, state.active, command.by);
    case 'end':
      return { ...state, active: orderOf(state.layout).at(command.side === 'first' ? 0 : -1) ?? null };
    case 'jump':
      return jumped(state, state.active, command.fits);
    case 'select':
      return selected(state, command.id, command.limit);
    case 'unselect':
      return { ...state, selected: [] };
    case 'step':
      return relaid(state, step(state.layout, state.active, command.by));
    case 'tier':
      return relaid(state, changeTier(state.layout, state.active, command.by));
    case 'gap':
      return relaid(state, toggleGap(state.layout, state.active));
    case 'put':
      return put(state, command.ids, command.place);
  }
}

/** The state for a new layout from outside: what is gone is no longer chosen, the focus goes to the nearest tile. */
export function adopted(state: RackState, layout: RackLayout, selection: readonly string[]): RackState {
  const here = orderOf(layout);
  const before = orderOf(state.layout);
  const stays = state.active !== null && here.includes(state.active);
  return {
    layout,
    active: stays ? state.active : nearest(before, state.active, here),
    selected: selection.filter((id) => here.includes(id)),
  };
}

function nearest(before: readonly string[], gone: string | null, here: readonly string[]): string | null {
  const from = gone === null ? 0 : Math.max(0, before.indexOf(gone));
  const next = before.slice(from).find((id) => here.includes(id));
  const previous = before.slice(0, from).findLast((id) => here.includes(id));
  return next ?? previous ?? here[0] ?? null;
}

function walked(state: RackState, active: string, by: -1 | 1): RackState {
  const order = orderOf(state.layout);
  const at = order.indexOf(active) + by;
  return { ...state, active: order[Math.min(order.length - 1, Math.max(0, at))] ?? active };
}

/** To the tile above or below: the one with as many tiles before it in its tier. */
function climbed(state: RackState, active: string, by: -1 | 1): RackState {
  const at = whereIs(state.layout, active);
  const other = at && state.layout[at.tier + by]?.flat();
  if (!other || other.length === 0) return state;
  const column = state.layout[at.tier]?.flat().indexOf(active) ?? 0;
  return { ...state, active: other[Math.min(column, other.length - 1)] ?? active };
}

function jumped(state: RackState, active: string, fits: (id: string) => boolean): RackState {
  const order = orderOf(state.layout);
  const at = order.indexOf(active);
  const around = [...order.slice(at + 1), ...order.slice(0, at + 1)];
  return { ...state, active: around.find(fits) ?? active };
}

/** Chooses a tile or lets it go. One more than the limit is refused, save that a limit of one moves the choice. */
function selected(state: RackState, id: string, limit: number): RackState {
  const now = { ...state, active: id };
  if (state.selected.includes(id)) return { ...now, selected: state.selected.filter((other) => other !== id) };
  if (limit === 1) return { ...now, selected: [id] };
  return state.selected.length < limit ? { ...now, selected: [...state.selected, id] } : now;
}

function put(state: RackState, ids: readonly string[], place: RackPlace): RackState {
  const active = ids[0];
  if (active === undefined) return state;
  const moved = relaid({ ...state, active }, moveTo(state.layout, ids, place));
  return { ...moved, selected: state.selected.filter((id) => !ids.includes(id)) };
}

function relaid(state: RackState, layout: RackLayout): RackState {
  return sameLayout(layout, state.layout) ? state : { ...state, layout };
}
