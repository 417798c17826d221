import { readFileSync } from 'node:fs';
import { expectValue } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';

/** The demo card as its file says. */
export const demoText = readFileSync(new URL('../../assets/demo.card.json', import.meta.url), 'utf8');
export const demoFile = expectValue(readCardFile(demoText));
