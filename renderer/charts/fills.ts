import { svg, type SVGTemplateResult } from 'lit';

/** How a bar is filled: told apart by pattern, so that no colour is needed. */
export type Fill = 'solid' | 'stripes' | 'dots' | 'outline';

const PATHS = {
  stripes: svg`<path d="M-2 8L8 -2M3 13L13 3"></path>`,
  dots: svg`<circle class="dot" cx="2.5" cy="2.5" r="1.6"></circle><circle class="dot" cx="7.5" cy="7.5" r="1.6"></circle>`,
};

/** Patterns for the fills, once in each drawing; `outline` and `solid` are plain. */
export function patterns(): SVGTemplateResult {
  return svg`<defs>
    ${(['stripes', 'dots'] as const).map(
      (name) => svg`<pattern id=${name} width="10" height="10" patternUnits="userSpaceOnUse">${PATHS[name]}</pattern>`,
    )}
  </defs>`;
}

/** The value of a shape's `fill`; null where a class paints it. */
export function paintOf(fill: Fill): string | null {
  return fill === 'stripes' || fill === 'dots' ? `url(#${fill})` : null;
}
