/** A heading and what stands below it. */
export interface Topic {
  readonly title: string;
  /** Headings in the window whose numbers this topic explains. */
  readonly shownAs: readonly string[];
  /** Sentences of core/reading/MODEL.md that it puts in plain words. */
  readonly model: readonly string[];
  readonly paragraphs: readonly string[];
}

/** The chapters of a page, each with its topics; the first topic is the chapter's own. */
export function readChapters(page: string): Topic[][] {
  return page
    .split(/^(?=# )/m)
    .filter((chapter) => chapter.trim() !== '')
    .map(readTopics);
}

/**
 * Reads a page of headings (`#`) and paragraphs; the first topic is the page's own. A remark such as `<!-- shown as: Away; model: MD-A1 MD-A2 -->` below a
 * heading is not shown: it says what the topic explains. Line breaks inside a paragraph are free.
 */
export function readTopics(page: string): Topic[] {
  return page.split(/^#+ /m).slice(1).map(readTopic);
}

function readTopic(text: string): Topic {
  const [title = '', ...lines] = text.split('\n');
  const body = lines.join('\n');
  const remark = /<!--(.*?)-->/s.exec(body)?.[1] ?? '';
  const [, shown = ''] = /shown as: (.*?)(?:; model:|$)/.exec(remark.trim()) ?? [];
  const [, model = ''] = /model: (.*)$/.exec(remark.trim()) ?? [];
  return {
    title: title.trim(),
    shownAs: shown === '' ? [] : shown.split('; '),
    model: model === '' ? [] : model.trim().split(' '),
    paragraphs: paragraphsOf(body.replace(/<!--.*?-->/gs, '')),
  };
}

function paragraphsOf(body: string): string[] {
  return body
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.replaceAll('\n', ' ').trim())
    .filter((paragraph) => paragraph !== '');
}

/** The sentences of a page of rules (`- **EX-1** …`) whose ids begin with `prefix`, without their ids. */
export function readRules(page: string, prefix: string): string[] {
  return [...page.matchAll(/^- \*\*(\w+)-\d+\*\* (.+(?:\n {2}.+)*)$/gm)]
    .filter(([, family]) => family === prefix)
    .map(([, , rule = '']) => rule.replaceAll('\n  ', ' '));
}
