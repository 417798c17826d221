import { writeDurably } from '../files/durable.ts';
import { quietly } from '../files/files.ts';
import { type DeskContext, readText } from './context.ts';

/** Begins the page, and so tells it from a file of somebody else. */
const HEADING = "Windrow's files, explained";

/** The page that lies among a person's files and says what each of them is, made of the pages of file forms. */
export function aboutPage(version: string, pages: readonly string[]): string {
  const lead = [
    `${HEADING} (${version})`,
    'Windrow writes this page. A new version writes it anew, so keep no notes of your own in it.',
    'Where it names a page such as core/game/FORMAT.md, that page follows below.',
  ];
  return [lead.join('\n'), ...pages.map((page) => page.trim())].join(`\n\n${'-'.repeat(72)}\n\n`).concat('\n');
}

/** Puts the page in its place, unless it is there or somebody else's file has its name. It is not worth a word when that fails. */
export async function keepAboutPage(context: DeskContext, page: string): Promise<void> {
  await quietly(writeWhereDue(context, page));
}

async function writeWhereDue(context: DeskContext, page: string): Promise<void> {
  const there = await readText(context, context.places.about);
  const isDue = there === undefined || (there !== page && there.startsWith(HEADING));
  if (isDue) await writeDurably(context, context.places.about, page);
}
