import { faceOf, type Kind } from '../../../core/tiles/kinds.ts';

const FILES = import.meta.glob<string>('../../../assets/tiles/*.svg', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const WIND_FILES = { N: 'wind-north', E: 'wind-east', W: 'wind-west', S: 'wind-south' } as const;
const DRAGON_FILES = { G: 'dragon-green', R: 'dragon-red', 0: 'dragon-white' } as const;

const faces = new Map<string, HTMLTemplateElement>();
const outlines = new Map<string, HTMLTemplateElement>();

/** Shapes of this colour are cut out of others. */
const CUT_OUT = '#fffdf8';

/** The shapes of a tile's drawing, as a template to be cloned into an svg of 60 by 80; see assets/tiles. */
export function faceTemplate(kind: Kind): HTMLTemplateElement {
  return templateOf(fileOf(kind));
}

/** The same in one ink, the text's, for a tile that is not there. */
export function outlineTemplate(kind: Kind): HTMLTemplateElement {
  return templateOf(fileOf(kind), inOneInk, outlines);
}

/** The drawing of a tile that lies face down. */
export function backTemplate(): HTMLTemplateElement {
  return templateOf('back');
}

function fileOf(kind: Kind): string {
  const face = faceOf(kind);
  switch (face.class) {
    case 'joker':
    case 'flower':
      return face.class;
    case 'wind':
      return WIND_FILES[face.wind];
    case 'dragon':
      return DRAGON_FILES[face.dragon];
    case 'number':
      return `${face.suit}-${face.number}`;
  }
}

function templateOf(name: string, painted = (svg: string): string => svg, parsed = faces): HTMLTemplateElement {
  const known = parsed.get(name);
  if (known) return known;
  const template = document.createElement('template');
  template.innerHTML = painted(FILES[`../../../assets/tiles/${name}.svg`] ?? '');
  // Only the shapes: they go into the box of the tile.
  template.content.replaceChildren(...(template.content.firstElementChild?.childNodes ?? []));
  parsed.set(name, template);
  return template;
}

function inOneInk(svg: string): string {
  return svg.replaceAll(CUT_OUT, 'var(--sheet)').replaceAll(/#[0-9a-f]{6}/g, 'currentColor');
}
