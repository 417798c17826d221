import type { TemplateResult } from 'lit';
import type { AppContext } from './app-context.ts';

/** One of the window's five places. */
export interface Place {
  /** Its name in the address: `#/table`. */
  readonly id: string;
  /** Its name in the navigation. */
  readonly title: string;
  /** `sheet`: fills the window and scrolls inside, where there is room; `page`: scrolls as a whole. */
  readonly shape: 'sheet' | 'page';
  /** Fetches what the place needs, the first time that it is opened, and says how it is drawn. */
  readonly load: () => Promise<(app: AppContext) => TemplateResult>;
}
