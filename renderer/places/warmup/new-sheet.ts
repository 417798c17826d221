import { type Sheet, SHEET_KIND, SHEET_VERSION } from '../../../core/warmup/sheet.ts';

/** An empty sheet on a card, begun now; its paper is the one usual where the window's language is at home. */
export function newSheet(title: string, card: string, appVersion: string): Sheet {
  const madeAt = new Date().toISOString();
  const document: unknown = JSON.parse(card);
  return {
    kind: SHEET_KIND,
    schemaVersion: SHEET_VERSION,
    appVersion,
    id: `${madeAt.slice(0, 19).replaceAll(/[-:]/g, '').replace('T', '-')}-${crypto.randomUUID().slice(0, 6)}`,
    title,
    madeAt,
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    paper: /(US|CA)$/.test(navigator.language) ? 'letter' : 'a4',
    card: document,
    problems: [],
  };
}
