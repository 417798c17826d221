import type { Result } from '../../core/base/result.ts';
import { DEMO_FITS } from '../../core/chance/demo-fit.ts';
import type { CardFit } from '../../core/chance/table-figures.ts';
import type { Findings } from '../../core/journal/findings.ts';
import { callOf, DESK_CALLS, type DeskCall } from '../../main/desk/calls.ts';
import type { Desk } from '../../main/desk/desk.ts';
import { cardText, EVENTS, gameRecord, MISS, sheetText } from '../main/support/desks.ts';
import { CARD, OPEN_GAME } from './lived-in.ts';

/** A kind of saving call, as it is made in a folder that was lived in. */
export interface Save {
  readonly name: DeskCall;
  readonly make: (desk: Desk) => Promise<Result<unknown>>;
  /** True for what holds nothing that a person entered: it is not told with the content. */
  readonly freely?: boolean;
}

/** Long enough to need more room than is left in the last block of any file. */
const LONG = 'warm rolls '.repeat(800);
const NOTE = { type: 'noted', text: LONG, at: '2026-11-25T18:09:00Z' } as const;
const [FIT] = JSON.parse(JSON.stringify(DEMO_FITS)) as readonly CardFit[];
const FINDINGS: Findings = {
  id: 'g-done',
  key: 'k1',
  figures: { aways: [{ moment: 'deal', away: 5 }], aimed: null },
  choices: null,
};

/** A way to make each kind of saving call. */
export const SAVES: readonly Save[] = [
  { name: 'deleteEverything', make: (desk) => desk.deleteEverything('delete everything') },
  { name: 'changePreferences', make: (desk) => desk.changePreferences({ textSize: 30 }) },
  { name: 'saveCard', make: (desk) => desk.saveCard(CARD, cardText(LONG)) },
  { name: 'removeCard', make: (desk) => desk.removeCard(CARD) },
  { name: 'restoreCard', make: restoreOldest },
  { name: 'saveCardProgress', make: (desk) => desk.saveCardProgress(CARD, { confirmed: ['a', 'b'], answers: [] }) },
  { name: 'startGame', make: (desk) => desk.startGame(gameRecord('g-new')) },
  { name: 'appendEvent', make: (desk) => desk.appendEvent(OPEN_GAME, EVENTS.length, NOTE) },
  { name: 'dropEvent', make: (desk) => desk.dropEvent(OPEN_GAME, EVENTS.length - 1) },
  { name: 'changeGame', make: (desk) => desk.changeGame('g-done', { place: LONG.slice(0, 150) }) },
  { name: 'changeGame', make: correctNote },
  { name: 'removeGame', make: (desk) => desk.removeGame('g-done') },
  { name: 'restoreGame', make: (desk) => desk.restoreGame('g-gone') },
  { name: 'importGames', make: (desk) => desk.importGames([gameRecord('g-in'), gameRecord('g-done')]) },
  { name: 'keepDraft', make: (desk) => desk.keepDraft(gameRecord('g-draft', { arrangement: 'FF 13b 2c' })) },
  { name: 'removeNames', make: (desk) => desk.removeNames() },
  { name: 'keepFindings', make: (desk) => desk.keepFindings([FINDINGS]), freely: true },
  { name: 'keepFit', make: (desk) => desk.keepFit('0123456789abcdef', FIT!), freely: true },
  { name: 'keepSheet', make: (desk) => desk.keepSheet(sheetText('Friday')) },
  { name: 'removeSheet', make: (desk) => desk.removeSheet('thursday') },
  { name: 'notePractice', make: (desk) => desk.notePractice([{ ...MISS, id: 'm3' }]) },
];

/** Takes a game or card that lies in two files, of which every look at the folder tells. */
export const SKIPPED: DeskCall = 'settleCopy';

/** Saving calls of the desk that are missing above. */
export const NOT_TRIED: readonly DeskCall[] = DESK_CALLS.filter(
  (name) => callOf(name).does === 'save' && name !== SKIPPED && !SAVES.some((save) => save.name === name),
);

async function restoreOldest(desk: Desk): Promise<Result<unknown>> {
  const backups = await desk.listBackups(CARD);
  if (!backups.ok) return backups;
  return await desk.restoreCard(CARD, backups.value.at(-1)?.name ?? '');
}

async function correctNote(desk: Desk): Promise<Result<unknown>> {
  return await desk.changeGame('g-done', { corrected: { place: EVENTS.length - 1, event: NOTE } });
}
