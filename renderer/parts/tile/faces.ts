import { faceOf, type Kind } from '../../../core/tiles/kinds.ts';

const FILES = import.meta.glob<string>('../../../assets/tiles/*.svg', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const WIND_FILES = { N: 'wind-north', E: 'wind-east', W: 'wind-west', S: 'wind-south' } as const;
const DRAGON_FILES = { G: 'dragon-green', R: 'dragon-red', 0: 'dragon-white' } as const;

const parsed = new Map<string, HTMLTemplateElement>();

/** The drawing of a tile, as a template to be cloned; see assets/tiles. */
export function faceTemplate(kind: Kind): HTMLTemplateElement {
  return templateOf(fileOf(kind));
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

function templateOf(name: string): HTMLTemplateElement {
  const known = parsed.get(name);
  if (known) return known;
  const template = document.createElement('template');
  template.innerHTML = FILES[`../../../assets/tiles/${name}.svg`] ?? '';
  parsed.set(name, template);
  return template;
}
