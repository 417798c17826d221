import { html, nothing } from 'lit';
import { legalEvents } from '../../../../core/game/legal.ts';
import { faceOf, type Kind, KINDS } from '../../../../core/tiles/kinds.ts';
import type { Tiles } from '../../../../core/tiles/tiles.ts';
import { data, element } from '../../../parts/element.ts';
import '../../../parts/tile/wr-tile.ts';
import type { AppContext } from '../../../shell/app-context.ts';
import { StoreController } from '../../../shell/store-controller.ts';
import { sharedStyles } from '../../../tokens/shared.ts';
import { playWords as words } from '../../../words/play.ts';
import { panelStyles } from '../panel-styles.ts';
import { playStyles } from './play-styles.ts';

type ClassName = keyof typeof words.classes;

const CLASSES: readonly ClassName[] = ['honours', 'bam', 'crak', 'dot'];

function classOf(kind: Kind): ClassName {
  const face = faceOf(kind);
  return face.class === 'number' ? face.suit : 'honours';
}

const Base = element({
  app: data<AppContext>(),
});

/** The running count of what the player has not seen yet, kind by kind, by the same count as the tray beside it. */
export class WrUnseenPanel extends Base {
  static override styles = [sharedStyles, panelStyles, playStyles];

  constructor() {
    super();
    new StoreController(this, () => [this.app.session]);
  }

  protected override render(): unknown {
    const { state } = this.app.session;
    const { canCome } = legalEvents(state);
    const passed = (state.exchange?.passes.length ?? 0) > 0;
    return html`<details>
      <summary>${words.unseen(canCome.size)}</summary>
      <div class="stack">
        <p class="soft">${words.unseenHelp} ${passed ? words.unseenPassed : nothing}</p>
        ${CLASSES.map((name) => rowOf(name, canCome))}
      </div>
    </details>`;
  }
}

function rowOf(name: ClassName, unseen: Tiles): unknown {
  const kinds = KINDS.filter((kind) => classOf(kind) === name);
  const sum = kinds.reduce((total, kind) => total + unseen.count(kind), 0);
  return html`<h3>${words.unseenOf(words.classes[name], sum)}</h3>
    <ul class="counts">
      ${kinds.map((kind) => {
        const count = unseen.count(kind);
        return html`<li>
          <wr-tile .kind=${kind} .standing=${count === 0 ? 'missing' : 'whole'}></wr-tile>
          <span class=${count === 0 ? 'none' : ''}>${count === 0 ? words.gone : count}</span>
        </li>`;
      })}
    </ul>`;
}

customElements.define('wr-unseen-panel', WrUnseenPanel);
