/**
 * All parts of the window in all their states, on one page: for looking at them and for their
 * tests. The query chooses the look: `?theme=dark&text=32&tiles=large`.
 */
import { html, render } from 'lit';
import { KINDS } from '../../../core/tiles/kinds.ts';
import { GalleryTable } from './table.ts';
import { aHand, aLean, aLongHand } from './samples.ts';
import { applyAppearance } from '../../../renderer/tokens/appearance.ts';
import '../../../renderer/parts/wr-button.ts';
import '../../../renderer/parts/wr-choice.ts';
import '../../../renderer/parts/wr-dialog.ts';
import '../../../renderer/parts/wr-entry.ts';
import '../../../renderer/parts/wr-explain.ts';
import '../../../renderer/parts/wr-field.ts';
import '../../../renderer/parts/wr-hand.ts';
import '../../../renderer/parts/wr-lean.ts';
import '../../../renderer/parts/wr-notice.ts';
import '../../../renderer/parts/wr-places.ts';
import '../../../renderer/parts/wr-tabs.ts';
import '../../../renderer/parts/wr-toolbar.ts';
import '../../../renderer/parts/wr-tray.ts';
import '../../../renderer/parts/tile/wr-tile.ts';

const query = new URLSearchParams(location.search);
applyAppearance({
  theme: query.get('theme') === 'dark' ? 'dark' : query.get('theme') === 'light' ? 'light' : 'system',
  textSize: Number(query.get('text') ?? 18),
  tiles: query.get('tiles') === 'large' ? 'large' : 'normal',
});

const PLACES = ['Table', 'Card', 'Journal', 'Warm-up', 'Settings'].map((label) => ({
  id: label,
  label,
  href: `#/${label}`,
}));
const left = KINDS.map((kind) => (kind < 2 ? 8 : 4 - (kind % 5)));
const table = new GalleryTable();

function openDialog(): void {
  const dialog = document.querySelector('wr-dialog');
  if (dialog) dialog.open = true;
}

function closeDialog(): void {
  const dialog = document.querySelector('wr-dialog');
  if (dialog) dialog.open = false;
}

const tiles = html`<section>
  <h2>Tiles</h2>
  <div class="row">${KINDS.map((kind) => html`<wr-tile .kind=${kind}></wr-tile>`)}<wr-tile></wr-tile></div>
</section>`;

const states = html`<section>
  <h2>States of a tile</h2>
  <div class="row">
    <span class="labelled"><wr-tile .kind=${KINDS[13]} mark="kept"></wr-tile>kept</span>
    <span class="labelled"><wr-tile .kind=${KINDS[22]} mark="spare"></wr-tile>spare</span>
    <span class="labelled"><wr-tile .kind=${KINDS[31]} mark="strained"></wr-tile>strained</span>
    <span class="labelled"><wr-tile .kind=${KINDS[6]} selected></wr-tile>chosen</span>
    <span class="labelled"><wr-tile .kind=${KINDS[16]} standing="joker-held"></wr-tile>by joker</span>
    <span class="labelled"><wr-tile .kind=${KINDS[25]} standing="missing"></wr-tile>missing</span>
    <span class="labelled"><wr-tile .kind=${KINDS[28]} standing="ghost"></wr-tile>ghost</span>
  </div>
</section>`;

const hands = html`<section>
  <h2>Hands</h2>
  <div class="stack sheet">
    <wr-hand label="Two Shores, 3rd line" .groups=${aHand}></wr-hand>
    <wr-hand label="Still Water, 2nd line" .groups=${aLongHand}></wr-hand>
  </div>
</section>`;

const lean = html`<section>
  <h2>Lean</h2>
  <div class="sheet"><wr-lean .shares=${aLean}></wr-lean></div>
</section>`;

const entry = html`<section>
  <h2>Typing and picking</h2>
  <div class="stack">
    <wr-entry
      label="Type the tiles you were dealt"
      hint="For instance ff n 13b 4578c 22d"
      .counts=${[13, 14]}
      @tiles-entered=${(event: CustomEvent<{ readonly kinds: readonly number[] }>) => {
        document.body.dataset['entered'] = String(event.detail.kinds.length);
      }}
    ></wr-entry>
    <wr-entry id="wrong" label="Type the tiles that came in" value="ff 12x 3d" .counts=${[3]}></wr-entry>
    <wr-tray
      .left=${left}
      .reasons=${new Map([[KINDS[0], 'a joker is never passed']])}
      @tile-picked=${(event: CustomEvent<{ readonly kind: number }>) => {
        document.body.dataset['picked'] = String(event.detail.kind);
      }}
    ></wr-tray>
  </div>
</section>`;

const controls = html`<section>
  <h2>Buttons and fields</h2>
  <div class="stack">
    <div class="row">
      <wr-button look="main">Use this pass</wr-button>
      <wr-button>Arrange</wr-button>
      <wr-button look="quiet">Why?</wr-button>
      <wr-button look="danger">Remove this game</wr-button>
      <wr-button .pressed=${true}>Group by section</wr-button>
      <wr-button disabled>Redo</wr-button>
      <wr-button reason="Choose three tiles first.">Give them</wr-button>
    </div>
    <wr-toolbar label="Rack tools">
      <wr-button>Undo</wr-button>
      <wr-button>Redo</wr-button>
      <wr-button>Arrange</wr-button>
    </wr-toolbar>
    <wr-choice
      label="Your seat"
      value="South"
      .options=${['East', 'South', 'West', 'North'].map((seat) => ({ value: seat, label: seat }))}
    ></wr-choice>
    <wr-field label="Where do you play?" value="Lakeside library" hint="Shown in the journal."></wr-field>
    <wr-field label="Season" value="20x6" error="A season is a year such as 2026: fix the x."></wr-field>
    <wr-tabs
      label="Reading"
      current="hands"
      .tabs=${[
        { id: 'hands', label: 'Hands' },
        { id: 'tiles', label: 'Tiles' },
      ]}
      ><div slot="hands">The hands, best reach first.</div>
      <div slot="tiles">Each tile, kept or spare.</div></wr-tabs
    >
    <p>
      This rack is
      <wr-explain value="4 away" heading="Away"
        >Four of the 14 tiles of this hand are still missing. Jokers you hold are counted.</wr-explain
      >
      from Two Shores, 3rd line.
    </p>
    <wr-button id="ask" @click=${openDialog}>Ask something</wr-button>
    <wr-dialog heading="Stop before the second round?">
      <p>Then no more tiles are passed, save in the courtesy.</p>
      <wr-button slot="actions" @click=${closeDialog}>Go on passing</wr-button>
      <wr-button slot="actions" look="main" @click=${closeDialog}>Stop here</wr-button>
    </wr-dialog>
  </div>
</section>`;

const notices = html`<section>
  <h2>Notices</h2>
  <div class="stack">
    <wr-notice action="Bring it back">The game of Thursday was removed.</wr-notice>
    <wr-notice tone="good">Saved in your folder.</wr-notice>
    <wr-notice tone="warn">Log live games only where everyone at the table agrees.</wr-notice>
    <wr-notice tone="bad" action="Try again">The disk is full. Your last step is kept here until it fits.</wr-notice>
  </div>
</section>`;

render(
  html`<main>
    <header>
      <h1>Windrow's parts</h1>
      <wr-places .places=${PLACES} current="Table"></wr-places>
    </header>
    ${table} ${tiles} ${states} ${hands} ${lean} ${entry} ${controls} ${notices}
  </main>`,
  document.body,
);
