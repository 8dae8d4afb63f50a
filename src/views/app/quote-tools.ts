import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Edit } from '../../quote/edit.ts';
import type { DispatchResult, QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import { SessionNews } from '../parts/session-news.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { editWords } from './edit-words.ts';

/**
 * A quote's title, what is invented in it, the way back and forward, and whether all of it is saved.
 *
 * @fires edit - another title
 * @fires stepped - what undo or redo came to
 */
@customElement('quote-tools')
export class QuoteTools extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        flex: 1;
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.25rem 1rem;
      }

      .title {
        flex: 1 1 10rem;
        min-width: 8rem;
        font-size: var(--large);
        font-weight: 600;
        border-bottom-color: transparent;
        text-overflow: ellipsis;
      }

      .title:hover,
      .title:focus {
        border-bottom-color: var(--rule);
      }

      .demo {
        padding: 0 0.375rem;
        border: 1px dashed var(--rule);
        font-size: var(--small);
      }

      .state {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0.25rem 0.75rem;
      }

      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
        align-items: center;
      }

      .saved {
        color: var(--ink-light);
        font-size: var(--small);
      }

      .unsaved .saved {
        color: var(--stop);
      }

      @media (max-width: 52rem) {
        .redo[aria-disabled='true'] {
          display: none;
        }
      }

      /* One row: the title over its state, and the way back beside them. */
      @media (max-width: 40rem) {
        :host {
          display: grid;
          grid-template-columns: minmax(0, 1fr) auto;
          gap: 0 0.25rem;
          min-width: 0;
        }

        .title {
          grid-area: 1 / 1;
          width: 100%;
          min-width: 0;
          min-height: 2.75rem;
          padding: 0.125rem 0.125rem 1.25rem;
          font-size: 1.125rem;
          line-height: 1.3;
        }

        .state {
          grid-area: 1 / 1;
          align-self: end;
          flex-wrap: nowrap;
          gap: 0 0.5rem;
          padding: 0 0.125rem 0.125rem;
          line-height: 1.2;
          pointer-events: none;
        }

        .demo,
        .saved {
          flex: none;
          font-size: 0.8125rem;
        }

        .more {
          position: absolute;
          clip-path: inset(50%);
        }

        /* A reason is read whole, though it takes a row more. */
        .unsaved {
          grid-area: 2 / 1 / auto / -1;
          flex-wrap: wrap;
          padding-bottom: 0.25rem;
        }

        .unsaved .saved {
          flex: 1 1 10rem;
        }

        .tools {
          grid-area: 1 / 2;
          flex-wrap: nowrap;
          gap: 0.25rem;
        }

        button.plain {
          display: grid;
          align-content: center;
          max-width: 5.25rem;
          min-height: 2.5rem;
          padding: 0 0.5rem;
          line-height: 1.15;
          text-align: left;
        }

        .what {
          overflow: hidden;
          font-size: 0.8125rem;
          text-overflow: ellipsis;
          white-space: nowrap;
        }
      }
    `,
  ];

  @property({ attribute: false }) session: QuoteSession | undefined;
  @property() measures: Measures = 'us';

  constructor() {
    super();
    new SessionNews(this, 'everything');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (session === undefined) return nothing;
    const results = session.results(session.quote.options[0]?.id ?? '');
    const undo = editWords(session.undoable, results, this.measures);
    const redo = editWords(session.redoable, results, this.measures);
    return html`<input class="title" type="text" aria-label="Title of the quote" .value=${live(session.quote.title)} @change=${this.onRetitle} />
      <div class="state ${session.saved.kind === 'not saved' ? 'unsaved' : ''}">
        <span class="demo">invented<span class="more"> ${session.quote.id === 'demo' ? 'firm, floor and prices' : 'rates and prices'}</span></span>
        <span class="saved">${savedWords(session)}</span>
      </div>
      <div class="tools">
        <button class="plain" type="button" title=${undo} aria-disabled=${undo === '' ? 'true' : 'false'} @click=${() => this.step('undo')}>${stepWords('Undo', undo)}</button>
        <button class="plain redo" type="button" title=${redo} aria-disabled=${redo === '' ? 'true' : 'false'} @click=${() => this.step('redo')}>${stepWords('Redo', redo)}</button>
      </div>`;
  }

  private step(direction: 'undo' | 'redo'): void {
    const { session } = this;
    // It may still have the focus when nothing is left to take back.
    if (session?.[direction === 'undo' ? 'undoable' : 'redoable'] === undefined) return;
    const result = session[direction]();
    this.dispatchEvent(new CustomEvent<DispatchResult>('stepped', { detail: result }));
  }

  private onRetitle(event: Event): void {
    const { target } = event;
    if (!(target instanceof HTMLInputElement)) return;
    const title = target.value.trim();
    if (title === '') this.requestUpdate();
    else this.dispatchEvent(new CustomEvent<Edit>('edit', { detail: { kind: 'retitle', title } }));
  }
}

/** `Undo: Width`; on a phone in two lines, the second as long as there is room. */
function stepWords(verb: string, what: string): TemplateResult {
  return what === '' ? html`${verb}` : html`<span>${verb}:</span> <span class="what">${what}</span>`;
}

function savedWords({ saved }: QuoteSession): string {
  if (saved.kind === 'saved') return 'saved';
  return saved.kind === 'saving' ? 'saving …' : `not saved: ${saved.reason}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'quote-tools': QuoteTools;
  }
}
