import type * as v from 'valibot';

/** What is looked at of a schema, whatever it is for. */
interface Shape {
  readonly type: string;
  readonly requirement?: unknown;
  readonly wrapped?: Shape;
  readonly item?: Shape;
  readonly entries?: Readonly<Record<string, Shape>>;
  readonly pipe?: readonly Shape[];
}

/** The most letters, or the highest number, of each field that has such a limit, inner fields and those of lists too. */
export function limitsOf(entries: v.ObjectEntries): Map<string, number> {
  const limits = new Map<string, number>();
  const look = (name: string, shape: Shape): void => {
    if ((shape.type === 'max_length' || shape.type === 'max_value') && typeof shape.requirement === 'number')
      limits.set(name, shape.requirement);
    for (const part of shape.pipe ?? []) if (part !== shape) look(name, part);
    for (const inner of [shape.wrapped, shape.item]) if (inner !== undefined) look(name, inner);
    for (const [field, inner] of Object.entries(shape.entries ?? {})) look(field, inner);
  };
  for (const [name, shape] of Object.entries(entries)) look(name, shape);
  return limits;
}

/**
 * The limits that a page tells below a heading that begins so: the rows of its table "field, most", such as
 * "| `place`, `zone` | 200 letters |". The first number of the second cell counts.
 */
export function limitsTold(page: string, heading: string): Map<string, number> {
  const chapter = page.split(/^#+ /m).find((part) => part.startsWith(heading)) ?? '';
  const table = chapter.split('| field | most |\n')[1]?.split('\n\n')[0] ?? '';
  const rows = [...table.matchAll(/^\| (`.+?) \| ([^|]+)\|/gm)];
  return new Map(
    rows.flatMap(([, names = '', most = '']) => {
      const number = Number(/[\d,]+/.exec(most)?.[0].replaceAll(',', ''));
      return [...names.matchAll(/`(\w+)`/g)].map(([, name = '']) => [name, number] as const);
    }),
  );
}
