import { html, nothing } from 'lit';
import { nameOf, pluralNameOf, tileWords } from '../../../core/tiles/names.ts';
import { kindsOf } from '../../../core/tiles/text.ts';
import type { AnswerCard } from '../../../core/warmup/answer-room.ts';
import { aimCounts, keptByNearlyAll, peopleOf } from '../../../core/warmup/class-answers.ts';
import { type School, schoolsOf } from '../../../core/warmup/schools.ts';
import { type SheetProblem, tilesOf } from '../../../core/warmup/sheet.ts';
import { tileRow } from '../../parts/tile/tile-row.ts';
import { classWords } from '../../words/class.ts';

/** The sections that the class aims at, most people first. */
export function aimsPart({ answers }: SheetProblem, card: AnswerCard): unknown {
  const aims = aimCounts(answers, card);
  if (aims.length === 0) return nothing;
  const silent = peopleOf(answers) - aims.reduce((sum, { people }) => sum + people, 0);
  return html`<div>
    <h3>${classWords.aims.title}</h3>
    <ul>
      ${aims.map(({ section, people }) => html`<li>${classWords.aims.row(section, people)}</li>`)}
      ${silent === 0 ? nothing : html`<li class="soft">${classWords.aims.notSaid(silent)}</li>`}
    </ul>
  </div>`;
}

/** The tiles that nearly all keep. */
export function keptPart({ answers }: SheetProblem): unknown {
  const { of, kept } = keptByNearlyAll(answers);
  if (of === 0) return nothing;
  return html`<div>
    <h3>${classWords.kept.title}</h3>
    ${
      kept.length === 0
        ? html`<p>${classWords.kept.none}</p>`
        : html`<ul class="row">
            ${kept.map(
              ({ kind, people }) =>
                html`<li class="row close">${tileRow([kind])} ${classWords.kept.row(people, of)}</li>`,
            )}
          </ul>`
    }
  </div>`;
}

/** The two schools of thought in a sentence; or that there are none. */
export function schoolsPart(problem: SheetProblem, card: AnswerCard): unknown {
  if (problem.answers.length === 0) return nothing;
  return html`<div>
    <h3>${classWords.schools.title}</h3>
    <p class="schools">${schoolsSentence(problem, card)}</p>
  </div>`;
}

function schoolsSentence(problem: SheetProblem, card: AnswerCard): string {
  const words = classWords.schools;
  const found = schoolsOf(problem.answers, card);
  if (found.type !== 'two') return words[found.type];
  const [one, other] = found.schools.map((school) => schoolWords(school, problem)) as [string, string];
  return words.two(one, other, found.others === 0 ? '' : words.others(found.others));
}

/** "7 keep the flowers and aim at Lakes". */
function schoolWords({ people, section, give, keeps }: School, { rack }: SheetProblem): string {
  const words = classWords.schools;
  if (section === null) {
    if (give === null) return words.stop(people);
    return give === '' ? words.giveNothing(people) : words.give(people, tileWords(kindsOf(give)));
  }
  if (keeps.length === 0) return words.aim(people, section);
  const held = tilesOf(rack);
  const tiles = keeps.map((kind) => words.the(held.count(kind) > 1 ? pluralNameOf(kind) : nameOf(kind)));
  return words.keepAndAim(people, tiles.join(words.and), section);
}
