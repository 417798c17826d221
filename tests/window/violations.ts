import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/** WCAG 2.2 A and AA, as CR-K8 names them. */
export const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * What axe finds wrong now by the rules of these tags, of those that have one of `counted`, too. It looks in the page
 * alone, which has no frames: else it would open another page for each look.
 */
export async function violations(page: Page, tags = WCAG, counted = tags): Promise<string[]> {
  const builder = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  const { violations: found } = await builder.withTags(tags).analyze();
  return found
    .filter(({ tags: own }) => own.some((tag) => counted.includes(tag)))
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
}
