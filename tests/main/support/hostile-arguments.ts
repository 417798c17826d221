/** Texts of lists of arguments as an attacker could send them to a desk's call; some are no lists, some no JSON values that a page could make. */
const DEEP = 20_000;

const PLAIN = ['null', 'true', '0', '-1', '1e999', '""', '[]', '{}', '"demo"', '"g-1"', '"../../etc/passwd"'];

const VALUES: readonly string[] = [
  ...PLAIN,
  '{"__proto__":{"polluted":true}}',
  '{"constructor":{"prototype":{"polluted":true}}}',
  '{"do":"empty"}',
  '{"do":"empty","sure":true}',
  '{"do":"keep","text":"{\\"__proto__\\":{\\"polluted\\":true}}"}',
  '{"id":"g-1","startedAt":"x","events":[{"type":"__proto__","at":"y"}],"__proto__":{"polluted":true}}',
  '{"type":"noted","at":"2026-11-25T18:00:00Z","text":{"toString":1}}',
  '{"length":1e9}',
  '"\\ud800"',
  '"\\u0000"',
  `"${'x'.repeat(100_000)}"`,
  `${'['.repeat(DEEP)}${']'.repeat(DEEP)}`,
  `${'{"a":'.repeat(DEEP)}1${'}'.repeat(DEEP)}`,
  `[${'1,'.repeat(50_000)}1]`,
];

/** Each value alone, behind a good first argument, and in places where a list is expected to be. */
export const HOSTILE_ARGUMENTS: readonly string[] = [
  ...VALUES,
  ...VALUES.map((value) => `[${value}]`),
  ...VALUES.map((value) => `["g-1",${value}]`),
  ...VALUES.map((value) => `["g-1",0,${value}]`),
  '[1,2,3,4,5,6,7,8,9]',
  `[null,"${'x'.repeat(950_000)}"]`,
].filter((text) => text.length < 999_000);
