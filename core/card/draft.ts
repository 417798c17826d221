import { expectValue } from '../base/result.ts';
import { DRAGONS, WINDS } from '../tiles/kinds.ts';
import { type Fields, LINE_DEFAULTS, type LineDocument, textField } from './document.ts';
import { isSlide } from './check-line.ts';
import { scanPattern } from './parse.ts';
import { parseGroup } from './parse-group.ts';
import type { PatternProblem } from './pattern-problem.ts';
import {
  formatGroup,
  type GroupSuit,
  type GroupTile,
  type Movement,
  OPEN_WINDS,
  type PatternGroup,
  type Slide,
} from './pattern.ts';

export const NUMBER_SYMBOLS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;
/** What may stand in a group, as a builder offers it: flower, numbers, winds, dragons. */
export const GROUP_SYMBOLS = ['F', ...NUMBER_SYMBOLS, ...WINDS, ...OPEN_WINDS, 'NEWS', ...DRAGONS, 'D'] as const;
export type GroupSymbol = (typeof GROUP_SYMBOLS)[number];

/**
 * A group as a builder edits it, every choice a field of its own. `suit` is `none` for a tile
 * without a suit and for `D`, any one dragon; `movement` is `first` for all but numbers.
 */
export interface GroupDraft {
  readonly symbol: GroupSymbol;
  /** 1 to 6; 1 for NEWS, which lays four singles. */
  readonly size: number;
  readonly suit: GroupSuit | 'none';
  readonly movement: Movement;
}

/** A line while it is entered; it may hold any number of tiles. */
export interface LineDraft {
  readonly id: string;
  readonly groups: readonly GroupDraft[];
  readonly slide: Slide;
  readonly slide2: Slide;
  readonly concealed: boolean;
  readonly points: number;
  readonly note: string;
}

/** Groups read from text, and the problems of those that can't be read. 14 tiles are not demanded. */
export interface DraftedText {
  readonly groups: readonly GroupDraft[];
  readonly problems: readonly PatternProblem[];
}

/** The builder's groups for a text as typed so far. `patternFromDraft` gives back its canonical form. */
export function draftFromPattern(text: string): DraftedText {
  const groups: GroupDraft[] = [];
  const problems: PatternProblem[] = [];
  for (const { group } of scanPattern(text)) {
    if (group.ok) groups.push(draftGroup(group.value));
    else problems.push(group.problem);
  }
  return { groups, problems };
}

/** The canonical text of the builder's groups. */
export function patternFromDraft(groups: readonly GroupDraft[]): string {
  return groups.map((draft) => formatGroup(patternGroup(draft))).join(' ');
}

/** A group with another tile in it; suit and movement stay where they still mean something. */
export function withSymbol(draft: GroupDraft, symbol: GroupSymbol): GroupDraft {
  const isNumber = NUMBER_SYMBOLS.some((number) => number === symbol);
  const openSuit = draft.suit === 'none' ? 'a' : draft.suit;
  return {
    symbol,
    size: symbol === 'NEWS' ? 1 : draft.size,
    suit: isNumber ? openSuit : symbol === 'D' ? draft.suit : 'none',
    movement: isNumber ? draft.movement : 'first',
  };
}

/** The builder's view of a line of a card; what can't be read shows as its default. */
export function draftFromLine(fields: LineDocument): LineDraft & { readonly problems: readonly PatternProblem[] } {
  const { groups, problems } = draftFromPattern(textField(fields, 'pattern'));
  return {
    id: textField(fields, 'id'),
    groups,
    slide: slideField(fields, 'slide'),
    slide2: slideField(fields, 'slide2'),
    concealed: fields['concealed'] === true,
    points: typeof fields['points'] === 'number' ? fields['points'] : LINE_DEFAULTS.points,
    note: textField(fields, 'note'),
    problems,
  };
}

/** A line's fields after building; fields of `before` that a builder doesn't know stay. */
export function lineFromDraft(draft: LineDraft, before: LineDocument = {}): LineDocument {
  const { id, groups, slide, slide2, concealed, points, note } = draft;
  return { ...before, id, pattern: patternFromDraft(groups), slide, slide2, concealed, points, note };
}

function slideField(fields: Fields, field: 'slide' | 'slide2'): Slide {
  const value = fields[field];
  return isSlide(value) ? value : LINE_DEFAULTS[field];
}

function draftGroup({ tile, size }: PatternGroup): GroupDraft {
  return {
    symbol: symbolOf(tile),
    size,
    suit: tile.is === 'number' || tile.is === 'suit-dragon' ? tile.suit : 'none',
    movement: tile.is === 'number' ? tile.movement : 'first',
  };
}

function symbolOf(tile: GroupTile): GroupSymbol {
  const text = tile.is === 'news' ? 'NEWS' : formatGroup({ tile, size: 1 })[0];
  return GROUP_SYMBOLS.find((name) => name === text) as GroupSymbol;
}

const MARKS = { first: '', second: "'", stays: '=' } as const;

function patternGroup({ symbol, size, suit, movement }: GroupDraft): PatternGroup {
  const run = symbol === 'NEWS' ? symbol : symbol.repeat(size);
  return expectValue(parseGroup(run + (suit === 'none' ? '' : suit) + MARKS[movement], 0));
}
