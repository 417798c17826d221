import { html } from 'lit';
import '../../parts/wr-button.ts';
import { filesWords as words, journalWords } from '../../words/journal.ts';

type Act = () => void;

/** What leaves the journal: a table of the games shown, or everything. */
export function outSection(shown: number, saveTable: Act, saveAll: Act): unknown {
  return html`<section aria-labelledby="out">
    <h2 id="out">${words.out}</h2>
    <p>${words.outLead}</p>
    <wr-button @click=${saveTable}>${words.csv}</wr-button>
    <p class="soft">${words.csvNote(shown)}</p>
    <wr-button @click=${saveAll}>${words.all}</wr-button>
    <p class="soft">${words.allNote}</p>
  </section>`;
}

/** What comes in: `choose` opens the hidden field for a file, `chosen` takes its file. */
export function inSection(choose: Act, chosen: Act): unknown {
  return html`<section aria-labelledby="in">
    <h2 id="in">${words.bring}</h2>
    <p>${words.bringLead}</p>
    <wr-button @click=${choose}>${words.choose}</wr-button>
    <input type="file" accept=".json,application/json" tabindex="-1" aria-label=${words.choose} @change=${chosen} />
  </section>`;
}

/** The example season: a way to add it, or to take its `count` games away. */
export function demoSection(count: number, add: Act, remove: Act): unknown {
  return html`<section aria-labelledby="demo">
    <h2 id="demo">${words.demo}</h2>
    <p>${words.demoLead}</p>
    ${
      count === 0
        ? html`<wr-button @click=${add}>${journalWords.addDemo}</wr-button>`
        : html`<p>${words.demoHere(count)}</p>
            <wr-button look="danger" @click=${remove}>${words.removeDemo}</wr-button>`
    }
  </section>`;
}

/** The names of players, which stand in `count` games. */
export function namesSection(count: number, remove: Act): unknown {
  return html`<section aria-labelledby="names">
    <h2 id="names">${words.names}</h2>
    <p>${words.namesLead}</p>
    <p>${words.namesHere(count)}</p>
    <wr-button look="danger" ?disabled=${count === 0} @click=${remove}>${words.removeNames}</wr-button>
  </section>`;
}

/** Where the files lie. */
export function whereSection(folder: string): unknown {
  return html`<section aria-labelledby="where">
    <h2 id="where">${words.title}</h2>
    <p>${words.where}</p>
    <p><code>${folder}</code></p>
  </section>`;
}
