import type { Card } from '../../../core/card/card.ts';
import { aimedLine, aimedSection } from '../../../core/warmup/aims.ts';

/** The names of what is aimed at, as on the card: "Weather, Lakes, 2nd line"; what the card has not is left out. */
export function aimNames(aims: readonly string[], sections: Card['sections']): string {
  return aims.flatMap((aim) => aimName(aim, sections) ?? []).join(', ');
}

/** The name of one aim; null if the card has none such. */
export function aimName(aim: string, sections: Card['sections']): string | null {
  const section = aimedSection(aim);
  if (section !== null) return sections.find(({ name }) => name === section)?.name ?? null;
  const line = sections.flatMap(({ lines }) => lines).find(({ id }) => id === aimedLine(aim));
  return line?.name ?? null;
}
