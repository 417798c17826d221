import { type Result, success } from '../../core/base/result.ts';
import { readCardFile } from '../../core/card/file.ts';
import { type CompiledCard, compileCard } from '../../core/reading/compiled.ts';

let kept: { readonly text: string; readonly compiled: CompiledCard } | undefined;

/** A card made ready for counting; the last one is kept, since a game stays with its card. */
export function compiledCard(text: string): Result<CompiledCard> {
  if (kept?.text === text) return success(kept.compiled);
  const read = readCardFile(text);
  if (!read.ok) return read;
  kept = { text, compiled: compileCard(read.value.card) };
  return success(kept.compiled);
}
